// Files found by a fresh look: rain told more than once, counters that go back at odd times, dry days left empty, and
// headers that come near to rain or to a unit.
import { dayNumber, isoDate } from "../../../src/units/calendar.ts";
import { asked, oneTouch, refused, right, type Shape } from "./shape.ts";
import { counted, daily, FOUR_YEARS, file, stepped, two, yearly } from "./weather.ts";

const four = yearly(FOUR_YEARS);
const alone = (header: string, amount: (mm: number) => string | number = (mm) => mm) =>
  file(
    header,
    daily(FOUR_YEARS, (date, mm) => `${date},${amount(mm)}`),
  );
const hours = FOUR_YEARS.flatMap((day) => day.hours.map((mm, hour) => ({ day: day.day, hour, mm })));
const hourly = (header: string, row: (stamp: string, mm: number, at: number) => string) =>
  file(
    header,
    hours.map(({ day, hour, mm }, at) => row(`${isoDate(day)} ${two(hour)}:00`, mm, at)),
  );
/** What fell in the hours up to each row, a row every `step` hours. */
const rolling = (header: string, over = 24, step = 1) =>
  file(
    header,
    hours.flatMap(({ day, hour }, at) => {
      if ((hour + 1) % step) return [];
      const sum = hours.slice(Math.max(0, at - over + 1), at + 1).reduce((total, { mm }) => total + mm, 0);
      return [`${isoDate(day)} ${two(hour)}:59,${sum.toFixed(1)}`];
    }),
  );
/** Four rows a day, of which two tell the 12 hours and two the 6 hours up to them. */
const alternating = () =>
  file(
    "time,rain (mm)",
    hours.flatMap(({ day, hour }, at) => {
      if ((hour + 1) % 6) return [];
      const over = (hour + 1) % 12 ? 6 : 12;
      const sum = hours.slice(Math.max(0, at - over + 1), at + 1).reduce((total, { mm }) => total + mm, 0);
      return [`${isoDate(day)} ${two(hour)}:59,${sum.toFixed(1)}`];
    }),
  );
const months = (row: (year: number, month: number) => string) =>
  Array.from({ length: 96 }, (_, at) => row(2010 + Math.floor(at / 12), 1 + (at % 12)));

const ODD_DAYS = [dayNumber(2016, 5, 17), dayNumber(2017, 2, 9), dayNumber(2019, 8, 3)];
/** Total at the end of each day, back to nought in the morning of the days that `resets` names. */
const dailyCounter = (resets: (day: number) => boolean) => {
  let total = 0;
  return daily(FOUR_YEARS, (date, mm, { day }) => {
    if (resets(day)) total = 0;
    total += mm;
    return `${date},${total.toFixed(1)}`;
  });
};
const dayOfMonth = (day: number) => Number(isoDate(day).slice(8));

const isRefused = (name: string, text: string, words: RegExp): Shape => ({
  name,
  text,
  yearly: four,
  comes: refused(words),
});
const isRight = (name: string, text: string): Shape => ({ name, text, yearly: four, comes: right });

