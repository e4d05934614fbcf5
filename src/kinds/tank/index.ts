// A tank, or several alike joined at the base: what it holds, what of it can be reached, how long it lasts, what it weighs.

import type { Kind } from "../kind.ts";
import { COSTS } from "../rows.ts";
import { TANK_CAUTIONS } from "./cautions.ts";
import { TANK_GIVENS } from "./givens.ts";
import { contents, dimensions, dip, standing } from "./models.ts";
import { TANK_RESULTS } from "./results.ts";
import { tankSeason } from "./season.ts";
import { TANK_SPANS } from "./spans.ts";

export const tank: Kind = {
  kind: "tank",
  label: "Tank",
  purpose: "Holds water, from a big tank by the roof to an open tub at the beds.",
  group: "Tanks",
  season: tankSeason,
  icon: { ink: "M5 4v16h14V4", tone: "M5 10h14", color: "water" },
  uses: ["holds_water", "ends_a_line"],
  noted: ["dipped", "filled", "took", "timed", "cleaned", "drained"],
  local: ["ground_height", "stand_height", "level_today"],
  handSettings: ["capacity", "count", "stand_height", "outlet_height", "overflows_to"],
  mends: ["storage", "unroofed", "tankful"],
  offers: [
    { name: "one_more", says: "one more of {}", row: "count", buys: { more: "one" } },
    { name: "lid", says: "a lid for {}", row: "cover", buys: { word: "covered", instead_of: "open" } },
    { name: "patch", says: "a patch for the leak of {}", row: "leak", buys: "nought" },
  ],
  drawn: { as: "tank", heights: ["stand_height", "ground_height"] },
  glance: ["reachable", "days_of_autonomy"],
  vessel: "vessel",
  spans: TANK_SPANS,
  rows: [...TANK_GIVENS, ...TANK_RESULTS, ...COSTS],
  models: [dimensions, contents, standing, dip],
  cautions: TANK_CAUTIONS,
};
