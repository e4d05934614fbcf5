// What each allowance alone would have kept from a watering: the water in reach, a tankful, its refill, the line, the
// pump's time, power and hands. Only short waterings ask.

import { DAYLIGHT, ENERGY, HANDS, type Lacks, LINE, PUMP_TIME, REFILL, TANKFUL, WATER } from "./bounds.ts";
import { refillAllows } from "./refill-allows.ts";
import { drawdownOf, drawnWithin } from "./run-pump.ts";
import type { Source } from "./sources.ts";
import type { SeasonState } from "./state.ts";
import type { Supply } from "./supply.ts";

/** How long a pump may run for want of time, sun and hands [s], below 0: not at all; and the charge behind it [J]. */
export type Means = {
  readonly time: number;
  readonly sun: number;
  /** What is left of the day's light, where the sun drives it; Infinity: something else does. */
  readonly light: number;
  readonly hands: number;
  readonly charge: number;
};

/** Shortfall that is rounding rather than want [-]. */
const ROUNDING = 1e-9;

/** What just does must not fail by rounding. */
export const isWithin = (time: number, running: number): boolean => time * (1 - ROUNDING) <= running;

function add(lacks: Lacks, place: number, lack: number): void {
  if (lack > 0) lacks[place] = (lacks[place] as number) + lack;
}

/** What is drawn from: a tank, and the water in it that cannot be taken [m3]. */
export type Drawn = { readonly tank: number; readonly under: number };

/**
 * What the water in reach, a tankful, its refill and a line that cannot run alone would have kept from a watering.
 *
 * @param drawn where it is taken from [m3]
 * @param asked wanted, and given before on the same day by the same source [m3], and the day of the record
 * @param lacks gets them [m3]
 */
export function addWaterLacks(
  state: SeasonState,
  { tank, under }: Drawn,
  { want, before, day }: { readonly want: number; readonly before: number; readonly day: number },
  lacks: Lacks,
): void {
  const { volume } = state.tanks;
  const { behind, fed, full, stuck } = state.supply[tank] as Supply;
  const held = Math.max(0, (volume[tank] as number) - under);
  let waiting = 0;
  let coming = 0;
  for (let i = 0; i < behind.length; i++) {
    const { tank: other, under: below, runs } = behind[i] as Supply["behind"][number];
    const over = Math.max(0, (volume[other] as number) - below);
    waiting += over;
    if (runs) coming += over;
  }
  add(lacks, WATER, want - held - waiting);
  if (stuck) add(lacks, LINE, want - held - coming);
  if (!fed) return;
  // What others have drawn of a tankful today is none of this watering's.
  const taken = (state.tanks.drawn[tank] as number) - before;
  const tankful = Math.max(full - under - taken, held);
  // With a second tankful on the same day the two of them are the allowance.
  const twice = Math.max(2 * (full - under) - taken, before + held);
  const overfull = before > 0 ? want + before - twice : want - tankful;
  add(lacks, TANKFUL, overfull);
  if (coming <= 0) return;
  // Where a full tank would have done, it was not full; where it would not, its refill may have been in time all the same.
  const allowed = overfull > 0 ? refillAllows(state, tank, { day, isSecond: before > 0 }) : 0;
  add(lacks, REFILL, want - Math.max(held, allowed));
}

/** What the rounds for which there is time would have kept from a watering, however much water there is. */
export function addRoundLacks(left: number, source: Source, want: number, lacks: Lacks): void {
  if (source.roundTime <= 0) return;
  const rounds = Math.floor(left / source.roundTime + ROUNDING);
  if (rounds * source.roundVolume < want * (1 - ROUNDING))
    add(lacks, HANDS, want - rounds * source.roundVolume);
}

/**
 * What the pump's time, its power and hands alone would have kept from a watering, had the water been there.
 *
 * @param asked wanted and in its tank [m3], and its means
 * @param lacks gets them [m3]
 * @validity what its tank never holds at once is taken to come as fast as a tankful on the mean
 */
export function addPumpLacks(
  state: SeasonState,
  source: Source,
  { want, held, means }: { readonly want: number; readonly held: number; readonly means: Means },
  lacks: Lacks,
): void {
  const level = Math.max(held, Math.min(state.tanks.capacity[source.tank] as number, source.under + want));
  const volume = Math.min(want, level - source.under);
  if (!(volume > 0)) return;
  const { time, energy } = drawdownOf(source, level, volume);
  const wanted: Wanted = { level, volume, want, time, energy };
  const { hands, charge } = means;
  if (means.time < Infinity) add(lacks, PUMP_TIME, want - allowed(source, wanted, means.time, Infinity));
  if (means.sun < Infinity) {
    const lack = want - allowed(source, wanted, means.sun, Infinity);
    add(lacks, ENERGY, lack);
    // A big panel drives it in less light than is told as any.
    add(lacks, DAYLIGHT, Math.min(lack, want - allowed(source, wanted, means.light, Infinity)));
  }
  if (charge < Infinity) add(lacks, ENERGY, want - allowed(source, wanted, Infinity, charge));
  if (hands < 0) add(lacks, HANDS, want);
  else if (hands < Infinity) add(lacks, HANDS, want - allowed(source, wanted, hands, Infinity));
}

/** What is wanted, as much of it as its tank may hold at once, from what level [m3]; and what pumping that takes [s], [J]. */
type Wanted = {
  readonly level: number;
  readonly volume: number;
  readonly want: number;
  readonly time: number;
  readonly energy: number;
};

/** What a running time and a charge let through of what is wanted [m3]. */
function allowed(source: Source, wanted: Wanted, running: number, charge: number): number {
  const { level, volume, want, time, energy } = wanted;
  const more = want / volume;
  if (isWithin(time * more, running) && energy * more <= charge) return want;
  if (time <= running && energy <= charge)
    return volume * Math.min(time > 0 ? running / time : Infinity, energy > 0 ? charge / energy : Infinity);
  return drawnWithin(source, level, volume, { time: Math.max(0, running), energy: charge });
}
