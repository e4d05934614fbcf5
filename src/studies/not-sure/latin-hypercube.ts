// Places over several doubts at once: every doubt is cut into as many even strips as there are runs, each strip is visited
// once, and the orders in which they are visited have next to nothing to do with each other.

import { randomLcg } from "d3-random";

/** Times that every order is freed of every other. */
const SWEEPS = 3;

function shuffled(count: number, chance: () => number): Float64Array {
  const order = Float64Array.from({ length: count }, (_, at) => at);
  for (let at = count - 1; at > 0; at--) {
    const other = Math.floor(chance() * (at + 1));
    [order[at], order[other]] = [order[other] as number, order[at] as number];
  }
  return order;
}

/** Strips in the order of the sizes of some numbers. */
function ranked(sizes: Float64Array): Float64Array {
  const ranks = new Float64Array(sizes.length);
  const rising = Array.from(sizes.keys()).sort(
    (a, b) => (sizes[a] as number) - (sizes[b] as number) || a - b,
  );
  for (const [rank, at] of rising.entries()) ranks[at] = rank;
  return ranks;
}

/** One order without what it shares with another. */
function freedOf(order: Float64Array, other: Float64Array): Float64Array {
  const middle = (order.length - 1) / 2;
  let [along, size] = [0, 0];
  for (let at = 0; at < order.length; at++) {
    const away = (other[at] as number) - middle;
    along += ((order[at] as number) - middle) * away;
    size += away ** 2;
  }
  const slope = size === 0 ? 0 : along / size;
  return ranked(order.map((strip, at) => strip - slope * ((other[at] as number) - middle)));
}

/** Forth and back over the orders, each freed of those before it, then of those behind it. */
function freed(orders: Float64Array[]): void {
  const count = orders.length;
  for (let sweep = 0; sweep < SWEEPS; sweep++) {
    for (let one = 0; one < count; one++) {
      for (let before = 0; before < one; before++)
        orders[one] = freedOf(orders[one] as Float64Array, orders[before] as Float64Array);
    }
    for (let one = count - 1; one >= 0; one--) {
      for (let behind = count - 1; behind > one; behind--)
        orders[one] = freedOf(orders[one] as Float64Array, orders[behind] as Float64Array);
    }
  }
}

/**
 * Latin hypercube of random places.
 *
 * @param doubts how many axes there are
 * @param runs how many places on each
 * @param seed the same one gives the same places
 * @returns an axis a doubt, each of `runs` places between 0 and 1, ends excluded
 * @source McKay, Beckman & Conover (1979), Technometrics 21(2), 239-245; the orders freed of each other by Owen (1994),
 * Journal of the American Statistical Association 89, 1517-1522, both from memory
 */
export function latinHypercube(doubts: number, runs: number, seed: number): readonly Float64Array[] {
  const chance = randomLcg(seed);
  const orders = Array.from({ length: doubts }, () => shuffled(runs, chance));
  freed(orders);
  return orders.map((order) => order.map((strip) => (strip + chance()) / runs));
}
