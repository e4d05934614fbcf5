// Small shapes as path text.

import { round } from "./paper.ts";
import type { Box } from "./place.ts";

export const rect = ({ x, y, width, height }: Box): string =>
  `M${round(x)},${round(y)}h${round(width)}v${round(height)}h${round(-width)}Z`;

/** A box with its corners taken off by a radius [px]. */
export function rounded({ x, y, width, height }: Box, radius: number): string {
  const r = Math.min(radius, width / 2, height / 2);
  const [w, h] = [round(width - 2 * r), round(height - 2 * r)];
  const turn = (dx: number, dy: number): string => `a${round(r)},${round(r)} 0 0 1 ${round(dx)},${round(dy)}`;
  return `M${round(x + r)},${round(y)}h${w}${turn(r, r)}v${h}${turn(-r, r)}h${-w}${turn(-r, -r)}v${-h}${turn(r, -r)}Z`;
}

/** A vessel without a lid: two walls and a floor. */
export const tub = ({ x, y, width, height }: Box): string =>
  `M${round(x)},${round(y)}v${round(height)}h${round(width)}v${round(-height)}`;

export const segment = (x1: number, y1: number, x2: number, y2: number): string =>
  `M${round(x1)},${round(y1)}L${round(x2)},${round(y2)}`;

export const circle = (x: number, y: number, r: number): string =>
  `M${round(x - r)},${round(y)}a${r},${r} 0 1 1 ${2 * r},0a${r},${r} 0 1 1 ${-2 * r},0Z`;

/** The least box around some boxes. */
export function around(boxes: readonly Box[]): Box {
  const left = Math.min(...boxes.map((box) => box.x));
  const top = Math.min(...boxes.map((box) => box.y));
  const right = Math.max(...boxes.map((box) => box.x + box.width));
  const bottom = Math.max(...boxes.map((box) => box.y + box.height));
  return { x: left, y: top, width: right - left, height: bottom - top };
}
