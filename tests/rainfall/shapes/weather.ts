// The weather that the shapes of rain files are written from: made up once, so that each file has one true answer.
import { seededRandom } from "../../../src/rainfall/seeded-random.ts";
import { calendarDate, dayNumber, isoDate } from "../../../src/units/calendar.ts";

export type Hour = { readonly day: number; readonly hour: number; readonly mm: number };
export type Day = { readonly day: number; readonly mm: number; readonly hours: readonly number[] };

/** The tip of the gauge [mm]: every amount is a whole number of tips, as a tipping bucket gives it. */
export const TIP = 0.2;
const HOURS = 24;

const tidy = (value: number): number => Math.round(value * 1000) / 1000;

/** Days of rain in showers of one to six hours, about 820 mm a year in tips of 0.2 mm. */
export function weather(firstYear: number, lastYear: number, seed = 7): readonly Day[] {
  const chance = seededRandom(seed);
  const days: Day[] = [];
  for (let day = dayNumber(firstYear, 1, 1); day <= dayNumber(lastYear, 12, 31); day++) {
    const hours = new Array<number>(HOURS).fill(0);
    if (chance() < 0.33) {
      const start = Math.floor(chance() * 20);
      const length = 1 + Math.floor(chance() * 6);
      for (let at = start; at < Math.min(HOURS, start + length); at++)
        hours[at] = tidy(TIP * Math.floor(-Math.log(1 - chance()) * 10));
    }
    days.push({ day, hours, mm: tidy(hours.reduce((sum, mm) => sum + mm, 0)) });
  }
  return days;
}

export const ONE_YEAR = weather(2019, 2019);
export const FOUR_YEARS = weather(2016, 2019);

/** Mean rain of a year [mm], by adding up. */
export function yearly(days: readonly Day[]): number {
  return (days.reduce((sum, { mm }) => sum + mm, 0) / days.length) * 365.25;
}

export const two = (value: number): string => String(value).padStart(2, "0");

/** Rows of a file under its header. */
export const file = (header: string, rows: readonly string[]): string => `${[header, ...rows].join("\n")}\n`;

/** A row a day: the date by `dated`, the amount by `amount`. */
export function daily(
  days: readonly Day[],
  row: (date: string, mm: number, day: Day) => string,
): readonly string[] {
  return days.map((day) => row(isoDate(day.day), day.mm, day));
}

/** A row for every step of so many hours, stamped at the end of the step within its day (24:00 as hour 24). */
export function stepped(
  days: readonly Day[],
  step: number,
  row: (date: string, hour: number, mm: number, day: Day) => string,
): readonly string[] {
  return days.flatMap((day) =>
    Array.from({ length: HOURS / step }, (_, at) =>
      row(
        isoDate(day.day),
        at * step,
        tidy(day.hours.slice(at * step, (at + 1) * step).reduce((sum, mm) => sum + mm, 0)),
        day,
      ),
    ),
  );
}

/** The total that a counter shows at the end of each hour, going back to nought where `resets` says. */
export function counted(
  days: readonly Day[],
  resets: (
    date: { readonly year: number; readonly month: number; readonly day: number },
    hour: number,
  ) => boolean,
  start = 0,
): readonly Hour[] {
  let total = start;
  return days.flatMap((day) =>
    day.hours.map((mm, hour) => {
      if (resets(calendarDate(day.day), hour)) total = 0;
      total = tidy(total + mm);
      return { day: day.day, hour, mm: total };
    }),
  );
}

/** One moment for each tip of the bucket, in minutes and seconds within the hour. */
export function tips(days: readonly Day[]): readonly { readonly day: number; readonly time: string }[] {
  return days.flatMap(({ day, hours }) =>
    hours.flatMap((mm, hour) => {
      const count = Math.round(mm / TIP);
      return Array.from({ length: count }, (_, at) => {
        const second = Math.floor((at * 3600) / count);
        return { day, time: `${two(hour)}:${two(Math.floor(second / 60))}:${two(second % 60)}` };
      });
    }),
  );
}
