// Whole days since 1970-01-01 to and from calendar dates, in the proleptic Gregorian calendar. No clock, no local time.

const DAYS_BEFORE_EPOCH = 719_468;
const DAYS_IN_ERA = 146_097;

export type CalendarDate = { readonly year: number; readonly month: number; readonly day: number };

/** Day number of a date, month 1..12, day of month 1..31 [days since 1970-01-01]. */
export function dayNumber(year: number, month: number, day: number): number {
  const shifted = month <= 2 ? year - 1 : year;
  const era = Math.floor(shifted / 400);
  const yearOfEra = shifted - era * 400;
  const dayOfShiftedYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
  const dayOfEra =
    yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfShiftedYear;
  return era * DAYS_IN_ERA + dayOfEra - DAYS_BEFORE_EPOCH;
}

/** Calendar date of a day number. */
export function calendarDate(dayNumberGiven: number): CalendarDate {
  const shifted = dayNumberGiven + DAYS_BEFORE_EPOCH;
  const era = Math.floor(shifted / DAYS_IN_ERA);
  const dayOfEra = shifted - era * DAYS_IN_ERA;
  const yearOfEra = Math.floor(
    (dayOfEra -
      Math.floor(dayOfEra / 1460) +
      Math.floor(dayOfEra / 36_524) -
      Math.floor(dayOfEra / 146_096)) /
      365,
  );
  const dayOfShiftedYear =
    dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const shiftedMonth = Math.floor((5 * dayOfShiftedYear + 2) / 153);
  const month = shiftedMonth < 10 ? shiftedMonth + 3 : shiftedMonth - 9;
  return {
    year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0),
    month,
    day: dayOfShiftedYear - Math.floor((153 * shiftedMonth + 2) / 5) + 1,
  };
}

/** Day of the year, 1 on the first of January, 366 at the most. */
export function dayOfYear(dayNumberGiven: number): number {
  return dayNumberGiven - dayNumber(calendarDate(dayNumberGiven).year, 1, 1) + 1;
}

/** Day of the week, 1 Monday to 7 Sunday. */
export function weekday(dayNumberGiven: number): number {
  // 1970-01-01 was a Thursday.
  return ((((dayNumberGiven + 3) % 7) + 7) % 7) + 1;
}

/** Whether a year has a 29th of February. */
export function isLeapYear(year: number): boolean {
  return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
}

/** Days in a month, month 1..12. */
export function daysInMonth(year: number, month: number): number {
  return month === 12 ? 31 : dayNumber(year, month + 1, 1) - dayNumber(year, month, 1);
}

/** Day number of `YYYY-MM-DD`, or null where the text is no such date. */
export function parseIsoDate(text: string): number | null {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (!match) return null;
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  if (month < 1 || month > 12 || day < 1 || day > daysInMonth(year, month)) return null;
  return dayNumber(year, month, day);
}

/** `YYYY-MM-DD` of a day number. */
export function isoDate(dayNumberGiven: number): string {
  const { year, month, day } = calendarDate(dayNumberGiven);
  return `${String(year).padStart(4, "0")}-${String(month).padStart(2, "0")}-${String(day).padStart(2, "0")}`;
}

type MonthAndDay = { readonly month: number; readonly day: number };

/** Of every date that was ever read: a season's own are asked of each year of each run. */
const READ = new Map<string, MonthAndDay>();

/** Month and day of `MM-DD`, or null; 02-29 is allowed. */
export function parseMonthDay(text: string): MonthAndDay | null {
  const known = READ.get(text);
  if (known) return known;
  const match = /^(\d{2})-(\d{2})$/.exec(text);
  if (!match) return null;
  const [month, day] = [Number(match[1]), Number(match[2])];
  if (month < 1 || month > 12 || day < 1 || day > daysInMonth(2000, month)) return null;
  const read = { month, day };
  READ.set(text, read);
  return read;
}

/** Day number of `MM-DD` in a year; 02-29 becomes 03-01 where the year has none. Null where the text is wrong. */
export function dayInYear(text: string, year: number): number | null {
  const parsed = parseMonthDay(text);
  return parsed && dayNumber(year, parsed.month, parsed.day);
}
