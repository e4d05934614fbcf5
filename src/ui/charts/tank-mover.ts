// Raising and lowering a tank in the drawing, by pointer or by arrow keys, as edits of its own height.

import { type Accessor, batch, createSignal } from "solid-js";
import { type Movable, movable, movedEntry, stepOf } from "../../scene/height-edit.ts";
import type { Sheet } from "../sheet.ts";
import type { SceneModel } from "./scene-model.ts";

/** Movement under which a press is a press and no drag [px]. */
const SLACK = 4;
const COARSE = 6;

type Grip = { readonly id: string; readonly y: number; readonly scale: number; readonly from: Movable };

export type TankMover = {
  /** The tank that is being dragged, that one or the one that keys last moved, and what its height is now, in words. */
  readonly moving: Accessor<string | null>;
  readonly moved: Accessor<string | null>;
  readonly readout: (id: string) => string;
  readonly canMove: (id: string) => boolean;
  readonly down: (id: string, event: PointerEvent & { readonly currentTarget: Element }) => void;
  readonly move: (event: PointerEvent) => void;
  /** True where the press was a drag, so that it opens nothing. */
  readonly up: () => boolean;
  readonly step: (id: string, steps: number) => void;
  readonly leave: () => void;
};

function reachOf(sheet: Sheet, id: string): Movable | null {
  const card = sheet.worksheet().cards.find((candidate) => candidate.id === id);
  const kind = card && sheet.kinds[card.kind];
  return card && kind ? movable(card, kind, sheet.result, sheet.unitOf) : null;
}

/** Moves tanks of a scene. */
export function createTankMover(sheet: Sheet, scene: SceneModel): TankMover {
  const [moving, setMoving] = createSignal<string | null>(null);
  const [stepped, setStepped] = createSignal<string | null>(null);
  let grip: Grip | null = null;

  const put = (from: Movable, by: number): void => {
    const now = reachOf(sheet, from.card.id);
    // Counted from where the drag began; back there is an edit too.
    const entry = movedEntry(from, by) ?? (now && now.value !== from.value ? startEntry(from) : null);
    if (!entry) return;
    batch(() => {
      sheet.looking.stir();
      sheet.edit.given(from.card, from.row, entry, true);
    });
  };
  const end = (): void => {
    grip = null;
    scene.keepScale(false);
    if (moving() !== null) sheet.edit.settle();
    setMoving(null);
  };
  return {
    moving,
    moved: () => moving() ?? stepped(),
    canMove: (id) => reachOf(sheet, id) !== null,
    readout: (id) => {
      const now = reachOf(sheet, id);
      if (!now) return "";
      const floor = now.row.name === "stand_height" ? `, floor ${sheet.shown(`${id}.floor_height`)}` : "";
      return `${now.row.label} ${sheet.shown(`${id}.${now.row.name}`)}${floor}`;
    },
    down: (id, event) => {
      const from = reachOf(sheet, id);
      const spot = scene.layout().spots.get(id);
      if (!from || !spot || event.button !== 0) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      grip = { id, y: event.clientY, scale: scene.layout().kept.scale, from };
    },
    move: (event) => {
      if (!grip) return;
      const up = grip.y - event.clientY;
      if (moving() === null && Math.abs(up) < SLACK) return;
      if (moving() === null) {
        scene.keepScale(true);
        setMoving(grip.id);
      }
      put(grip.from, up / grip.scale);
    },
    up: () => {
      const dragged = moving() !== null;
      end();
      return dragged;
    },
    step: (id, steps) => {
      const from = reachOf(sheet, id);
      if (!from) return;
      put(from, steps * stepOf(from.unit));
      setStepped(id);
    },
    leave: () => {
      setStepped(null);
      if (!grip) sheet.edit.settle();
    },
  };
}

function startEntry({ card, row, value, unit }: Movable) {
  return card.givens[row.name] ?? movedEntry({ card, row, value: value - stepOf(unit), unit }, stepOf(unit));
}

/** Steps that a key asks for; null for any other key. */
export function stepsOfKey(key: string, coarse: boolean): number | null {
  const size = coarse ? COARSE : 1;
  if (key === "ArrowUp") return size;
  if (key === "ArrowDown") return -size;
  if (key === "PageUp") return COARSE;
  return key === "PageDown" ? -COARSE : null;
}
