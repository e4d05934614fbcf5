// How long the water lasts, drawn: the water left of each run as a line that ends on its first short day, and under it, on the
// same axis, a dot a year on that day.

import { calendarDate } from "../units/calendar.ts";
import { SHORT_MONTHS } from "../units/calendar-names.ts";
import { type ShowOptions, showQuantity } from "../units/show.ts";
import {
  type Axis,
  type Layer,
  type Plot,
  type PlotTable,
  type Point,
  roundAxis,
  type Tick,
} from "./plot.ts";
import { textWidth } from "./text-block.ts";

/** One run from this morning on. */
export type LineAhead = {
  readonly name: string;
  /** First short day; null: none before the season's end [days since 1970-01-01]. */
  readonly short: number | null;
  /** Where it is short today: first short day once that is over; today: some stay short, null: none is before the season's end. */
  readonly again: number | null;
  /** Which of the two the sentence on top speaks of; null: it is not before the season's end. */
  readonly told: number | null;
  readonly empty: number | null;
  /** Water left each evening from today on [m3]. */
  readonly water: Float64Array;
};

export type Lasts = {
  readonly today: number;
  readonly last: number;
  /** Water left this morning [m3]. */
  readonly now: number;
  readonly lines: readonly LineAhead[];
  /** Those whose told day is no later than this are bad ones; null: none is. */
  readonly bad: number | null;
  /** Told day of the middle one; null: none before the season's end. */
  readonly middle: number | null;
  /** Days that one's own forecast speaks of. */
  readonly foreseen: number;
};

const TICKS_UP = 3;
/** Two labels under the axis keep so far apart [px]. */
const APART = 8;
const SIZE = 13;

function dayLabel(day: number): string {
  const { month, day: of } = calendarDate(day);
  return `${SHORT_MONTHS[month - 1]} ${of}`;
}

/** Labels that do not touch; the first ones stay. */
function untouched(ticks: readonly Tick[], from: number, to: number, width: number): readonly Tick[] {
  const perDay = width / Math.max(1, to - from);
  const kept: { readonly tick: Tick; readonly left: number; readonly right: number }[] = [];
  for (const tick of ticks) {
    const half = textWidth(tick.label, SIZE, false) / 2;
    const middle = Math.max(half, Math.min(width - half, (tick.at - from) * perDay));
    const [left, right] = [middle - half - APART / 2, middle + half + APART / 2];
    if (kept.every((other) => right <= other.left || left >= other.right)) kept.push({ tick, left, right });
  }
  return kept.map(({ tick }) => tick);
}

/** Days that stand for a month whose first has no room, the best first. */
const INSTEAD: readonly number[] = [15, 10, 20, 25];

/** From today to the evening of the last day, with the months between. */
function daysAxis({ today, last }: Lasts, width: number): Axis {
  const to = last + 1;
  const days = Array.from({ length: to - today }, (_, day) => today + day);
  const monthOf = (day: number) => SHORT_MONTHS[calendarDate(day).month - 1] as string;
  const ends = [
    { at: today, label: dayLabel(today) },
    { at: to, label: dayLabel(last) },
  ];
  const firsts = days.flatMap((at) => (calendarDate(at).day === 1 ? [{ at, label: monthOf(at) }] : []));
  let ticks = untouched([...ends, ...firsts], today, to, width);
  for (const of of INSTEAD) {
    const isNamed = (day: number) => ticks.some(({ label }) => label.startsWith(monthOf(day)));
    const more = days.filter((at) => calendarDate(at).day === of && !isNamed(at));
    ticks = untouched([...ticks, ...more.map((at) => ({ at, label: dayLabel(at) }))], today, to, width);
  }
  return { from: today, to, ticks };
}

/** The day on which a run's line ends: its first short day; of one that is short at once the next, or when nothing is left. */
function endOf({ today }: Lasts, { short, again, empty }: LineAhead): number | null {
  if (short !== today) return short;
  return again === today ? empty : again;
}

