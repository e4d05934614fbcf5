// Files with more than one row a day, and counters: amounts, totals that run, counters, tips.
import { isoDate } from "../../../src/units/calendar.ts";
import { asked, oneTouch, refused, right, type Shape } from "./shape.ts";
import {
  counted,
  daily,
  FOUR_YEARS,
  file,
  type Hour,
  ONE_YEAR,
  stepped,
  TIP,
  tips,
  two,
  yearly,
} from "./weather.ts";

const year = yearly(ONE_YEAR);
const four = yearly(FOUR_YEARS);
const hourRow = ({ day, hour, mm }: Hour) => `${isoDate(day)} ${two(hour)}:00,${mm}`;
/** A log of tips begins and ends with one: of the dry days before and after nothing can know. */
const WET = ONE_YEAR.filter(({ mm }) => mm > 0);
const logged = yearly(
  ONE_YEAR.filter(({ day }) => day >= (WET[0]?.day ?? 0) && day <= (WET.at(-1)?.day ?? 0)),
);
const never = () => false;
const atMidnight = (_: unknown, hour: number) => hour === 0;
const atNine = (_: unknown, hour: number) => hour === 9;
const byMonth = (date: { readonly day: number }, hour: number) => hour === 0 && date.day === 1;
const byYear = (date: { readonly day: number; readonly month: number }, hour: number) =>
  hour === 0 && date.day === 1 && date.month === 1;

/** The counter a row a day, as it stands at the day's end. */
const endOfDay = (hours: readonly Hour[]) =>
  hours.filter(({ hour }) => hour === 23).map(({ day, mm }) => `${isoDate(day)},${mm}`);

/** The total of the day with its first row still showing the day before's. */
const lateReset = () => {
  let before = 0;
  return counted(ONE_YEAR, atMidnight).map((row) => {
    const shown = row.hour === 0 ? before : row.mm;
    before = row.mm;
    return hourRow({ ...row, mm: shown });
  });
};

const RUNNING = ["--rain-rows", "running"] as const;
const COUNTER = ["--rain-rows", "counter"] as const;
const WITHIN = ["--rain-rows", "within-day"] as const;

const constant = (step: number) =>
  file(
    "time,rain (mm)",
    stepped(ONE_YEAR, step, (date, hour, _, day) => `${date} ${two(hour)}:00,${(day.mm * step) / 24}`),
  );

