// The chart of a figure for the chart stack, its table, and what it says in words.

import { extent } from "d3-array";
import type { Figure, FigureChart, FigureColumn, FigureCurve } from "../graph/figure.ts";
import { type ShowOptions, showQuantity } from "../units/show.ts";
import type { Tone } from "./place.ts";
import { type Layer, type Plot, type PlotTable, roundAxis, shares } from "./plot.ts";

/** Wider than this there is room for more ticks [px]. */
const WIDE = 500;
const TONES: Readonly<Record<FigureCurve["part"], Tone>> = { first: "water", second: "ink", other: "soft" };

export const figureTone = ({ part }: Pick<FigureCurve, "part">): Tone => TONES[part];

const withoutNought = <Each extends { readonly at: number }>(ticks: readonly Each[]): readonly Each[] =>
  ticks.filter(({ at }) => at !== 0);

/** Its curves and marks on axes at round numbers of the reader's units. */
export function figurePlot(chart: FigureChart, width: number, options: ShowOptions): Plot {
  const points = chart.curves.flatMap((curve) => curve.points);
  const marks = chart.marks.filter(({ across }) => Number.isFinite(across));
  const xs = [...points.map(([x]) => x), ...marks.map((mark) => mark.across)];
  const [least = 0] = extent(xs);
  const across = roundAxis(xs, chart.across.measure, options, { count: width > WIDE ? 8 : 4 });
  const up = roundAxis(
    points.map(([, y]) => y),
    chart.up.measure,
    options,
    { count: 4 },
  );
  const layers = chart.curves.map(
    (curve): Layer => ({
      as: "line",
      tone: figureTone(curve),
      points: curve.points,
      ...(curve.part === "other" ? { thin: true } : {}),
    }),
  );
  return {
    across: { ...across, from: Math.min(across.from, least), ticks: withoutNought(across.ticks) },
    up: { ...up, ticks: withoutNought(up.ticks) },
    layers,
    marks: marks.map(({ label, across: at, up: height }) => ({
      label,
      across: at,
      tone: "ink",
      ...(height === undefined ? {} : { up: height, dot: "full" as const }),
    })),
  };
}

function cellText(
  cell: number | string | null | undefined,
  { measure }: FigureColumn,
  options: ShowOptions,
): string {
  if (cell === null || cell === undefined) return "–";
  return typeof cell === "string" || measure === "text" ? String(cell) : showQuantity(cell, measure, options);
}

/** Its numbers as a table, as the reader sees them. */
export function figureTable(figure: Figure, title: string, options: ShowOptions): PlotTable {
  const { columns, rows } = figure;
  return {
    title,
    head: columns.map(({ label }) => label),
    rows: rows.map((row) => columns.map((column, at) => cellText(row[at], column, options))),
    bars: columns.map((column, at) =>
      column.bar
        ? shares(
            rows.map((row) => {
              const cell = row[at];
              return typeof cell === "number" ? cell : null;
            }),
          )
        : null,
    ),
  };
}

/** What the figure says, with its marks' numbers, for those who cannot look. */
export function figureWords({ says, chart }: Figure, options: ShowOptions): string {
  if (!chart) return says;
  const marks = chart.marks.map(({ label, across, up }) => {
    const at = showQuantity(across, chart.across.measure, options);
    return up === undefined || up === 0
      ? `${label}: ${at}.`
      : `${label}: ${at} at ${showQuantity(up, chart.up.measure, options)}.`;
  });
  return [says, ...marks].join(" ");
}
