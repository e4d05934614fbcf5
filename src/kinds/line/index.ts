// A gravity line: whether water runs from here to there, how fast, and when the far tank is full again.

import type { CardKind } from "../../graph/types.ts";
import { COSTS } from "../rows.ts";
import { LINE_CAUTIONS } from "./cautions.ts";
import { ends, heights, stopping } from "./ends.ts";
import { purging, running } from "./flow.ts";
import { LINE_GIVENS } from "./givens.ts";
import { afterWatering, filling, finishing, openEnd, ownOpening, teaching } from "./refill.ts";
import { LINE_RESULTS } from "./results.ts";
import { laying, passing, pressing } from "./route.ts";

export const line: CardKind = {
  kind: "line",
  label: "Gravity line",
  purpose: "Hose that carries water downhill from one tank to another, by itself.",
  glance: ["refill_time", "flow"],
  rows: [...LINE_GIVENS, ...LINE_RESULTS, ...COSTS],
  models: [
    ends,
    laying,
    passing,
    stopping,
    heights,
    ownOpening,
    teaching,
    running,
    filling,
    afterWatering,
    finishing,
    openEnd,
    purging,
    pressing,
  ],
  cautions: LINE_CAUTIONS,
};
