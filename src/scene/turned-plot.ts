// An answer over the axis of the number in hand, as a plot, which says where it stays the same all along.

import type { Tone } from "./place.ts";
import type { Layer, Plot, PlotTable, Point } from "./plot.ts";
import type { Mark } from "./plot-marks.ts";

/** A value that was tried, and the answer there; null where there is none. */
export type TurnedPoint = {
  readonly place: number;
  readonly text: string;
  readonly answer: number | null;
  readonly said: string;
  /** There the answer is without some part of the place, which has fallen out of the run: it is no answer to compare with. */
  readonly without?: true;
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

/** Points of the line: those without a part of the place only where all are. */
function known(points: readonly TurnedPoint[]): readonly Known[] {
  const answered = points.filter((point): point is Known => point.answer !== null);
  const whole = answered.filter(({ without }) => !without);
  return whole.length > 0 ? whole : answered;
}

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
 * are read. Null where it moves, or where not every value has an answer for the whole place.
 */
function stillness(points: readonly TurnedPoint[], now: Standing | null): "same" | "reads same" | null {
  const answers = points.flatMap(({ answer }) => (answer === null ? [] : [answer]));
  if (answers.length < 2 || answers.length < points.length || points.some(({ without }) => without))
    return null;
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

/** A value with what each answer is there. */
export type TurnedRow = { readonly place: number; readonly text: string; readonly said: readonly string[] };

/**
 * The same as a table: the value tried, and each answer.
 *
 * @param standing where the number stands and stood, among the values tried
 */
export function turnedTable(
  title: string,
  label: string,
  panels: readonly { readonly label: string; readonly points: readonly TurnedPoint[] }[],
  standing: readonly TurnedRow[] = [],
): PlotTable {
  const tried = (panels[0]?.points ?? []).map(({ place, text }, at) => ({
    place,
    text,
    said: panels.map(({ points }) => points[at]?.said ?? ""),
  }));
  const others = tried.filter(({ place }) => standing.every((one) => one.place !== place));
  const rows = [...others, ...standing].sort((a, b) => a.place - b.place);
  return {
    title,
    head: [label, ...panels.map((panel) => panel.label)],
    rows: rows.map(({ text, said }) => [text, ...said.map((one) => one || "–")]),
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
