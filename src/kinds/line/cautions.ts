// What can go wrong with a gravity line, beside the number it hangs on.

import type { Caution } from "../../graph/types.ts";

// Heights are surveyed to no better than a hundredth of a foot: a caution says nothing of less.
const NO_DROP: Caution = {
  id: "no_drop",
  if: "head <= 0 ft",
  beside: "head",
  weight: "trouble",
};

const SLOW: readonly Caution[] = [
  {
    id: "too_little_drop",
    if: "head > 0 ft and head * 75 < length",
    beside: "head",
    weight: "trouble",
  },
  {
    id: "cannot_clear_air",
    if: "flow < purge_flow",
    beside: "flow",
    weight: "trouble",
  },
  {
    id: "high_pressure_seat",
    // Timed or kept, an opening tells more than the hole: a 4 mm sharp-edged hole passes what 7.8 mm2 would.
    if: "valve_bore < 4 mm and opening < 7.8 mm2 and head > 0 ft and head < 33 ft",
    beside: "valve_bore",
    weight: "trouble",
  },
  {
    id: "between_regimes",
    if: "reynolds > 2000 and reynolds < 4000",
    beside: "flow",
    weight: "note",
  },
];

const STOPPING: readonly Caution[] = [
  {
    id: "levels_equal",
    where: { row: "refill_end", word: "levels_equal" },
    beside: "settles_at",
    weight: "trouble",
  },
  {
    id: "never_fills",
    where: { row: "refill_end", word: "source_dry" },
    beside: "settles_at",
    weight: "trouble",
  },
  {
    id: "float_over_brim",
    // A hundredth of a foot of slack, as for every height.
    if: "shut_level > to.water_height + 0.01 ft",
    beside: "shut_level",
    weight: "trouble",
  },
  {
    id: "refill_too_late",
    if: "refill_after_watering > to.shortest_interval",
    beside: "refill_after_watering",
    weight: "trouble",
  },
  {
    id: "runs_both_ways",
    where: { row: "ways", word: "both_ways" },
    beside: "ways",
    weight: "note",
  },
  {
    id: "end_below_tank",
    if: "falls_below > 0.01 ft",
    beside: "to",
    weight: "trouble",
  },
];

const ROUTE: readonly Caution[] = [
  {
    id: "hump_above_source",
    if: "siphon_by >= 0 ft and siphon_by <= siphon_limit",
    beside: "hump_height",
    weight: "trouble",
  },
  {
    id: "hump_too_high",
    if: "siphon_by > siphon_limit",
    beside: "hump_height",
    weight: "trouble",
  },
  {
    id: "siphon_practice",
    if: "siphon_by > 20 ft and siphon_by <= siphon_limit",
    beside: "siphon_by",
    weight: "trouble",
  },
  {
    id: "under_grade_line",
    if: "suction_by > 0.01 ft",
    beside: "suction_by",
    weight: "trouble",
  },
  {
    id: "hump_traps_air",
    if: "air_head > 0 ft",
    beside: "air_head",
    weight: "trouble",
  },
];

/** The place drawn has room for one: what stops the water altogether is said before what slows it. */
export const LINE_CAUTIONS: readonly Caution[] = [
  NO_DROP,
  ...ROUTE,
  ...STOPPING,
  ...SLOW,
  {
    id: "backflow",
    beside: "length",
    weight: "harm",
    kills: true,
  },
];