/** Its water up to the evening of that day. */
function pointsOf(lasts: Lasts, line: LineAhead): readonly Point[] {
  const { today, now } = lasts;
  const end = endOf(lasts, line);
  const days = end === null ? line.water.length : end - today + 1;
  return [
    [today, now],
    ...Array.from(line.water.subarray(0, days), (held, day): Point => [today + day + 1, held]),
  ];
}

const toneOf = ({ bad }: Lasts, { told }: LineAhead): Layer["tone"] =>
  told === null ? "growth" : bad !== null && told <= bad ? "trouble" : "water";

/** The middle run: that whose told day is the middle one, the one with the most water where there are several. */
function middleOf({ lines, middle }: Lasts): LineAhead | undefined {
  const sum = ({ water }: LineAhead) => water.reduce((all, held) => all + held, 0);
  return lines.filter(({ told }) => told === middle).sort((a, b) => sum(b) - sum(a))[0];
}

/** What a line of the fan, or its shading, stands for. */
export type FanKey = {
  readonly as: "middle" | "thin" | "area";
  readonly tone: Layer["tone"];
  readonly label: string;
};

/** The key of the fan: what is drawn, each once; of runs that are no odds each by its name. */
export function fanKey(lasts: Lasts, isOdds: boolean): readonly FanKey[] {
  const middle = middleOf(lasts);
  const others = lasts.lines.filter((line) => line !== middle);
  const thin = (tone: Layer["tone"], label: string): readonly FanKey[] =>
    others.some((line) => toneOf(lasts, line) === tone) ? [{ as: "thin", tone, label }] : [];
  const key: readonly (FanKey | undefined)[] = [
    middle && { as: "middle", tone: toneOfMiddle(middle), label: isOdds ? "middling year" : middle.name },
    ...(isOdds
      ? [
          ...thin("trouble", "short soonest"),
          ...thin("water", "another year"),
          ...thin("growth", "never short"),
        ]
      : others.map((line): FanKey => ({ as: "thin", tone: toneOf(lasts, line), label: line.name }))),
    lasts.foreseen > 0 ? { as: "area", tone: "water", label: "days you expect" } : undefined,
  ];
  return key.filter((one) => one !== undefined);
}

/** The middling year is never a bad one. */
const toneOfMiddle = ({ told }: LineAhead): Layer["tone"] => (told === null ? "growth" : "water");

/** The fan of the water left. */
export function fanPlot(lasts: Lasts, width: number, options: ShowOptions): Plot {
  const { today, lines, foreseen } = lasts;
  const middle = middleOf(lasts);
  const drawn = lines.map((line) => ({ line, points: pointsOf(lasts, line) }));
  const most = drawn.flatMap(({ points }) => points.map(([, held]) => held));
  const up = roundAxis([0, lasts.now, ...most], "volume", options, { count: TICKS_UP });
  const layers: Layer[] = drawn
    .filter(({ line }) => line !== middle)
    .map(({ line, points }) => ({ as: "line", tone: toneOf(lasts, line), points, thin: true }));
  if (foreseen > 0)
    layers.unshift({
      as: "area",
      tone: "water",
      points: [
        [today, up.to],
        [Math.min(today + foreseen, lasts.last + 1), up.to],
      ],
    });
  if (middle)
    layers.push({
      as: "line",
      tone: toneOfMiddle(middle),
      points: pointsOf(lasts, middle),
    });
  return { across: daysAxis(lasts, width), up, layers, marks: [] };
}

/** From the middle of one dot to that of the next over it or beside it [dots' radii]. */
const STACKED = 2.3;

