// What the components know of numbers that are not sure: both ends of the one in hand, and what the answers become.
// The app provides it once a number is in hand or one is not sure; it is fetched then.

import type { Accessor } from "solid-js";
import type { Mark } from "./hand.ts";

export type End = "low" | "high";

/** The number in hand where it is not sure: its ends on the axis. */
export type SpanInHand = Readonly<Record<End, Mark>>;

/** What stands under the answers. */
export type NotSureSaid = {
  /** How many runs are in, of how many. */
  readonly done: number;
  readonly of: number;
  /** What the sentences are about, and between which ends it lies: "Short days, worst season: 32 to 38". */
  readonly about: string;
  /** How many numbers that span comes from; "" of one. */
  readonly many: string;
  /** Why the answer as it stands now lies beyond its own span; "" where it does not. */
  readonly beyond: string;
  /** Which doubt matters most, and what measuring helps; "" until all runs are in. */
  readonly most: string;
  readonly measuring: string;
  /** The number that matters most, to be taken in hand; null until it is known. */
  readonly first: string | null;
  /** How many doubts were asked, and how many held. */
  readonly asked: string;
};

export type Doubting = {
  /** Whether the number in hand can be a span. */
  readonly mayDoubt: Accessor<boolean>;
  readonly span: Accessor<SpanInHand | null>;
  /** Makes a span of the number in hand: its table's, or a fifth to either side. */
  readonly doubt: () => void;
  /** Back to one number. */
  readonly sure: () => void;
  readonly slide: (end: End, place: number) => void;
  readonly step: (end: End, by: 1 | -1, coarse: boolean) => void;
  /** Between which ends an answer lies; null where it is sure. */
  readonly spanOf: (id: string) => string | null;
  /** "41 to 47": what an answer is by the number in hand alone; "" until that is known. */
  readonly alone: (id: string) => string;
  /** What an answer becomes with all that is not sure, beside what the number in hand makes of it; "" where that is not known. */
  readonly withOthers: (id: string) => string;
  /** Whether runs are still coming in, so that spans are not the last word. */
  readonly isOld: Accessor<boolean>;
  /** Null where nothing was said not to be sure. */
  readonly said: Accessor<NotSureSaid | null>;
};
