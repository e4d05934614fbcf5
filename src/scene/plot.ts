// The one way of drawing a chart. To use it:
// 1. Make a `Plot` out of SI numbers: two axes (`roundAxis` puts ticks at round numbers of the reader's units), layers, marks.
// 2. Hand it to <Chart plot words height table> of ui/charts/Chart.tsx: it measures itself, paints, and keeps the table.
// 3. What is laid over it (a slider, a handle) is Chart's child: it gets the `Frame` and asks `across(x)` and `up(y)` for px.

import { scaleLinear } from "d3-scale";
import { area as areaThrough, curveLinear, curveMonotoneX, line as lineThrough } from "d3-shape";
import { MEASURES, type MeasureName } from "../units/measures.ts";
import { type ShowOptions, showQuantity, unitFor } from "../units/show.ts";
import { fromSi, toSi } from "../units/unit.ts";
import { round } from "./paper.ts";
import type { Box, Tone } from "./place.ts";
import { dotBox, type Frame, type Mark, type PlacedMark, placeMarks } from "./plot-marks.ts";
import { type PlacedTick, placeTicks } from "./plot-ticks.ts";
import { circle, rect, segment } from "./strokes.ts";

export type Tick = { readonly at: number; readonly label: string };

/** An axis in the chart's own numbers, which any two may share. */
export type Axis = { readonly from: number; readonly to: number; readonly ticks: readonly Tick[] };

export type Point = readonly [across: number, up: number];

/** From an x to an x, from the axis's foot or `floor` up to `up`. */
export type Bar = {
  readonly from: number;
  readonly to: number;
  readonly up: number;
  readonly floor?: number;
};

type Look = {
  readonly tone: Tone;
  /** As it was held: dashed, and nothing else is. */
  readonly held?: true;
  /** Not the newest answer: at 40 %. */
  readonly old?: true;
};

export type Layer = Look &
  (
    | {
        readonly as: "line";
        /** A gap where there is none. */
        readonly points: readonly (Point | null)[];
        readonly smooth?: true;
        /** For what is beside the point. */
        readonly thin?: true;
      }
    | { readonly as: "area"; readonly points: readonly Point[]; readonly smooth?: true; readonly deep?: true }
    | { readonly as: "bars"; readonly bars: readonly Bar[]; readonly faint?: true }
    | { readonly as: "signs"; readonly points: readonly Point[]; readonly sign: "cross" | "stroke" }
    | {
        readonly as: "dots";
        readonly points: readonly Point[];
        readonly hollow?: true;
        readonly radius?: number;
      }
  );

export type Plot = {
  readonly across: Axis;
  readonly up: Axis;
  /** From the back to the front. */
  readonly layers: readonly Layer[];
  readonly marks: readonly Mark[];
};

/** The chart's field on paper [px]; words stand in the margins around it. */
export type Field = {
  readonly width: number;
  readonly height: number;
  readonly right?: number;
  /** The words of the scale stand at the right first, where lines all begin at the left. */
  readonly scaleAtEnd?: boolean;
};

export type DrawnPlot = {
  readonly frame: Frame;
  readonly shapes: readonly { readonly d: string; readonly look: string }[];
  readonly marks: readonly PlacedMark[];
  readonly across: readonly { readonly x: number; readonly label: string; readonly anchor: string }[];
  readonly up: readonly PlacedTick[];
};

/** The same as a table, for those who cannot look: the first cell of a row heads it. */
export type PlotTable = {
  readonly title: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** Of a column that is compared by eye: the length of the bar under each number [share of the longest]. */
  readonly bars?: readonly (readonly (number | null)[] | null)[];
};

/** Hours of the day that are written under a chart. */
const HOURS: readonly number[] = [0, 3, 6, 9, 12, 15, 18, 21, 24];
/** Words of a tick nearer to an end of the paper than this lean inwards [px]. */
const NEAR_END = 22;
/** Half a sign's size [px]. */
const SIGN = 3.2;

type AxisWish = {
  /** About so many ticks. */
  readonly count: number;
  /** It ends at a round number. */
  readonly nice?: true;
  /** It begins at the least number instead of at nought. */
  readonly fromLeast?: true;
};

/**
 * An axis over some numbers with ticks at round numbers of the reader's units.
 *
 * @param values SI; without any the axis goes from 0 to next to nothing
 */
export function roundAxis(
  values: readonly number[],
  measure: MeasureName,
  options: ShowOptions,
  wish: AxisWish,
): Axis {
  const unit = unitFor(measure, options.units);
  const isClock = MEASURES[measure].form === "clock";
  const low = values.length > 0 ? Math.min(...values) : 0;
  const foot = isClock || wish.fromLeast ? low : Math.min(0, low);
  const high = Math.max(foot + 1e-9, ...values);
  const inUnit = scaleLinear([fromSi(foot, unit), fromSi(high, unit)], [0, 1]);
  // Ends finer than the ticks waste no paper.
  if (wish.nice) inUnit.nice(wish.count + 2);
  const [from = 0, to = 1] = inUnit.domain();
  const rounds = isClock ? HOURS.filter((hour) => hour > from && hour < to) : inUnit.ticks(wish.count);
  const ticks = rounds.map((value) => {
    const at = toSi(value, unit);
    return { at, label: showQuantity(at, measure, options) };
  });
  return { from: toSi(from, unit), to: toSi(to, unit), ticks };
}

