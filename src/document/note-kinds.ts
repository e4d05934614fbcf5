// What can be noted, and with which amounts and words; of which parts, their kinds say. Other words are kept, and told.

import { parseIsoDate } from "../units/calendar.ts";
import { sameDimension } from "../units/dimension.ts";
import { MEASURES, type MeasureName } from "../units/measures.ts";
import { parseUnit } from "../units/unit.ts";
import type { Amount, Note } from "./worksheet.ts";

export type NoteKind = {
  /** Amounts that it must tell, and one that it may. */
  readonly value?: MeasureName;
  readonly with?: MeasureName;
  readonly mayTell?: MeasureName;
  /** Its `text` is one of these words; a must where it has nothing else to tell. */
  readonly words?: readonly string[];
};

/** Every word that is known, and what it wants. */
export const NOTE_KINDS = {
  dipped: { value: "depth", words: ["before", "after"] },
  gave: { value: "volume" },
  soaked: { mayTell: "volume" },
  filled: { value: "volume" },
  took: { value: "volume" },
  rain: { value: "rain" },
  held: {},
  planted: {},
  pulled: {},
  dug: { words: ["dry", "moist", "wet"] },
  charged: { value: "share" },
  swapped: {},
  bucket: { value: "volume", with: "duration" },
  timed: { value: "volume", with: "duration" },
  opened: {},
  cleaned: {},
  broke: {},
  mended: {},
  drained: {},
  undid: {},
} as const satisfies Readonly<Record<string, NoteKind>>;

export type NoteWord = keyof typeof NOTE_KINDS;

/** What a word wants; null for one that nobody here knows. */
export function noteKind(what: string): NoteKind | null {
  return Object.hasOwn(NOTE_KINDS, what) ? NOTE_KINDS[what as NoteWord] : null;
}

/** What is kept and told, and changes nothing of today: the season takes in neither a finger's test nor work on a part. */
const KEPT_ALONE: ReadonlySet<string> = new Set<NoteWord>(["dug", "cleaned", "drained"]);

export const isKeptAlone = (word: string): boolean => KEPT_ALONE.has(word);

/** What is wrong with a note, and where in it. */
export type NoteProblem = { readonly at: readonly string[]; readonly message: string };

/** Whether a unit measures such a thing. */
function suits(unit: string, measure: MeasureName): boolean {
  const [found, wanted] = [parseUnit(unit), parseUnit(MEASURES[measure].si)];
  return found !== null && wanted !== null && sameDimension(found.dimension, wanted.dimension);
}

function amountProblem(amount: Partial<Amount>, measure: MeasureName, at: readonly string[]) {
  const { value, unit = "" } = amount;
  const usual = MEASURES[measure].us;
  if (value === undefined) return { at: [...at, "value"], message: `Here should be a ${measure}.` };
  if (value < 0) return { at: [...at, "value"], message: `A ${measure} is not less than 0.` };
  if (suits(unit, measure)) return null;
  return { at: [...at, "unit"], message: `Here should be a unit of ${measure}, such as ${usual}.` };
}

function wordProblem({ words, value }: NoteKind, text: string | undefined): NoteProblem | null {
  if (!words || value !== undefined || words.includes(text ?? "")) return null;
  return { at: ["text"], message: `Here should be one of: ${words.join(", ")}.` };
}

/** The first thing wrong with what a note tells, or null; nothing is wrong with a word that nobody knows. */
export function noteProblem(note: Omit<Note, "id">): NoteProblem | null {
  if (parseIsoDate(note.day) === null) return { at: ["day"], message: "There is no such day." };
  const kind = noteKind(note.what);
  if (!kind || note.what === "undid") return null;
  const told = kind.value ?? (note.value === undefined ? undefined : kind.mayTell);
  return (
    ((told && amountProblem(note, told, [])) ??
      (kind.with && amountProblem(note.with ?? {}, kind.with, ["with"])) ??
      wordProblem(kind, note.text)) ||
    null
  );
}
