// What could be bought for the parts that stand: each as changes of the worksheet, with its price where one is known.

import type { Card, Change, Entry, Worksheet } from "../document/worksheet.ts";
import { numberIn, shownIn, wordIn } from "../graph/readers.ts";
import type { QuantityId, Result, Row } from "../graph/types.ts";
import type { Kinds, Offer } from "../kinds/kind.ts";
import { fromSi } from "../units/unit.ts";

/** One thing that can be bought. */
export type Buy = {
  /** "porch_roof.gutter". */
  readonly name: string;
  readonly card: string;
  readonly offer: string;
  /** "a gutter on Porch roof", "a bigger battery for Shed, 35 Ah". */
  readonly title: string;
  /** Changes that come with it; several lists where there is a choice of what it is joined to. */
  readonly ways: readonly (readonly Change[])[];
  /** What it costs [money]; null: nobody has said. */
  readonly cost: number | null;
  /** Whether that price was said of it; else it is what those that stand there cost apiece. */
  readonly said: boolean;
};

type Results = { readonly get: (id: QuantityId) => Result | undefined };

type Standing = {
  readonly worksheet: Worksheet;
  readonly card: Card;
  readonly row: Row;
  readonly now: Result | undefined;
};

const SAME = 1e-6;

/** Entries of the row that buying sets it to; none where there is nothing to buy. */
function entriesFor({ buys }: Offer, at: Standing): readonly Entry[] {
  if (buys === "link") return linked(at);
  if (buys === "next_word") return nextWord(at);
  if (buys === "nought") return (numberIn(at.now) ?? 0) > 0 ? [{ value: 0, unit: unitOf(at) }] : [];
  if ("word" in buys) {
    return wordIn(at.now) === buys.instead_of ? [{ value: buys.word, unit: "" }] : [];
  }
  const number = numberIn(at.now);
  if (number === null) return [];
  if ("more" in buys) return oneMore(at, number, buys.most);
  const next = buys.larger.find((size) => size > fromSi(number, buys.unit) * (1 + SAME));
  return next === undefined ? [] : [{ value: next, unit: buys.unit }];
}

/** The unit that an entry of the row has or would have. */
function unitOf({ card, row }: Standing): string {
  const typed = card.givens[row.name]?.unit;
  if (typed) return typed;
  const usual = row.row === "given" && Array.isArray(row.default) ? row.default[1] : "";
  return String(usual);
}

function oneMore({ row }: Standing, number: number, most = Number.POSITIVE_INFINITY): readonly Entry[] {
  const limit = Math.min(most, row.row === "given" ? (row.max ?? most) : most);
  return number + 1 <= limit ? [{ value: number + 1, unit: "1" }] : [];
}

function nextWord({ row, now }: Standing): readonly Entry[] {
  if (row.row !== "choice") return [];
  const at = row.options.findIndex(({ word }) => word === wordIn(now));
  const next = at < 0 ? undefined : row.options[at + 1];
  return next ? [{ value: next.word, unit: "" }] : [];
}

/** Each card that a link leading nowhere may lead to. */
function linked({ worksheet, card, row, now }: Standing): readonly Entry[] {
  if (row.row !== "link" || shownIn(now)) return [];
  return worksheet.cards
    .filter(({ id, kind }) => id !== card.id && row.kinds.includes(kind))
    .map(({ id }) => ({ value: id, unit: "" }));
}

/** Changes that set the row to an entry and take out what was of the old thing. */
function changesTo({ row, forgets = [] }: Offer, card: Card, entry: Entry): readonly Change[] {
  const old = (part: "givens" | "measured") =>
    [...(part === "measured" ? [row] : []), ...forgets]
      .filter((name) => Object.hasOwn(card[part], name))
      .map((name) => ({ card: card.id, part, row: name, entry: null }));
  return [{ card: card.id, part: "givens", row, entry }, ...old("givens"), ...old("measured")];
}

/** What it would be then, where that is a size or a word: ", 35 Ah", ", 800 gph"; "" where `says` says it all. */
function sizeSaid({ buys }: Offer, { row }: Standing, entry: Entry | undefined): string {
  if (!entry) return "";
  if (typeof buys === "object" && "larger" in buys) return `, ${entry.value} ${entry.unit}`;
  const word = buys === "next_word" && row.row === "choice" ? entry.value : null;
  const option = row.row === "choice" && row.options.find((one) => one.word === word);
  return option ? `, ${option.label}` : "";
}

const moneyOf = (entry: Entry | undefined): number | null =>
  typeof entry?.value === "number" ? entry.value : null;

/** What those that stand there cost apiece, for one more of them. */
function apiece({ buys }: Offer, { card, now }: Standing): number | null {
  const [price, count] = [moneyOf(card.price), numberIn(now)];
  if (typeof buys === "string" || !("more" in buys)) return null;
  return price !== null && count !== null && count > 0 ? price / count : null;
}

function buyOf(offer: Offer, at: Standing): readonly Buy[] {
  const entries = entriesFor(offer, at);
  if (entries.length === 0) return [];
  const { card } = at;
  const said = moneyOf(card.offers?.[offer.name]);
  return [
    {
      name: `${card.id}.${offer.name}`,
      card: card.id,
      offer: offer.name,
      title: `${offer.says.replace("{}", card.title)}${sizeSaid(offer, at, entries[0])}`,
      ways: entries.map((entry) => changesTo(offer, card, entry)),
      cost: said ?? apiece(offer, at),
      said: said !== null,
    },
  ];
}

/** Everything that could be bought for the parts that stand, in the order of the cards. */
export function buysOf(worksheet: Worksheet, kinds: Kinds, results: Results): readonly Buy[] {
  return worksheet.cards.flatMap((card) => {
    const kind = kinds[card.kind];
    return (kind?.offers ?? []).flatMap((offer) => {
      const row = kind?.rows.find(({ name }) => name === offer.row);
      if (!row) return [];
      return buyOf(offer, { worksheet, card, row, now: results.get(`${card.id}.${row.name}`) });
    });
  });
}
