// The record in two charts: short days season by season, and one year's water; each as it is and as it was held.

import { textOrDate } from "../graph/shown.ts";
import { calendarDate, isoDate } from "../units/calendar.ts";
import { type ShowOptions, showQuantity } from "../units/show.ts";
import { type Layer, type Plot, type PlotTable, type Point, roundAxis } from "./plot.ts";
import { lowestIn, type Season, type StoredSeries, shortRuns, type Year } from "./stored-water.ts";
import { monthAxis } from "./year-curve.ts";

/** A bar takes so much of its season's room. */
export const BAR = 0.36;
/** Nothing short still shows as a tick [share of the tallest bar]. */
const LEAST_TOP = 4;

/** What is shown and what it is held against. */
export type Both<Value> = { readonly now: Value; readonly held: Value | null };

const daysText = (days: number): string => (days === 1 ? "1\u00a0day" : `${days}\u00a0days`);

/** A bar of short days a season; the chart's numbers across are places in the list. */
export function seasonsPlot({ now, held }: Both<readonly Season[]>): Plot {
  const before = new Map((held ?? []).map((season) => [season.year, season.daysShort]));
  const bars = (daysOf: (season: Season) => number) =>
    now.flatMap((season, place) => {
      const days = daysOf(season);
      return days > 0 ? [{ from: place + 0.5 - BAR / 2, to: place + 0.5 + BAR / 2, up: days }] : [];
    });
  const most = Math.max(LEAST_TOP, ...now.map(({ daysShort }) => daysShort), ...before.values());
  const layers: Layer[] = [{ as: "bars", tone: "trouble", bars: bars(({ daysShort }) => daysShort) }];
  if (held)
    layers.push({ as: "bars", tone: "soft", held: true, bars: bars(({ year }) => before.get(year) ?? 0) });
  return {
    across: { from: 0, to: Math.max(1, now.length), ticks: [] },
    up: { from: 0, to: most, ticks: [] },
    layers,
    marks: [],
  };
}

/** What one season was, for whoever presses or hears it. */
export function seasonWords({ year, daysShort }: Season, was: Season | null): string {
  const now = daysShort > 0 ? `short on ${daysText(daysShort)}` : "never short";
  return was && was.daysShort !== daysShort ? `${year}: ${now}, were ${was.daysShort}` : `${year}: ${now}`;
}

/** Which seasons have their year written below, so that no two touch: the chosen one, and as many others as fit. */
export function yearsWritten(
  seasons: readonly Season[],
  chosen: number | null,
  width: number,
): readonly boolean[] {
  const [each, label] = [width / Math.max(1, seasons.length), 26];
  const step = Math.max(1, Math.ceil(label / each));
  const at = seasons.findIndex(({ year }) => year === chosen);
  const clear = Math.ceil(34 / each);
  return seasons.map(
    (_, place) => place === at || (place % step === 0 && (at < 0 || Math.abs(place - at) >= clear)),
  );
}

function pointsOf(series: StoredSeries, { from, to }: Year): readonly Point[] {
  return Array.from({ length: to - from + 1 }, (_, index) => [
    from + index,
    series.stored[from + index - series.firstDay] ?? 0,
  ]);
}

function shortLayer(series: StoredSeries, year: Year, top: number, held: boolean): Layer {
  const bars = shortRuns(series, year).map(({ from, to }) => ({ from, to: to + 1, up: top }));
  return held ? { as: "bars", tone: "soft", held: true, bars } : { as: "bars", tone: "trouble", bars };
}

/** "short 8 days, were 34", or "" for none: it heads the chart, where no line runs through it. */
export function shortSaid({ now: days, held: was }: YearShown["days"]): string {
  if (days === null || days === 0) return "";
  return `short ${daysText(days)}${was !== null && was !== days ? `, were ${was}` : ""}`;
}

export type YearShown = {
  readonly series: Both<StoredSeries>;
  readonly year: Year;
  /** Short days of its season, now and as it was held. */
  readonly days: { readonly now: number | null; readonly held: number | null };
};

/** One year's water; the numbers across are days since 1970-01-01. */
export function yearPlotOf(
  { series, year }: Pick<YearShown, "series" | "year">,
  width: number,
  options: ShowOptions,
): Plot {
  const { now, held } = series;
  const points = pointsOf(now, year);
  const before = held ? pointsOf(held, year) : [];
  const up = roundAxis(
    [...points, ...before].map(([, volume]) => volume),
    "volume",
    options,
    { count: 2, nice: true },
  );
  const foot = up.from + (up.to - up.from) * 0.055;
  const layers: Layer[] = [
    { as: "area", tone: "water", points },
    { as: "line", tone: "water", points },
  ];
  if (held)
    layers.push({ as: "line", tone: "soft", held: true, points: before }, shortLayer(held, year, foot, true));
  layers.push(shortLayer(now, year, foot, false));
  return {
    across: monthAxis(year.from, year.to + 1, width),
    up,
    layers,
    marks: [],
  };
}

/** One year's water as a table: month by month the first evening, the lowest and the short days. */
export function yearWaterTable(
  { series, year }: Pick<YearShown, "series" | "year">,
  options: ShowOptions,
): PlotTable {
  const { now, held } = series;
  const points = pointsOf(now, year);
  const starts = points.flatMap(([day], at) => (at === 0 || calendarDate(day).day === 1 ? [at] : []));
  const said = (volume: number): string => showQuantity(volume, "volume", options);
  const heldOn = (day: number): string => said(held?.stored[day - held.firstDay] ?? 0);
  return {
    title: "Water in all tanks, month by month",
    head: ["From", "Water then", ...(held ? ["As held"] : []), "Lowest evening", "Short days"],
    rows: starts.map((start, at) => {
      const days = points.slice(start, starts[at + 1]);
      const [from, water] = days[0] ?? [year.from, 0];
      const isShort = ([day]: Point): boolean => now.short[day - now.firstDay] === 1;
      return [
        textOrDate(isoDate(from), options.locale),
        said(water),
        ...(held ? [heldOn(from)] : []),
        said(Math.min(...days.map(([, volume]) => volume))),
        String(days.filter(isShort).length),
      ];
    }),
  };
}

/** Seasons as a table: short days, lowest evening, and the water that was held. */
export function seasonsTable(
  seasons: Both<readonly Season[]>,
  series: StoredSeries,
  around: (year: number) => Year,
  options: ShowOptions,
): PlotTable {
  const before = new Map((seasons.held ?? []).map((season) => [season.year, season.daysShort]));
  return {
    title: "Short days, season by season",
    head: ["Season", "Short days", ...(seasons.held ? ["As held"] : []), "Lowest evening", "On"],
    rows: seasons.now.map(({ year, daysShort }) => {
      const { volume, day } = lowestIn(series, around(year));
      return [
        String(year),
        String(daysShort),
        ...(seasons.held ? [String(before.get(year) ?? "–")] : []),
        showQuantity(volume, "volume", options),
        textOrDate(isoDate(day), options.locale),
      ];
    }),
  };
}
