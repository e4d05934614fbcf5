// How long there is light after the hour of watering.

import { daylightHours } from "../physics/sun.ts";
import { dayOfYear } from "../units/calendar.ts";
import { DAY } from "../units/constants.ts";
import type { SeasonInput } from "./input.ts";

/**
 * Time from the hour of watering to sunset.
 *
 * @param input its hour of watering [s] and latitude [rad]
 * @param date the day [days since 1970-01-01]
 * @returns time, 0 where the sun has set by then [s]
 * @validity noon by the clock is taken as the sun's; a site without a latitude has the worksheet's usual one
 * @source FAO-56 Eq. 34
 */
export function untilDark({ waterAt, eto }: SeasonInput, date: number): number {
  const sunset = (DAY + daylightHours(eto.latitude, dayOfYear(date))) / 2;
  return Math.min(DAY, Math.max(0, sunset - waterAt));
}
