// What sentences are made of, and what they may ask of the worksheet.

import { numberIn, shownIn, wordIn } from "../graph/readers.ts";
import type { Result } from "../graph/types.ts";
import { type Network, networkHeld } from "../network/network.ts";

export type Tone = "water" | "power" | "growth" | "trouble";

export type Piece = string | { readonly quantity: string; readonly tone: Tone };

export type Sentence = {
  readonly id: string;
  readonly lead: boolean;
  readonly pieces: readonly Piece[];
  /** Quantity whose movement is shown beside the sentence. */
  readonly watch: string;
};

/** What a sentence may ask of the worksheet. */
export type Asked = {
  readonly result: (id: string) => Result | undefined;
  readonly cards: readonly { readonly id: string; readonly kind: string; readonly title: string }[];
};

export const number = (asked: Asked, id: string): number | null => numberIn(asked.result(id));

export const networkOfSheet = (asked: Asked): Network => networkHeld(shownIn(asked.result("season.network")));

export const word = (asked: Asked, id: string): string => wordIn(asked.result(id));

/** The cards that have a row of that name, whatever their kind. */
export const withRow = (asked: Asked, row: string): Asked["cards"] =>
  asked.cards.filter(({ id }) => asked.result(`${id}.${row}`) !== undefined);

/** A number in a sentence; where there is none, the sentence gives the reason instead. */
export function value(quantity: string, tone: Tone): Piece {
  return { quantity, tone };
}

export function reasonOf(result: Result | undefined): string | null {
  if (!result) return "one of the worksheet's four fixed cards is missing";
  if (result.state === "none") return result.reason;
  if (result.state === "failed") return "a number it needs is wrong, as said below";
  return null;
}
