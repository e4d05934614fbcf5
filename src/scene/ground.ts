// The ground of one row: level under every column, sloping between them, or along a hose's route where one is given.

import { round } from "./paper.ts";

/** Corners of the ground's line on paper, from left to right. */
export type Ground = readonly (readonly [x: number, y: number])[];

/** The first corner at or right of an x; as many as there are where none is. */
function cornerFrom(ground: Ground, x: number): number {
  let [low, high] = [0, ground.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((ground[middle]?.[0] ?? 0) >= x) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** Height of the ground's line at an x [px], of which the first corner at or right of it is known. */
function heightBefore(ground: Ground, right: number, x: number): number {
  const after = ground[Math.min(right, ground.length - 1)];
  const before = ground[Math.max(0, Math.min(right, ground.length) - 1)];
  if (!after || !before) return 0;
  if (right === 0 || after[0] === before[0]) return after[1];
  const share = (x - before[0]) / (after[0] - before[0]);
  return before[1] + (after[1] - before[1]) * share;
}

/** Height of the ground's line at an x [px]. */
export const groundAt = (ground: Ground, x: number): number => heightBefore(ground, cornerFrom(ground, x), x);

/** Lowest place on paper of the ground from one x to another that is not left of it [px]; the largest y. */
export function deepest(ground: Ground, from: number, to: number): number {
  let at = cornerFrom(ground, from);
  let lowest = heightBefore(ground, at, from);
  for (; (ground[at]?.[0] ?? to) < to; at++) lowest = Math.max(lowest, ground[at]?.[1] ?? lowest);
  return Math.max(lowest, heightBefore(ground, at, to));
}

const STEPS = 10;

/** A slope without corners between two places. */
export function slope(from: readonly [number, number], to: readonly [number, number]): Ground {
  if (from[1] === to[1]) return [from, to];
  return Array.from({ length: STEPS + 1 }, (_, step) => {
    const share = step / STEPS;
    const eased = share * share * (3 - 2 * share);
    return [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * eased] as const;
  });
}

export const pathOf = (points: Ground): string =>
  `M${points.map(([x, y]) => `${round(x)},${round(y)}`).join("L")}`;

/** The ground's line between two x, raised by so much [px]. */
export function along(ground: Ground, from: number, to: number, raised: number): Ground {
  const [left, right] = from < to ? [from, to] : [to, from];
  const inside = ground.filter(([x]) => x > left && x < right);
  const points = [
    [left, groundAt(ground, left)] as const,
    ...inside,
    [right, groundAt(ground, right)] as const,
  ].map(([x, y]) => [x, y - raised] as const);
  return from < to ? points : points.reverse();
}