/** The greatest as 1, the rest as shares of it; for bars beside one another. A number that is not known is null. */
export function shares(values: readonly (number | null)[]): readonly (number | null)[] {
  const most = Math.max(1e-30, ...values.map((one) => one ?? 0));
  return values.map((one) => (one === null ? null : Math.max(0, one) / most));
}

/** Where the numbers of two axes lie on a field. */
function frameOf(plot: Pick<Plot, "across" | "up">, field: Field): Frame {
  const across = scaleLinear([plot.across.from, plot.across.to], [0, field.width - (field.right ?? 0)]);
  const up = scaleLinear([plot.up.from, plot.up.to], [field.height, 0]);
  return {
    width: field.width,
    height: field.height,
    across: (value) => across(value),
    up: (value) => up(value),
    atX: (x) => across.invert(x),
    atY: (y) => up.invert(y),
  };
}

function pathOf(layer: Layer, { across, up, height }: Frame): string {
  const x = ([at]: Point): number => round(across(at));
  const y = ([, at]: Point): number => round(up(at));
  if (layer.as === "dots")
    return layer.points.map((point) => circle(x(point), y(point), layer.radius ?? 2.5)).join("");
  if (layer.as === "signs") {
    const falls = (point: Point): string =>
      segment(x(point) - SIGN, y(point) - SIGN, x(point) + SIGN, y(point) + SIGN);
    const rises = (point: Point): string =>
      segment(x(point) - SIGN, y(point) + SIGN, x(point) + SIGN, y(point) - SIGN);
    return layer.points.map((point) => rises(point) + (layer.sign === "cross" ? falls(point) : "")).join("");
  }
  if (layer.as === "bars")
    return layer.bars
      .map(({ from, to, up: top, floor }) => {
        const [left, high] = [across(from), up(top)];
        const foot = floor === undefined ? height : up(floor);
        return rect({ x: left, y: high, width: across(to) - left, height: foot - high });
      })
      .join("");
  const curve = layer.smooth ? curveMonotoneX : curveLinear;
  if (layer.as === "area")
    return areaThrough<Point>().x(x).y0(height).y1(y).curve(curve)([...layer.points]) ?? "";
  const draw = lineThrough<Point | null>()
    .defined((point) => point !== null)
    .x((point) => (point ? x(point) : 0))
    .y((point) => (point ? y(point) : 0))
    .curve(curve);
  return draw([...layer.points]) ?? "";
}

/** Where the chart's lines run, for words to keep away from. */
function linesOf(layer: Layer, { across, up }: Frame): readonly Point[] {
  if (layer.as !== "line") return [];
  return layer.points.flatMap((point) => (point ? [[across(point[0]), up(point[1])] as const] : []));
}

/** Dots that no line runs through. */
function loneDots(layers: readonly Layer[], { across, up }: Frame): readonly Box[] {
  if (layers.some(({ as }) => as === "line")) return [];
  return layers.flatMap((layer) =>
    layer.as === "dots" ? layer.points.map((point) => dotBox(across(point[0]), up(point[1]))) : [],
  );
}

function lookOf(layer: Layer): string {
  const more = [
    layer.held && "held",
    layer.old && "old",
    layer.as === "bars" && layer.faint && "faint",
    layer.as === "line" && layer.thin && "thin",
    layer.as === "dots" && layer.hollow && "hollow",
    layer.as === "area" && layer.deep && "deep",
  ];
  return [`plot-${layer.as}`, layer.tone, ...more.filter((one) => one)].join(" ");
}

function anchorOf(x: number, width: number): string {
  if (x < NEAR_END) return "start";
  return x > width - NEAR_END ? "end" : "middle";
}

/** The chart's shapes on its field [px], y downwards; a tick at an axis's foot has no words of its own. */
export function drawPlot(plot: Plot, field: Field, size = 13): DrawnPlot {
  const frame = frameOf(plot, field);
  const lines = plot.layers.map((layer) => linesOf(layer, frame));
  const marks = placeMarks(plot.marks, frame, size, lines.flat(), loneDots(plot.layers, frame));
  return {
    frame,
    shapes: plot.layers.map((layer) => ({ d: pathOf(layer, frame), look: lookOf(layer) })),
    marks,
    across: plot.across.ticks.map(({ at, label }) => {
      const x = round(frame.across(at));
      return { x, label, anchor: anchorOf(x, field.width) };
    }),
    up: placeTicks(
      plot.up.ticks
        .filter(({ at }) => at !== plot.up.from)
        .map(({ at, label }) => ({ y: round(frame.up(at)), label })),
      { frame, size, lines, marks, atEnd: field.scaleAtEnd === true },
    ),
  };
}
