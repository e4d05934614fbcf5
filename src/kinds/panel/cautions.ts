// What of a panel can hurt someone, burn a pump out, or waste its light.

import panels from "../../../shared/panels.json";
import type { Caution } from "../../graph/types.ts";
import { DEFINITION, PRACTICE } from "../rows.ts";

export const PANEL_CAUTIONS: readonly Caution[] = [
  {
    id: "too_many_volts",
    if: "volts_over_pump > 1",
    text: "{vmp} is far over what this pump is made for: straight onto it, it burns out. Put a battery with a tracking controller between, or take a 36-cell panel.",
    beside: "vmp",
    source: PRACTICE,
    weight: "harm",
  },
  {
    id: "kind_and_volts",
    if: "vmp < 26 V",
    where: { row: "cells", word: "cells_60" },
    text: "60 cells give some 32 V at their best, but {vmp} is typed in: read the label again. Straight onto a 12 V pump such a panel burns it out.",
    beside: "cells",
    source: "voltages of common panels, from memory",
    weight: "trouble",
  },
  {
    id: "volts_wasted",
    if: "vmp > 24 V",
    where: { row: "controller", word: "pwm" },
    text: "A plain controller holds it down to the battery's voltage: most of a panel of {vmp} is wasted on a 12 V battery. A tracking one is worth its price here.",
    beside: "controller",
    source: "12 V times 7 A is 84 W of a 120 W panel, read at wattuneed.com",
    weight: "trouble",
  },
  {
    id: "no_controller",
    where: { row: "controller", word: "none" },
    text: "With nothing between, a full battery gasses, boils dry or is ruined; lithium never without a controller.",
    beside: "controller",
    source: `${PRACTICE}; local codes and licensed practice decide`,
    weight: "harm",
  },
  {
    id: "over_rated_voltage",
    if: "overvoltage > 1.1 and volts_over_pump <= 1",
    text: "At noon {highest_voltage} arrive, {overvoltage} times what this pump is stated at: it runs hot and wears sooner. A small battery with a controller between holds it down, and the panel may stay as big as the mornings want.",
    beside: "highest_voltage",
    source: `ISO 8849:2021 in excerpts: pumps are tested up to their design voltage, 13.6 V for 12 V; a tenth over: ${PRACTICE}`,
    weight: "harm",
  },
  {
    id: "little_margin",
    if: "watts_over_pump < 1.3",
    text: "Its watts are only {watts_over_pump} times the pump's: alone it hardly starts it but at noon. For water in the mornings and under cloud it wants twice and more, and then something that holds the volts down at noon.",
    beside: "rated_power",
    source: panels.sources["direct drive"],
    weight: "trouble",
  },
  {
    id: "dc_arc",
    text: "A panel is live in any light and has no switch of its own, and direct current does not let go: a plug pulled in the sun draws an arc. Cover the panel first. Switch and fuse must be rated for direct current: one switch for 10 A at 240 V alternating bears 4 A at 24 V direct. The wire must bear 1.56 times the shorted current; the panel's own current blows no fuse.",
    beside: "isc",
    source:
      "galport.com on one switch; NEC 690.8 for 1.56, read second-hand; local codes and licensed practice decide",
    weight: "harm",
  },
  {
    id: "cracked_panel",
    text: "A panel with broken glass or a torn back must not be used: its frame or glass can shock, wet above all. Cover it before you touch it, and never work on it in the rain.",
    beside: "health",
    source: "installation manual of a panel's maker, page 3, read; local codes and licensed practice decide",
    weight: "harm",
  },
  {
    id: "faces_away",
    if: "faces_away > 0",
    text: "It turns its back on the noon sun of this latitude: {azimuth} is the wrong side. Look at the compass again, or turn it.",
    beside: "azimuth",
    source: "the sun's path: south at noon in the north, north at noon in the south, outside the tropics",
    weight: "trouble",
  },
  {
    id: "rating_disagrees",
    if: "rating_of_points > 1.1 * rated_power or rating_of_points < 0.9 * rated_power",
    text: "Its best voltage times its best current are {rating_of_points}, not the {rated_power} it is rated: one of the three is misread. Volts and amperes are believed.",
    beside: "rated_power",
    source: DEFINITION,
    weight: "trouble",
  },
  {
    id: "health_doubtful",
    if: "tested_health > 105 %",
    text: "{tested_health} of its label by that noon: more than a panel has. The light was brighter than a clear noon's, or a figure is off.",
    beside: "tested_health",
    source: PRACTICE,
    weight: "note",
  },
];
