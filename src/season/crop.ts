// The day in the root zones: water comes first, then the crop takes what it can.

import { stress } from "../physics/soil-water.ts";
import type { Bed } from "./beds.ts";
import type { Machine } from "./machine.ts";
import { count } from "./tally.ts";

/**
 * Wets, drains and dries every bed.
 *
 * @param machine the run, watered and rained on [-]
 * @param day of the record [day]
 * @source FAO-56 Eq. 81, 84, 85, 86, water early in the day as in example 38
 */
export function growAll(machine: Machine, day: number): void {
  for (let i = 0; i < machine.beds.length; i++) {
    const bed = machine.beds[i] as Bed;
    const total = bed.days.total[day] as number;
    if (total > 0) grow(machine, bed, day, total);
    bed.evening[day] = bed.depletion;
  }
}

function grow(machine: Machine, bed: Bed, day: number, total: number): void {
  const { ledger } = machine;
  const given = bed.given[day] as number;
  const watered = Math.min(bed.depletion, given / bed.perDepth);
  const dry = bed.depletion - watered;
  const rained = Math.min(dry, bed.days.rain[day] as number);
  const wet = dry - rained;
  const potential = bed.days.potential[day] as number;
  const share = stress(wet, total, Math.min(total, bed.days.readily[day] as number));
  const use = Math.min(total - wet, potential * share);
  bed.depletion = wet + use;
  ledger.waterIn += rained * bed.ground;
  // What did not reach the roots, and what was more than they had room for, is gone with the crop's use.
  ledger.waterOut += given - watered * bed.ground + use * bed.ground;
  if (machine.dayInSeason[day] === 0) return;
  count(bed.potential, machine.slots, potential * bed.ground);
  count(bed.use, machine.slots, use * bed.ground);
  if (share < 1 && potential > 0 && !bed.byCalendar)
    markShort(machine, bed, day, (potential - use) * bed.perDepth);
}

function markShort(machine: Machine, bed: Bed, day: number, unmet: number): void {
  machine.shortDay[day] = 1;
  count(bed.daysShort, machine.slots, 1);
  if (machine.slots.season < machine.seasons.length) {
    bed.unmet[bed.bound] = (bed.unmet[bed.bound] as number) + unmet;
  }
}
