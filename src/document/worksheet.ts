// The stored worksheet, version 4: plain frozen data, numbers as the user typed them.
// Nothing computed is ever stored here. The shape is checked in check.ts and documented in shared/worksheet.schema.json.

export const CURRENT_VERSION = 4;

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
  /** Ends of a number that is not sure, as typed, in the same unit; both or neither, the value between them. */
  readonly low?: number;
  readonly high?: number;
  readonly from?: Origin;
};

export type Entries = Readonly<Record<string, Entry>>;

export type Card = {
  readonly id: string;
  readonly kind: string;
  readonly title: string;
  readonly givens: Entries;
  readonly measured: Entries;
  readonly price?: Entry;
  readonly life?: Entry;
  /** What a thing not yet bought would cost, by the name of what can be bought. */
  readonly offers?: Entries;
};

/** One change. For `title` the entry's value is the new title; for `price`, `life` and `title` the row is not looked at. */
export type Change = {
  readonly card: string;
  readonly part: "givens" | "measured" | "price" | "life" | "title";
  readonly row: string;
  /** Null: back to the usual value, or not measured. */
  readonly entry: Entry | null;
};

/** A card that a plan adds, and the id of the card behind which it stands ("" before all others; left out: last). */
export type AddedCard = Card & { readonly after?: string };

/** What could be otherwise: laid over the sheet as it is now, it is a whole worksheet again. */
export type Plan = {
  /** Its only name within the worksheet, in the user's words. */
  readonly name: string;
  readonly changes: readonly Change[];
  readonly added: readonly AddedCard[];
  /** Ids of the cards that it does without. */
  readonly removed: readonly string[];
};

/** An amount as typed, and its unit. */
export type Amount = { readonly value: number; readonly unit: string };

/** What was seen or done: appended, never changed. */
export type Note = {
  /** 128 bits, its only name anywhere; of a note made without chance a hash of its content. */
  readonly id: string;
  /** `YYYY-MM-DD`, and the minute of that day, where it is known. */
  readonly day: string;
  readonly minute?: number;
  /** dipped, gave, soaked, charged, and others; the words are kept whatever they are. */
  readonly what: string;
  /** The card that it is about. */
  readonly where: string;
  readonly value?: number;
  readonly unit?: string;
  /** A second amount, such as the rain that a dip went with. */
  readonly with?: Amount;
  /** By what it was given. */
  readonly by?: string;
  readonly text?: string;
  /** The note that this one takes back. */
  readonly undoes?: string;
};

/** What somebody notes now; without a day it is of today. */
export type ToBeNoted = Omit<Note, "id" | "day"> & Partial<Pick<Note, "day">>;

export type Worksheet = {
  readonly version: number;
  /** Tells one worksheet from another wherever its copies go. */
  readonly id?: string;
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
  readonly plans?: readonly Plan[];
  readonly notes?: readonly Note[];
};

/** Cards that exist exactly once, under these ids, each of the kind of the same name. */
export const SINGLE_CARDS = ["site", "weather", "season", "cost"] as const;

export const ID_PATTERN = /^[a-z][a-z0-9_]*$/;
