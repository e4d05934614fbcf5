// The words of a chart's scale: each over its line, or under it, all at one side, where no curve runs through them. What has
// no such place there stays unsaid; only where no side has any, the highest that does stands in between.

import { overlaps } from "./paper.ts";
import { crosses, type Frame, type PlacedMark } from "./plot-marks.ts";
import { textWidth } from "./text-block.ts";

/** A grid line [px], and the baseline of its words, with the x of the side or the middle that they are hung by. */
export type PlacedTick = {
  readonly y: number;
  readonly words: number;
  readonly x: number;
  readonly anchor: "start" | "middle" | "end";
  readonly label: string;
};

type Tick = { readonly y: number; readonly label: string };

type Among = {
  readonly frame: Frame;
  readonly size: number;
  /** The chart's curves, each by itself. */
  readonly lines: readonly (readonly (readonly [number, number])[])[];
  readonly marks: readonly PlacedMark[];
  readonly atEnd: boolean;
};

/** From one line of words to the next [px]. */
const LINE = 16;
const OVER = 4;
/** Between the sides, from the right. */
const BETWEEN = [0.85, 0.7, 0.55, 0.4, 0.25, 0.1];

/** Baselines over and under the grid line that lie on the field. */
const baselines = (y: number, { height }: Frame): readonly number[] => {
  const [over, under] = [y - OVER, y + LINE - 3];
  if (y < LINE) return [under];
  return under <= height - OVER ? [over, under] : [over];
};

type Hung = Pick<PlacedTick, "x" | "anchor">;

/** The sides, the best first; and between them, from the right. */
function hangings(width: number, atEnd: boolean): readonly Hung[] {
  const sides = [{ x: 0, anchor: "start" } as const, { x: width, anchor: "end" } as const];
  return atEnd ? sides.reverse() : sides;
}

const between = (width: number, own: number): readonly Hung[] =>
  BETWEEN.map((share) => ({ x: own + share * (width - 2 * own), anchor: "middle" as const }));

const leftOf = ({ x, anchor }: Hung, own: number): number =>
  anchor === "start" ? x : anchor === "end" ? x - own : x - own / 2;

/** Where the words of a tick may stand so hung, over its line or under it, clear of all that is drawn or not. */
function placesOf(
  { y, label }: Tick,
  hung: readonly Hung[],
  among: Among,
  mustBeFree: boolean,
): readonly PlacedTick[] {
  const { frame, size, lines, marks } = among;
  const own = textWidth(label, size, false);
  const places = hung.flatMap((at) =>
    baselines(y, frame).map((words): PlacedTick => ({ y, label, words, ...at })),
  );
  if (!mustBeFree) return places;
  return places.filter((place) => {
    const box = { x: leftOf(place, own), y: place.words - size, width: own, height: LINE };
    return !marks.some((mark) => overlaps(box, mark.box, 1)) && !lines.some((line) => crosses(box, line));
  });
}

/** The words of two lines stand as their lines do; the highest stays. */
function keptOf(
  ticks: readonly Tick[],
  placesFor: (tick: Tick) => readonly PlacedTick[],
): readonly PlacedTick[] {
  const kept: PlacedTick[] = [];
  for (const tick of ticks) {
    const placed = placesFor(tick).find(({ words }) => kept.every((other) => words - other.words >= LINE));
    if (placed) kept.push(placed);
  }
  return kept;
}

/** Words of ticks that touch neither one another nor, where there is a place for it, a curve. */
export function placeTicks(ticks: readonly Tick[], among: Among): readonly PlacedTick[] {
  const { width } = among.frame;
  const sorted = [...ticks].sort((a, b) => a.y - b.y);
  const [best = [], other = []] = hangings(width, among.atEnd).map((side) =>
    keptOf(sorted, (tick) => placesOf(tick, [side], among, true)),
  );
  const fuller = other.length > best.length ? other : best;
  if (fuller.length > 0) return fuller;
  const ownOf = ({ label }: Tick): number => textWidth(label, among.size, false);
  const inside = keptOf(sorted, (tick) => placesOf(tick, between(width, ownOf(tick)), among, true));
  if (inside.length > 0) return inside.slice(0, 1);
  return keptOf(sorted, (tick) => placesOf(tick, hangings(width, among.atEnd), among, false)).slice(0, 1);
}
