// A pump that hangs on a panel alone: how far it gets in the sun that is left of the day.

import { HOUR } from "../units/constants.ts";

/**
 * How long in full, in effect, a pump has run by a time after the hour of watering.
 * Straight between whole hours.
 *
 * @param hours full running by the end of each hour, beginning with 0 [s]
 * @param elapsed since the hour of watering [s]
 * @returns full running; level after the last hour [s]
 */
export function fullTimeBy(hours: readonly number[], elapsed: number): number {
  const last = hours.length - 1;
  const place = elapsed / HOUR;
  if (place >= last) return hours[last] ?? 0;
  const hour = Math.max(0, Math.floor(place));
  const before = hours[hour] ?? 0;
  return before + ((hours[hour + 1] ?? before) - before) * (place - hour);
}

/**
 * When a pump has run for so long in full: fullTimeBy, turned round.
 *
 * @param hours full running by the end of each hour, beginning with 0 [s]
 * @param fullTime running in full, at most that of the last hour [s]
 * @returns time since the hour of watering; the last hour's end where it never comes to so much [s]
 */
export function elapsedAt(hours: readonly number[], fullTime: number): number {
  for (let hour = 1; hour < hours.length; hour++) {
    const before = hours[hour - 1] as number;
    const after = hours[hour] as number;
    if (after >= fullTime && after > before)
      return (hour - 1 + Math.max(0, fullTime - before) / (after - before)) * HOUR;
  }
  return Math.max(0, hours.length - 1) * HOUR;
}
