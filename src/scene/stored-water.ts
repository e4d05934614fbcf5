// The water in all tanks over the record, as a line on paper with the short days marked, and the same in words.

import { scaleLinear } from "d3-scale";
import { calendarDate, dayNumber, isoDate } from "../units/calendar.ts";
import { SHORT_MONTHS } from "../units/calendar-names.ts";
import { fromSi, toSi } from "../units/unit.ts";

export type StoredSeries = {
  /** Water in all tanks each evening [m3]. */
  readonly stored: Float64Array;
  /** 1 on a day on which a bed was short. */
  readonly short: Uint8Array;
  readonly firstDay: number;
};

/** Part of the record to draw, first and last day included, the paper's size in px, and the unit of the grid lines. */
export type Window = {
  readonly unit: string;
  readonly from: number;
  readonly to: number;
  readonly width: number;
  readonly height: number;
};

export type Tick = { readonly at: number; readonly label: string };

export type StoredChart = {
  readonly line: string;
  readonly area: string;
  /** Runs of short days as bars along the foot. */
  readonly short: readonly { readonly x: number; readonly width: number }[];
  readonly across: readonly Tick[];
  /** Grid lines at round numbers of the window's unit: their value [m3] and place. */
  readonly up: readonly { readonly at: number; readonly value: number }[];
};

/** First and last day of a calendar year within the series. */
export function yearWindow(
  series: StoredSeries,
  year: number,
): { readonly from: number; readonly to: number } {
  const last = series.firstDay + series.stored.length - 1;
  return {
    from: Math.max(series.firstDay, dayNumber(year, 1, 1)),
    to: Math.min(last, dayNumber(year, 12, 31)),
  };
}

/** Calendar years that the series touches. */
export function yearsOf(series: StoredSeries): readonly number[] {
  const first = calendarDate(series.firstDay).year;
  const last = calendarDate(series.firstDay + series.stored.length - 1).year;
  return Array.from({ length: last - first + 1 }, (_, index) => first + index);
}

type Column = { readonly x: number; readonly first: number; low: number; high: number; last: number };

/** Lowest and highest evening of every column of pixels, so that no dip is lost however long the record is. */
function columnsOf(series: StoredSeries, window: Window, x: (day: number) => number): readonly Column[] {
  const columns: Column[] = [];
  for (let day = window.from; day <= window.to; day++) {
    const value = series.stored[day - series.firstDay] ?? 0;
    const at = Math.round(x(day) * 2) / 2;
    const column = columns[columns.length - 1];
    if (!column || column.x !== at)
      columns.push({ x: at, first: value, low: value, high: value, last: value });
    else {
      column.low = Math.min(column.low, value);
      column.high = Math.max(column.high, value);
      column.last = value;
    }
  }
  return columns;
}

function shortRuns(series: StoredSeries, window: Window, x: (day: number) => number): StoredChart["short"] {
  const runs: { x: number; width: number }[] = [];
  const least = 1.5;
  for (let day = window.from; day <= window.to; day++) {
    if (!series.short[day - series.firstDay]) continue;
    const from = day;
    while (day < window.to && series.short[day + 1 - series.firstDay]) day++;
    runs.push({ x: x(from), width: Math.max(least, x(day + 1) - x(from)) });
  }
  return runs;
}

function ticksAcross(window: Window, x: (day: number) => number): readonly Tick[] {
  const first = calendarDate(window.from).year;
  const last = calendarDate(window.to).year;
  if (first === last) {
    return SHORT_MONTHS.map((label, index) => ({ at: x(dayNumber(first, index + 1, 1)), label })).filter(
      (tick, index) => tick.at >= 0 && (window.width > 500 || index % 2 === 0),
    );
  }
  const step = Math.max(1, Math.ceil(((last - first + 1) * 44) / window.width));
  return Array.from({ length: last - first + 1 }, (_, index) => first + index)
    .filter((year) => dayNumber(year, 1, 1) >= window.from && (year - first) % step === 0)
    .map((year) => ({ at: x(dayNumber(year, 1, 1)), label: String(year) }));
}

/** The chart's shapes in px, y downwards. */
export function storedChart(series: StoredSeries, window: Window): StoredChart {
  const most = Math.max(1e-9, ...windowed(series, window));
  const across = scaleLinear([window.from, window.to + 1], [0, window.width]);
  const inUnit = scaleLinear([0, fromSi(most, window.unit)], [window.height, 0]).nice(4);
  const up = (value: number): number => inUnit(fromSi(value, window.unit));
  const columns = columnsOf(series, window, across);
  const round = (value: number): string => (Math.round(value * 10) / 10).toString();
  const points = columns.map((column) =>
    [column.first, column.low, column.high, column.last]
      .map((value) => `${column.x},${round(up(value))}`)
      .join("L"),
  );
  const line = points.length > 0 ? `M${points.join("L")}` : "";
  const foot = round(window.height);
  const end = columns[columns.length - 1]?.x ?? 0;
  return {
    line,
    area: line && `${line}L${end},${foot}L${columns[0]?.x ?? 0},${foot}Z`,
    short: shortRuns(series, window, across),
    across: ticksAcross(window, across),
    up: inUnit
      .ticks(4)
      .slice(1)
      .map((value) => ({ at: inUnit(value), value: toSi(value, window.unit) })),
  };
}

function windowed(series: StoredSeries, window: Window): readonly number[] {
  let most = 0;
  for (let day = window.from; day <= window.to; day++)
    most = Math.max(most, series.stored[day - series.firstDay] ?? 0);
  return [most];
}

export type YearRow = {
  readonly year: number;
  /** Lowest evening [m3], its date, and the days on which a bed was short. */
  readonly lowest: number;
  readonly lowestOn: string;
  readonly short: number;
};

/** The chart as a table, a row a calendar year. */
export function storedTable(series: StoredSeries): readonly YearRow[] {
  return yearsOf(series).map((year) => {
    const { from, to } = yearWindow(series, year);
    let lowest = Number.POSITIVE_INFINITY;
    let lowestDay = from;
    let short = 0;
    for (let day = from; day <= to; day++) {
      const value = series.stored[day - series.firstDay] ?? 0;
      if (value < lowest) [lowest, lowestDay] = [value, day];
      short += series.short[day - series.firstDay] ? 1 : 0;
    }
    return { year, lowest, lowestOn: isoDate(lowestDay), short };
  });
}
