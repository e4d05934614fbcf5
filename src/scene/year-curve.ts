// A bed through a usual year: what it would use, what of that the rain brings, what is left to give; and its crop
// coefficient under it.

import { calendarDate, dayNumber } from "../units/calendar.ts";
import { SHORT_MONTHS } from "../units/calendar-names.ts";
import { type ShowOptions, showNumber, showQuantity } from "../units/show.ts";
import { type Axis, type Plot, type PlotTable, type Point, roundAxis } from "./plot.ts";

/** Means of each span of a year, a day [m3]; the coefficient is null where nothing grows. */
export type YearSeries = {
  readonly use: readonly number[];
  readonly need: readonly number[];
  readonly rain: readonly number[];
  readonly kc: readonly (number | null)[];
};

const SOME_YEAR = 2001;
const NARROW = 500;
/** The strip's top: no crop of the tables uses more than this times grass. */
const MOST_KC = 1.3;
const FIGURES = 2;

/** Months of a year along a chart, the days of the year as its numbers: every one, or on narrow paper every other. */
export function monthAxis(from: number, to: number, width: number): Axis {
  const { year } = calendarDate(from);
  const ticks = [year, year + 1].flatMap((one) =>
    SHORT_MONTHS.map((label, index) => ({ label, at: dayNumber(one, index + 1, 1), index })),
  );
  const shown = ticks.filter(({ at, index }) => at >= from && at < to && (width > NARROW || index % 2 === 0));
  return { from, to, ticks: shown };
}

function usualYear(width: number): Axis {
  return monthAxis(dayNumber(SOME_YEAR, 1, 1), dayNumber(SOME_YEAR + 1, 1, 1), width);
}

/** The middle of each span as a day of the axis. */
function middles<Value>(values: readonly Value[], { from, to }: Axis): readonly (readonly [number, Value])[] {
  return values.map((value, place) => [from + ((place + 0.5) / values.length) * (to - from), value]);
}

/** What it would use, and of that what somebody has to give. */
export function yearPlot(series: YearSeries, width: number, options: ShowOptions): Plot {
  const across = usualYear(width);
  return {
    across,
    up: roundAxis(series.use, "volume", options, { count: 3, nice: true }),
    layers: [
      { as: "area", tone: "growth", smooth: true, points: middles(series.use, across) },
      { as: "line", tone: "growth", smooth: true, thin: true, points: middles(series.use, across) },
      { as: "area", tone: "water", smooth: true, deep: true, points: middles(series.need, across) },
    ],
    marks: [],
  };
}

/** How thirsty the crop is beside short grass. */
export function thirstPlot({ kc }: YearSeries, width: number): Plot {
  const across = usualYear(width);
  const points = middles(kc, across).map(([at, value]): Point | null =>
    value === null ? null : [at, value],
  );
  return {
    across: { ...across, ticks: [] },
    up: { from: 0, to: MOST_KC, ticks: [{ at: 1, label: "as thirsty as grass" }] },
    layers: [{ as: "line", tone: "growth", smooth: true, points }],
    marks: [],
  };
}

/** The same month by month, for the months in which something grows. */
export function yearTable(months: YearSeries, options: ShowOptions): PlotTable {
  const show = (si: number | undefined): string =>
    showQuantity(si ?? 0, "volume", { ...options, figures: FIGURES });
  const rows = SHORT_MONTHS.flatMap((label, index) => {
    if (!((months.use[index] ?? 0) > 0)) return [];
    const kc = months.kc[index] ?? null;
    const thirst = kc === null ? "–" : showNumber(kc, FIGURES, options.locale);
    return [[label, show(months.use[index]), show(months.rain[index]), show(months.need[index]), thirst]];
  });
  return {
    title: "A bed through a usual year",
    head: ["A day in", "Would use", "Rain brings", "Needs", "Thirst, grass = 1"],
    rows,
  };
}

/** The month with the greatest need, and that need a day [m3]; null where none is needed. */
export function neediest(months: YearSeries): { readonly month: string; readonly need: number } | null {
  const need = Math.max(0, ...months.need);
  const month = SHORT_MONTHS[months.need.indexOf(need)];
  return need > 0 && month !== undefined ? { month, need } : null;
}
