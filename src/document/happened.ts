// What of the notes the season takes in, as the text of one hidden given: in SI, in order, only what still tells of a day.

import { parseIsoDate } from "../units/calendar.ts";
import { parseUnit, toSi } from "../units/unit.ts";
import { inForce } from "./note-order.ts";
import type { Note } from "./worksheet.ts";

/** Days after which a note no longer tells of today: our definition, as far back as the season looks. */
export const NOTED_FOR = 60;

/** The words that the season reads; a test holds the two together, since neither folder may know the other. */
export const TAKEN_IN: ReadonlySet<string> = new Set([
  "dipped",
  "gave",
  "soaked",
  "filled",
  "took",
  "rain",
  "held",
  "charged",
  "swapped",
]);

/** Notes in force that tell of a day, in order. */
export function tellingOf(notes: readonly Note[], today: number): readonly Note[] {
  return inForce(notes).filter(({ day, what }) => {
    const date = TAKEN_IN.has(what) ? parseIsoDate(day) : null;
    return date !== null && date <= today && date >= today - NOTED_FOR;
  });
}

const amountOf = ({ value, unit = "" }: Note): number | null =>
  value === undefined || parseUnit(unit) === null ? null : toSi(value, unit);

const sideOf = ({ minute, text }: Note): string | null =>
  minute === undefined && (text === "before" || text === "after") ? text : null;

/** Day, minute, side of the watering, word, part, amount and means of each note, as JSON; "" for none. */
export function happenedText(telling: readonly Note[]): string {
  if (telling.length === 0) return "";
  return JSON.stringify(
    telling.map((note) => [
      parseIsoDate(note.day),
      note.minute ?? null,
      sideOf(note),
      note.what,
      note.where,
      amountOf(note),
      note.by ?? null,
    ]),
  );
}
