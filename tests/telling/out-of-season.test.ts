// What is said of a day outside the season, worked out by hand on the calendar.

import { expect, test } from "vitest";
import { outOfSeasonSaid } from "../../src/telling/out-of-season.ts";
import { dayNumber } from "../../src/units/calendar.ts";

const SUMMER = { start: "05-01", end: "09-30" };
/** One that wraps the new year. */
const WINTER = { start: "11-01", end: "02-28" };

test.each([
  [SUMMER, dayNumber(2021, 4, 30), "The season has not begun: it begins May 1."],
  [SUMMER, dayNumber(2021, 5, 1), ""],
  [SUMMER, dayNumber(2021, 9, 30), ""],
  [SUMMER, dayNumber(2021, 10, 1), "The season is over; the next begins May 1."],
  [SUMMER, dayNumber(2022, 1, 2), "The season is over; the next begins May 1."],
  [SUMMER, dayNumber(2022, 3, 1), "The season has not begun: it begins May 1."],
  [WINTER, dayNumber(2021, 12, 31), ""],
  [WINTER, dayNumber(2022, 3, 1), "The season is over; the next begins Nov 1."],
  [WINTER, dayNumber(2021, 10, 31), "The season has not begun: it begins Nov 1."],
  [{ start: "", end: "" }, dayNumber(2021, 1, 1), ""],
])("%o on day %d", (dates, today, said) => {
  expect(outOfSeasonSaid(dates, today)).toBe(said);
});
