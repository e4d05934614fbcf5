// Notes that are kept and change nothing: told, so that nobody takes them for reckoned with.

import { isKeptAlone, noteKind } from "../document/note-kinds.ts";
import { wordSaid } from "../document/note-words.ts";
import type { Note, Worksheet } from "../document/worksheet.ts";
import { type Kinds, notedOf } from "../kinds/kind.ts";
import { perhapsListed, withinLine } from "../telling/words/lists.ts";

/** What is noted of a bed's crops. */
const OF_CROPS: ReadonlySet<string> = new Set(["planted", "pulled"]);

type Part = Pick<Worksheet["cards"][number], "kind" | "givens">;

/** Why a note changes nothing; null: it may. */
function whyNot(kinds: Kinds, { what }: Note, part: Part | undefined): string | null {
  // What the gauge read is the site's rain, of whichever part it was noted.
  if (!noteKind(what) || what === "rain") return null;
  if (!part) return `there is no such part here, so nothing reckons with "${wordSaid(what)}". It is kept.`;
  const those = notedOf(kinds, what);
  if (those && !those.some(({ kind }) => kind === part.kind)) {
    const named = perhapsListed(those.map(({ label }) => withinLine(label)));
    const found = withinLine(kinds[part.kind]?.label ?? part.kind);
    return `"${wordSaid(what)}" is noted of parts of the kind ${named}, and this is of the kind ${found}. It is kept, but nothing reckons with it.`;
  }
  if (isKeptAlone(what)) return `"${wordSaid(what)}" is kept, but nothing of today is reckoned from it.`;
  return OF_CROPS.has(what) && !part.givens["contents"]
    ? `"${wordSaid(what)}" is kept, but nothing reckons with it: the bed's card names no crop.`
    : null;
}

/**
 * What is to be told of notes that change nothing, each with its day and part.
 *
 * @param inForce notes in force, in order
 */
export function unreckonedOf(
  kinds: Kinds,
  { cards }: Pick<Worksheet, "cards">,
  inForce: readonly Note[],
): readonly string[] {
  const parts = new Map(cards.map((card) => [card.id, card]));
  return inForce.flatMap((note) => {
    const part = parts.get(note.where);
    const why = whyNot(kinds, note, part);
    return why === null ? [] : [`Note of ${note.day}, ${part?.title ?? note.where}: ${why}`];
  });
}
