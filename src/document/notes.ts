// What was seen and done in the season: notes, appended and never changed, each undone by another. They are the only home of
// today's levels, of soaks and of charges, which are laid over the sheet from here.

import { TELLS_FOR } from "../happened/happened.ts";
import { happenedText } from "../happened/text.ts";
import { parseIsoDate } from "../units/calendar.ts";
import { withEntry } from "./entries.ts";
import { frozen } from "./freeze.ts";
import { LIMITS } from "./limits.ts";
import { inForce } from "./note-order.ts";
import { happenedOf, tellingOf } from "./telling-notes.ts";
import type { Card, Entry, Note, Worksheet } from "./worksheet.ts";

/** What is noted of a part, and the given of it that the latest such note is read as. */
const READ_AS: Readonly<Record<string, string>> = {
  dipped: "level_today",
  soaked: "last_soaked",
  charged: "charge_noted",
  swapped: "charge_noted",
};

/** Givens that have no home but notes, and what is noted for them. */
export const NOTED_GIVENS: ReadonlyMap<string, string> = new Map([
  ["level_today", "dipped"],
  ["last_soaked", "soaked"],
  ["charge_noted", "charged"],
]);

/** The day on which a dip was read, and what is said of it: givens beside the level. */
const DIPPED_ON = "dipped_on";
const DIP_SAID = "dip_said";

/** Two lists as one: each note once, by its id. */
export function united(one: readonly Note[], other: readonly Note[]): readonly Note[] {
  const known = new Set(one.map(({ id }) => id));
  const more = other.filter(({ id }) => !known.has(id) && known.add(id));
  return more.length === 0 ? one : frozen([...one, ...more]);
}

/** A worksheet with other notes; the very same where they are its own. */
export function withNotes(worksheet: Worksheet, notes: readonly Note[]): Worksheet {
  if ((worksheet.notes ?? []) === notes) return worksheet;
  const { notes: _before, ...bare } = worksheet;
  return frozen(notes.length === 0 ? bare : { ...bare, notes });
}

/** A worksheet with a note more; the same where it is there already, has no finite amount or is one too many. */
export function noted(worksheet: Worksheet, note: Note): Worksheet {
  const notes = worksheet.notes ?? [];
  if (notes.length >= LIMITS.notes || !Number.isFinite(note.value ?? 0)) return worksheet;
  return withNotes(worksheet, united(notes, [frozen(note)]));
}

/** The worksheet with what was last said of a part that way taken back; the same where nothing was. */
export function takenBack(worksheet: Worksheet, undoing: Omit<Note, "undoes">): Worksheet {
  const { where } = undoing;
  const last = inForce(worksheet.notes ?? []).findLast(
    (note) => note.where === where && note.what === undoing.what,
  );
  return last ? noted(worksheet, { ...undoing, what: "undid", undoes: last.id }) : worksheet;
}

/** A worksheet with a note in the place of those of the same on that day, which it undoes. */
export function notedInstead(worksheet: Worksheet, note: Note): Worksheet {
  const { day, what, where } = note;
  const same = inForce(worksheet.notes ?? []).filter(
    (other) => other.day === day && other.what === what && other.where === where && other.id !== note.id,
  );
  const undone = same.map(({ id }) => contentNote({ day, what: "undid", where, undoes: id }));
  return noted(undone.reduce(noted, worksheet), note);
}

/**
 * A note's id out of its content, where no chance is at hand: the same note twice is one.
 *
 * @param content the note as text
 * @returns 128 bits as 32 hexadecimal letters
 */
function contentId(content: string): string {
  const words = [0x811c9dc5, 0x9e3779b9, 0x85ebca6b, 0xc2b2ae35];
  for (let place = 0; place < content.length; place++) {
    const code = content.charCodeAt(place);
    for (let word = 0; word < 4; word++)
      words[word] = Math.imul((words[word] as number) ^ (code + word * 131), 0x01000193) ^ (place << word);
  }
  return words.map((word) => (word >>> 0).toString(16).padStart(8, "0")).join("");
}

