// What is written down of today: with the clock's time and an id by chance.

import { setGiven } from "../document/edits.ts";
import { dayOf, NOTED_GIVENS, noted, noteOfGiven, takenBack } from "../document/notes.ts";
import type { Entry, Note, ToBeNoted, Worksheet } from "../document/worksheet.ts";
import { dayHere } from "./clock.ts";

/** Digits of an id that tell when it was entered: of two notes of one minute the later entry has the later id. */
const ENTERED = 16;

/** When it was entered [ms] and its place among those of the same time, after all that it must follow; then 64 bits by chance. */
function freshId(now: number, before: readonly Note[]): string {
  const own = BigInt(now) << 16n;
  const last = before
    .map(({ id }) => id)
    .sort()
    .at(-1);
  const after = last === undefined ? own : BigInt(`0x${last.slice(0, ENTERED)}`) + 1n;
  const entered = (own > after ? own : after).toString(16).padStart(ENTERED, "0").slice(-ENTERED);
  const chance = crypto.getRandomValues(new Uint8Array(8));
  return entered + [...chance].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

/**
 * A note of this very minute.
 *
 * @param notes those that are there: of its day and minute it is the last, on whatever clock they were entered
 */
export function noteNow({ day, ...content }: ToBeNoted, notes: readonly Note[]): Note {
  const at = new Date();
  const today = dayHere(at.getTime());
  // Of an earlier day nobody knows the minute.
  const when: Pick<Note, "day" | "minute"> =
    content.minute !== undefined
      ? { day: day ?? today, minute: content.minute }
      : day === undefined || day === today
        ? { day: today, minute: at.getHours() * 60 + at.getMinutes() }
        : { day };
  const before = notes.filter((note) => note.day === when.day && note.minute === when.minute);
  return { id: freshId(at.getTime(), before), ...when, ...content };
}

/** What stands in the place of another note is of the day of that, unless it says its own. */
export function onItsDay(said: ToBeNoted, notes: readonly Note[], instead: string | undefined): ToBeNoted {
  const day = said.day ?? notes.find(({ id }) => id === instead)?.day;
  return day === undefined ? said : { ...said, day };
}

/** A day that was typed for today is let go of: what is noted now is of now. */
export const todayIsNow = (worksheet: Worksheet): Worksheet => setGiven(worksheet, "site", "today", null);

/** What is typed for a given whose home is the notes, as a note of the day that counts as today; null takes the last back. */
export function withTyped(
  worksheet: Worksheet,
  where: string,
  given: string,
  entry: Entry | null,
): Worksheet {
  const now = noteNow({ what: NOTED_GIVENS.get(given) ?? "", where }, worksheet.notes ?? []);
  const day = dayOf(worksheet, now.day) ?? now.day;
  if (!entry) return takenBack(worksheet, { ...now, day });
  const note = noteOfGiven(where, given, entry, day);
  return note ? noted(worksheet, { ...note, id: now.id, minute: now.minute ?? 0 }) : worksheet;
}
