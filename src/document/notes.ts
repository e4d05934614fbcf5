// What was seen and done in the season: notes, appended and never changed, each undone by another. They are the only home of
// today's levels, of soaks and of charges, which are laid over the sheet from here.

import { parseIsoDate } from "../units/calendar.ts";
import { withEntry } from "./entries.ts";
import { frozen } from "./freeze.ts";
import { LIMITS } from "./limits.ts";
import type { Card, Entry, Note, Worksheet } from "./worksheet.ts";

/** Days after which a note no longer tells of today: our definition. */
const NOTED_FOR = 60;

/** What is noted of a part, and the given of it that the latest such note is read as. */
const READ_AS: Readonly<Record<string, string>> = {
  dipped: "level_today",
  soaked: "last_soaked",
  charged: "charge_noted",
};

/** Givens that have no home but notes. */
export const NOTED_GIVENS: ReadonlyMap<string, string> = new Map(
  Object.entries(READ_AS).map(([what, given]) => [given, what]),
);

/** The day on which a dip that is not today's was read: a given beside the level. */
const DIPPED_ON = "dipped_on";

/** Earlier first: by day, then by the time of day, those without one first but for what was after the watering, then by id. */
export function inOrder(notes: readonly Note[]): readonly Note[] {
  const key = ({ day, minute, text }: Note) =>
    `${day} ${String(minute ?? (text === "after" ? 1440 : -1)).padStart(4, "0")}`;
  return [...notes].sort(
    (a, b) => (key(a) < key(b) ? -1 : key(a) > key(b) ? 1 : 0) || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0),
  );
}

/** Notes that no other note in force undoes, in order; those that undo are not among them. */
export function inForce(notes: readonly Note[]): readonly Note[] {
  const undoing = new Map<string, Note[]>();
  for (const note of notes)
    if (note.undoes !== undefined) undoing.set(note.undoes, [...(undoing.get(note.undoes) ?? []), note]);
  const stands = (note: Note, seen: ReadonlySet<string>): boolean => {
    if (seen.has(note.id)) return false;
    const beyond = new Set([...seen, note.id]);
    return !(undoing.get(note.id) ?? []).some((other) => stands(other, beyond));
  };
  return inOrder(notes.filter((note) => note.undoes === undefined && stands(note, new Set())));
}

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

function entriesOf({ what, day, value, unit = "" }: Note): readonly (readonly [string, Entry])[] {
  if (what === "soaked") return [["last_soaked", { value: day, unit: "" }]];
  const given = READ_AS[what];
  if (given === undefined || value === undefined) return [];
  const entry: Entry = { value, unit, from: "measured" };
  return what === "dipped"
    ? [
        [given, entry],
        [DIPPED_ON, { value: day, unit: "" }],
      ]
    : [[given, entry]];
}

/** The latest notes of each part that tell of a day. */
function latestBy(notes: readonly Note[], today: number): ReadonlyMap<string, readonly Note[]> {
  const latest = new Map<string, Map<string, Note>>();
  for (const note of inForce(notes)) {
    const day = parseIsoDate(note.day);
    if (day === null || day > today || day < today - NOTED_FOR || READ_AS[note.what] === undefined) continue;
    const own = latest.get(note.where) ?? new Map<string, Note>();
    own.set(note.what, note);
    latest.set(note.where, own);
  }
  return new Map([...latest].map(([where, own]) => [where, [...own.values()]]));
}

/** The day that counts as today: one that was typed, else the clock's as soon as anything was noted lately. */
export function dayOf(worksheet: Worksheet, clock: string | null): string | null {
  const typed = worksheet.cards.find(({ id }) => id === "site")?.givens.today?.value;
  if (typeof typed === "string" && typed !== "") return typed;
  const now = parseIsoDate(clock ?? "");
  if (now === null || latestBy(worksheet.notes ?? [], now).size === 0) return null;
  return clock;
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
  const latest = latestBy(worksheet.notes ?? [], today);
  const beside: Readonly<Record<string, readonly [string, Entry]>> = {
    site: ["today", { value: day, unit: "" }],
    season: ["forecast", { value: forecast, unit: "" }],
  };
  const seen = (card: Card): Card => {
    const entries = (latest.get(card.id) ?? []).flatMap(entriesOf);
    const own = beside[card.id];
    const givens = (own ? [...entries, own] : entries).reduce(
      (known, [name, entry]) => withEntry(known, name, entry),
      card.givens,
    );
    return givens === card.givens ? card : { ...card, givens };
  };
  return frozen({ ...worksheet, cards: worksheet.cards.map(seen) });
}
