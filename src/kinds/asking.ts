// How a kind starts: what of it is counted, the cards that are laid out for it, and what only its grower knows, one screen each.

import { capital } from "../telling/words/lists.ts";
import type { MeasureName, UnitSystem } from "../units/measures.ts";
import type { Planted } from "./bed/crops.ts";
import type { Icon } from "./kind.ts";
import type { LaidPart, LaidUnits, Sort, Wish } from "./lay-out.ts";

/** What is told of a row, as the worksheet keeps it. */
export type Answer = {
  readonly value: number | string | readonly Planted[];
  readonly unit: string;
  readonly from?: "default" | "guessed" | "borrowed" | "label" | "measured";
  /** Ends of what somebody is not sure of, in the unit. */
  readonly low?: number;
  readonly high?: number;
};

/** A card as far as asking needs it. */
export type AskedCard = {
  readonly id: string;
  readonly kind: string;
  readonly title: string;
  readonly givens: Readonly<
    Record<string, { readonly value: unknown; readonly unit: string; readonly from?: Answer["from"] }>
  >;
};

/** A row of "What is there?". */
export type Counted = {
  readonly sort: Sort;
  /** Place among the rows, the way the water runs. */
  readonly place: number;
  readonly label: string;
  readonly help?: string;
  /** Its picture, where it is not the kind's own. */
  readonly icon?: Icon;
  /** More of them are added card by card. */
  readonly most: number;
};

/** What a screen says of a card's rows; null takes away what was said. */
export type Told = Readonly<Record<string, Answer | null>>;

/** What is known while something is asked: of the first card that is asked about. */
export type Known = {
  readonly card: AskedCard;
  readonly cards: readonly AskedCard[];
  readonly units: UnitSystem;
  /** A row's number in SI. */
  readonly number: (row: string) => number | null;
  /** In round steps, as a result is shown; or whole, as what was told. */
  readonly show: (si: number, measure: MeasureName, whole?: true) => string;
};

/** A word or a size that is picked with one touch. */
export type Pick = {
  readonly label: string;
  readonly told: Told;
  /** Shown only when more is asked for. */
  readonly seldom?: true;
};

export type Picks = {
  readonly label: string;
  /** Several may be picked at once: they are told together. */
  readonly together?: (picked: readonly Pick[]) => Told;
  /** Whether it is picked, where its rows alone do not tell. */
  readonly isPicked?: (pick: Pick, card: AskedCard) => boolean;
  /** One under the other, each on a line of its own. */
  readonly tall?: true;
  readonly picks: (known: Known) => readonly Pick[];
};

/** A number that is typed: under one row, or two as in "20 x 30". */
export type Field = {
  readonly row: string;
  readonly by?: readonly [row: string, row: string];
  /** Unit of a bare number, where it is not the row's own. */
  readonly unit?: { readonly us: string; readonly metric: string };
  /** What is typed as a plain number. */
  readonly plain?: (text: string) => string;
  /** What else follows from it. */
  readonly told?: (si: number) => Told;
};

/** One screen. */
export type Ask = {
  /** Where it comes in the walk, over all kinds. */
  readonly place: number;
  /** Rows one of which says that it was answered. */
  readonly rows: readonly string[];
  /** "{title}: how long is it?" */
  readonly ask: string;
  /** The same of several that are alike: "{count} beds: how long and wide is each?" */
  readonly alike?: string;
  readonly hint: string;
  readonly field?: Field;
  readonly picks?: readonly Picks[];
  readonly when?: (card: AskedCard, cards: readonly AskedCard[]) => boolean;
  /** An answer that needs no place yet. */
  readonly says?: (known: Known) => string | null;
  /** What an answer means for other cards. */
  readonly others?: (told: Told, cards: readonly AskedCard[]) => Readonly<Record<string, Told>>;
  /** Mostly picked, so that it counts as no number. */
  readonly picked?: true;
  /** Stays on the page, to be said there when all else is. */
  readonly onPage?: true;
};

export type Start = {
  readonly counted?: readonly Counted[];
  readonly laid?: (wish: Wish, system: LaidUnits) => readonly LaidPart[];
  readonly asks?: readonly Ask[];
};

export type Starts = Readonly<Record<string, Start>>;

/** A screen as it is asked: of one card, or of several that are alike. */
export type Question<Card extends AskedCard = AskedCard> = {
  readonly id: string;
  readonly kind: string;
  readonly ask: Ask;
  readonly cards: readonly Card[];
  readonly said: boolean;
};

const isTold = (entry: AskedCard["givens"][string] | undefined): boolean =>
  entry !== undefined && entry.from !== "default";

const isSaid = (card: AskedCard, { rows }: Ask): boolean => rows.some((row) => isTold(card.givens[row]));

const saidOf = (card: AskedCard, { rows }: Ask): string =>
  JSON.stringify(rows.map((row) => (isTold(card.givens[row]) ? card.givens[row] : null)));

/** The cards that one screen asks about together: those of which the same was said, or nothing yet. */
function together<Card extends AskedCard>(
  ask: Ask,
  cards: readonly Card[],
  isApart: boolean,
): readonly (readonly Card[])[] {
  const [first] = cards;
  if (!first) return [];
  const alike =
    ask.alike !== undefined && !isApart && new Set(cards.map((card) => saidOf(card, ask))).size === 1;
  return alike ? [cards] : cards.map((card) => [card]);
}

/**
 * Every screen for a place, answered or not, in the order of asking.
 * @param apart questions that somebody wants to answer for each card by itself, by kind and place
 */
export function questionsOf<Card extends AskedCard>(
  starts: Starts,
  cards: readonly Card[],
  apart: ReadonlySet<string> = new Set(),
): readonly Question<Card>[] {
  const all = Object.entries(starts).flatMap(([kind, { asks = [] }]) =>
    asks.flatMap((ask) => {
      const of = cards.filter((card) => card.kind === kind && (ask.when?.(card, cards) ?? true));
      return together(ask, of, apart.has(apartKey(kind, ask))).map((some): Question<Card> => {
        const id = `${some[0]?.id}.${ask.rows[0]}`;
        return { id, kind, ask, cards: some, said: some.every((card) => isSaid(card, ask)) };
      });
    }),
  );
  return all.toSorted(
    (a, b) => Number(a.ask.onPage ?? 0) - Number(b.ask.onPage ?? 0) || a.ask.place - b.ask.place,
  );
}

/** Under what it is kept that a question is answered for each by itself. */
export const apartKey = (kind: string, { place }: Ask): string => `${kind} ${place}`;

const SMALL = ["no", "one", "two", "three", "four", "five", "six"];

/** "3" as "three". */
export const spelled = (count: number): string => SMALL[count] ?? String(count);

/** The question in words. */
export function asked({ ask, cards }: Question): string {
  if (cards.length > 1 && ask.alike !== undefined) {
    const text = ask.alike.replace("{count}", spelled(cards.length));
    return capital(text);
  }
  return ask.ask.replace("{title}", cards[0]?.title ?? "");
}
