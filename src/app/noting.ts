// What is written down of today: with the clock's time and an id by chance.

import { setGiven } from "../document/edits.ts";
import { dayOf, NOTED_GIVENS, noted, noteOfGiven, takenBack } from "../document/notes.ts";
import type { Entry, Note, ToBeNoted, Worksheet } from "../document/worksheet.ts";
import { dayHere } from "./clock.ts";

const asHex = (number: number, digits: number): string => number.toString(16).padStart(digits, "0");

/** Where it stands in its minute [ms], then 112 bits by chance: of two notes of one minute the later has the later id. */
function freshId(at: Date): string {
  const bytes = crypto.getRandomValues(new Uint8Array(14));
  const inMinute = at.getSeconds() * 1000 + at.getMilliseconds();
  return asHex(inMinute, 4) + [...bytes].map((byte) => asHex(byte, 2)).join("");
}

/** A note of this very minute. */
export function noteNow({ day, ...content }: ToBeNoted): Note {
  const at = new Date();
  const today = dayHere(at.getTime());
  // Of an earlier day nobody knows the minute.
  const when =
    day === undefined || day === today
      ? { day: today, minute: at.getHours() * 60 + at.getMinutes() }
      : { day };
  return { id: freshId(at), ...when, ...content };
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
  const now = noteNow({ what: NOTED_GIVENS.get(given) ?? "", where });
  const day = dayOf(worksheet, now.day) ?? now.day;
  if (!entry) return takenBack(worksheet, { ...now, day });
  const note = noteOfGiven(where, given, entry, day);
  return note ? noted(worksheet, { ...note, id: now.id, minute: now.minute ?? 0 }) : worksheet;
}
