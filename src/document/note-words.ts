// A note in a grower's words, for the list of notes and for the table that goes out.

import type { MeasureName } from "../units/measures.ts";
import { parseUnit, toSi } from "../units/unit.ts";
import { type NoteWord, noteKind } from "./note-kinds.ts";
import type { Note } from "./worksheet.ts";

/** A number as one would say it. */
export type Show = (si: number, measure: MeasureName) => string;

const SAID: Readonly<Record<NoteWord, string>> = {
  dipped: "dipped",
  gave: "watered",
  soaked: "soaked through",
  filled: "filled from elsewhere",
  took: "taken for something else",
  rain: "rain in the gauge",
  held: "held back",
  planted: "planted",
  pulled: "pulled up",
  dug: "dug to see",
  charged: "charged to",
  swapped: "swapped for a charged one",
  bucket: "bucket filled",
  timed: "refilled",
  opened: "opened",
  cleaned: "cleaned",
  broke: "broke",
  mended: "mended",
  drained: "made ready for frost",
  undid: "taken back",
};

/** What was done, in words; of a word that is not known here that word. */
export const wordSaid = (what: string): string => (noteKind(what) ? SAID[what as NoteWord] : what);

/** An amount as it was written down, where its unit is none that is known here. */
function amountSaid(value: number | undefined, unit: string, measure: MeasureName | undefined, show: Show) {
  if (value === undefined) return "";
  if (measure !== undefined && parseUnit(unit) !== null) return show(toSi(value, unit), measure);
  return `${value} ${unit}`.trim();
}

/** "dipped 20 in", "watered 40 gal, by Pump and wand", "bucket filled 5 gal in 75 s". */
export function noteSaid(note: Note, show: Show, titleOf: (id: string) => string): string {
  const kind = noteKind(note.what);
  const amount = amountSaid(note.value, note.unit ?? "", kind?.value ?? kind?.mayTell, show);
  const second = note.with ? ` in ${amountSaid(note.with.value, note.with.unit, kind?.with, show)}` : "";
  const said = [wordSaid(note.what), amount].filter((part) => part !== "").join(" ") + second;
  const more = [note.by ? `by ${titleOf(note.by)}` : "", note.text ?? ""].filter((part) => part !== "");
  return [said, ...more].join(", ");
}
