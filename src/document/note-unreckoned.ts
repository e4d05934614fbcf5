// Notes that are kept and change nothing: told, so that nobody takes them for reckoned with.

import { noteKind } from "./note-kinds.ts";
import { wordSaid } from "./note-words.ts";
import type { Note, Worksheet } from "./worksheet.ts";

/** What is noted of a bed's crop, and its season does not follow. */
const NOT_YET: ReadonlySet<string> = new Set(["planted", "pulled"]);

type Part = Pick<Worksheet["cards"][number], "kind">;

/** Why a note changes nothing; null: it may. */
function whyNot({ what }: Note, part: Part | undefined): string | null {
  const kind = noteKind(what);
  // What the gauge read is the site's rain, of whichever part it was noted.
  if (!kind || what === "rain") return null;
  if (!part) return `there is no such part here, so nothing reckons with "${wordSaid(what)}". It is kept.`;
  if (kind.about && !kind.about.includes(part.kind))
    return `"${wordSaid(what)}" is noted of a ${kind.about.join(" or a ")}, not of a ${part.kind}. It is kept, but nothing reckons with it.`;
  return NOT_YET.has(what)
    ? `"${wordSaid(what)}" is kept, but the season does not reckon with it yet: it goes by what the bed's card says is planted.`
    : null;
}

/**
 * What is to be told of notes that change nothing, each with its day and part.
 *
 * @param inForce notes in force, in order
 */
export function unreckonedOf(
  { cards }: Pick<Worksheet, "cards">,
  inForce: readonly Note[],
): readonly string[] {
  const parts = new Map(cards.map((card) => [card.id, card]));
  return inForce.flatMap((note) => {
    const part = parts.get(note.where);
    const why = whyNot(note, part);
    return why === null ? [] : [`Note of ${note.day}, ${part?.title ?? note.where}: ${why}`];
  });
}
