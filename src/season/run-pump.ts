// How long a pump takes for a volume and what charge it uses, its flow falling with the water in the tank.

import { rowAt, type Source } from "./sources.ts";

/** Parts into which a drawdown is cut where the flow depends on the level; halvings to find what fits a budget. */
const SLICES = 8;
const HALVINGS = 40;

/** Time [s] and energy [J] of the last drawdown asked for: one record, so that no watering makes an object. */
export const drawdown = { time: 0, energy: 0 };

/**
 * Reads time and energy to draw a volume into `drawdown`.
 *
 * @param source a pump, units at the type's fields
 * @param held water in its tank before [m3]
 * @param volume to draw [m3]
 * @source dt = dV / Q(V), by the middle of each slice; exact where the flow is the same at every level
 */
export function readDrawdown(source: Source, held: number, volume: number): void {
  drawdown.time = 0;
  drawdown.energy = 0;
  if (volume <= 0) return;
  const slices = source.volumes.length < 2 ? 1 : SLICES;
  for (let slice = 0; slice < slices; slice++) {
    const at = held - (volume * (slice + 0.5)) / slices;
    const flow = rowAt(source, source.flows, at);
    const time = flow > 0 ? volume / slices / flow : Infinity;
    drawdown.time += time;
    drawdown.energy += time === Infinity ? Infinity : time * rowAt(source, source.powers, at);
  }
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
