// Small slips that anyone writing a worksheet by hand makes, put right before the shape is checked.

import { isPlainObject, type Plain, type PlainObject } from "./plain.ts";

const ORIGINS = new Set<Plain>(["default", "guessed", "borrowed", "label", "measured"]);

function withoutNulls(object: PlainObject, names: readonly string[]): PlainObject {
  const kept = { ...object };
  for (const name of names) if (kept[name] === null) delete kept[name];
  return kept;
}

/** A bare number, word or list stands for an entry without a unit; an empty unit or origin is left out. */
function lenientEntry(entry: Plain): Plain {
  if (!isPlainObject(entry)) return typeof entry === "boolean" ? entry : { value: entry, unit: "" };
  const kept = withoutNulls(entry, ["unit", "low", "high", "from"]);
  const from = kept.from;
  if (typeof from === "string" && !ORIGINS.has(from)) delete kept.from;
  return kept;
}

function lenientEntries(entries: Plain): Plain {
  if (!isPlainObject(entries)) return entries;
  return Object.fromEntries(Object.entries(entries).map(([name, entry]) => [name, lenientEntry(entry)]));
}

/** A card with its slips put right; anything else comes back as it is. */
export function lenientCard(card: Plain): Plain {
  if (!isPlainObject(card)) return card;
  const kept = withoutNulls(card, ["title", "givens", "measured", "price", "life", "offers"]);
  for (const name of ["givens", "measured", "offers"]) {
    if (kept[name] !== undefined) kept[name] = lenientEntries(kept[name]);
  }
  for (const name of ["price", "life"]) {
    if (kept[name] !== undefined) kept[name] = lenientEntry(kept[name]);
  }
  return kept;
}

function lenientChange(change: Plain): Plain {
  // Without an entry it would not be told whether a row is to go back to its usual value.
  if (!isPlainObject(change) || change.entry === undefined || change.entry === null) return change;
  return { ...change, entry: lenientEntry(change.entry) };
}

/** A plan with its slips put right; anything else comes back as it is. */
export function lenientPlan(plan: Plain): Plain {
  if (!isPlainObject(plan)) return plan;
  const kept = withoutNulls(plan, ["changes", "added", "removed"]);
  if (Array.isArray(kept.changes)) kept.changes = kept.changes.map(lenientChange);
  if (Array.isArray(kept.added)) kept.added = kept.added.map(lenientCard);
  return kept;
}

/** The worksheet without the empty settings that have a usual value. */
export function lenientSheet(worksheet: PlainObject): PlainObject {
  return withoutNulls(worksheet, ["title", "units", "locale", "currency", "datum", "made_by", "made_on"]);
}
