// A strip to print and glue to a stick: round volumes of one tank at their true heights, in pieces that fit on paper.

import type { Value } from "../graph/types.ts";
import { levelAt, surfaceAt, type Vessel } from "../physics/vessel.ts";
import { tidy } from "../units/tidy.ts";
import { fromSi, toSi } from "../units/unit.ts";

export type DipMark = {
  /** From the piece's upper edge down to the mark [mm]. */
  readonly y: number;
  /** Round number of the strip's unit; null for a mark without one. */
  readonly label: string | null;
};

export type DipPiece = {
  /** Height of its lower edge over the tank's floor, and how tall it is [mm]. */
  readonly from: number;
  readonly height: number;
  /** From the lowest up. */
  readonly marks: readonly DipMark[];
  /** Marks of the months, on its other edge. */
  readonly months: readonly DipMark[];
};

/** A mark beside the volumes: depth over the floor [m] and its words. */
export type SideMark = { readonly depth: number; readonly label: string };

export type DipStrip = {
  readonly unit: string;
  /** From the lowest up; the first stands on the floor. */
  readonly pieces: readonly DipPiece[];
};

/** Fits on A4 and on Letter with their margins [mm]. */
const TALLEST_PIECE = 235;
/** Marks no closer than this, and labels, can still be told apart on a wet stick [mm]. */
const MARK_GAP = 3;
const LABEL_GAP = 9;
const ROUND = [1, 2, 5];

const millimetres = (metres: number): number => fromSi(metres, "mm");

/** The smallest round number that is at least as large. */
function roundAbove(least: number): number {
  const decade = 10 ** Math.floor(Math.log10(least));
  const times = [...ROUND, 10].find((each) => each * decade >= least * (1 - 1e-12));
  return Number(((times ?? 10) * decade).toPrecision(1));
}

/** The smallest multiple of a step that is a round number and leaves room for a label. */
function labelEvery(step: number, gap: number): number {
  for (let times = 1; ; times++) {
    const round = ROUND.some((each) => {
      const decades = Math.log10((times * step) / each);
      return Math.abs(decades - Math.round(decades)) < 1e-9;
    });
    if (round && times * gap >= LABEL_GAP) return times;
  }
}

type At = { readonly at: number; readonly label: string | null };

function piecesOf(height: number, marks: readonly At[], months: readonly At[]) {
  const count = Math.max(1, Math.ceil(height / TALLEST_PIECE - 1e-9));
  return Array.from({ length: count }, (_, index): DipPiece => {
    const from = index * TALLEST_PIECE;
    const to = Math.min(height, from + TALLEST_PIECE);
    const inside = (all: readonly At[]) =>
      all
        .filter(({ at }) => at <= to && (at > from || (index === 0 && at === from)))
        .map(({ at, label }) => ({ y: to - at, label }));
    return { from, height: to - from, marks: inside(marks), months: inside(months) };
  });
}

/**
 * The strip of a vessel.
 * @param vessel as a tank's card works it out: joined tanks together
 * @param unit of volume of its labels
 * @param side marks on its other edge
 */
export function dipStrip(vessel: Vessel, unit: string, side: readonly SideMark[] = []): DipStrip {
  const widest = surfaceAt(vessel, vessel.height / 2);
  const gapOf = (step: number) => millimetres(toSi(step, unit) / widest);
  const step = roundAbove(MARK_GAP / gapOf(1));
  const every = labelEvery(step, gapOf(step));
  const count = Math.floor((fromSi(vessel.volume, unit) / step) * (1 + 1e-12));
  const marks = Array.from({ length: count + 1 }, (_, index) => {
    const volume = tidy(index * step);
    const at = millimetres(levelAt(vessel, Math.min(vessel.volume, toSi(volume, unit))));
    return { at, label: index % every === 0 ? String(volume) : null };
  });
  const months = side.map(({ depth, label }) => ({ at: millimetres(depth), label }));
  return { unit, pieces: piecesOf(millimetres(vessel.height), marks, months) };
}

/** The strip of whatever a row holds; null where it is no vessel. */
export function dipStripOf(
  value: Value | undefined,
  unit: string,
  side: readonly SideMark[] = [],
): DipStrip | null {
  if (typeof value !== "object" || value === null || !("height" in value) || !("volume" in value))
    return null;
  const { form, height, volume } = value;
  if (typeof height !== "number" || typeof volume !== "number") return null;
  return dipStrip({ form: form === "lying" ? "lying" : "upright", height, volume }, unit, side);
}
