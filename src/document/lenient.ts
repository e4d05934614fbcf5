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
  const kept = withoutNulls(entry, ["unit", "spread", "from"]);
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
  const kept = withoutNulls(card, ["title", "givens", "measured", "options", "price", "life"]);
  for (const name of ["givens", "measured"]) {
    if (kept[name] !== undefined) kept[name] = lenientEntries(kept[name]);
  }
  for (const name of ["price", "life"]) {
    if (kept[name] !== undefined) kept[name] = lenientEntry(kept[name]);
  }
  const options = kept.options;
  if (isPlainObject(options)) {
    kept.options = Object.fromEntries(
      Object.entries(options).map(([name, entries]) => [name, lenientEntries(entries)]),
    );
  }
  return kept;
}

/** The worksheet without the empty settings that have a usual value. */
export function lenientSheet(worksheet: PlainObject): PlainObject {
  return withoutNulls(worksheet, ["title", "units", "locale", "currency", "datum", "made_by", "made_on"]);
}
