// The answers at the top of the page, as sentences with the numbers in them, each leading to its working.

import type { Asked, Sentence } from "./asked.ts";
import { further } from "./further.ts";
import { leadOf, type Room } from "./lead.ts";
import { emptySheet, inSpite, mending, stopped } from "./stopped.ts";

/** The sentences of a worksheet: the one that leads, and at most three more. */
export function answers(asked: Asked, room: Room = {}): readonly Sentence[] {
  const empty = emptySheet(asked);
  if (empty) return empty;
  const missing = stopped(asked);
  if (missing) return [missing, ...inSpite(asked)];
  const acts = mending(asked);
  const lead = leadOf(asked, room);
  return [acts.length > 0 ? { ...lead, acts } : lead, ...further(asked)];
}
