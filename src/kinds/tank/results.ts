// What a tank shows: what it holds, what of it can be reached, how long it lasts, what it weighs.

import type { Row } from "../../graph/types.ts";
import { formula, given, hidden, output, STANDARD_GRAVITY } from "../rows.ts";
import { FILLED_BY, OVERFLOW_ENDS } from "./overflows.ts";

export const TANK_RESULTS: readonly Row[] = [
  hidden("dimension_volume", "From its dimensions", "dimensions", "volume"),
  hidden("shape_volume", "By its own dimensions", "dimensions", "volume"),
  hidden("narrowest", "Narrowest side", "standing", "length"),
  hidden("vessel", "Shape", "contents", "series"),
  hidden("open_surface", "Open water", "contents", "area"),
  formula("floor_height", "Floor above zero", "height", "ground_height + stand_height", { hidden: true }),
  hidden("lowest_drawable", "Lowest drawable depth", "season.reach", "depth"),
  output("usable", "Above the outlet", "contents", "volume", {
    minor: true,
    relations: ["capacity * count - dead_water"],
  }),
  output("reachable", "Water you can draw", "season.reach", "volume", { relations: ["usable - stranded"] }),
  output("dead_water", "Under the outlet, dead", "contents", "volume", {
    minor: true,
    relations: ["capacity * count - usable"],
  }),
  output("stranded", "Above the outlet, but stranded", "season.reach", "volume", {
    minor: true,
    relations: ["usable - reachable"],
  }),
  formula("days_of_autonomy", "Lasts, from full, without rain", "span", "reachable / peak_day_draw * 1 day"),
  output("peak_day_draw", "Taken on a peak day", "season.peak_draw", "volume", { minor: true }),
  output("largest_taken", "Largest watering from it", "season.taken", "volume", { minor: true }),
  hidden("refilled_after", "After its largest watering", "season.refilled", "duration"),
  output("refilled_in", "Filled again in", "season.refilled", "duration", { minor: true }),
  output("shortest_interval", "Its beds ask again after", "season.taken", "span", { minor: true }),
  formula("full_weight", "Weighs, full", "mass", "capacity * count * site.water_density"),
  given(
    "plan_area",
    "Stands on",
    "area",
    { formula: "capacity / water_height" },
    { absent: "no ground area given", minor: true },
  ),
  formula("leak_empties", "The leak alone empties it in", "span", "capacity * count / leak", {
    minor: true,
    none: [{ if: "leak <= 0 gal/day", reason: "it does not leak" }],
  }),
  output("filled_by", "Filled by", "season.overflows", "text", { options: FILLED_BY, minor: true }),
  output("overflow_ends", "Its overflow ends", "season.overflows", "text", {
    options: OVERFLOW_ENDS,
    minor: true,
  }),
  formula("slenderness", "Height over width", "factor", "water_height / narrowest", { minor: true }),
  formula(
    "floor_pressure",
    "Presses on the ground",
    "ground_pressure",
    `site.water_density * ${STANDARD_GRAVITY} * water_height`,
    { minor: true },
  ),
  output("mean_yearly_spill", "Spills in a usual year", "season.run", "yearly_volume"),
  output("lowest_level", "Lowest it fell", "season.run", "depth"),
  hidden("stored", "Water day by day", "season.run", "series"),
  // By the dip alone: other rows read it, and formulas of one's own.
  hidden("dip_counts", "Whether that dip counts", "dip", "text"),
  hidden("water_today", "In it when last dipped", "dip", "volume"),
  output("water_now", "In it by now", "season.week", "volume", {
    minor: true,
    quiet: true,
  }),
  output("dip_day", "By the dip of", "dip", "text", { minor: true, quiet: true }),
  output("lasts_until", "As dipped, without rain it lasts until", "season.peak_draw", "text", {
    minor: true,
  }),
];
