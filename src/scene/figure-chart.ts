// Curves of a figure as lines on paper, with ticks at round numbers of the reader's units, and what it says in words.

import { extent } from "d3-array";
import { type ScaleLinear, scaleLinear } from "d3-scale";
import { line as lineThrough } from "d3-shape";
import type { Figure, FigureAxis, FigureChart } from "../graph/figure.ts";
import { MEASURES } from "../units/measures.ts";
import { type ShowOptions, showQuantity, unitFor } from "../units/show.ts";
import { fromSi, toSi } from "../units/unit.ts";

/** The paper's size in px. */
type Paper = { readonly width: number; readonly height: number };

type Tick = { readonly at: number; readonly value: number };

type Line = { readonly label: string; readonly part: string; readonly d: string };

type Mark = {
  readonly label: string;
  readonly x: number;
  /** From the top; null where it is a line over the whole height. */
  readonly y: number | null;
  readonly anchor: "start" | "middle" | "end";
};

export type DrawnFigure = {
  readonly lines: readonly Line[];
  readonly marks: readonly Mark[];
  readonly across: readonly Tick[];
  readonly up: readonly Tick[];
};

/** Room at the right end, so that the last tick's words stay on the paper. */
const RIGHT = 26;
/** Hours of the day that are written under a chart. */
const HOURS: readonly number[] = [0, 3, 6, 9, 12, 15, 18, 21, 24];
/** Words that begin nearer to an end of the paper than this lean inwards, as a share of its width [-]. */
const NEAR_END = 0.25;
/** Share of the width that a point's words need beside it [-]. */
const POINT_ROOM = 0.4;

type Axis = {
  readonly scale: ScaleLinear<number, number>;
  readonly of: (si: number) => number;
  readonly unit: string;
};

function axisOf(
  { measure }: FigureAxis,
  values: readonly number[],
  range: readonly [number, number],
  options: ShowOptions,
): Axis {
  const unit = unitFor(measure, options.units);
  const [low = 0, high = 1] = extent(values);
  const foot = MEASURES[measure].form === "clock" ? low : Math.min(0, low);
  const scale = scaleLinear([fromSi(foot, unit), fromSi(Math.max(high, foot + 1e-9), unit)], [...range]);
  return { scale, of: (si) => scale(fromSi(si, unit)), unit };
}

function ticksOf(axis: Axis, { measure }: FigureAxis, count: number): readonly Tick[] {
  const [low = 0, high = 0] = axis.scale.domain();
  const isClock = MEASURES[measure].form === "clock";
  const values = isClock ? HOURS.filter((hour) => hour > low && hour < high) : axis.scale.ticks(count);
  return values.map((value) => ({ at: axis.scale(value), value: toSi(value, axis.unit) }));
}

const isNotZero = ({ value }: Tick): boolean => value !== 0;

/** A point's words stand beside it, a line's over it, leaning inwards near an end. */
function anchorOf(x: number, isPoint: boolean, paper: Paper): Mark["anchor"] {
  if (isPoint) return x < paper.width * (1 - POINT_ROOM) ? "start" : "end";
  if (x < paper.width * NEAR_END) return "start";
  return x > paper.width * (1 - NEAR_END) ? "end" : "middle";
}

/** Finer than a pixel shows. */
const tenths = (px: number): number => Math.round(px * 10) / 10;

/** The chart's shapes in px, y downwards. */
export function drawFigure(chart: FigureChart, paper: Paper, options: ShowOptions): DrawnFigure {
  const points = chart.curves.flatMap((curve) => curve.points);
  const marks = chart.marks.filter(({ across }) => Number.isFinite(across));
  const across = axisOf(
    chart.across,
    [...points.map(([x]) => x), ...marks.map((mark) => mark.across)],
    [0, paper.width - RIGHT],
    options,
  );
  const up = axisOf(
    chart.up,
    points.map(([, y]) => y),
    [paper.height, 0],
    options,
  );
  const draw = lineThrough<readonly [number, number]>(
    ([x]) => tenths(across.of(x)),
    ([, y]) => tenths(up.of(y)),
  );
  return {
    lines: chart.curves.map(({ label, part, points: of }) => ({ label, part, d: draw([...of]) ?? "" })),
    marks: marks.map((mark) => {
      const x = across.of(mark.across);
      return {
        label: mark.label,
        x,
        y: mark.up === undefined ? null : up.of(mark.up),
        anchor: anchorOf(x, mark.up !== undefined, paper),
      };
    }),
    across: ticksOf(across, chart.across, paper.width > 500 ? 8 : 4).filter(isNotZero),
    up: ticksOf(up, chart.up, 4).filter(isNotZero),
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

/** Width of a bar for every row of a column, as a share of its greatest number; null where there is no number. */
export function barsOf({ rows }: Figure, column: number): readonly (number | null)[] {
  const numbers = rows.map((row) => {
    const cell = row[column];
    return typeof cell === "number" ? cell : null;
  });
  const most = Math.max(1e-30, ...numbers.map((one) => one ?? 0));
  return numbers.map((one) => (one === null ? null : Math.max(0, one) / most));
}
