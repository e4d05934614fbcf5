// The day that it is here, by the clock of the device.

import { dayNumber, isoDate } from "../units/calendar.ts";
import { HOUR, MINUTE } from "../units/constants.ts";

/** Day `YYYY-MM-DD` at a moment [ms since 1970-01-01 UTC], as the reader's own calendar has it. */
export function dayHere(milliseconds: number): string {
  const at = new Date(milliseconds);
  return isoDate(dayNumber(at.getFullYear(), at.getMonth() + 1, at.getDate()));
}

export const today = (): string => dayHere(Date.now());

/** Time of day here [s after midnight]. */
export function timeOfDay(): number {
  const at = new Date();
  return at.getHours() * HOUR + at.getMinutes() * MINUTE;
}
