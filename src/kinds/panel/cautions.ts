// What of a panel can hurt someone, burn a pump out, or waste its light.

import type { Caution } from "../../graph/types.ts";

export const PANEL_CAUTIONS: readonly Caution[] = [
  {
    id: "too_many_volts",
    if: "volts_over_pump > 1",
    beside: "vmp",
    weight: "harm",
  },
  {
    id: "kind_and_volts",
    if: "vmp < 26 V",
    where: { row: "cells", word: "cells_60" },
    beside: "cells",
    weight: "trouble",
  },
  {
    id: "volts_wasted",
    if: "vmp > 24 V",
    where: { row: "controller", word: "pwm" },
    beside: "controller",
    weight: "trouble",
  },
  {
    id: "no_controller",
    where: { row: "controller", word: "none" },
    beside: "controller",
    weight: "harm",
    kills: true,
  },
  {
    id: "over_rated_voltage",
    if: "overvoltage > 1.1 and volts_over_pump <= 1",
    beside: "highest_voltage",
    weight: "harm",
  },
  {
    id: "little_margin",
    if: "watts_over_pump < 1.3",
    beside: "rated_power",
    weight: "trouble",
  },
  {
    id: "dc_arc",
    beside: "isc",
    weight: "harm",
    kills: true,
  },
  {
    id: "cracked_panel",
    beside: "health",
    weight: "harm",
    kills: true,
  },
  {
    id: "faces_away",
    if: "faces_away > 0",
    beside: "azimuth",
    weight: "trouble",
  },
  {
    id: "rating_disagrees",
    if: "rating_of_points > 1.1 * rated_power or rating_of_points < 0.9 * rated_power",
    beside: "rated_power",
    weight: "trouble",
  },
  {
    id: "health_doubtful",
    if: "tested_health > 105 %",
    beside: "tested_health",
    weight: "note",
  },
];
