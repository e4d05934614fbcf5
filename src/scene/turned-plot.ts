// An answer over the axis of the number in hand, as a plot, which says where it stays the same all along; and the words under
// that axis, none on another.

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
  /** All of it was tried: only then can it be said to stay the same. */
  readonly whole: boolean;
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
function upOf(values: readonly number[], room: number): { readonly from: number; readonly to: number } {
  const from = Math.min(0, ...values);
  const to = Math.max(0, ...values) * room;
  return { from, to: to > from ? to : from + 1 };
}

/** Sums over decades leave dust. */
const DUST = 1e-9;
/** Over a line that stays the same there is room for the words that say so. */
const STILL_ROOM = 1.4;

/**
 * Whether an answer stays the same wherever it was tried, and where the number stands now: by its numbers, or at least as they
 * are read. Null where it moves, or where not every value has an answer.
 */
function stillness(points: readonly TurnedPoint[], now: Standing | null): "same" | "reads same" | null {
  const answers = points.flatMap(({ answer }) => (answer === null ? [] : [answer]));
  if (answers.length < 2 || answers.length < points.length) return null;
  const all = now === null || now.answer === null ? answers : [...answers, now.answer];
  const [least, most] = [Math.min(...all), Math.max(...all)];
  if (most - least <= DUST * Math.max(Math.abs(least), Math.abs(most))) return "same";
  const texts = [...points.map(({ said }) => said), ...(now?.said ? [now.said] : [])];
  return texts.every((text) => text === texts[0]) ? "reads same" : null;
}

/** "43 all along: changes nothing here". */
function stillSaid(still: "same" | "reads same", said: string, words: boolean): string {
  const all = words ? `${said} with each` : `${said} all along`;
  return `${all}: changes ${still === "same" ? "nothing" : "next to nothing"} here`;
}

function markOf(
  { place, said }: Standing,
  up: number | null,
  look: Pick<Mark, "dot" | "stem" | "tone">,
): readonly Mark[] {
  return up === null ? [] : [{ across: place, up, label: said, ...look }];
}

/** What of a few words each dot is read as. */
const FEW_WORDS = 5;

/** Each dot's own number, where there are few; the number in hand says its own. */
function dotsSaid(points: readonly Known[], standing: readonly (Standing | null)[]): readonly Mark[] {
  if (points.length > FEW_WORDS) return [];
  return points
    .filter(({ place }) => standing.every((one) => one?.place !== place))
    .map(({ place, answer, said }) => ({
      across: place,
      up: answer,
      label: said,
      tone: "soft",
      dot: "none",
    }));
}

type Marked = Pick<TurnedCurve, "now" | "before" | "words" | "tone"> & {
  readonly drawn: readonly Known[];
  readonly nowUp: number | null;
};

/** Of an answer that stays the same one mark says so; a number that is not sure stands nowhere on its axis. */
function stillMarks({ now, nowUp, drawn, tone }: Marked, said: string): readonly Mark[] {
  if (now) return markOf({ ...now, said }, nowUp, { dot: "full", tone });
  const middle = { place: 0.5, answer: null, said };
  return markOf(middle, drawn[0]?.answer ?? null, { dot: "none", tone });
}

/** Where it stands now and stood before; and each of a few words. */
function movingMarks({ now, before, nowUp, drawn, words, tone }: Marked): readonly Mark[] {
  return [
    ...(now ? markOf(now, nowUp, { dot: "full", tone }) : []),
    ...(before ? markOf(before, before.answer, { dot: "hollow", stem: true, tone: "soft" }) : []),
    ...(words ? dotsSaid(drawn, [now, before]) : []),
  ];
}

/** An area and its line; words have nothing between them. */
const curveOf = (
  points: readonly Point[],
  look: { readonly tone: Tone; readonly old?: true },
): readonly Layer[] => [
  { as: "area", points, ...look },
  { as: "line", points, ...look },
];

