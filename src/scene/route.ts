// The way of a hose: its points between both ends, and the hump that water has to climb.

import type { DrawnLine } from "./place.ts";

/** The points of a route between the line's two ends, and the length that they are measured along [m]. */
export function routeBetween(line: DrawnLine): {
  readonly points: DrawnLine["route"];
  readonly length: number;
} {
  const last = line.route[line.route.length - 1]?.[0] ?? 0;
  const length = Math.max(line.length ?? 0, last);
  return { points: line.route.filter(([distance]) => distance > 0 && distance < length), length };
}

/** The highest place between its ends that water has to climb to; null where a line only falls. */
export function humpOf(line: DrawnLine): readonly [number, number] | null {
  const first = line.route.find(([distance]) => distance <= 0)?.[1];
  let lowest = Math.min(line.startHeight ?? Number.POSITIVE_INFINITY, first ?? Number.POSITIVE_INFINITY);
  let hump: readonly [number, number] | null = null;
  for (const point of routeBetween(line).points) {
    if (point[1] > lowest && (hump === null || point[1] > hump[1])) hump = point;
    lowest = Math.min(lowest, point[1]);
  }
  return hump;
}
