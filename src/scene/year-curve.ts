// A bed through a usual year on paper: what it would use, what of that the rain brings, what is left to give; and its
// crop coefficient under it.

import { scaleLinear } from "d3-scale";
import { area, curveMonotoneX, line } from "d3-shape";
import { calendarDate, dayNumber } from "../units/calendar.ts";
import { SHORT_MONTHS } from "../units/calendar-names.ts";
import { fromSi, toSi } from "../units/unit.ts";

/** Means of each span of a year, a day [m3]; the coefficient is null where nothing grows. */
export type YearSeries = {
  readonly use: readonly number[];
  readonly need: readonly number[];
  readonly rain: readonly number[];
  readonly kc: readonly (number | null)[];
};

export type YearPaper = {
  readonly width: number;
  readonly height: number;
  /** Height of the strip with the coefficient. */
  readonly strip: number;
  /** Unit of the grid lines. */
  readonly unit: string;
};

export type YearChart = {
  readonly use: string;
  readonly need: string;
  readonly kc: string;
  readonly up: readonly { readonly at: number; readonly value: number }[];
  /** Place of a coefficient of 1, as grass, in the strip. */
  readonly grass: number;
  readonly across: readonly { readonly at: number; readonly label: string }[];
};

const SOME_YEAR = 2001;
const NARROW = 500;
/** The strip's top: no crop of the tables uses more than this times grass. */
const MOST_KC = 1.3;

type Point = readonly [number, number];

const half = (value: number): string => (Math.round(value * 10) / 10).toString();

/** Shapes of the chart in px, y downwards; the strip has its own paper. */
export function yearChart(series: YearSeries, paper: YearPaper): YearChart {
  const { width, height, unit } = paper;
  const spans = series.use.length;
  const x = scaleLinear([0, spans], [0, width]);
  const most = Math.max(1e-9, ...series.use);
  const y = scaleLinear([0, fromSi(most, unit)], [height, 0]).nice(3);
  const strip = scaleLinear([0, MOST_KC], [paper.strip, 0]);
  const points = (values: readonly number[]): Point[] =>
    values.map((value, place) => [x(place + 0.5), y(fromSi(value, unit))]);
  const fill = area<Point>()
    .x((point) => point[0])
    .y0(height)
    .y1((point) => point[1])
    .curve(curveMonotoneX);
  const coefficient = line<number | null>()
    .defined((value) => value !== null)
    .x((_, place) => x(place + 0.5))
    .y((value) => strip(value ?? 0))
    .curve(curveMonotoneX);
  return {
    use: fill(points(series.use)) ?? "",
    need: fill(points(series.need)) ?? "",
    kc: coefficient([...series.kc]) ?? "",
    up: y
      .ticks(3)
      .slice(1)
      .map((value) => ({ at: y(value), value: toSi(value, unit) })),
    grass: strip(1),
    across: monthTicks(width),
  };
}

function monthTicks(width: number): YearChart["across"] {
  const start = dayNumber(SOME_YEAR, 1, 1);
  const x = scaleLinear([0, dayNumber(SOME_YEAR + 1, 1, 1) - start], [0, width]);
  return SHORT_MONTHS.map((label, index) => ({
    label,
    at: Number(half(x(dayNumber(SOME_YEAR, index + 1, 1) - start))),
  })).filter((_, index) => width > NARROW || index % 2 === 0);
}

export type YearRow = {
  readonly label: string;
  readonly use: number;
  readonly rain: number;
  readonly need: number;
  readonly kc: number | null;
};

/** The same month by month. */
export function yearTable(months: YearSeries): readonly YearRow[] {
  return SHORT_MONTHS.map((label, index) => ({
    label,
    use: months.use[index] ?? 0,
    rain: months.rain[index] ?? 0,
    need: months.need[index] ?? 0,
    kc: months.kc[index] ?? null,
  }));
}

/** The month with the greatest need, and that need a day [m3]; null where none is needed. */
export function neediest(months: YearSeries): { readonly month: string; readonly need: number } | null {
  const need = Math.max(0, ...months.need);
  const month = SHORT_MONTHS[months.need.indexOf(need)];
  return need > 0 && month !== undefined ? { month, need } : null;
}

/** One day of a season on a sheet of months. */
export type SheetDay = {
  readonly date: string;
  readonly given: number;
  readonly asked: number;
  readonly rain: number;
  readonly stressed: boolean;
  readonly letGo: boolean;
  readonly grows: boolean;
};

export type SheetCell = SheetDay & {
  /** Column from 0, the day of the month less one. */
  readonly column: number;
  /** Of the season's largest watering [-]. */
  readonly share: number;
};

export type SheetMonth = { readonly label: string; readonly cells: readonly SheetCell[] };

/** Days put into rows of months. */
export function monthSheet(days: readonly SheetDay[]): readonly SheetMonth[] {
  const most = Math.max(1e-12, ...days.map(({ given }) => given));
  const months: { label: string; cells: SheetCell[] }[] = [];
  let last = "";
  for (const day of days) {
    const key = day.date.slice(0, 7);
    const [year, month] = [Number(day.date.slice(0, 4)), Number(day.date.slice(5, 7))];
    if (key !== last) months.push({ label: `${SHORT_MONTHS[month - 1]} ${year}`, cells: [] });
    last = key;
    const column = calendarDate(dayNumber(year, month, Number(day.date.slice(8)))).day - 1;
    months[months.length - 1]?.cells.push({ ...day, column, share: day.given / most });
  }
  return months;
}
