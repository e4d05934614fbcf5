// Version 3 to 4: what money is counted in stands in the worksheet's head alone. The card's own field said it, too, and nothing
// read it: what was typed there was meant. And the sky of a made-up place is called what it is called elsewhere: "Weather, made
// up" it was called still when a record had come in.

import { inOtherMoney } from "../units/other-money.ts";
import { LIMITS } from "./limits.ts";
import { isPlainObject, type Plain, type PlainObject } from "./plain.ts";

const givensOf = (card: Plain, kind: string): PlainObject | null =>
  isPlainObject(card) && card.kind === kind && isPlainObject(card.givens) ? card.givens : null;

/** What was typed into the field of the money's card; null where nothing was. */
function typedIn(cards: readonly Plain[]): string | null {
  const typed = cards.map((card) => {
    const entry = givensOf(card, "cost")?.currency;
    const value = isPlainObject(entry) ? entry.value : entry;
    return typeof value === "string" ? value.trim().slice(0, LIMITS.unit) : "";
  });
  return typed.find((text) => text !== "") ?? null;
}

/** A card without that field, its formulas in the money that was meant. */
function renamed(card: Plain, from: string, to: string): Plain {
  const ofMoney = givensOf(card, "cost");
  if (ofMoney && isPlainObject(card)) {
    const { currency: _typed, ...givens } = ofMoney;
    return { ...card, givens };
  }
  const ofLine = givensOf(card, "own");
  if (!ofLine || !isPlainObject(card)) return card;
  const said = (entry: Plain): Plain =>
    isPlainObject(entry) && typeof entry.value === "string"
      ? { ...entry, value: inOtherMoney(entry.value, from, to) }
      : entry;
  const called = ["formula", "unit"].flatMap((row) => {
    const entry = ofLine[row];
    return entry === undefined ? [] : [[row, said(entry)] as const];
  });
  return { ...card, givens: { ...ofLine, ...Object.fromEntries(called) } };
}

const OLD_SKY = "Weather, made up";

const skyCalled = (card: Plain): Plain =>
  isPlainObject(card) && card.kind === "weather" && card.title === OLD_SKY
    ? { ...card, title: "The sky" }
    : card;

/** The worksheet of version 3 in version 4. */
export function toVersion4(worksheet: PlainObject): PlainObject {
  if (!Array.isArray(worksheet.cards)) return worksheet;
  const stood = typeof worksheet.currency === "string" ? worksheet.currency : "$";
  const currency = typedIn(worksheet.cards) ?? stood;
  const cards = worksheet.cards.map((card) => skyCalled(renamed(card, stood, currency)));
  return { ...worksheet, ...(currency === stood ? {} : { currency }), cards };
}