export const WITHIN_A_DAY: readonly Shape[] = [
  {
    name: "hourly amounts",
    text: file(
      "time,rain (mm)",
      stepped(ONE_YEAR, 1, (date, hour, mm) => `${date} ${two(hour)}:00,${mm}`),
    ),
    yearly: year,
    comes: right,
  },
  {
    name: "hourly rows that are a 24th of the day",
    text: constant(1),
    yearly: year,
    comes: oneTouch(["within_day"], ...WITHIN),
  },
  {
    name: "3-hourly rows that are equal within the day",
    text: constant(3),
    yearly: year,
    comes: oneTouch(["within_day"], ...WITHIN),
  },
  {
    name: "6-hourly rows that are equal within the day",
    text: constant(6),
    yearly: year,
    comes: oneTouch(["within_day"], ...WITHIN),
  },
  {
    name: "a row a tip, to the second",
    text: file(
      "timestamp,rain (mm)",
      tips(ONE_YEAR).map(({ day, time }) => `${isoDate(day)} ${time},${TIP}`),
    ),
    yearly: logged,
    comes: oneTouch(["within_day"], ...WITHIN),
  },
  {
    name: "a row a tip, to the minute, so that moments recur",
    text: file(
      "timestamp,rain (mm)",
      tips(ONE_YEAR).map(({ day, time }) => `${isoDate(day)} ${time.slice(0, 5)},${TIP}`),
    ),
    yearly: logged,
    comes: oneTouch(["within_day"], ...WITHIN),
  },
  {
    name: "a row a tip without a time",
    text: file(
      "date,rain (mm)",
      tips(ONE_YEAR).map(({ day }) => `${isoDate(day)},${TIP}`),
    ),
    yearly: logged,
    comes: oneTouch(["within_day"], ...WITHIN),
  },
  {
    name: "hourly amounts without a time",
    text: file(
      "date,rain (mm)",
      stepped(ONE_YEAR, 1, (date, _, mm) => `${date},${mm}`),
    ),
    yearly: year,
    comes: oneTouch(["within_day"], ...WITHIN),
  },
  {
    name: "a total of the day, from midnight",
    text: file("time,rain (mm)", counted(ONE_YEAR, atMidnight).map(hourRow)),
    yearly: year,
    comes: oneTouch(["within_day"], ...RUNNING),
  },
  {
    name: "a total of the day that its header tells",
    text: file("time,daily rain (mm)", counted(ONE_YEAR, atMidnight).map(hourRow)),
    yearly: year,
    comes: right,
  },
  {
    name: "a total of the day, from nine",
    text: file("time,rain (mm)", counted(ONE_YEAR, atNine).map(hourRow)),
    yearly: year,
    comes: oneTouch(["within_day"], ...RUNNING),
  },
  {
    name: "a total of the day, from nine, that its header tells",
    text: file("time,rain today (mm)", counted(ONE_YEAR, atNine).map(hourRow)),
    yearly: year,
    comes: right,
  },
  {
    name: "a total of the day whose first row still shows the day before",
    text: file("time,rain (mm)", lateReset()),
    yearly: year,
    comes: oneTouch(["within_day"], ...RUNNING),
  },
  {
    name: "a counter over the month, hourly",
    text: file("time,rain (mm)", counted(ONE_YEAR, byMonth).map(hourRow)),
    yearly: year,
    comes: oneTouch(["within_day"], ...COUNTER),
  },
  {
    name: "a counter over the year, hourly",
    text: file("time,rain (mm)", counted(FOUR_YEARS, byYear).map(hourRow)),
    yearly: four,
    comes: oneTouch(["within_day"], ...COUNTER),
  },
  {
    name: "a counter that never goes back, hourly",
    text: file("time,rain (mm)", counted(ONE_YEAR, never, 1234.4).map(hourRow)),
    yearly: year,
    comes: oneTouch(["within_day"], ...COUNTER),
  },
  {
    name: "a counter over the month, a row a day",
    text: file("date,rain (mm)", endOfDay(counted(FOUR_YEARS, byMonth))),
    yearly: four,
    comes: oneTouch(["within_day"], ...COUNTER),
  },
  {
    name: "a counter over the year, a row a day",
    text: file("date,rain (mm)", endOfDay(counted(FOUR_YEARS, byYear))),
    yearly: four,
    comes: oneTouch(["within_day"], ...COUNTER),
  },
  {
    name: "a counter that never goes back, a row a day",
    text: file("date,rain (mm)", endOfDay(counted(ONE_YEAR, never))),
    yearly: year,
    comes: oneTouch(["within_day"], ...COUNTER),
  },
  {
    name: "a counter over the year that its header tells",
    text: file("date,yearly rain (mm)", endOfDay(counted(FOUR_YEARS, byYear))),
    yearly: four,
    comes: right,
  },
  {
    name: "a counter over the month that its header tells",
    text: file("date,monthly rain (mm)", endOfDay(counted(FOUR_YEARS, byMonth))),
    yearly: four,
    comes: right,
  },
  {
    name: "a header that says yearly over amounts",
    text: file(
      "date,yearly rain (mm)",
      daily(FOUR_YEARS, (date, mm) => `${date},${mm}`),
    ),
    yearly: four,
    comes: refused(/year/),
  },
  {
    name: "a console with rates, hours, the day, the month and the year side by side",
    text: file(
      "Time,Rain Rate (mm/h),Hourly Rain (mm),Daily Rain (mm),Monthly Rain (mm),Yearly Rain (mm)",
      counted(ONE_YEAR, atMidnight).map(
        ({ day, hour, mm }) => `${isoDate(day)} ${two(hour)}:00,${mm * 3},0,${mm},${mm + 50},${mm + 200}`,
      ),
    ),
    yearly: year,
    comes: right,
  },
  {
    name: "times as 20190101T0100",
    text: file(
      "time,rain (mm)",
      stepped(ONE_YEAR, 1, (date, hour, mm) => `${date.replaceAll("-", "")}T${two(hour)}00,${mm}`),
    ),
    yearly: year,
    comes: right,
  },
  {
    name: "times as 2019-01-01 0100",
    text: file(
      "time,rain (mm)",
      stepped(ONE_YEAR, 1, (date, hour, mm) => `${date} ${two(hour)}00,${mm}`),
    ),
    yearly: year,
    comes: right,
  },
  {
    name: "times as 03h",
    text: file(
      "date,hour,rain (mm)",
      stepped(ONE_YEAR, 1, (date, hour, mm) => `${date},${two(hour)}h,${mm}`),
    ),
    yearly: year,
    comes: right,
  },
  {
    name: "times as 03.00",
    text: file(
      "date,time,rain (mm)",
      stepped(ONE_YEAR, 1, (date, hour, mm) => `${date},${two(hour)}.00,${mm}`),
    ),
    yearly: year,
    comes: right,
  },
  {
    name: "a column named Hr, 1 to 24",
    text: file(
      "Date,Hr,Rain (mm)",
      stepped(ONE_YEAR, 1, (date, hour, mm) => `${date},${hour + 1},${mm}`),
    ),
    yearly: year,
    comes: right,
  },
  {
    name: "hhmm without leading noughts, every half hour",
    text: file(
      "date,hhmm,rain (mm)",
      stepped(ONE_YEAR, 1, (date, hour, mm) => `${date},${hour * 100},${mm}\n${date},${hour * 100 + 5},0`),
    ),
    yearly: year,
    comes: right,
  },
  {
    name: "a time that nobody understands",
    text: file(
      "date,time,rain (mm)",
      stepped(ONE_YEAR, 6, (date, hour, mm) => `${date},watch ${hour},${mm}`),
    ),
    yearly: year,
    comes: refused(/time/),
  },
  {
    name: "a time after the date that nobody understands",
    text: file(
      "date,rain (mm)",
      stepped(ONE_YEAR, 6, (date, hour, mm) => `${date} watch ${hour},${mm}`),
    ),
    yearly: year,
    comes: refused(/time/),
  },
  {
    name: "two readings a day without a time",
    text: file(
      "date,rain (mm)",
      stepped(ONE_YEAR, 12, (date, _, mm) => `${date},${mm}`),
    ),
    yearly: year,
    comes: oneTouch(["within_day"], ...WITHIN),
  },
  {
    name: "the same days twice over, as two downloads laid together",
    text: file("date,rain (mm)", [
      ...daily(ONE_YEAR, (date, mm) => `${date},${mm}`),
      ...daily(ONE_YEAR, (date, mm) => `${date},${mm}`),
    ]),
    yearly: year,
    comes: asked(["within_day"], { within_day: "day" }, "--rain-rows", "day"),
  },
  {
    name: "hourly amounts on a clock that is set back in autumn",
    text: file("time,rain (mm)", [
      ...stepped(ONE_YEAR, 1, (date, hour, mm) => `${date} ${two(hour)}:00,${mm}`),
      "2019-10-27 01:00,0",
    ]),
    yearly: year,
    comes: right,
  },
];
