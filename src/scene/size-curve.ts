// Would a bigger tank help? Share met against the tank's size as a line on paper, and the same in words.

import { extent } from "d3-array";
import { scaleLinear } from "d3-scale";
import { line as lineThrough } from "d3-shape";
import { type ShowOptions, showQuantity } from "../units/show.ts";
import { fromSi, toSi } from "../units/unit.ts";

/** How the whole season went with one size of the tank. */
export type SizePoint = {
  /** Times today's size [-]. */
  readonly multiple: number;
  /** [m3] */
  readonly volume: number;
  /** [-]; null where nothing is asked for. */
  readonly shareMet: number | null;
  /** Days a season. */
  readonly daysShort: number | null;
  /** [m3] a season. */
  readonly spill: number;
};

/** The points known so far, in any order, and the multiple past which more buys little; null: none, or not known yet. */
export type SizeCurve = { readonly points: readonly SizePoint[]; readonly knee: number | null };

/** The paper's size in px, and the unit of the ticks. */
export type SizePaper = { readonly width: number; readonly height: number; readonly unit: string };

/** A size marked on the chart: its place, and to which side its words go. */
export type SizeMark = {
  readonly x: number;
  readonly y: number;
  readonly volume: number;
  readonly anchor: "start" | "end";
};

export type SizeChart = {
  readonly line: string;
  readonly dots: readonly { readonly x: number; readonly y: number }[];
  readonly today: SizeMark | null;
  readonly knee: SizeMark | null;
  /** Ticks along the foot: volume [m3]; and grid lines: share [-]. */
  readonly across: readonly { readonly at: number; readonly value: number }[];
  readonly up: readonly { readonly at: number; readonly value: number }[];
};

type Known = SizePoint & { readonly shareMet: number };

/** Points that have a share, from the smallest size to the biggest. */
function known(curve: SizeCurve): readonly Known[] {
  return curve.points
    .filter((point): point is Known => point.shareMet !== null)
    .sort((a, b) => a.multiple - b.multiple);
}

/** Room at the right end, so that the last tick's words stay on the paper. */
const RIGHT = 26;
/** The lowest grid line is a whole tenth, at least this far under the lowest point. */
const UNDER = 0.02;

/** The chart's shapes in px, y downwards; the top line is always everything met. */
export function sizeChart(curve: SizeCurve, paper: SizePaper): SizeChart {
  const points = known(curve);
  const [lowest = 0] = extent(points, ({ shareMet }) => shareMet);
  const most = Math.max(1e-9, ...points.map(({ volume }) => volume));
  const foot = Math.max(0, Math.floor((lowest - UNDER) * 10) / 10);
  const up = scaleLinear([foot, 1], [paper.height, 0]);
  const across = scaleLinear([0, fromSi(most, paper.unit)], [0, paper.width - RIGHT]);
  const at = ({ volume, shareMet }: Known) => ({ x: across(fromSi(volume, paper.unit)), y: up(shareMet) });
  const mark = (multiple: number | null): SizeMark | null => {
    const point = points.find((candidate) => candidate.multiple === multiple);
    if (!point) return null;
    const { x, y } = at(point);
    return { x, y, volume: point.volume, anchor: x < paper.width / 2 ? "start" : "end" };
  };
  const dots = points.map(at);
  const draw = lineThrough<{ readonly x: number; readonly y: number }>(
    ({ x }) => x,
    ({ y }) => y,
  );
  return {
    line: draw(dots) ?? "",
    dots,
    today: mark(1),
    knee: mark(curve.knee),
    across: across
      .ticks(paper.width > 500 ? 6 : 3)
      .map((value) => ({ at: across(value), value: toSi(value, paper.unit) })),
    up: up.ticks(4).map((value) => ({ at: up(value), value })),
  };
}

/** Under this a curve says that the size of the tank hardly matters [-]. */
const HARDLY = 0.01;

/** What the curve says, in sentences; the last is where more buys little. Empty while there is too little to say. */
export function sizeWords(curve: SizeCurve, options: ShowOptions): readonly string[] {
  const points = known(curve);
  const today = points.find(({ multiple }) => multiple === 1);
  if (!today)
    return curve.points.length > 0 ? ["Nothing asks for this water, so no size is better than another."] : [];
  const says = (point: Known): string =>
    `${shareWords(point, options)} of the thirst met, ${shortWords(point, options)}`;
  const words = [`Today ${showQuantity(today.volume, "volume", options)}: ${says(today)}.`];
  const twice = points.find(({ multiple }) => multiple === 2);
  if (twice) words.push(`Twice that, ${showQuantity(twice.volume, "volume", options)}: ${says(twice)}.`);
  return words;
}

const shareWords = ({ shareMet }: Known, options: ShowOptions): string =>
  showQuantity(shareMet, "share", options);

function shortWords({ daysShort }: Known, options: ShowOptions): string {
  if (daysShort === null) return "short days unknown";
  const days = showQuantity(daysShort, "count", options);
  return `${days} short ${days === "1" ? "day" : "days"} a season`;
}

/** Where more tank buys little, in a sentence, once all sizes are run; null where there is no curve. */
export function kneeWords(curve: SizeCurve, options: ShowOptions): string | null {
  const points = known(curve);
  const [first, last] = [points[0], points[points.length - 1]];
  if (!first || !last) return null;
  const [low = 0, high = 0] = extent(points, ({ shareMet }) => shareMet);
  if (high - low < HARDLY)
    return "Its size hardly matters here: from the smallest to the biggest the share met moves by less than 1 %. It is something else that lacks.";
  const knee = points.find(({ multiple }) => multiple === curve.knee);
  if (!knee)
    return `Up to ${showQuantity(last.volume, "volume", options)} more tank still helps: no point was found past which it buys little.`;
  const size = showQuantity(knee.volume, "volume", options);
  const rule = "another tenth of tank adds less than half a percent to the share met";
  if (knee.multiple < 1) return `More tank buys little from here: already from ${size} on, ${rule}.`;
  return knee.multiple === 1
    ? `Today's size is the point past which more buys little: ${rule}.`
    : `Past ${size} more buys little: ${rule}.`;
}

/** The curve as a table, from the smallest size to the biggest. */
export function sizeTable(curve: SizeCurve): readonly SizePoint[] {
  return [...curve.points].sort((a, b) => a.multiple - b.multiple);
}
