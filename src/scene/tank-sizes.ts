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
/** Of the paper: what the widest tank comes near to, and all of them together, however much they hold. */
const ONE_TANK = 0.22;
const ALL_TANKS = 0.32;
/** What a vessel comes near to, in its own heights, however much it holds. */
const BROADEST = 1.3;
/** A tank on so much ground takes half of what it could at the most, and a vessel half of its greatest breadth [m2]. */
const HALF = { paper: 1, vessel: 0.9 };
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

/** Of each tank the larger of what it is and what it was held as: both are drawn on one scale. */
function largest(tanks: readonly DrawnTank[], held: readonly DrawnTank[]): readonly DrawnTank[] {
  const whole = (tank: DrawnTank): number => vesselsDrawn(tank) * crossArea(tank);
  return tanks.map((tank) => {
    const was = held.find(({ id }) => id === tank.id);
    return was && whole(was) > whole(tank) ? was : tank;
  });
}

/**
 * Px of breadth a square metre, by what is drawn alone and not by what was drawn before. Whatever the limit is, it is neared
 * and never met at once, so that a tank which holds more is drawn broader, however much it holds.
 *
 * @param held the same tanks as they were held, drawn by the same scale
 * @param scale of heights [px/m]
 */
export function perAreaFor(
  tanks: readonly DrawnTank[],
  held: readonly DrawnTank[],
  width: number,
  scale: number,
): number {
  if (tanks.length === 0) return 0;
  const both = largest(tanks, held);
  const wholes = both.map((tank) => vesselsDrawn(tank) * crossArea(tank));
  const sum = wholes.reduce((all, one) => all + one, 0);
  const most = Math.min(
    (ONE_TANK * width) / (Math.max(...wholes) + HALF.paper),
    (ALL_TANKS * width) / (sum + HALF.paper),
    ...both.map(
      (tank) => (BROADEST * Math.max(LEAST_HEIGHT, tank.height * scale)) / (crossArea(tank) + HALF.vessel),
    ),
  );
  return fitting(both, width, most);
}

/** The greatest that keeps tanks, with the gaps in them and the narrowest that are drawn, within their share of the paper. */
function fitting(tanks: readonly DrawnTank[], width: number, most: number): number {
  const fits = (perArea: number): boolean => {
    const wholes = tanks.map((tank) => breadthOf(tank, perArea).whole);
    const all = wholes.reduce((sum, one) => sum + one, 0);
    return Math.max(...wholes) <= ONE_TANK * width && all <= ALL_TANKS * width;
  };
  if (fits(most)) return most;
  let [low, high] = [0, most];
  for (let step = 0; step < HALVINGS; step++) {
    const middle = (low + high) / 2;
    if (fits(middle)) low = middle;
    else high = middle;
  }
  return low;
}
