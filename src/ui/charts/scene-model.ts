// What the drawing shows now: the place out of the results, its layout, the water of the day, and the same in words.

import { type Accessor, createMemo, createSignal } from "solid-js";
import { shownIn } from "../../graph/readers.ts";
import { type Water, waterOf } from "../../scene/day-water.ts";
import { type DrawnPart, type Layout, layoutPlace } from "../../scene/layout.ts";
import type { Place } from "../../scene/place.ts";
import { readPlace, type SceneInput } from "../../scene/read-place.ts";
import { type Spoken, spoken } from "../../scene/spoken.ts";
import type { Sheet } from "../sheet.ts";

const NARROWEST = 320;

export type SceneModel = {
  readonly place: Accessor<Place>;
  readonly layout: Accessor<Layout>;
  readonly part: (id: string) => DrawnPart | undefined;
  readonly waters: Accessor<ReadonlyMap<string, Water>>;
  readonly spoken: Accessor<readonly Spoken[]>;
  /** Keeps the scale of heights while a tank is dragged; null lets go. */
  readonly keepScale: (scale: number | null) => void;
};

function seriesOf(sheet: Sheet, id: string): Float64Array | null {
  const result = sheet.result(`${id}.stored`);
  const value = shownIn(result);
  return value instanceof Float64Array ? value : null;
}

/**
 * @param day of the record that is shown [days since 1970-01-01]; null: as it stands today
 * @param width of the paper [px]
 */
export function createScene(sheet: Sheet, day: Accessor<number | null>, width: Accessor<number>): SceneModel {
  const [scale, setScale] = createSignal<number | null>(null);
  const asked = createMemo<SceneInput>(() => ({
    kinds: sheet.kinds,
    cards: sheet.worksheet().cards,
    result: sheet.result,
    shown: sheet.shown,
    cautions: sheet.cautions(),
    problems: sheet.problems(),
    options: sheet.showOptions(),
  }));
  const place = createMemo(() => readPlace(asked()));
  const layout = createMemo(() => layoutPlace(place(), Math.max(NARROWEST, width()), scale()));
  const parts = createMemo(() => new Map(layout().parts.map((part) => [part.id, part])));
  const waters = createMemo(() => {
    const [on, first] = [day(), sheet.stored()?.firstDay];
    if (on === null || first === undefined) return waterOf(place(), null);
    return waterOf(place(), (id) => seriesOf(sheet, id)?.[on - first] ?? null);
  });
  const datum = () => sheet.worksheet().datum || "zero";
  return {
    place,
    layout,
    part: (id) => parts().get(id),
    waters,
    spoken: createMemo(() => spoken({ asked: asked(), place: place(), waters: waters(), datum: datum() })),
    keepScale: setScale,
  };
}
