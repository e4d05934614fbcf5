// Years of two digits to whole ones, over a whole file: they run on through the turn of a century, and end before 2030.
import { calendarDate } from "../units/calendar.ts";
import type { Intake } from "./intake.ts";
import { checkedDay } from "./read-date.ts";

/** A record cannot hold days to come: two digits up to these may be of this century. Without a clock it is a figure. */
const LATEST = 2029;
const CENTURY = 100;

type Log = { readonly count: number; readonly day: Float64Array };
type Dates = {
  readonly year: (value: number) => number;
  readonly withYear: (value: number, year: number) => number;
};

const PACKED: Dates = {
  year: (value) => Math.floor(value / 10_000),
  withYear: (value, year) => year * 10_000 + (value % 10_000),
};
const DAYS: Dates = {
  year: (value) => calendarDate(value).year,
  withYear: (value, year) => {
    const { month, day } = calendarDate(value);
    return checkedDay(year, month, day);
  },
};

/** First and last of the years as they run on from row to row, and whether one window of a century holds them. */
function window(log: Log, dates: Dates): { readonly first: number; readonly last: number } | null {
  let [year, least, most] = [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let at = 0; at < log.count; at++) {
    const short = dates.year(log.day[at] ?? 0) % CENTURY;
    if (Number.isNaN(year)) year = short;
    else year += ((short - (((year % CENTURY) + CENTURY) % CENTURY) + CENTURY * 1.5) % CENTURY) - CENTURY / 2;
    least = Math.min(least, year);
    most = Math.max(most, year);
  }
  if (!(most - least < CENTURY)) return null;
  const shift = Math.floor((LATEST - most) / CENTURY) * CENTURY;
  return { first: least + shift, last: most + shift };
}

/** Gives every date its century in place, and says which years came of it. */
export function settleCentury(intake: Intake, packed: boolean): void {
  const dates = packed ? PACKED : DAYS;
  const found = window(intake.readings, dates);
  if (!found) return;
  const { first, last } = found;
  for (const log of [intake.readings, ...intake.extras.values()]) {
    for (let at = 0; at < log.count; at++) {
      const value = log.day[at] ?? 0;
      const short = dates.year(value) % CENTURY;
      log.day[at] = dates.withYear(value, first + ((short - (first % CENTURY) + CENTURY) % CENTURY));
    }
  }
  intake.notes.push(`Years of two digits are taken as ${first === last ? first : `${first} to ${last}`}.`);
}