export const OVERLAPPING: readonly Shape[] = [
  isRefused(
    "a lone column of rain an hour",
    hourly("time,rain (mm/h)", (at, mm) => `${at},${mm}`),
    /rain/i,
  ),
  isRefused("what drains away, alone", alone("date,drainage (mm)"), /drainage/),
  isRight(
    "what drains away, beside the rain",
    file(
      "date,drainage (mm),rain (mm)",
      daily(FOUR_YEARS, (date, mm) => `${date},${(mm / 3).toFixed(1)},${mm}`),
    ),
  ),
  {
    name: "a lone column that only says depth",
    text: alone("date,depth (mm)"),
    yearly: four,
    comes: asked(["rain_column"], { rain_column: "depth (mm)" }, "--rain-column", "depth (mm)"),
  },
  isRefused(
    "tips of a bucket, counted",
    alone("date,rain (0.2 mm tips)", (mm) => Math.round(mm * 5)),
    /tips/,
  ),
  {
    name: "steps of 0.2 mm, which may be counts",
    text: alone("date,rain (0.2 mm)"),
    yearly: four,
    comes: asked(["unit"], { unit: "mm" }, "--rain-unit", "mm"),
  },
  isRight(
    "mm/10",
    alone("date,rain (mm/10)", (mm) => Math.round(mm * 10)),
  ),
  isRight(
    "mm x 10",
    alone("date,rain (mm x 10)", (mm) => Math.round(mm * 10)),
  ),
  isRight(
    ".1 mm",
    alone("date,rain (.1 mm)", (mm) => Math.round(mm * 10)),
  ),
  isRight(
    "in/100",
    alone("date,rain (in/100)", (mm) => ((mm / 25.4) * 100).toFixed(3)),
  ),
  isRight(
    ".01 in",
    alone("date,rain (.01 in)", (mm) => ((mm / 25.4) * 100).toFixed(3)),
  ),
  isRight(
    "a French header",
    file(
      "Date;Précipitations (mm)",
      daily(FOUR_YEARS, (date, mm) => `${date};${String(mm).replace(".", ",")}`),
    ),
  ),
  {
    name: "a counter a row a day that goes back on odd days",
    text: file(
      "date,rain (mm)",
      dailyCounter((day) => ODD_DAYS.includes(day)),
    ),
    yearly: four,
    comes: oneTouch(["within_day"], "--rain-rows", "counter"),
  },
  {
    name: "a counter a row a day that goes back on the 15th",
    text: file(
      "date,rain (mm)",
      dailyCounter((day) => dayOfMonth(day) === 15),
    ),
    yearly: four,
    comes: oneTouch(["within_day"], "--rain-rows", "counter"),
  },
  {
    name: "an hourly counter that goes back at odd hours",
    text: file(
      "time,rain (mm)",
      counted(FOUR_YEARS, ({ year, month, day }, hour) =>
        ODD_DAYS.includes(dayNumber(year, month, day)) ? hour === (day % 12) + 3 : false,
      ).map(({ day, hour, mm }) => `${isoDate(day)} ${two(hour)}:59,${mm}`),
    ),
    yearly: four,
    comes: oneTouch(["within_day"], "--rain-rows", "counter"),
  },
  {
    name: "two loggers in a column of another name, hourly",
    text: file(
      "time,logger,rain (mm)",
      hours.flatMap(({ day, hour, mm }) =>
        [1, 2].map((of) => `${isoDate(day)} ${two(hour)}:00,${of},${mm / of}`),
      ),
    ),
    yearly: four,
    comes: asked(["station"], { station: "1" }, "--rain-station", "1"),
  },
  {
    name: "two gauges in a column of another name, a row a day",
    text: file(
      "date,where,rain (mm)",
      daily(FOUR_YEARS, (date, mm) => `${date},barn,${mm}\n${date},house,${(mm * 1.5).toFixed(1)}`),
    ),
    yearly: four,
    comes: asked(["station"], { station: "barn" }, "--rain-station", "barn"),
  },
  {
    name: "one gauge after the other in a column of another name, a row a day",
    text: file("date,where,rain (mm)", [
      ...daily(FOUR_YEARS, (date, mm) => `${date},house,${(mm * 1.5).toFixed(1)}`),
      ...daily(FOUR_YEARS, (date, mm) => `${date},barn,${mm}`),
    ]),
    yearly: four,
    comes: asked(["station"], { station: "barn" }, "--rain-station", "barn"),
  },
  {
    name: "morning and evening under a name that tells nothing",
    text: file(
      "date,when,rain (mm)",
      stepped(FOUR_YEARS, 12, (date, hour, mm) => `${date},${hour < 12 ? "morning" : "evening"},${mm}`),
    ),
    yearly: four,
    comes: asked(
      ["station"],
      { station: "all", within_day: "sum" },
      "--rain-station",
      "all",
      "--rain-rows",
      "within-day",
    ),
  },
  isRefused("totals of the last 6 hours, hourly, told", rolling("time,rain 6 h (mm)", 6), /over 6 hours/),
  isRefused("totals of the last 6 hours, hourly, not told", rolling("time,rain (mm)", 6), /last 6 hours/),
  isRefused(
    "totals of 12 hours, 3-hourly, told",
    rolling("time,12-hour rainfall (mm)", 12, 3),
    /over 12 hours/,
  ),
  isRefused("totals of 12 hours, 3-hourly, not told", rolling("time,rain (mm)", 12, 3), /last 12 hours/),
  isRefused("totals of 12 hours, 6-hourly, not told", rolling("time,rain (mm)", 12, 6), /last 12 hours/),
  isRefused("totals of 6 and of 12 hours in turn", alternating(), /each rain would count/),
  isRefused(
    "morning and afternoon in a column of their own",
    file(
      "date,time,half,rain (mm)",
      hours.map(
        ({ day, hour, mm }) => `${isoDate(day)},${hour % 12 || 12}:00,${hour < 12 ? "AM" : "PM"},${mm}`,
      ),
    ),
    /morning and afternoon/,
  ),
  isRefused("totals of the last 24 hours, hourly, told", rolling("time,rain last 24 h (mm)"), /hours before/),
  isRefused("totals of the last 24 hours, hourly, not told", rolling("time,rain (mm)"), /last 24 hours/),
  {
    name: "dry days left empty",
    text: alone("date,rain (mm)", (mm) => mm || ""),
    yearly: four,
    comes: oneTouch(["absent"], "--rain-fill", "dry"),
  },
  {
    name: "888.8 where it recurs",
    text: file(
      "date,rain (mm)",
      FOUR_YEARS.map(({ day, mm }, at) => `${isoDate(day)},${at % 97 === 5 ? 888.8 : mm}`),
    ),
    yearly: yearly(FOUR_YEARS.filter((_, at) => at % 97 !== 5)),
    comes: right,
  },
  isRefused(
    "month totals as 201901",
    file(
      "yyyymm,rain (mm)",
      months((year, month) => `${year}${two(month)},${60 + month}`),
    ),
    /total a month/,
  ),
  isRefused(
    "a matrix of months that are numbers",
    file(
      `Year,${Array.from({ length: 12 }, (_, at) => at + 1)}`,
      Array.from({ length: 20 }, (_, at) => `${2000 + at},${Array.from({ length: 12 }, (_, of) => 60 + of)}`),
    ),
    /total a month/,
  ),
  isRefused(
    "totals of years",
    file(
      "Year,Rain (mm)",
      Array.from({ length: 20 }, (_, at) => `${2000 + at},${800 + at}`),
    ),
    /total a year/,
  ),
  isRight(
    "6-hourly amounts under a header that says 6 h",
    file(
      "time,rain 6 h (mm)",
      stepped(FOUR_YEARS, 6, (date, hour, mm) => `${date} ${two(hour)}:00,${mm}`),
    ),
  ),
];
