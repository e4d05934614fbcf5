// What the components know of the number in hand: where it stands on an axis that does not move, how it is turned, and
// what the chosen answers would be all along it. The app provides it.

import type { Accessor } from "solid-js";
import type { Entry, Origin } from "../../document/worksheet.ts";
import type { ChoiceGiven, DateGiven, NumberGiven } from "../../graph/types.ts";
import type { WhatMoved } from "../../telling/what-moved.ts";

/** A place on the axis, from 0 to 1, and what stands there. */
export type Mark = { readonly place: number; readonly text: string };

/** A value that was tried: the answer there as a number, and as it is read. */
export type TriedPoint = Mark & {
  readonly answer: number | null;
  readonly said: string;
  /** The answer there is without a part of the place; `said` names it. */
  readonly without?: true;
};

/** What is to be seen of the axis: the ends of a span, or every word. */
export type AxisView = { readonly form: "span" | "words"; readonly marks: readonly Mark[] };

/** One answer over the axis. */
export type Panel = {
  readonly answer: string;
  /** Rising. */
  readonly points: readonly TriedPoint[];
  /** "enough from 550". */
  readonly enough: Mark | null;
};

export type Curve = {
  readonly panels: readonly Panel[];
  /** `old`: something else has changed, a new curve is on its way. `still`: there is nothing that it could move. */
  readonly state: "working" | "old" | "ready" | "failed" | "still";
  readonly reason: string;
};

/** A value to compare with: what is held, or what stood there when it was taken. */
export type Before = Mark & {
  readonly held: boolean;
  readonly answer: (id: string) => number | null;
  /** The answer as it was read; "" where there was none. */
  readonly said: (id: string) => string;
};

/** The given in hand. */
export type InHand = {
  readonly id: string;
  readonly card: string;
  readonly row: NumberGiven | ChoiceGiven | DateGiven;
};

export type Hand = {
  readonly turned: Accessor<InHand | null>;
  /** What was said of it; null: the usual, or nothing. */
  readonly entry: Accessor<Entry | null>;
  readonly axis: Accessor<AxisView | null>;
  /** Where it stands, null where nothing stands there. */
  readonly place: Accessor<number | null>;
  readonly before: Accessor<Before | null>;
  /** What a step down and a step up add, as "-25", or where it leads to, as "to 250"; null where there is none. */
  readonly steps: Accessor<{ readonly down: string | null; readonly up: string | null }>;
  readonly step: (by: 1 | -1, coarse?: boolean) => void;
  readonly slide: (place: number) => void;
  /** Enters a value; null takes it out. */
  readonly put: (entry: Entry | null) => void;
  /** Where the number comes from; "" where that is not said. */
  readonly origin: Accessor<Origin | "">;
  readonly setOrigin: (from: Origin | "") => void;
  /** Puts back what was there when it was taken; false where it still is. */
  readonly restore: () => boolean;
  /** What is being typed and not entered yet; null: nothing. */
  readonly text: Accessor<string | null>;
  readonly setText: (text: string | null) => void;
  /** Answers that it can move. */
  readonly answers: Accessor<readonly string[]>;
  readonly answer: Accessor<string | null>;
  readonly second: Accessor<string | null>;
  /** "without Long bed": what an answer is without as it stands now; "" where all are in it. */
  readonly without: (id: string) => string;
  readonly curve: Accessor<Curve>;
};

/** What has moved since something was held. */
export type Since = {
  /** Goes over every quantity of the place: for whoever keeps it while it is looked at. */
  readonly moved: () => WhatMoved;
  /** Back to the worksheet that is held, as one step. */
  readonly goBack: () => void;
};
