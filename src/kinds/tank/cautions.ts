// What can hurt someone about a tank, beside the number it hangs on.

import type { Caution } from "../../graph/types.ts";

export const TANK_CAUTIONS: readonly Caution[] = [
  {
    id: "heavy_stand",
    if: "stand_height > 0 ft",
    beside: "full_weight",
    weight: "harm",
    kills: true,
  },
  {
    id: "level_ground",
    if: "stand_height == 0 ft",
    beside: "full_weight",
    weight: "harm",
    kills: true,
  },
  {
    id: "open_water",
    where: { row: "cover", word: "open" },
    beside: "cover",
    weight: "harm",
    kills: true,
  },
  {
    id: "closed_tank",
    where: { row: "cover", word: "covered" },
    beside: "cover",
    weight: "harm",
    kills: true,
  },
  {
    id: "slender_tank",
    if: "slenderness > 2",
    beside: "slenderness",
    weight: "harm",
    kills: true,
  },
  {
    id: "floor_load",
    if: "floor_pressure > 40 lb/ft2 and stand_height == 0 ft",
    beside: "floor_pressure",
    weight: "harm",
    kills: true,
  },
  {
    id: "stand_feet",
    if: "stand_height > 0 ft",
    beside: "floor_pressure",
    weight: "harm",
    kills: true,
  },
  {
    id: "sizes_disagree",
    if: "max(capacity, shape_volume) > 1.1 * min(capacity, shape_volume)",
    beside: "capacity",
    // Whoever turns the size alone asks what a bigger one would do, and has measured none: the run goes by the size.
    weight: "note",
  },
  {
    id: "dead_water",
    if: "dead_water * 4 > capacity * count",
    beside: "dead_water",
    weight: "trouble",
  },
  {
    id: "stranded_water",
    // Less than a thousandth of the tank is what rounding leaves, not water.
    if: "stranded * 1000 > capacity * count and reachable > 0 gal",
    beside: "stranded",
    weight: "note",
  },
  {
    id: "unreachable_tank",
    if: "reachable <= 0 gal",
    beside: "reachable",
    weight: "trouble",
  },
  {
    id: "nothing_fills_it",
    where: { row: "filled_by", word: "nothing" },
    beside: "filled_by",
    weight: "trouble",
  },
  {
    id: "leak_drains_it",
    if: "leak_empties < 30 day",
    beside: "leak",
    weight: "trouble",
  },
  {
    id: "dipped_over_the_brim",
    where: { row: "dip_counts", word: "asked" },
    beside: "level_today",
    weight: "trouble",
  },
  {
    id: "dipped_deeper_than_it_is",
    where: { row: "dip_counts", word: "as_read" },
    beside: "level_today",
    weight: "trouble",
  },
  {
    id: "overflow_loop",
    where: { row: "overflow_ends", word: "loop" },
    beside: "overflows_to",
    weight: "trouble",
  },
];
