// How long a pump takes for a volume and what charge it uses, its flow falling with the water in the tank.

import type { Source } from "./sources.ts";

/** Halvings to find what fits a budget. */
const HALVINGS = 40;
/** Slope under which the logarithm of a piece is taken by its series [-]. */
const SLIGHT = 1e-4;

/** What a drawdown takes: time [s] and energy [J]. */
type Drawdown = { time: number; energy: number };

/**
 * Time and energy to draw a volume.
 *
 * @param held water in its tank before [m3]
 * @param volume to draw [m3]
 * @returns time [s] and energy [J]; Infinity where the pump lifts nothing
 * @source dt = dV / Q(V) and dE = P(V) dt, integrated exactly over rows that are straight between their points
 */
export function drawdownOf(source: Source, held: number, volume: number): Drawdown {
  const sum = { time: 0, energy: 0 };
  if (volume <= 0) return sum;
  const { volumes } = source;
  const last = volumes.length - 1;
  let upper = held;
  // What is left to draw is kept apart, so that a small draw on a big tank keeps its digits.
  let left = volume;
  for (let place = last; place >= -1 && left > 0; place--) {
    const bottom = place < 0 ? -Infinity : (volumes[place] as number);
    if (bottom >= upper) continue;
    const depth = Math.min(left, upper - bottom);
    addPiece(sum, source, Math.min(place, last - 1), { bottom: upper - depth, depth });
    left -= depth;
    upper = bottom;
  }
  return sum;
}

/** A piece of a drawdown: the water under it and its own [m3]. */
type Piece = { readonly bottom: number; readonly depth: number };

/** Adds what a piece of the drawdown takes, between the row's points `place` and the next; level beyond them. */
function addPiece(
  sum: Drawdown,
  { volumes, flows, powers }: Source,
  place: number,
  { bottom, depth }: Piece,
): void {
  const at = Math.max(0, place);
  const low = volumes[at] as number;
  const high = at + 1 < volumes.length ? (volumes[at + 1] as number) : Infinity;
  const start = high === Infinity ? 0 : Math.min(1, Math.max(0, (bottom - low) / (high - low)));
  const end = high === Infinity ? 0 : Math.min(1, Math.max(0, (bottom + depth - low) / (high - low)));
  const flow = between(flows, at, start);
  const power = between(powers, at, start);
  const rise = (between(flows, at, end) - flow) / flow;
  if (!(flow > 0) || !(rise > -1)) {
    sum.time = Infinity;
    sum.energy = Infinity;
    return;
  }
  const slight = Math.abs(rise) < SLIGHT;
  const mean = slight ? 1 - rise / 2 + (rise * rise) / 3 : Math.log1p(rise) / rise;
  const moment = slight ? 1 / 2 - rise / 3 + (rise * rise) / 4 : (1 - mean) / rise;
  sum.time += (depth / flow) * mean;
  sum.energy += (depth / flow) * (power * mean + (between(powers, at, end) - power) * moment);
}

function between(row: Float64Array, place: number, share: number): number {
  const low = place < row.length ? (row[place] as number) : 0;
  if (share === 0) return low;
  const high = place + 1 < row.length ? (row[place + 1] as number) : low;
  return low * (1 - share) + high * share;
}

/**
 * Volume that a pump draws within a time and a charge.
 *
 * @param held water in its tank before [m3]
 * @param most volume wanted [m3]
 * @param budget.time it may run [s]
 * @param budget.energy it may use [J]
 * @returns volume, at most `most` [m3]
 * @source drawdownOf, turned round
 */
export function drawnWithin(
  source: Source,
  held: number,
  most: number,
  budget: { readonly time: number; readonly energy: number },
): number {
  const fits = (volume: number) => {
    const { time, energy } = drawdownOf(source, held, volume);
    return time <= budget.time && energy <= budget.energy;
  };
  if (most <= 0 || fits(most)) return Math.max(0, most);
  if (source.volumes.length < 2) {
    const flow = source.flows[0] ?? 0;
    const power = source.powers[0] ?? 0;
    const time = Math.min(budget.time, power > 0 ? budget.energy / power : Infinity);
    return Math.min(most, Math.max(0, time) * flow);
  }
  let [low, high] = [0, most];
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = (low + high) / 2;
    if (fits(middle)) low = middle;
    else high = middle;
  }
  return low;
}
