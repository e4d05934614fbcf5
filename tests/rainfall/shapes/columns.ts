// Files with a row a day: which column is rain, in which unit, written how, and dated how.
import { calendarDate, dayNumber, dayOfYear, isoDate } from "../../../src/units/calendar.ts";
import { asked, oneTouch, refused, right, type Shape } from "./shape.ts";
import { daily, FOUR_YEARS, file, ONE_YEAR, two, weather, yearly } from "./weather.ts";

const four = yearly(FOUR_YEARS);
const year = yearly(ONE_YEAR);
const amount = (date: string, mm: number) => `${date},${mm}`;
const rows = daily(FOUR_YEARS, amount);
const inches = (mm: number) => (mm / 25.4).toFixed(4);
const comma = (mm: number) => String(mm).replace(".", ",");
const american = (iso: string) => `${iso.slice(5, 7)}/${iso.slice(8)}/${iso.slice(2, 4)}`;
const pan = (at: number) => (4 + (at % 7) / 2).toFixed(1);

const beside = (header: string, cell: (at: number) => string) =>
  file(
    `date,${header},rain (mm)`,
    FOUR_YEARS.map(({ day, mm }, at) => `${isoDate(day)},${cell(at)},${mm}`),
  );
const alone = (header: string) =>
  file(
    `date,${header}`,
    daily(FOUR_YEARS, (date, mm) => `${date},${mm}`),
  );

/** Of two gauges, the second with half the rain. */
const twoGauges = (header: string) =>
  file(
    header,
    FOUR_YEARS.flatMap(({ day, mm }) => [`North,${isoDate(day)},${mm}`, `South,${isoDate(day)},${mm / 2}`]),
  );

/** The days with some of them given a number that stands for a gap; the rain is counted without them. */
const GAPS = FOUR_YEARS.map((day, at) => ({ ...day, isGap: at % 97 === 5 }));
const known = GAPS.filter(({ isGap }) => !isGap);
const withGaps = (code: string) =>
  file(
    "date,rain (mm)",
    GAPS.map(({ day, mm, isGap }) => `${isoDate(day)},${isGap ? code : mm}`),
  );

const OLD = weather(1928, 1935);
const ACROSS = weather(1997, 2002);

const WETNESS = FOUR_YEARS.filter(({ mm }) => mm > 0);
const months = () => {
  const sums = new Map<string, number>();
  for (const { day, mm } of FOUR_YEARS) {
    const key = isoDate(day).slice(0, 7);
    sums.set(key, (sums.get(key) ?? 0) + mm);
  }
  return [...sums].map(([key, sum]) => [key, sum.toFixed(1)] as const);
};
const NAMES = "Jan,Feb,Mar,Apr,May,Jun,Jul,Aug,Sep,Oct,Nov,Dec";

const isNo = (name: string): Shape => ({
  name: `a lone column ${name}`,
  text: alone(name),
  yearly: four,
  comes: refused(/rain/i),
});