/** Dots on their days, over each other where they would touch: across [px] and rows from the foot. */
function stacked(lasts: Lasts, width: number, radius: number) {
  const perDay = width / Math.max(1, lasts.last + 1 - lasts.today);
  const apart = STACKED * radius;
  const ends: number[] = [];
  const never = lasts.lines.filter(({ told }) => told === null).length;
  // Those that are never short stand at the season's end, in columns of their own.
  const columns = Math.max(1, Math.ceil(never / 4));
  let count = 0;
  const sorted = [...lasts.lines].sort((a, b) => (a.told ?? Infinity) - (b.told ?? Infinity) || 0);
  return sorted.map((line) => {
    if (line.told === null) {
      const [column, row] = [count % columns, Math.floor(count / columns)];
      count += 1;
      return { line, x: width - radius - (columns - 1 - column) * apart, row };
    }
    const x = Math.max(radius, (line.told + 0.5 - lasts.today) * perDay);
    const row = ends.findIndex((end) => x - end >= apart);
    const at = row < 0 ? ends.length : row;
    ends[at] = x;
    return { line, x, row: at };
  });
}

/** With more runs than this dots are smaller. */
const MANY = 40;

export const dotRadius = ({ lines }: Lasts): number => (lines.length > MANY ? 2.5 : 4.6);

/** How many dots stand over one another. */
export const dotRows = (lasts: Lasts, width: number): number =>
  Math.max(1, ...stacked(lasts, width, dotRadius(lasts)).map(({ row }) => row + 1));

/** A dot a run on the day that is told of it; those never short at the season's end. */
export function dotsPlot(lasts: Lasts, width: number): Plot {
  const { today, last, bad, middle, lines } = lasts;
  const radius = dotRadius(lasts);
  const dots = stacked(lasts, width, radius);
  const rows = dotRows(lasts, width);
  const days = last + 1 - today;
  const of = (tone: Layer["tone"]): Layer => ({
    as: "dots",
    tone,
    radius,
    points: dots
      .filter(({ line }) => toneOf(lasts, line) === tone)
      .map(({ x, row }) => [today + (x / width) * days, (row + 0.5) / rows]),
  });
  const never = lines.filter(({ told }) => told === null).length;
  const ticks: Tick[] = [
    ...(middle === null ? [] : [{ at: middle + 0.5, label: dayLabel(middle) }]),
    ...(never === 0 ? [] : [{ at: last + 1, label: `${never} never` }]),
    ...(bad === null ? [] : [{ at: bad + 0.5, label: dayLabel(bad) }]),
  ];
  return {
    across: { from: today, to: last + 1, ticks: untouched(ticks, today, last + 1, width) },
    up: { from: 0, to: 1, ticks: [] },
    layers: [of("water"), of("trouble"), of("growth")],
    marks: [],
  };
}

/** The same as a table: each run with its days and what is left then. */
export function lastsTable(lasts: Lasts, options: ShowOptions): PlotTable {
  const { today, lines } = lasts;
  const day = (date: number | null): string => (date === null ? "not before the end" : dayLabel(date));
  const left = ({ short, water }: LineAhead): string => {
    const held = short === null ? water[water.length - 1] : water[short - today];
    return showQuantity(held ?? 0, "volume", options);
  };
  const sooner = (a: number | null, b: number | null): number => (a ?? Infinity) - (b ?? Infinity) || 0;
  const sorted = [...lines].sort((a, b) => sooner(a.short, b.short) || sooner(a.again, b.again));
  // Of runs that are short at once that day is what the sentence above tells.
  const isShortNow = lines.some(({ short }) => short === today);
  const again = (line: LineAhead): string =>
    line.short !== today ? "" : line.again === today ? "stays short" : day(line.again);
  return {
    title: "How long it lasts in each run",
    head: [
      "Weather of",
      "First short day",
      ...(isShortNow ? ["Once watered, short again"] : []),
      "Left then",
      "Nothing in reach",
    ],
    rows: sorted.map((line) => [
      line.name,
      day(line.short),
      ...(isShortNow ? [again(line)] : []),
      left(line),
      day(line.empty),
    ]),
  };
}
