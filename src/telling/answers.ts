// The answers at the top of the page, as sentences with the numbers in them, each leading to its working.

import type { Asked, Sentence } from "./asked.ts";
import { further } from "./further.ts";
import { leadOf, type Room } from "./lead.ts";
import { otherTakers } from "./left-out.ts";
import { emptySheet, inSpite, mending, stopped } from "./stopped.ts";

/** Where the lead has named the one part that is left out, the reason stands alone under it. */
function namedOnce(said: Sentence, lead: Sentence): Sentence {
  const [named] = lead.pieces;
  const [text, ...rest] = said.pieces;
  if (said.id !== "left_out" || typeof named !== "string" || typeof text !== "string") return said;
  const again = named.replace(/, $/, ": ");
  return text.startsWith(again) ? { ...said, pieces: [text.slice(again.length), ...rest] } : said;
}

/** What holds for some beds is not set against what held for others. */
const uncompared = (said: Sentence): Sentence => ({
  ...said,
  pieces: said.pieces.map((piece) => (typeof piece === "string" ? piece : { ...piece, was: null })),
});

/** The sentences of a worksheet: the one that leads, and at most three more where there is room for them. */
export function answers(asked: Asked, room: Room = {}): readonly Sentence[] {
  const empty = emptySheet(asked);
  if (empty) return empty;
  const missing = stopped(asked);
  if (missing) return [missing, ...inSpite(asked)];
  const acts = mending(asked);
  const first = leadOf(asked, room);
  const lead = acts.length === 0 ? first : { ...first, acts };
  const all = [lead, ...(room.alone ? [] : further(asked)).map((said) => namedOnce(said, lead))];
  const others = otherTakers(asked);
  if (others === null) return all;
  const at = all.findIndex(({ id }) => id === "left_out") + 1 || 1;
  return [...all.slice(0, at), others, ...all.slice(at)].map(uncompared);
}