export const COLUMNS: readonly Shape[] = [
  ...[
    "evaporation (mm)",
    "pan evap (mm)",
    "ETo (mm)",
    "snow depth (cm)",
    "snowfall (cm)",
    "pressure (in)",
    "level (mm)",
    "stage (in)",
    "rain rate (mm/h)",
    "rain intensity (mm)",
    "soil moisture depth (mm)",
  ].map(isNo),
  ...["evaporation (mm)", "snow depth (mm)", "pressure (in)", "level (mm)", "stage (mm)"].map(
    (header): Shape => ({
      name: `rain beside ${header}`,
      text: beside(header, pan),
      yearly: four,
      comes: right,
    }),
  ),
  {
    name: "a lone column that only says value",
    text: alone("value"),
    yearly: four,
    comes: oneTouch(["unit"], "--rain-unit", "mm"),
  },
  {
    name: "a column of a name that tells nothing",
    text: alone("flow (mm)"),
    yearly: four,
    comes: asked(["rain_column"], { rain_column: "flow (mm)" }, "--rain-column", "flow (mm)"),
  },
  {
    name: "two rain columns",
    text: beside("rain gauge 2 (mm)", () => "0"),
    yearly: four,
    comes: asked(["rain_column"], { rain_column: "rain (mm)" }, "--rain-column", "rain (mm)"),
  },
  ...["site", "name", "station name", "Station", "gauge"].map(
    (header): Shape => ({
      name: `two stations under ${header}`,
      text: twoGauges(`${header},date,rain (mm)`),
      yearly: four,
      comes: asked(["station"], { station: "North" }, "--rain-station", "North"),
    }),
  ),
  {
    name: "a unit that changes at a second header",
    text: file("date,rain (mm)", [...rows.slice(0, 700), "date,rain (in)", ...rows.slice(700)]),
    yearly: four,
    comes: refused(/header|unit/),
  },
  {
    name: "a unit beside each amount that changes",
    text: file(
      "date,rain",
      daily(FOUR_YEARS, (date, mm, { day }) =>
        day % 1461 > 700 ? `${date},${mm} mm` : `${date},${inches(mm)} in`,
      ),
    ),
    yearly: four,
    comes: refused(/unit/),
  },
  {
    name: "a column of units that changes",
    text: file(
      "date,rain,unit",
      daily(FOUR_YEARS, (date, mm, { day }) =>
        day % 1461 > 700 ? `${date},${mm},mm` : `${date},${inches(mm)},in`,
      ),
    ),
    yearly: four,
    comes: refused(/unit/),
  },
  {
    name: "a column of units",
    text: file(
      "date,rain,units",
      daily(FOUR_YEARS, (date, mm) => `${date},${inches(mm)},in`),
    ),
    yearly: four,
    comes: right,
  },
  {
    name: "two-digit years of the last century",
    text: file(
      "date,rain (mm)",
      daily(OLD, (date, mm) => `${american(date)},${mm}`),
    ),
    yearly: yearly(OLD),
    comes: right,
  },
  {
    name: "two-digit years over the turn of the century",
    text: file(
      "date,rain (mm)",
      daily(ACROSS, (date, mm) => `${american(date)},${mm}`),
    ),
    yearly: yearly(ACROSS),
    comes: right,
  },
  {
    name: "two-digit years in words",
    text: file(
      "date,rain (mm)",
      daily(OLD, (date, mm) => {
        const { month, day } = calendarDate(
          dayNumber(Number(date.slice(0, 4)), Number(date.slice(5, 7)), Number(date.slice(8))),
        );
        return `${day}-${NAMES.split(",")[month - 1]}-${date.slice(2, 4)},${mm}`;
      }),
    ),
    yearly: yearly(OLD),
    comes: right,
  },
  { name: "999 where it recurs", text: withGaps("999"), yearly: yearly(known), comes: right },
  { name: "99.9 where it recurs", text: withGaps("99.9"), yearly: yearly(known), comes: right },
  { name: "-99.9 and its kind", text: withGaps("-99.9"), yearly: yearly(known), comes: right },
  {
    name: "1,2 unquoted in a comma file",
    text: file(
      "date,rain (mm)",
      daily(FOUR_YEARS, (date, mm) => `${date},${comma(mm)}`),
    ),
    yearly: four,
    comes: refused(/comma|cells/),
  },
  {
    name: "1,2 quoted in a comma file",
    text: file(
      "date,rain (mm)",
      daily(FOUR_YEARS, (date, mm) => `${date},"${comma(mm)}"`),
    ),
    yearly: four,
    comes: right,
  },
  {
    name: "1,2 in a semicolon file",
    text: file(
      "date;rain (mm)",
      daily(FOUR_YEARS, (date, mm) => `${date};${comma(mm)}`),
    ),
    yearly: four,
    comes: right,
  },
  {
    name: "a small negative amount",
    text: file(
      "date,rain (mm)",
      daily(FOUR_YEARS, (date, mm, { day }) => `${date},${mm === 0 && day % 50 === 3 ? -0.2 : mm}`),
    ),
    yearly: four,
    comes: right,
  },
  {
    name: "a footer of several lines",
    text: `${file("date,rain (mm)", rows)}\nTotal,,3284.6\nMean,,2.2\n"Copyright, some service"\nEnd of file\n`,
    yearly: four,
    comes: right,
  },
  {
    name: "a second header row of units",
    text: file("Date,Rain,Pressure", [
      "(date),(in),(hPa)",
      ...daily(FOUR_YEARS, (date, mm) => `${date},${inches(mm)},1013`),
    ]),
    yearly: four,
    comes: right,
  },
  {
    name: "a second header row of units, bare",
    text: file("Date,Rain", [",mm", ...rows]),
    yearly: four,
    comes: right,
  },
  {
    name: "year, month and day in columns",
    text: file(
      "year,month,day,rain (mm)",
      FOUR_YEARS.map(({ day, mm }) => {
        const date = calendarDate(day);
        return `${date.year},${date.month},${date.day},${mm}`;
      }),
    ),
    yearly: four,
    comes: right,
  },
  {
    name: "yyyy, mm and dd in columns",
    text: file(
      "yyyy,mm,dd,rain (mm)",
      FOUR_YEARS.map(({ day, mm }) => {
        const date = calendarDate(day);
        return `${date.year},${two(date.month)},${two(date.day)},${mm}`;
      }),
    ),
    yearly: four,
    comes: right,
  },
  {
    name: "YR, MO and DY in columns, the month in words",
    text: file(
      "YR,MO,DY,PRECIP (mm)",
      FOUR_YEARS.map(({ day, mm }) => {
        const date = calendarDate(day);
        return `${date.year},${NAMES.split(",")[date.month - 1]},${date.day},${mm}`;
      }),
    ),
    yearly: four,
    comes: right,
  },
  ...["doy", "day of year", "Julian day", "day"].map(
    (header): Shape => ({
      name: `year and ${header}`,
      text: file(
        `year,${header},rain (mm)`,
        FOUR_YEARS.map(({ day, mm }) => `${calendarDate(day).year},${dayOfYear(day)},${mm}`),
      ),
      yearly: four,
      comes: right,
    }),
  ),
  {
    name: "amounts with their unit in the cell",
    text: file(
      "date,rain",
      daily(FOUR_YEARS, (date, mm) => `${date},${mm} mm`),
    ),
    yearly: four,
    comes: right,
  },
  {
    name: "0.00T for a trace",
    text: file(
      "date,rain (in)",
      daily(FOUR_YEARS, (date, mm) => `${date},${mm === 0 ? "0.00T" : inches(mm)}`),
    ),
    yearly: four,
    comes: right,
  },
  {
    name: "<0.1 for a trace",
    text: file(
      "date,rain (mm)",
      daily(FOUR_YEARS, (date, mm) => `${date},${mm === 0 ? "<0.1" : mm}`),
    ),
    yearly: four,
    comes: right,
  },
  {
    name: "thousands commas, quoted, in hundredths of an inch",
    text: file(
      "date,rain (1/100 in)",
      daily(FOUR_YEARS, (date, mm, { day }) => {
        const hundredths = mm / 0.254 + (day % 100 === 0 ? 1000 : 0);
        return `${date},"${hundredths.toLocaleString("en-US", { minimumFractionDigits: 1, maximumFractionDigits: 3 })}"`;
      }),
    ),
    yearly: yearly(FOUR_YEARS.map((day) => ({ ...day, mm: day.mm + (day.day % 100 === 0 ? 254 : 0) }))),
    comes: right,
  },
  {
    name: "day numbers of a spreadsheet",
    text: file(
      "date,rain (mm)",
      FOUR_YEARS.map(({ day, mm }) => `${day + 25569},${mm}`),
    ),
    yearly: four,
    comes: right,
  },
  {
    name: "a matrix of months",
    text: file(
      `Year,${NAMES}`,
      [2016, 2017, 2018, 2019].map(
        (at) =>
          `${at},${months()
            .filter(([key]) => key.startsWith(String(at)))
            .map(([, mm]) => mm)
            .join(",")}`,
      ),
    ),
    yearly: four,
    comes: refused(/month/),
  },
  {
    name: "month totals as 2019-01",
    text: file(
      "month,rain (mm)",
      months().map(([key, mm]) => `${key},${mm}`),
    ),
    yearly: four,
    comes: refused(/month/),
  },
  {
    name: "month totals on the first of each month",
    text: file(
      "date,rain (mm)",
      months().map(([key, mm]) => `${key}-01,${mm}`),
    ),
    yearly: four,
    comes: refused(/month/),
  },
  {
    name: "month totals by year and month",
    text: file(
      "year,month,rain (mm)",
      months().map(([key, mm]) => `${key.replace("-", ",")},${mm}`),
    ),
    yearly: four,
    comes: refused(/month/),
  },
  {
    name: "totals of a week",
    text: file(
      "date,rain (mm)",
      FOUR_YEARS.flatMap(({ day }, at) =>
        at % 7 === 6
          ? [
              `${isoDate(day)},${FOUR_YEARS.slice(at - 6, at + 1)
                .reduce((sum, { mm }) => sum + mm, 0)
                .toFixed(1)}`,
            ]
          : [],
      ),
    ),
    yearly: four,
    comes: refused(/7 days/),
  },
  {
    name: "only days on which it rained",
    text: file(
      "date,rain (mm)",
      [...WETNESS].map(({ day, mm }) => `${isoDate(day)},${mm}`),
    ),
    yearly:
      (WETNESS.reduce((sum, { mm }) => sum + mm, 0) /
        ((WETNESS.at(-1)?.day ?? 0) - (WETNESS[0]?.day ?? 0) + 1)) *
      365.25,
    comes: oneTouch(["absent"], "--rain-fill", "dry"),
  },
  {
    name: "dates with the day first, told by the file",
    text: file(
      "date,rain (mm)",
      daily(FOUR_YEARS, (date, mm) => `${date.slice(8)}/${date.slice(5, 7)}/${date.slice(0, 4)},${mm}`),
    ),
    yearly: four,
    comes: right,
  },
  {
    name: "dates that can be read both ways",
    text: file(
      "date,rain (mm)",
      ONE_YEAR.filter(({ day }) => calendarDate(day).day <= 12).map(
        ({ day, mm }) => `${isoDate(day).slice(8)}/${isoDate(day).slice(5, 7)}/2019,${mm}`,
      ),
    ),
    yearly: yearly(ONE_YEAR.filter(({ day }) => calendarDate(day).day <= 12)),
    comes: asked(["date_order"], { date_order: "dmy" }, "--rain-dates", "dmy"),
  },
  {
    name: "no unit anywhere",
    text: file("date,rain", rows),
    yearly: four,
    comes: oneTouch(["unit"], "--rain-unit", "mm"),
  },
  {
    name: "UTF-16 with its mark",
    text: file("date,rain (mm)", daily(ONE_YEAR, amount)),
    bytes: Buffer.concat([
      Buffer.from([0xff, 0xfe]),
      Buffer.from(file("date,rain (mm)", daily(ONE_YEAR, amount)), "utf16le"),
    ]),
    yearly: year,
    comes: right,
  },
];
