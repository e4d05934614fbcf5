// Where on the paper there is still room for words: a grid of small squares, marked where something is.

import { flatten } from "./flatten.ts";
import type { Box } from "./place.ts";

const CELL = 4;

export type Room = {
  /** Marks a box, and so much around it [px]. */
  readonly take: (box: Box, around?: number) => void;
  /** Marks where a stroke runs. */
  readonly takePath: (d: string, around?: number) => void;
  readonly isFree: (box: Box) => boolean;
};

/** An empty sheet of a size [px]; nothing is free beyond its edges. */
export function newRoom(width: number, height: number): Room {
  const [columns, rows] = [Math.ceil(width / CELL), Math.ceil(height / CELL)];
  const taken = new Uint8Array(columns * rows);
  const within = (value: number, most: number): number =>
    Math.max(0, Math.min(most - 1, Math.floor(value / CELL)));
  const take = (box: Box, around = 0): void => {
    if (box.x + box.width + around < 0 || box.x - around > width) return;
    if (box.y + box.height + around < 0 || box.y - around > height) return;
    const [left, right] = [within(box.x - around, columns), within(box.x + box.width + around, columns)];
    const [top, bottom] = [within(box.y - around, rows), within(box.y + box.height + around, rows)];
    for (let row = top; row <= bottom; row++) taken.fill(1, row * columns + left, row * columns + right + 1);
  };
  return {
    take,
    takePath: (d, around = 2) => {
      for (const line of flatten(d))
        for (const [index, [x, y]] of line.entries()) {
          const [fromX, fromY] = line[index - 1] ?? [x, y];
          const steps = Math.max(1, Math.ceil(Math.hypot(x - fromX, y - fromY) / (CELL - 1)));
          for (let step = 0; step <= steps; step++) {
            const share = step / steps;
            take(
              { x: fromX + (x - fromX) * share, y: fromY + (y - fromY) * share, width: 0, height: 0 },
              around,
            );
          }
        }
    },
    isFree: (box) => {
      if (box.x < 0 || box.y < 0 || box.x + box.width > width || box.y + box.height > height) return false;
      const [left, right] = [within(box.x, columns), within(box.x + box.width, columns)];
      const [top, bottom] = [within(box.y, rows), within(box.y + box.height, rows)];
      for (let row = top; row <= bottom; row++)
        for (let column = left; column <= right; column++) if (taken[row * columns + column]) return false;
      return true;
    },
  };
}
