// How broad a tank is drawn: its height is to the scale of all heights, its breadth such that the area goes with what it
// holds, so that a bigger tank is bigger. Three are drawn three, and six six.
//
// Limits, beyond which a picture lies rather than vanishes: a vessel is never narrower than LEAST_BREADTH, never lower than
// LEAST_HEIGHT, and of more than MOST_VESSELS no more are drawn.

import type { DrawnTank } from "./place.ts";

/** By how many there are side by side [px]. */
const LEAST_BREADTHS: readonly (readonly [upTo: number, px: number])[] = [
  [1, 12],
  [3, 8],
  [Number.POSITIVE_INFINITY, 5],
];
export const LEAST_HEIGHT = 8;
const MOST_VESSELS = 24;
const WALL_GAP = 5;
/** Of the paper: the widest tank, and all of them together. */
const ONE_TANK = 0.2;
const ALL_TANKS = 0.32;
/** The broadest vessel is at most so much broader than it is high. */
const BROADEST = 0.85;
const HALVINGS = 40;

/** Breadth of one vessel, the gap to the next, and of all together [px]. */
export type Breadth = { readonly each: number; readonly gap: number; readonly whole: number };

export const vesselsDrawn = (tank: Pick<DrawnTank, "count">): number =>
  Math.min(MOST_VESSELS, Math.max(1, Math.round(tank.count)));

export const leastBreadth = (count: number): number =>
  LEAST_BREADTHS.find(([upTo]) => count <= upTo)?.[1] ?? 5;

/** What one vessel holds over its height: the area on which an upright one stands [m2]. */
function crossArea({ vessel, count, across }: DrawnTank): number {
  if (vessel && vessel.height > 0 && vessel.volume > 0)
    return vessel.volume / vessel.height / Math.max(1, Math.round(count));
  return Math.max(0.01, across * across);
}

/**
 * Breadth of a tank.
 *
 * @param perArea px of breadth a square metre of its cross area
 */
export function breadthOf(tank: DrawnTank, perArea: number, squeeze = 1): Breadth {
  const count = vesselsDrawn(tank);
  const each = Math.max(leastBreadth(count), perArea * crossArea(tank)) * squeeze;
  const gap = count > 1 ? Math.min(WALL_GAP, Math.max(2, each / 5)) * squeeze : 0;
  return { each, gap, whole: count * each + (count - 1) * gap };
}

/**
 * The greatest px a square metre at which all tanks keep within their share of the paper.
 *
 * @param scale of heights [px/m]
 * @param kept one that was in use, kept as long as it fits
 */
export function perAreaFor(
  tanks: readonly DrawnTank[],
  width: number,
  scale: number,
  kept: number | null,
): number {
  if (tanks.length === 0) return 0;
  const fits = (perArea: number): boolean => {
    const wholes = tanks.map((tank) => breadthOf(tank, perArea).whole);
    const all = wholes.reduce((sum, one) => sum + one, 0);
    return Math.max(...wholes) <= ONE_TANK * width && all <= ALL_TANKS * width;
  };
  const square = Math.min(
    ...tanks.map((tank) => (BROADEST * Math.max(LEAST_HEIGHT, tank.height * scale)) / crossArea(tank)),
  );
  const most = kept ?? square;
  if (fits(most)) return most;
  let [low, high] = [0, most];
  for (let step = 0; step < HALVINGS; step++) {
    const middle = (low + high) / 2;
    if (fits(middle)) low = middle;
    else high = middle;
  }
  return low;
}
