// A file that somebody chose, opened as what it is.

import { recordKey } from "../rainfall/record-key.ts";
import type { Bundle } from "../storage/bundle.ts";
import { worksheetFromFileText } from "../storage/file.ts";

type Places = {
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

export async function openFile(file: File, { say, receive, takeRain }: Places): Promise<void> {
  const text = await file.text();
  const read = worksheetFromFileText(text, (record) => recordKey(record));
  if (read.ok) receive(read);
  // A table where a worksheet was asked for may be rain.
  else if (looksLikeTable(text)) {
    takeRain(file);
    say(`${file.name} is no worksheet. It may be rain: look at it on the weather's card.`);
  } else say(`${file.name} is no worksheet: ${read.problems[0]?.message ?? "it cannot be read"}`);
}
