// Version 2 to 3: levels, soaks and charges of a day become notes of that day.

import { contentNote } from "./notes.ts";
import { isPlainObject, type Plain, type PlainObject } from "./plain.ts";

/** Givens that become notes, and what they were. */
const OLD: Readonly<Record<string, string>> = { level_today: "dipped", last_soaked: "soaked" };

function dayOfSheet(cards: readonly Plain[], worksheet: PlainObject): string {
  const site = cards.find((card) => isPlainObject(card) && card.id === "site");
  const givens = isPlainObject(site) && isPlainObject(site.givens) ? site.givens : {};
  const typed = isPlainObject(givens.today) ? givens.today.value : null;
  if (typeof typed === "string" && typed !== "") return typed;
  return typeof worksheet.made_on === "string" ? worksheet.made_on : "";
}

/** The note that an old given becomes; null where it says nothing. */
function noteOf(where: string, row: string, entry: Plain, day: string): PlainObject | null {
  const what = OLD[row];
  if (what === undefined || !isPlainObject(entry)) return null;
  const { value, unit } = entry;
  if (what === "soaked" && typeof value === "string" && value !== "")
    return { ...contentNote({ day: value, what, where }) };
  if (typeof value !== "number" || day === "") return null;
  return { ...contentNote({ day, what, where, value, unit: typeof unit === "string" ? unit : "" }) };
}

const isSaid = (entry: Plain): boolean => isPlainObject(entry) && typeof entry.value === "number";

/** A card without what became notes; a level of which nobody can say the day stays where it is. */
function withoutSeen(card: Plain, day: string, notes: PlainObject[]): Plain {
  if (!isPlainObject(card) || !isPlainObject(card.givens)) return card;
  const kept = Object.entries(card.givens).filter(([row, entry]) => {
    if (OLD[row] === undefined) return true;
    const note = noteOf(String(card.id ?? ""), row, entry, day);
    if (note) notes.push(note);
    return !note && isSaid(entry);
  });
  return { ...card, givens: Object.fromEntries(kept) };
}

/** The worksheet of version 2 in version 3. */
export function toVersion3(worksheet: PlainObject): PlainObject {
  if (!Array.isArray(worksheet.cards)) return worksheet;
  const day = dayOfSheet(worksheet.cards, worksheet);
  const notes: PlainObject[] = Array.isArray(worksheet.notes) ? [...(worksheet.notes as PlainObject[])] : [];
  const cards = worksheet.cards.map((card) => withoutSeen(card, day, notes));
  return { ...worksheet, cards, ...(notes.length > 0 ? { notes } : {}) };
}
