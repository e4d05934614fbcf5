// What sentences are made of, and what they may ask of the worksheet.

import { shownIn } from "../graph/readers.ts";
import type { Result } from "../graph/types.ts";
import { type Network, networkHeld } from "../network/network.ts";
import { roundedCount } from "../units/rounding.ts";

/** `plain` is of the sentence's own color: a year, a count that is no answer by itself. */
export type Tone = "water" | "power" | "growth" | "trouble" | "plain";

/** A quantity in a sentence, which is pressed for its working. */
export type NumberPiece = {
  readonly quantity: string;
  readonly tone: Tone;
  /** Said in place of the number itself: how many seasons none of which is short. */
  readonly text?: string;
  /** What belongs to the number and must not part from it: " of 20", " days". */
  readonly after?: string;
  /** The quantity of which this one is a part: "7 of 20 seasons". */
  readonly whole?: string;
  /** What stands there is of before. */
  readonly soft?: true;
  /** What it was stands behind these words: "was short in 7"; else after "was" alone; null: it is never said. */
  readonly was?: string | null;
  /** What it was, where it is no number of the sheet that could be asked. */
  readonly before?: string;
};

export type Piece = string | NumberPiece;

/** What of the words behind a number belongs to its phrase, its last word apart, and the stop that ends it. */
export type Phrase = {
  readonly words: string;
  readonly lead: string;
  readonly last: string;
  readonly stop: string;
};

const NO_PHRASE: Phrase = { words: "", lead: "", last: "", stop: "" };
const PHRASE = /^(?<words>(?<lead>[^,.;:]*?)(?<last>[^\s,.;:]*))(?<stop>[,.;:]|$)/;
/** Words that begin with a stop end the phrase of those before them. */
const STOPPED = /^[,.;:]/;

/**
 * The phrase that a number stands in, to its end: what the number was stands behind it, as in "never short in 20 seasons, was
 * short in 13". Words between two numbers of one phrase are none of it.
 */
export function phraseAfter(pieces: readonly Piece[], at: number): Phrase {
  const [text, next] = [pieces[at + 1], pieces[at + 2]];
  const found = typeof text === "string" ? PHRASE.exec(text)?.groups : undefined;
  if (!found) return NO_PHRASE;
  const { words = "", lead = "", last = "", stop = "" } = found;
  const isEnded = stop !== "" || next === undefined || (typeof next === "string" && STOPPED.test(next));
  return isEnded ? { words, lead, last, stop } : NO_PHRASE;
}

/** What can be done about what a sentence says. */
export type Act = {
  readonly does: "ask_for" | "change" | "go_to" | "lay_out" | "open_file";
  /** The quantity that is asked for or to be changed, or where the trouble is. */
  readonly at?: string;
};

export type Sentence = {
  readonly id: string;
  readonly lead: boolean;
  readonly pieces: readonly Piece[];
  readonly acts?: readonly Act[];
};

/** What a sentence may ask of the worksheet. */
export type Asked = {
  readonly result: (id: string) => Result | undefined;
  readonly cards: readonly { readonly id: string; readonly kind: string; readonly title: string }[];
  /** What the numbers were before the last change, or as held. */
  readonly before?: (id: string) => Result | undefined;
  /** Whether a number is not sure, and its ends are shown in its place. */
  readonly isSpan?: (id: string) => boolean;
};

/** The number now, or the last one while a new one is worked out. */
export function number(asked: Asked, id: string): number | null {
  const value = shownIn(asked.result(id));
  return typeof value === "number" ? value : null;
}

/** Whether a number is, was or is about to be there: a sentence may give it. */
export const isSaid = (asked: Asked, id: string): boolean =>
  number(asked, id) !== null || asked.result(id)?.state === "pending";

export const networkOfSheet = (asked: Asked): Network => networkHeld(shownIn(asked.result("season.network")));

/** The word now, or the last one; "" where there is none. */
export function word(asked: Asked, id: string): string {
  const value = shownIn(asked.result(id));
  return typeof value === "string" ? value : "";
}

export const isMadeUp = (asked: Asked): boolean => word(asked, "weather.record_kind").startsWith("made up");

export const titleOf = ({ cards }: Asked, id: string): string =>
  cards.find((card) => card.id === id)?.title ?? id;

/** The cards that have a row of that name, whatever their kind. */
export const withRow = (asked: Asked, row: string): Asked["cards"] =>
  asked.cards.filter(({ id }) => asked.result(`${id}.${row}`) !== undefined);

/** A number in a sentence; where there is none, the sentence gives the reason instead. */
export function value(
  quantity: string,
  tone: Tone,
  more: Omit<NumberPiece, "quantity" | "tone"> = {},
): Piece {
  return { quantity, tone, ...more };
}

/** Whether a count reads as one: a mean of 1.2 days does, a span never. */
const isOne = (asked: Asked, id: string): boolean =>
  roundedCount(number(asked, id) ?? 0) === 1 && !asked.isSpan?.(id);

/** A mean of fewer days than this, and of more than none, would read as a part of a day, which nobody says. */
const LEAST_DAYS = 0.75;
const isUnderADay = (days: number): boolean => days > 0 && days < LEAST_DAYS;

/** A count with the thing counted behind it: "8 days", "1 day", "less than a day". */
export function counted(
  asked: Asked,
  id: string,
  tone: Tone,
  thing: string,
  more: Pick<NumberPiece, "was"> = {},
): Piece {
  const isLess = thing === "day" && isUnderADay(number(asked, id) ?? 0) && !asked.isSpan?.(id);
  if (isLess) return value(id, tone, { text: "less than a day", ...more });
  return value(id, tone, { after: isOne(asked, id) ? ` ${thing}` : ` ${thing}s`, ...more });
}

export function reasonOf(result: Result | undefined): string | null {
  if (!result) return "one of the worksheet's four fixed cards is missing";
  if (result.state === "none") return result.reason;
  if (result.state === "failed") return "a number it needs is wrong, as said below";
  return null;
}

/** A sentence as it is read, each number as it is shown. */
export const textOf = ({ pieces }: Sentence, shown: (id: string) => string): string =>
  pieces
    .map((piece) =>
      typeof piece === "string" ? piece : `${piece.text ?? shown(piece.quantity)}${piece.after ?? ""}`,
    )
    .join("");
