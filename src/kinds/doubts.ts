// How well the numbers of all kinds are known: what only the question of what is not sure reads.

import { doubts as battery } from "./battery/doubts.ts";
import { doubts as bed } from "./bed/doubts.ts";
import { doubts as delivery } from "./delivery/doubts.ts";
import type { Doubtful } from "./doubtful.ts";
import { doubts as filter } from "./filter/doubts.ts";
import { doubts as line } from "./line/doubts.ts";
import { doubts as panel } from "./panel/doubts.ts";
import { doubts as pump } from "./pump/doubts.ts";
import { doubts as roof } from "./roof/doubts.ts";
import { doubts as tank } from "./tank/doubts.ts";
import { doubts as weather } from "./weather/doubts.ts";

/** By kind; a kind that says nothing has no doubtful defaults, and its numbers are measured as any other of their measure. */
export const KIND_DOUBTS: ReadonlyMap<string, Doubtful> = new Map(
  Object.entries({ battery, bed, delivery, filter, line, panel, pump, roof, tank, weather }),
);
