// What answers for a short day of a bed, and for the water it went without: its last short watering's bound.

import type { Bed } from "./beds.ts";
import {
  bindingPlace,
  DAYLIGHT,
  ENERGY,
  type Lacks,
  LOSS,
  ownBound,
  RAIN,
  STORAGE,
  UNBOUND,
  UNROOFED,
  WATER,
} from "./bounds.ts";
import { answeredBy, type Behind, mostOf, rainPlace, toldOf } from "./gone.ts";
import type { SeasonState } from "./state.ts";
import { count } from "./tally.ts";

/** Forgets a bed's last short watering: it has been refilled since. */
export function refilled(bed: Bed): void {
  bed.bound = ownBound(bed.sources);
  bed.dryTank = -1;
}

/** What fills a tank in any way. */
const behind = ({ fillers, spills, roofed }: SeasonState, tank: number): Behind => ({
  tanks: fillers[tank] ?? [],
  spills: spills[tank] ?? [],
  roofed: roofed[tank] ?? false,
});

/** Power is told as daylight where a panel many times as big would have given less than half of what was lacking. */
const toldPower = (lacks: Lacks): number =>
  (lacks[DAYLIGHT] as number) > (lacks[ENERGY] as number) / 2 ? DAYLIGHT : ENERGY;

/**
 * The bound of lacks, by its place in BOUNDS: water in reach is told by where it went, power by what night left of it.
 *
 * @param lacks of a watering or draw [m3]
 * @param dryTank the tank whose water it lacked, -1: none
 * @param most of it that a day's shortfall can be [m3]
 * @returns its place; UNBOUND where nothing lacked
 */
export function boundOf(state: SeasonState, lacks: Lacks, dryTank: number, most: number): number {
  const place = bindingPlace(lacks);
  if (place === ENERGY) return toldPower(lacks);
  if (place !== WATER || dryTank < 0) return place;
  const from = behind(state, dryTank);
  return mostOf(toldOf(state.gone, from, Math.min(most, lacks[WATER] as number)), from);
}

const isWater = (bound: number): boolean =>
  bound === STORAGE || bound === LOSS || bound === RAIN || bound === UNROOFED;

/** Remembers what bound a bed's watering, until it is refilled. */
export function rememberShort(bed: Bed, bound: number, tank: number): void {
  bed.bound = bound === UNBOUND ? ownBound(bed.sources) : bound;
  bed.shortBound = bed.bound;
  bed.dryTank = isWater(bound) ? tank : -1;
}

/** Marks a day on which a bed is short, whatever answers for it. */
export function markShortDay({ shortDay, slots }: SeasonState, { firstShort }: Bed, day: number): void {
  shortDay[day] = 1;
  if ((firstShort[slots.season] as number) < 0) firstShort[slots.season] = day;
}

/**
 * Books a day on which a bed is short, with what it went without, under the bound of its last short watering.
 *
 * @param day of the record [day]
 * @param unmet water that it went without [m3]
 */
export function bookShortDay(state: SeasonState, bed: Bed, day: number, unmet: number): void {
  const { season } = state.slots;
  markShortDay(state, bed, day);
  count(bed.daysShort, state.slots, 1);
  const litres = bed.unmet[season] as Float64Array;
  if (bed.dryTank >= 0) bed.bound = bookWater(state, litres, { tank: bed.dryTank, unmet, day });
  else add(litres, bed.bound, unmet);
  add(bed.shortBy[season] as Float64Array, bed.bound, 1);
}

/**
 * Books water that a tank did not hold under storage, loss and rain, or the roof that is not there.
 *
 * @param litres gets it, by place in BOUNDS [m3]; null: the day is in no whole season
 * @param short the tank, what was lacking [m3] and the day of the record
 * @returns the place of the largest part
 * @source answeredBy
 */
export function bookWater(
  state: SeasonState,
  litres: Float64Array | null,
  { tank, unmet, day }: { readonly tank: number; readonly unmet: number; readonly day: number },
): number {
  const from = behind(state, tank);
  const told = answeredBy(state.gone, from, unmet, day + state.counted);
  if (litres) {
    add(litres, STORAGE, told.storage);
    add(litres, LOSS, told.loss);
    add(litres, rainPlace(from), told.rain);
  }
  return mostOf(told, from);
}

function add(sums: Float64Array, place: number, amount: number): void {
  sums[place] = (sums[place] as number) + amount;
}
