// When a tank that is empty today is full, in one sentence.

import type { TankFull, TanksFull } from "../season/tank-full.ts";
import { calendarDate } from "../units/calendar.ts";
import { dayName } from "../units/calendar-names.ts";

const on = (date: number): string => dayName(calendarDate(date));

function lateSaid({ members, half, late, later, never }: TankFull): string {
  if (half === null) return "";
  const [count, by] = late === null ? [never, "within a year"] : [later, `by ${on(late)}`];
  const which = count === 1 ? `the slowest of ${members}` : `the ${count} slowest of ${members}`;
  // One fewer than the record has, where its last year ends before this day comes round again.
  return count === 0 ? "" : ` In ${which} past years, those known for a year from this day on, not ${by}.`;
}

function middleSaid({ half, never, members }: TankFull, today: number): string {
  if (half === null) return `Not full within a year in ${never} of ${members} years.`;
  return half === today ? "Full today in a middling year." : `Full by ${on(half)} in a middling year.`;
}

/** "Full by Nov 12 in a middling year. In the 2 slowest of 20 past years, those known for a year from this day on, not by Jan 3." */
export function tankFullSaid(tank: TankFull, { madeUp, few, today }: TanksFull): string {
  const { half, years } = tank;
  if (tank.members === 0) return "No year of the record reaches far enough to say.";
  if (madeUp)
    return half === null
      ? "Not full within a year in usual weather. The weather is made up."
      : `Full by about ${on(half)} in usual weather, without rain not at all. The weather is made up.`;
  const rough = ` Only ${years === 1 ? "1 year" : `${years} years`} of weather: a rough guess.`;
  return `${few && half === null ? "Not full within a year in most runs." : middleSaid(tank, today)}${few ? rough : lateSaid(tank)}`;
}
