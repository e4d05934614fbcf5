// A bed's soil over a day when only its water matters: what it is given first, then rain, then what its crops take.

import { stress } from "../physics/soil-water.ts";
import type { BedDays } from "./bed-days.ts";

/**
 * Water short in the evening of a day.
 *
 * @param days the bed's crops and root zone [m]
 * @param day of the record [day]
 * @param depletion water short in the morning; a root zone that is gone takes its want with it [m]
 * @param given water given that reaches the roots [m]
 * @returns water short in the evening, 0 where nothing grows [m]
 * @source FAO-56 Eq. 81, 84, 85, 86, water early in the day as in example 38
 */
export function eveningOf(days: BedDays, day: number, depletion: number, given: number): number {
  const total = days.total[day] as number;
  if (total === 0) return 0;
  const wet = Math.max(0, Math.min(depletion, total) - given - (days.rain[day] as number));
  const readily = Math.min(total, days.readily[day] as number);
  return Math.min(total, wet + (days.potential[day] as number) * stress(wet, total, readily));
}
