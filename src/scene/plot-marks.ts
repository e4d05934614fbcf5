// The words of a chart's marks: beside a point, over a line, within the paper, and no two on one another.

import { overlaps, round } from "./paper.ts";
import type { Box, Tone } from "./place.ts";
import { textWidth } from "./text-block.ts";

/** A place worth naming: a point of a curve, or without `up` a line from the foot to the top. */
export type Mark = {
  readonly across: number;
  readonly up?: number;
  readonly label: string;
  readonly tone: Tone;
  readonly dot?: "full" | "hollow" | "none";
  /** A dashed line from the point down to the foot: as it was held. */
  readonly stem?: true;
  /** A line from the point to its words, which may stand far off. */
  readonly leader?: true;
};

/** Where a number of either axis lies [px], y downwards, and the numbers that lie at an x and a y. */
export type Frame = {
  readonly width: number;
  readonly height: number;
  readonly across: (value: number) => number;
  readonly up: (value: number) => number;
  readonly atX: (x: number) => number;
  readonly atY: (y: number) => number;
};

export type PlacedMark = {
  readonly mark: Mark;
  readonly x: number;
  /** From the top; null where it is a line over the whole height. */
  readonly y: number | null;
  /** Baseline and middle of its words, and the box they take. */
  readonly words: { readonly x: number; readonly y: number };
  readonly box: Box;
  /** From the point to words that stand far off. */
  readonly leader: string | null;
};

/** From a point to its words [px]. */
const BESIDE = 9;
/** From a point up to the foot of its words: a level line through it stays clear of them [px]. */
const ABOVE = 3;
/** How far a dot may reach about its point [px]. */
const DOT = 5;

/** The room that a dot takes. */
export const dotBox = (x: number, y: number): Box => ({
  x: x - DOT,
  y: y - DOT,
  width: 2 * DOT,
  height: 2 * DOT,
});

/** From the foot of the words over a line to the field's top [px]. */
const OVER = 8;

const inWidth = (x: number, width: number, room: number): number =>
  Math.max(0, Math.min(x, Math.max(0, room - width)));

/** Boxes in which the words may stand, the best first. */
function wishes(mark: Mark, x: number, y: number | null, frame: Frame, size: number): readonly Box[] {
  const width = textWidth(mark.label, size, true);
  const height = size * 1.25;
  const box = (left: number, top: number): Box => ({
    x: inWidth(left, width, frame.width),
    y: top,
    width,
    height,
  });
  // Before a whole row higher as much as clears a row of dots.
  const rows = [0, DOT, ...Array.from({ length: 7 }, (_, row) => (row + 1) * height)];
  if (y === null) return rows.map((up) => box(x - width / 2, -OVER - height - up));
  const [right, left] = [x + BESIDE, x - BESIDE - width];
  const sides = right + width <= frame.width ? [right, left] : [left, right];
  const beside = rows.flatMap((up) => sides.map((side) => box(side, y - height - ABOVE - up)));
  return beside
    .filter((one) => one.x + one.width <= x || one.x >= x)
    .concat(rows.map((up) => box(right, y - height - 2 * BESIDE - up)));
}

/** Whether a line of points runs through a box. */
export function crosses(box: Box, points: readonly (readonly [number, number])[]): boolean {
  return points.some(([x, y], index) => {
    const [toX, toY] = points[index + 1] ?? [x, y];
    if (Math.max(x, toX) < box.x - 2 || Math.min(x, toX) > box.x + box.width + 2) return false;
    const steps = Math.max(1, Math.min(40, Math.ceil(Math.hypot(toX - x, toY - y) / 3)));
    return Array.from({ length: steps + 1 }, (_, step) => step / steps).some((share) => {
      const at = { x: x + (toX - x) * share, y: y + (toY - y) * share, width: 0, height: 0 };
      return overlaps(box, at, 2);
    });
  });
}

function leaderOf({ leader }: Mark, x: number, y: number | null, box: Box): string | null {
  if (!leader || y === null) return null;
  const edge = box.x > x ? box.x - 3 : box.x + box.width + 3;
  return `M${round(x)},${round(y)}V${round(box.y + box.height / 2)}H${round(edge)}`;
}

/**
 * Marks with their words, in their own order; earlier ones choose first, and keep off the chart's lines where they can.
 *
 * @param dots that stand by themselves, on no line
 */
export function placeMarks(
  marks: readonly Mark[],
  frame: Frame,
  size: number,
  lines: readonly (readonly [number, number])[] = [],
  dots: readonly Box[] = [],
): readonly PlacedMark[] {
  const real = marks.filter(({ across }) => Number.isFinite(across));
  const at = real.map((mark) => ({
    mark,
    x: frame.across(mark.across),
    y: mark.up === undefined ? null : frame.up(mark.up),
  }));
  const taken: Box[] = [...dots, ...at.flatMap(({ x, y }) => (y === null ? [] : [dotBox(x, y)]))];
  return at.flatMap(({ mark, x, y }) => {
    const boxes = wishes(mark, x, y, frame, size);
    const free = boxes.filter((box) => !taken.some((other) => overlaps(box, other, 1)));
    // Over the field stand the words of lines, and of what is laid over the chart.
    const within = y === null ? free : free.filter((one) => one.y >= 0);
    const box = within.find((one) => !crosses(one, lines)) ?? within[0] ?? free[0] ?? boxes[0];
    if (!box) return [];
    taken.push(box);
    const words = { x: box.x + box.width / 2, y: box.y + size };
    return [{ mark, x, y, box, words, leader: leaderOf(mark, x, y, box) }];
  });
}
