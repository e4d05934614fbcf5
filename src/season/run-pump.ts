// How long a pump takes for a volume and what charge it uses, its flow falling with the water in the tank.

import type { Source } from "./sources.ts";

/** Halvings to find what fits a budget. */
const HALVINGS = 40;
/** Slope under which the logarithm of a piece is taken by its series [-]. */
const SLIGHT = 1e-4;

/** Time [s] and energy [J] of the last drawdown asked for: one record, so that no watering makes an object. */
export const drawdown = { time: 0, energy: 0 };

/**
 * Reads time and energy to draw a volume into `drawdown`.
 *
 * @param source a pump, units at the type's fields
 * @param held water in its tank before [m3]
 * @param volume to draw [m3]
 * @source dt = dV / Q(V) and dE = P(V) dt, integrated exactly over rows that are straight between their points
 */
export function readDrawdown(source: Source, held: number, volume: number): void {
  drawdown.time = 0;
  drawdown.energy = 0;
  if (volume <= 0) return;
  const { volumes } = source;
  const last = volumes.length - 1;
  let upper = held;
  // What is left to draw is kept apart, so that a small draw on a big tank keeps its digits.
  let left = volume;
  for (let place = last; place >= -1 && left > 0; place--) {
    const bottom = place < 0 ? -Infinity : (volumes[place] as number);
    if (bottom >= upper) continue;
    const depth = Math.min(left, upper - bottom);
    addPiece(source, Math.min(place, last - 1), upper - depth, depth);
    left -= depth;
    upper = bottom;
  }
}

/** Adds what a piece of the drawdown takes, between the row's points `place` and the next; level beyond them. */
function addPiece({ volumes, flows, powers }: Source, place: number, bottom: number, depth: number): void {
  const at = Math.max(0, place);
  const [low, high] = [volumes[at] as number, volumes[at + 1] ?? Infinity];
  const start = high === Infinity ? 0 : Math.min(1, Math.max(0, (bottom - low) / (high - low)));
  const end = high === Infinity ? 0 : Math.min(1, Math.max(0, (bottom + depth - low) / (high - low)));
  const flow = between(flows, at, start);
  const power = between(powers, at, start);
  const rise = (between(flows, at, end) - flow) / flow;
  if (!(flow > 0) || !(rise > -1)) {
    drawdown.time = Infinity;
    drawdown.energy = Infinity;
    return;
  }
  const slight = Math.abs(rise) < SLIGHT;
  const mean = slight ? 1 - rise / 2 + (rise * rise) / 3 : Math.log1p(rise) / rise;
  const moment = slight ? 1 / 2 - rise / 3 + (rise * rise) / 4 : (1 - mean) / rise;
  drawdown.time += (depth / flow) * mean;
  drawdown.energy += (depth / flow) * (power * mean + (between(powers, at, end) - power) * moment);
}

function between(row: Float64Array, place: number, share: number): number {
  const low = row[place] ?? 0;
  return share === 0 ? low : low * (1 - share) + (row[place + 1] ?? low) * share;
}

/**
 * Volume that a pump draws within a time and a charge.
 *
 * @param source a pump, units at the type's fields
 * @param held water in its tank before [m3]
 * @param most volume wanted [m3]
 * @param budget.time it may run [s]
 * @param budget.energy it may use [J]
 * @returns volume, at most `most` [m3]
 * @source readDrawdown, turned round
 */
export function drawnWithin(
  source: Source,
  held: number,
  most: number,
  budget: { readonly time: number; readonly energy: number },
): number {
  const fits = (volume: number) => {
    readDrawdown(source, held, volume);
    return drawdown.time <= budget.time && drawdown.energy <= budget.energy;
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
