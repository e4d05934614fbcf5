// A table of numbers that a card shows side by side, with or without a chart over it. Types only, plain data.

import type { MeasureName } from "../units/measures.ts";

export type FigureColumn = {
  readonly label: string;
  readonly measure: MeasureName | "text";
  /** A bar under each number, so that they can be compared by eye. */
  readonly bar?: true;
};

export type FigureAxis = { readonly label: string; readonly measure: MeasureName };

export type FigureCurve = {
  readonly label: string;
  /** How it is drawn: what matters most, what it meets, and what else could be. */
  readonly part: "first" | "second" | "other";
  readonly points: readonly (readonly [across: number, up: number])[];
};

/** A point worth naming; without `up` a line from the foot to the top. */
export type FigureMark = { readonly label: string; readonly across: number; readonly up?: number };

export type FigureChart = {
  readonly across: FigureAxis;
  readonly up: FigureAxis;
  readonly curves: readonly FigureCurve[];
  readonly marks: readonly FigureMark[];
};

/** What a row of the measure `series` may hold for the card to show. */
export type Figure = {
  /** What is seen, in a sentence; and under what assumptions, if any. */
  readonly says: string;
  readonly note?: string;
  readonly columns: readonly FigureColumn[];
  readonly rows: readonly (readonly (number | string | null)[])[];
  readonly chart?: FigureChart;
};

/** A figure that cards of a kind show: its hidden row and what stands over it. */
export type FigureRow = { readonly row: string; readonly title: string };
