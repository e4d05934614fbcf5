// What months and days of the week are called: January and Monday first.

export const MONTH_NAMES: readonly string[] = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
];

/** The same in three letters. */
export const SHORT_MONTHS: readonly string[] = MONTH_NAMES.map((name) => name.slice(0, 3));

export const WEEKDAYS: readonly string[] = [
  "Monday",
  "Tuesday",
  "Wednesday",
  "Thursday",
  "Friday",
  "Saturday",
  "Sunday",
];

/** The same in three letters. */
export const SHORT_WEEKDAYS: readonly string[] = WEEKDAYS.map((name) => name.slice(0, 3));

/** "Oct 9". */
export const dayName = ({ month, day }: { readonly month: number; readonly day: number }): string =>
  `${SHORT_MONTHS[month - 1]} ${day}`;
