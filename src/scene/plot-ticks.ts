// The words of a chart's scale: each over its line, or under it, at the side where no curve runs through them, else between.

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

/** Where along its line the words of a tick may hang, the best first. */
function hangings(width: number, own: number, atEnd: boolean): readonly Pick<PlacedTick, "x" | "anchor">[] {
  const sides = [{ x: 0, anchor: "start" } as const, { x: width, anchor: "end" } as const];
  const between = BETWEEN.map((share) => ({ x: own + share * (width - 2 * own), anchor: "middle" as const }));
  return [...(atEnd ? sides.reverse() : sides), ...between];
}

const leftOf = ({ x, anchor }: Pick<PlacedTick, "x" | "anchor">, own: number): number =>
  anchor === "start" ? x : anchor === "end" ? x - own : x - own / 2;

/** Words of ticks that do not touch one another nor, where there is a place for it, a curve; the highest stays. */
export function placeTicks(ticks: readonly Tick[], among: Among): readonly PlacedTick[] {
  const { frame, size, lines, marks, atEnd } = among;
  const kept: PlacedTick[] = [];
  for (const { y, label } of [...ticks].sort((a, b) => a.y - b.y)) {
    const own = textWidth(label, size, false);
    const places = hangings(frame.width, own, atEnd).flatMap((at) =>
      baselines(y, frame).map((words): PlacedTick => ({ y, label, words, ...at })),
    );
    // The words of two lines stand as their lines do, wherever along them.
    const apart = places.filter(({ words }) => kept.every((other) => words - other.words >= LINE));
    const isFree = (place: PlacedTick): boolean => {
      const box = { x: leftOf(place, own), y: place.words - size, width: own, height: LINE };
      return !marks.some((mark) => overlaps(box, mark.box, 1)) && !lines.some((line) => crosses(box, line));
    };
    const placed = apart.find(isFree) ?? apart[0];
    if (placed) kept.push(placed);
  }
  return kept;
}
