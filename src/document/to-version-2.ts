// Version 1 to 2: doubt as a share of the value becomes low and high; a card's options become plans of the worksheet.

import { LIMITS } from "./limits.ts";
import { isPlainObject, type Plain, type PlainObject } from "./plain.ts";
import { sameData } from "./same.ts";

/** Digits of an end worked out from a share: all that a typed number has, none of what halving and adding leaves. */
const DIGITS = 12;

function withEnds(entry: Plain): Plain {
  if (!isPlainObject(entry) || entry.spread === undefined) return entry;
  const { spread, ...rest } = entry;
  if (typeof spread !== "number" || typeof rest.value !== "number" || !(spread > 0)) return rest;
  const half = Math.abs(rest.value) * spread;
  const end = (value: number): number => Number(value.toPrecision(DIGITS));
  const [low, high] = [end(rest.value - half), end(rest.value + half)];
  return Number.isFinite(low) && Number.isFinite(high) ? { ...rest, low, high } : rest;
}

function eachWithEnds(entries: Plain | undefined): Plain | undefined {
  if (!isPlainObject(entries)) return entries;
  return Object.fromEntries(Object.entries(entries).map(([name, entry]) => [name, withEnds(entry)]));
}

function cardWithEnds(card: Plain): Plain {
  if (!isPlainObject(card)) return card;
  const next = { ...card };
  for (const name of ["givens", "measured"]) {
    const entries = eachWithEnds(card[name]);
    if (entries !== undefined) next[name] = entries;
  }
  for (const name of ["price", "life"]) {
    const entry = card[name];
    if (entry !== undefined) next[name] = withEnds(entry);
  }
  if (isPlainObject(card.options))
    next.options = Object.fromEntries(
      Object.entries(card.options).map(([name, entries]) => [name, eachWithEnds(entries) ?? null]),
    );
  return next;
}

const groupOf = (value: Plain | undefined): PlainObject => (isPlainObject(value) ? value : {});

/** What turns some givens into others. A rain record is no part of a plan. */
function changesBetween(card: string, from: PlainObject, to: PlainObject): Plain[] {
  const rows = [...new Set([...Object.keys(from), ...Object.keys(to)])];
  return rows.flatMap((row): Plain[] => {
    const [before, after] = [from[row], to[row]];
    if (sameData(before, after) || (card === "weather" && row === "record")) return [];
    const entry = after === undefined ? null : (after ?? { value: null, unit: "" });
    return [{ card, part: "givens", row, entry }];
  });
}

type Freed = { readonly card: Plain; readonly plans: readonly { name: string; changes: Plain[] }[] };

/** A card without options: the one in use laid over it, each other and what it covered as a plan. */
function freed(card: Plain): Freed {
  if (!isPlainObject(card)) return { card, plans: [] };
  const { options, active, ...bare } = card;
  const id = typeof bare.id === "string" ? bare.id : "";
  const title = typeof bare.title === "string" && bare.title !== "" ? bare.title : id;
  const named = groupOf(options);
  const own = groupOf(bare.givens);
  const inUse = typeof active === "string" && Object.hasOwn(named, active) ? active : null;
  if (inUse === null && Object.keys(named).length === 0) return { card: bare, plans: [] };
  const counts = inUse === null ? own : { ...own, ...groupOf(named[inUse]) };
  const others = Object.entries(named).filter(([name]) => name !== inUse);
  const kept: (readonly [string, PlainObject])[] = others.map(([name, givens]) => [
    `${title}: ${name}`,
    { ...own, ...groupOf(givens) },
  ]);
  if (inUse !== null) kept.push([`${title}: without "${inUse}"`, own]);
  const plans = kept.map(([name, givens]) => ({
    name: name.slice(0, LIMITS.title),
    changes: changesBetween(id, counts, givens),
  }));
  return { card: { ...bare, givens: counts }, plans: plans.filter(({ changes }) => changes.length > 0) };
}

/** The worksheet of version 1 in version 2. */
export function toVersion2(worksheet: PlainObject): PlainObject {
  if (!Array.isArray(worksheet.cards)) return worksheet;
  const all = worksheet.cards.map((card) => freed(cardWithEnds(card)));
  const plans = all
    .flatMap((one) => one.plans)
    .map(({ name, changes }) => ({ name, changes, added: [], removed: [] }))
    .slice(0, LIMITS.plans);
  const next = { ...worksheet, cards: all.map(({ card }) => card) };
  return plans.length > 0 ? { ...next, plans } : next;
}
