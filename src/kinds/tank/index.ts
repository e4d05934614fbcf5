// A tank, or several alike joined at the base: what it holds, what of it can be reached, how long it lasts, what it weighs.

import type { CardKind } from "../../graph/types.ts";
import { COSTS } from "../rows.ts";
import { TANK_CAUTIONS } from "./cautions.ts";
import { TANK_GIVENS } from "./givens.ts";
import { contents, dimensions, dip, reach } from "./models.ts";
import { TANK_RESULTS } from "./results.ts";

export const tank: CardKind = {
  kind: "tank",
  label: "Tank",
  purpose: "Holds water, from a big tank by the roof to an open tub at the beds.",
  glance: ["reachable", "days_of_autonomy"],
  sizes: { ask: "Would a bigger tank help?", where: "peak_day_draw" },
  vessel: "vessel",
  rows: [...TANK_GIVENS, ...TANK_RESULTS, ...COSTS],
  models: [dimensions, contents, reach, dip],
  cautions: TANK_CAUTIONS,
};
