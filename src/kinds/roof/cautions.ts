// What can hurt someone about a roof, or keep its water from the tank.

import type { Caution } from "../../graph/types.ts";

export const ROOF_CAUTIONS: readonly Caution[] = [
  {
    id: "roof_water_not_drinking",
    beside: "mean_yearly_catch",
    weight: "harm",
    kills: true,
  },
  {
    id: "gutter_heights",
    beside: "footprint",
    weight: "harm",
    kills: true,
  },
  {
    id: "drains_nowhere",
    where: { row: "drains_to", state: "none" },
    beside: "drains_to",
    weight: "trouble",
  },
  {
    id: "downspout_too_small",
    if: "storm_flow > downspout_capacity",
    beside: "downspout_capacity",
    weight: "trouble",
  },
  {
    id: "connected_in_frost",
    if: "frost_days > 0",
    beside: "frost_days",
    weight: "note",
  },
  {
    id: "drained_for_winter",
    if: "frost_days_off > 0",
    beside: "catch_until",
    weight: "note",
  },
  {
    id: "asphalt_and_food",
    where: { row: "material", word: "shingle" },
    beside: "material",
    weight: "note",
  },
];
