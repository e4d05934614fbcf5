// The answers at the top of the page, as sentences with the numbers in them, each leading to its working.

import type { Asked, Sentence } from "./asked.ts";
import { further } from "./further.ts";
import { leadOf, type Room } from "./lead.ts";
import { emptySheet, inSpite, stopped } from "./stopped.ts";

/** The sentences of a worksheet: the one that leads, and at most three more. */
export function answers(asked: Asked, room: Room = {}): readonly Sentence[] {
  const empty = emptySheet(asked);
  if (empty) return empty;
  const missing = stopped(asked);
  return missing ? [missing, ...inSpite(asked)] : [leadOf(asked, room), ...further(asked)];
}
