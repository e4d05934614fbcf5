// An answer over the axis of the number in hand, as a plot; and the words under that axis, none on another.

import type { Tone } from "./place.ts";
import type { Layer, Plot, PlotTable, Point } from "./plot.ts";
import type { Mark } from "./plot-marks.ts";
import { textWidth } from "./text-block.ts";

/** A value that was tried, and the answer there; null where there is none. */
export type TurnedPoint = {
  readonly place: number;
  readonly text: string;
  readonly answer: number | null;
  readonly said: string;
};

/** Where the number stands, with the answer there; a place without an answer lies on the curve. */
export type Standing = { readonly place: number; readonly answer: number | null; readonly said: string };

export type TurnedCurve = {
  /** Rising. */
  readonly points: readonly TurnedPoint[];
  /** One word after the other: nothing lies between two of them. */
  readonly words: boolean;
  readonly now: Standing | null;
  readonly before: Standing | null;
  readonly tone: Tone;
  /** Something else has changed since. */
  readonly old: boolean;
};

type Known = TurnedPoint & { readonly answer: number };

const known = (points: readonly TurnedPoint[]): readonly Known[] =>
  points.filter((point): point is Known => point.answer !== null);

/** The curve at a place between two tried values; null beyond what was tried. */
function between(points: readonly Known[], place: number): number | null {
  const at = points.findIndex((point) => point.place >= place);
  const [left, right] = [points[at - 1], points[at]];
  if (right && right.place === place) return right.answer;
  if (!left || !right) return null;
  const share = (place - left.place) / (right.place - left.place);
  return left.answer + (right.answer - left.answer) * share;
}

/** From nought, where nothing lies below it; a line of nothing but noughts lies at the foot. */
function upOf(values: readonly number[]): { readonly from: number; readonly to: number } {
  const from = Math.min(0, ...values);
  const to = Math.max(0, ...values);
  return { from, to: to > from ? to : from + 1 };
}

function markOf(
  { place, said }: Standing,
  up: number | null,
  look: Pick<Mark, "dot" | "stem" | "tone">,
): readonly Mark[] {
  return up === null ? [] : [{ across: place, up, label: said, ...look }];
}

export function turnedPlot({ points, words, now, before, tone, old }: TurnedCurve): Plot {
  const drawn = known(points);
  const nowUp = now && (now.answer ?? (words ? null : between(drawn, now.place)));
  const values = [...drawn.map(({ answer }) => answer), nowUp, before?.answer ?? null];
  const line: readonly Point[] = drawn.map(({ place, answer }) => [place, answer]);
  const look = old ? { tone, old: true as const } : { tone };
  const curve: readonly Layer[] = words
    ? []
    : [
        { as: "area", points: line, ...look },
        { as: "line", points: line, ...look },
      ];
  return {
    across: { from: 0, to: 1, ticks: [] },
    up: { ...upOf(values.filter((value) => value !== null)), ticks: [] },
    layers: [...curve, { as: "dots", points: line, radius: words ? 5 : 2, ...look }],
    marks: [
      ...(now ? markOf(now, nowUp, { dot: "full", tone }) : []),
      ...(before ? markOf(before, before.answer, { dot: "hollow", stem: true, tone: "soft" }) : []),
    ],
  };
}

/** The same as a table: the value tried, and each answer. */
export function turnedTable(
  title: string,
  label: string,
  panels: readonly { readonly label: string; readonly points: readonly TurnedPoint[] }[],
): PlotTable {
  const [first] = panels;
  return {
    title,
    head: [label, ...panels.map((panel) => panel.label)],
    rows: (first?.points ?? []).map((point, at) => [
      point.text,
      ...panels.map(({ points }) => points[at]?.said || "–"),
    ]),
  };
}

/** A curve is told by so many of its points. */
const TOLD = 5;

/** The same in words: some of its points, from one end to the other. */
export function turnedWords(answer: string, points: readonly TurnedPoint[]): string {
  const step = Math.max(1, (points.length - 1) / (TOLD - 1));
  const told = Array.from(
    { length: Math.min(TOLD, points.length) },
    (_, at) => points[Math.round(at * step)],
  );
  return `${answer}: ${told.flatMap((point) => (point ? [`${point.said} at ${point.text}`] : [])).join("; ")}.`;
}

/** Words under the axis; the first of them choose their room first. */
export type AxisWord = { readonly place: number; readonly text: string; readonly look: string };

export type PlacedWord = AxisWord & { readonly left: number; readonly width: number };

const GAP = 8;
/** A word that steps aside ends no further from its place [px]. */
const NEAR = 20;

/** Where a word has room: about its place, else beside what stands there, as long as it still reaches its place. */
function freeLeft(placed: readonly PlacedWord[], middle: number, wide: number, width: number): number | null {
  const inPaper = (left: number) => Math.round(Math.max(0, Math.min(width - wide, left)));
  const isFree = (left: number) =>
    placed.every((other) => left >= other.left + other.width + GAP || left + wide + GAP <= other.left);
  const about = inPaper(middle - wide / 2);
  const beside = placed.flatMap((other) => [other.left - GAP - wide, other.left + other.width + GAP]);
  const reaches = (left: number) =>
    left === inPaper(left) && left <= middle + NEAR && left + wide >= middle - NEAR;
  return [about, ...beside.filter(reaches)].find(isFree) ?? null;
}

/**
 * Words under the axis where they have room: each about its place, none over the paper's edge or another word; a word
 * without room is left out.
 *
 * @param inset from either edge of the paper to the axis's ends [px]
 */
export function placeAxisWords(
  marks: readonly AxisWord[],
  width: number,
  inset: number,
  size: number,
): readonly PlacedWord[] {
  const placed: PlacedWord[] = [];
  for (const mark of marks) {
    const wide = Math.ceil(textWidth(mark.text, size, true));
    const middle = inset + mark.place * (width - 2 * inset);
    if (mark.text === "" || wide > width) continue;
    const left = freeLeft(placed, middle, wide, width);
    if (left !== null) placed.push({ ...mark, left, width: wide });
  }
  return placed;
}
