// Where on the paper there is still room for words: a grid of small squares, marked where something is.

import { flatten, type Spot2 } from "./flatten.ts";
import type { Box } from "./place.ts";
import { remembering } from "./remember.ts";

const CELL = 4;
/** Around a stroke [px]. */
const STROKE = 2;
/** A place of a hundred parts has about so many strokes. */
const STROKES = 600;

const pointsOf = remembering(STROKES, flatten);

export type Room = {
  /** Marks a box, and so much around it [px]. */
  readonly take: (box: Box, around?: number) => void;
  /** Marks where a stroke runs. */
  readonly takePath: (d: string, around?: number) => void;
  /** Marks a straight stroke. */
  readonly takeLine: (from: Spot2, to: Spot2, around?: number) => void;
  /**
   * Null where a box is free. Else what it has to be clear of before it can be, when it goes up or down: there the furthest edge
   * [px], which its top must reach or its foot stay over.
   */
  readonly edge: (box: Box, isDown: boolean) => number | null;
  /** What is marked now; calling it takes back all that was marked since. */
  readonly kept: () => () => void;
};

/** From one end of a straight stroke to the other, no step longer than a square. */
function walk(from: Spot2, to: Spot2, at: (x: number, y: number) => void): void {
  const [across, down] = [to[0] - from[0], to[1] - from[1]];
  const steps = Math.max(1, Math.ceil(Math.hypot(across, down) / (CELL - 1)));
  for (let step = 0; step <= steps; step++)
    at(from[0] + across * (step / steps), from[1] + down * (step / steps));
}

/** Of each square of a row that begins at `start`: the first taken column at or right of it. */
function fillNext(taken: Uint8Array, next: Int32Array, start: number, columns: number): void {
  let first = columns;
  for (let at = start + columns - 1; at >= start; at--) {
    if (taken[at]) first = at - start;
    next[at] = first;
  }
}

/** What a box beyond a sheet's edges has to be clear of; where it never can be, what no box is clear of. */
function edgeBeyond(
  { x, y, width, height }: Box,
  isDown: boolean,
  across: number,
  high: number,
): number | null {
  const never = isDown ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY;
  if (x < 0 || x + width > across) return never;
  if (y < 0) return isDown ? 0 : never;
  return y + height > high ? Number.POSITIVE_INFINITY : null;
}

/** An empty sheet of a size [px]; nothing is free beyond its edges. */
export function newRoom(width: number, height: number): Room {
  const [columns, rows] = [Math.ceil(width / CELL), Math.ceil(height / CELL)];
  const taken = new Uint8Array(columns * rows);
  // Of each square the first taken column at or right of it, worked out row by row when somebody asks.
  const next = new Int32Array(columns * rows);
  const isKnown = new Uint8Array(rows);
  const within = (value: number, most: number): number =>
    Math.max(0, Math.min(most - 1, Math.floor(value / CELL)));
  const mark = (x1: number, y1: number, x2: number, y2: number): void => {
    if (x2 < 0 || x1 > width || y2 < 0 || y1 > height) return;
    const [left, right, bottom] = [within(x1, columns), within(x2, columns), within(y2, rows)];
    for (let row = within(y1, rows); row <= bottom; row++) {
      taken.fill(1, row * columns + left, row * columns + right + 1);
      isKnown[row] = 0;
    }
  };
  const takeLine = (from: Spot2, to: Spot2, around = STROKE): void =>
    walk(from, to, (x, y) => mark(x - around, y - around, x + around, y + around));
  const takenFrom = (row: number, column: number): number => {
    if (!isKnown[row]) {
      fillNext(taken, next, row * columns, columns);
      isKnown[row] = 1;
    }
    return next[row * columns + column] ?? 0;
  };
  return {
    take: ({ x, y, width: across, height: high }, around = 0) =>
      mark(x - around, y - around, x + across + around, y + high + around),
    kept: () => {
      const before = taken.slice();
      return () => {
        taken.set(before);
        isKnown.fill(0);
      };
    },
    takeLine,
    takePath: (d, around) => {
      for (const line of pointsOf(d))
        for (const [index, to] of line.entries()) takeLine(line[index - 1] ?? to, to, around);
    },
    edge: (box, isDown) => {
      const outside = edgeBeyond(box, isDown, width, height);
      if (outside !== null) return outside;
      const [left, right] = [within(box.x, columns), within(box.x + box.width, columns)];
      const [top, bottom] = [within(box.y, rows), within(box.y + box.height, rows)];
      const [first, past, by] = isDown ? [bottom, top - 1, -1] : [top, bottom + 1, 1];
      for (let row = first; row !== past; row += by)
        if (takenFrom(row, left) <= right) return (isDown ? row + 1 : row) * CELL;
      return null;
    },
  };
}
