// The stored worksheet, version 1: plain frozen data, numbers as the user typed them.
// Nothing computed is ever stored here. The shape is checked in check.ts and documented in shared/worksheet.schema.json.

export const CURRENT_VERSION = 1;

/** Where a number came from, in falling order of trust from the right. */
export type Origin = "default" | "guessed" | "borrowed" | "label" | "measured";

export type UnitSystemName = "us" | "imperial" | "metric";

/** One line of a bed's contents. */
export type Content = {
  readonly crop: string;
  /** Day of planting `MM-DD`. */
  readonly planted: string;
  /** Share of the bed, 0..1. */
  readonly share: number;
  /** Day of the last picking `MM-DD`, where the tables' length of life is not this garden's. */
  readonly until?: string;
  /** Trained up a trellis or stakes. */
  readonly trained?: boolean;
};

export type Scalar = number | string | null;

/** Number, word, id, date, text; or a list of ids, of twelve monthly numbers, of points [x, y], of contents. */
export type EntryValue = Scalar | readonly (Scalar | readonly number[] | Content)[];

export type Entry = {
  readonly value: EntryValue;
  /** Unit text as typed; "" for words, ids, dates and lists of ids. Points may have two, separated by a comma. */
  readonly unit: string;
  /** Half-width of the doubt, as a share of the value (0.2 = give or take a fifth). */
  readonly spread?: number;
  readonly from?: Origin;
};

export type Entries = Readonly<Record<string, Entry>>;

export type Card = {
  readonly id: string;
  readonly kind: string;
  readonly title: string;
  readonly givens: Entries;
  readonly measured: Entries;
  /** Named sets of givens to compare; `active` is the one applied. */
  readonly options?: Readonly<Record<string, Entries>>;
  readonly active?: string | null;
  readonly price?: Entry;
  readonly life?: Entry;
};

export type Worksheet = {
  readonly version: number;
  readonly title: string;
  readonly units: UnitSystemName;
  /** BCP 47 tag that decides the decimal sign, e.g. "en-US". */
  readonly locale: string;
  /** The one money sign or code of this worksheet. */
  readonly currency: string;
  /** What height zero is, in the user's words: "the garden gate". */
  readonly datum: string;
  readonly made_by: string;
  /** YYYY-MM-DD */
  readonly made_on: string;
  readonly cards: readonly Card[];
};

/** Cards that exist exactly once, under these ids, each of the kind of the same name. */
export const SINGLE_CARDS = ["site", "weather", "season", "cost"] as const;

export const ID_PATTERN = /^[a-z][a-z0-9_]*$/;
