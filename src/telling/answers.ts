// The answers at the top of the page, as sentences with the numbers in them, each leading to its working.

import type { Asked, Sentence } from "./asked.ts";
import { further } from "./further.ts";
import { leadOf, type Room } from "./lead.ts";
import { emptySheet, inSpite, mending, stopped } from "./stopped.ts";

/** What holds without some beds is not set against what it was with them. */
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
  const all = [leadOf(asked, room), ...(room.alone ? [] : further(asked))];
  return acts.length === 0 ? all : all.map((said) => uncompared(said.lead ? { ...said, acts } : said));
}
