// A file that somebody chose, opened as what it is.

import type { Note, Worksheet } from "../document/worksheet.ts";
import { recordKey } from "../rainfall/record-key.ts";
import type { Bundle } from "../storage/bundle.ts";
import { worksheetFromFileText } from "../storage/file.ts";
import { joinedNotes, joinedSaid, withJoined } from "./joined-notes.ts";

type Places = {
  /** The open worksheet, and what writes notes down in it. */
  readonly here: Worksheet;
  readonly note: (notes: readonly Note[]) => void;
  readonly say: (text: string) => void;
  readonly receive: (bundle: Bundle) => void;
  /** Lays a table open on the weather's card, to be looked at and taken there. */
  readonly takeRain: (table: File) => void;
};

/** Whether a text is lines of columns and no object. */
function looksLikeTable(text: string): boolean {
  return (
    !/^\s*[{[]/.test(text) && /^.*[,;\t|].*$/m.test(text.slice(0, 5000)) && /\d/.test(text.slice(0, 5000))
  );
}

/** Opens a worksheet beside what is here; of one that is here already only its notes come in. */
function receiveBeside(name: string, read: Bundle, { here, note, say, receive }: Places): void {
  const joined = joinedNotes(here, read.worksheet);
  if (joined && joined.more > 0) note(joined.notes);
  if (joined?.isSame) say(joinedSaid(name, joined.more));
  else receive(joined ? { ...read, worksheet: withJoined(read.worksheet, joined) } : read);
}

export async function openFile(file: File, places: Places): Promise<void> {
  const { say, takeRain } = places;
  const text = await file.text();
  const read = worksheetFromFileText(text, (record) => recordKey(record));
  if (read.ok) receiveBeside(file.name, read, places);
  // A table where a worksheet was asked for may be rain.
  else if (looksLikeTable(text)) {
    takeRain(file);
    say(`${file.name} is no worksheet. It may be rain: look at it on the weather's card.`);
  } else say(`${file.name} is no worksheet: ${read.problems[0]?.message ?? "it cannot be read"}`);
}
