// A gravity line: whether water runs from here to there, how fast, and when the far tank is full again.

import type { Kind } from "../kind.ts";
import { COSTS } from "../rows.ts";
import { LINE_CAUTIONS } from "./cautions.ts";
import { ends, heights, stopping } from "./ends.ts";
import { purging, running } from "./flow.ts";
import { LINE_GIVENS } from "./givens.ts";
import { LINE_OFFERS } from "./offers.ts";
import { afterWatering, filling, finishing, openEnd, ownOpening, sharing, teaching } from "./refill.ts";
import { LINE_RESULTS } from "./results.ts";
import { laying, passing, pressing } from "./route.ts";
import { lineSeason } from "./season.ts";
import { LINE_SPANS } from "./spans.ts";

export const line: Kind = {
  kind: "line",
  label: "Gravity line",
  purpose: "Hose that carries water downhill from one tank to another, by itself.",
  group: "Ways for the water",
  season: lineSeason,
  icon: { ink: "M3 5c5 0 4 12 9 12s4-4 9-4", tone: "M3 5 21 12", color: "water" },
  uses: ["carries_dirt"],
  joins: { from: "one_before", to: "newest" },
  noted: ["bucket", "opened", "cleaned", "drained"],
  timed: { flow: "flow" },
  handSettings: ["length", "bore", "valve_bore", "shut_level", "refill_time"],
  mends: ["refill", "line"],
  offers: LINE_OFFERS,
  drawn: { as: "line", beside: [{ row: "refill_time", tint: "water", text: "fills it in {}" }] },
  glance: ["refill_time", "flow"],
  spans: LINE_SPANS,
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
    sharing,
    finishing,
    openEnd,
    purging,
    pressing,
  ],
  cautions: LINE_CAUTIONS,
};