/** A note whose id is a hash of what it says. */
export function contentNote(content: Omit<Note, "id">): Note {
  return { id: contentId(JSON.stringify(content)), ...content };
}

/** What a given that lives in notes is written down as: the part's dip, soak or charge; null where the entry says nothing. */
export function noteOfGiven(where: string, given: string, entry: Entry, day: string): Note | null {
  const what = NOTED_GIVENS.get(given);
  if (what === undefined) return null;
  if (what === "soaked")
    return typeof entry.value === "string" && parseIsoDate(entry.value) !== null
      ? contentNote({ day: entry.value, what, where })
      : null;
  return typeof entry.value === "number"
    ? contentNote({ day, what, where, value: entry.value, unit: entry.unit })
    : null;
}

function entriesOf({ what, day, value, unit = "", text = "" }: Note): readonly (readonly [string, Entry])[] {
  if (what === "soaked") return [["last_soaked", { value: day, unit: "" }]];
  const given = READ_AS[what];
  if (what === "swapped") return [["charge_noted", { value: value ?? 1, unit, from: "measured" }]];
  if (given === undefined || value === undefined) return [];
  const entry: Entry = { value, unit, from: "measured" };
  return what === "dipped"
    ? [
        [given, entry],
        [DIPPED_ON, { value: day, unit: "" }],
        [DIP_SAID, { value: text, unit: "" }],
      ]
    : [[given, entry]];
}

/** The latest notes of each part that are read as givens. */
function latestBy(telling: readonly Note[]): ReadonlyMap<string, readonly Note[]> {
  const latest = new Map<string, Map<string, Note>>();
  for (const note of telling) {
    const given = READ_AS[note.what];
    if (given === undefined) continue;
    const own = latest.get(note.where) ?? new Map<string, Note>();
    own.set(given, note);
    latest.set(note.where, own);
  }
  return new Map([...latest].map(([where, own]) => [where, [...own.values()]]));
}

/** The day that counts as today: one that was typed, else the clock's as soon as anything was noted lately. */
export function dayOf(worksheet: Worksheet, clock: string | null): string | null {
  const typed = worksheet.cards.find(({ id }) => id === "site")?.givens.today?.value;
  if (typeof typed === "string" && typed !== "") return typed;
  const now = parseIsoDate(clock ?? "");
  const isLately = ({ day }: Note) => (parseIsoDate(day) ?? 0) >= (now ?? 0) - TELLS_FOR;
  return now !== null && tellingOf(worksheet.notes ?? [], now).some(isLately) ? clock : null;
}

/**
 * A worksheet with what was noted laid over it: today's day, levels, soaks and charges.
 *
 * @param clock today by the clock or the command line `YYYY-MM-DD`; null: nobody knows
 * @param forecast what is expected of the coming days, as text; it is kept on the device and never in the worksheet
 * @returns the worksheet as it is worked out, never as it is saved; the very same where nothing tells of today
 */
export function withSeen(worksheet: Worksheet, clock: string | null, forecast = ""): Worksheet {
  const day = dayOf(worksheet, clock);
  const today = parseIsoDate(day ?? "");
  if (day === null || today === null) return worksheet;
  const telling = tellingOf(worksheet.notes ?? [], today);
  const latest = latestBy(telling);
  const beside: Readonly<Record<string, Readonly<Record<string, string>>>> = {
    site: { today: day, happened: happenedText(telling.flatMap((note) => happenedOf(note) ?? [])) },
    season: { forecast },
  };
  const seen = (card: Card): Card => {
    const entries = (latest.get(card.id) ?? []).flatMap(entriesOf);
    const own = Object.entries(beside[card.id] ?? {}).map(
      ([name, value]) => [name, { value, unit: "" }] as const,
    );
    const givens = [...entries, ...own].reduce(
      (known, [name, entry]) => withEntry(known, name, entry),
      card.givens,
    );
    return givens === card.givens ? card : { ...card, givens };
  };
  return frozen({ ...worksheet, cards: worksheet.cards.map(seen) });
}