export function turnedPlot({ points, words, now, before, tone, old, whole }: TurnedCurve): Plot {
  const drawn = known(points);
  const still = whole && !old ? stillness(points, now) : null;
  const nowUp = now && (now.answer ?? (words ? null : between(drawn, now.place)));
  const values = [...drawn.map(({ answer }) => answer), nowUp, before?.answer ?? null];
  const line: readonly Point[] = drawn.map(({ place, answer }) => [place, answer]);
  const look = old ? { tone, old: true as const } : { tone };
  const up = upOf(
    values.filter((value) => value !== null),
    still ? STILL_ROOM : 1,
  );
  const marked = { now, before, nowUp, drawn, words, tone };
  return {
    across: { from: 0, to: 1, ticks: [] },
    up: { ...up, ticks: [] },
    layers: [
      ...(words ? [] : curveOf(line, look)),
      { as: "dots", points: line, radius: words ? 4 : 2, ...look },
    ],
    marks: still ? stillMarks(marked, stillSaid(still, drawn[0]?.said ?? "", words)) : movingMarks(marked),
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

/**
 * The same in words: some of its points, from one end to the other; or that it stays the same.
 *
 * @param whole whether all of it was tried
 */
export function turnedWords(answer: string, points: readonly TurnedPoint[], whole = false): string {
  const [first, last] = [points[0], points.at(-1)];
  const still = whole && stillness(points, null);
  if (still && first && last)
    return `${answer}: ${stillSaid(still, first.said, false)}, from ${first.text} to ${last.text}.`;
  const step = Math.max(1, (points.length - 1) / (TOLD - 1));
  const told = Array.from(
    { length: Math.min(TOLD, points.length) },
    (_, at) => points[Math.round(at * step)],
  );
  return `${answer}: ${told.flatMap((point) => (point ? [`${point.said} at ${point.text}`] : [])).join("; ")}.`;
}

/** Words under the axis; the first of them choose their room first. */
export type AxisWord = { readonly place: number; readonly text: string; readonly look: string };

export type PlacedWord = AxisWord & { readonly left: number; readonly width: number; readonly row: number };

const GAP = 8;
/** Between words to choose among, so that two do not read as one [px]. */
const WORDS_GAP = 12;
/** A word that steps aside ends no further from its place [px]. */
const NEAR = 20;

/** Where a word has room: about its place, else beside what stands there, as long as it still reaches its place. */
function freeLeft(
  placed: readonly PlacedWord[],
  middle: number,
  wide: number,
  width: number,
  gap: number,
): number | null {
  const inPaper = (left: number) => Math.round(Math.max(0, Math.min(width - wide, left)));
  const isFree = (left: number) =>
    placed.every((other) => left >= other.left + other.width + gap || left + wide + gap <= other.left);
  const about = inPaper(middle - wide / 2);
  const beside = placed.flatMap((other) => [other.left - gap - wide, other.left + other.width + gap]);
  const reaches = (left: number) =>
    left === inPaper(left) && left <= middle + NEAR && left + wide >= middle - NEAR;
  return [about, ...beside.filter(reaches)].find(isFree) ?? null;
}

/**
 * Words under the axis where they have room: each about its place, none over the paper's edge or another word; a word
 * without room is left out.
 *
 * @param inset from either edge of the paper to the axis's ends [px]
 * @param rows lines of words, the first of them first
 */
export function placeAxisWords(
  marks: readonly AxisWord[],
  width: number,
  inset: number,
  size: number,
  rows = 1,
): readonly PlacedWord[] {
  const placed: PlacedWord[] = [];
  for (const mark of marks) {
    const wide = Math.ceil(textWidth(mark.text, size, true));
    const middle = inset + mark.place * (width - 2 * inset);
    if (mark.text === "" || wide > width) continue;
    for (let row = 0; row < rows; row++) {
      const beside = placed.filter((other) => other.row === row);
      const left = freeLeft(beside, middle, wide, width, rows > 1 ? WORDS_GAP : GAP);
      if (left === null) continue;
      placed.push({ ...mark, left, width: wide, row });
      break;
    }
  }
  return placed;
}
