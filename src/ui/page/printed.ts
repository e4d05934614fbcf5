// What only paper shows, put together from what each kind says is to be printed of it.

import { isReady, numberIn } from "../../graph/readers.ts";
import { isMet } from "../../graph/row-when.ts";
import type { Result } from "../../graph/types.ts";
import { isPriced, type Kind, type Kinds } from "../../kinds/kind.ts";
import { printedSettings } from "../../telling/printed.ts";

/** What the printed page asks of a worksheet. */
export type Printing = {
  readonly kinds: Kinds;
  readonly cards: readonly { readonly id: string; readonly kind: string; readonly title: string }[];
  readonly result: (id: string) => Result | undefined;
  readonly shown: (id: string) => string;
  readonly label: (id: string) => string;
};

type OfCard = { readonly id: string; readonly title: string };

export type ToBuy = OfCard & { readonly kind: string; readonly price: string };
export type ToSet = OfCard & { readonly settings: string };
export type OnPaper = OfCard & { readonly price: string; readonly settings: string };
export type ToWater = OfCard & {
  readonly volume: string;
  readonly every: string;
  /** "" where nobody waters it yet, or where no day of the coming week is known. */
  readonly by: string;
  readonly days: string;
};

/** A quantity as it is shown; "" while there is none. */
const given = ({ result, shown }: Printing, id: string): string => (isReady(result(id)) ? shown(id) : "");

const eachCard = <Made>(
  asked: Printing,
  make: (card: OfCard, kind: Kind) => readonly Made[],
): readonly Made[] =>
  asked.cards.flatMap((card) => {
    const kind = asked.kinds[card.kind];
    return kind ? make(card, kind) : [];
  });

/** The parts that have a price. */
export const shopping = (asked: Printing): readonly ToBuy[] =>
  eachCard(asked, ({ id, title }, kind) => {
    const price = isPriced(kind) ? given(asked, `${id}.price`) : "";
    return price === "" ? [] : [{ id, title, kind: kind.label, price }];
  });

/** Whether a row stands on its card; of a single one nobody says how many. */
function isPrinted(asked: Printing, card: string, { rows }: Kind, name: string): boolean {
  const row = rows.find((one) => one.name === name);
  if (given(asked, `${card}.${name}`) === "" || !isMet(row?.when, asked.result(`${card}.${row?.when?.row}`)))
    return false;
  return name !== "count" || numberIn(asked.result(`${card}.count`)) !== 1;
}

/** Its sizes, and what is set or done by hand, card by card. */
export const settings = (asked: Printing): readonly ToSet[] =>
  eachCard(asked, ({ id, title }, kind) => {
    const said = (kind.handSettings ?? [])
      .filter((name) => isPrinted(asked, id, kind, name))
      .map((name) => `${id}.${name}`)
      .map((quantity) => [asked.label(quantity), asked.shown(quantity)] as const);
    return said.length > 0 ? [{ id, title, settings: printedSettings(said) }] : [];
  });

/** Every part that has a price or something to set, in the order of the sheet. */
export function partsOnPaper(asked: Printing): readonly OnPaper[] {
  const priced = new Map(shopping(asked).map((part) => [part.id, part.price]));
  const set = new Map(settings(asked).map((part) => [part.id, part.settings]));
  return asked.cards
    .map(({ id, title }) => ({ id, title, price: priced.get(id) ?? "", settings: set.get(id) ?? "" }))
    .filter(({ price, settings: said }) => price !== "" || said !== "");
}

/** What is watered, how much and how often when it is driest. */
export const waterings = (asked: Printing): readonly ToWater[] =>
  eachCard(asked, ({ id, title }, { watered }) => {
    if (!watered) return [];
    const of = (row: string) => given(asked, `${id}.${row}`);
    const every = of(watered.every);
    if (every === "") return [];
    return [{ id, title, volume: of(watered.volume), every, by: of(watered.by), days: of(watered.days) }];
  });
