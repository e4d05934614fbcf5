// What the rows and cautions of this card mean and where they come from; loaded when somebody asks.

import panels from "../../../shared/panels.json";
import type { KindWords } from "../../graph/words.ts";
import { COST_WORDS, DEFINITION, MEMORY, PRACTICE } from "../sources.ts";

const SKY =
  "sunshine as measured, or from warmth (Hargreaves); Collares-Pereira and Rabl; Erbs; isotropic sky, as in Duffie and Beckman ch. 2";

const LOAD_LINE = "the pump's load line against the panel's curve through its label's points";

export const words: KindWords = {
  rows: {
    cells: "Count the squares on it.",
    rated_power: ["On its back.", PRACTICE],
    voc: ["Voc on its back.", MEMORY],
    vmp: ["Vmp on its back.", MEMORY],
    imp: "Imp on its back.",
    isc: ["Isc on its back; usually some 8 % over Imp.", MEMORY],
    health: ["A second-hand one has lost some. A clear noon tells.", "guessed until tested"],
    noon_current: "All of them together, where they stand, through a meter that bears it: a moment only.",
    noon_clean: "Dirt counts among its losses; it must not count in its health as well.",
    noon_day: "Of that test.",
    count: "Side by side, plus to plus.",
    tilt: "0 lies flat, 90 hangs on a wall.",
    azimuth: "By compass from north: 90 east, 180 south, 270 west.",
    dirt: ["What dust and leaves on the glass take before it is wiped.", MEMORY],
    losses: ["Dirt, shade, wire and mismatch; its heat is reckoned by itself.", PRACTICE],
    controller: "A plain one holds the panel down at the battery's voltage.",
    charges: "The battery behind it.",
    tested_health: [
      "Its shorted current over the label's in a clear noon's light.",
      "FAO-56 Eq. 37 for the clear sky; current in proportion to light",
    ],
    charge_current: [
      "In full sun: its shorted current by a plain controller; by a tracking one its watts over the battery's voltage while it charges.",
      DEFINITION,
    ],
    daily_energy: [
      "Of the season's worst month, into a battery of 12 V or the one that it charges, before that battery's own losses.",
      SKY,
    ],
    worst_month: ["The month of the season with the least.", SKY],
    recharge_time: [
      "From its lowest, in that month: what may be used over a day's charge less the battery's losses.",
      DEFINITION,
    ],
    direct_hours: ["Any water at all, on a clear day in the middle of the season.", LOAD_LINE],
    direct_full_hours: ["At least 95 % of the flow at the pump's stated voltage.", LOAD_LINE],
    direct_flow_share: [
      "On a dry day, at the hour of watering by the sun, in the month of the season with least light then.",
      LOAD_LINE,
    ],
    share_early: ["On a clear day in the middle of the season.", LOAD_LINE],
    share_noon: ["On a clear day in the middle of the season.", LOAD_LINE],
    share_late: ["On a clear day in the middle of the season.", LOAD_LINE],
    share_overcast: ["With a fifth of the clear day's light, from memory.", LOAD_LINE],
    highest_voltage: [
      "On that clear day: the panel's voltage where it gives just what the pump draws, less the wire's.",
      LOAD_LINE,
    ],
    watts_over_pump: [
      "Its best voltage times current, times its health and how many, over the pump's stated voltage times its current wide open.",
      DEFINITION,
    ],
    ...COST_WORDS,
  },
  cautions: {
    too_many_volts: [
      "{vmp} is far over what this pump is made for: straight onto it, it burns out. Put a battery with a tracking controller between, or take a 36-cell panel.",
      PRACTICE,
    ],
    kind_and_volts: [
      "60 cells give some 32 V at their best, but {vmp} is typed in: read the label again. Straight onto a 12 V pump such a panel burns it out.",
      "voltages of common panels, from memory",
    ],
    volts_wasted: [
      "A plain controller holds it down to the battery's voltage: most of a panel of {vmp} is wasted on a 12 V battery. A tracking one is worth its price here.",
      "12 V times 7 A is 84 W of a 120 W panel, read at wattuneed.com",
    ],
    no_controller: [
      "With nothing between, a full battery gasses, boils dry or is ruined; lithium never without a controller.",
      `${PRACTICE}; local codes and licensed practice decide`,
    ],
    over_rated_voltage: [
      "At noon {highest_voltage} arrive, {overvoltage} times what this pump is stated at: it runs hot and wears sooner. A small battery with a controller between holds it down, and the panel may stay as big as the mornings want.",
      `ISO 8849:2021 in excerpts: pumps are tested up to their design voltage, 13.6 V for 12 V; a tenth over: ${PRACTICE}`,
    ],
    little_margin: [
      "Its watts are only {watts_over_pump} times the pump's: alone it hardly starts it but at noon. For water in the mornings and under cloud it wants twice and more, and then something that holds the volts down at noon.",
      panels.sources["direct drive"],
    ],
    dc_arc: [
      "A panel is live in any light and has no switch of its own, and direct current does not let go: a plug pulled in the sun draws an arc. Cover the panel first. Switch and fuse must be rated for direct current: one switch for 10 A at 240 V alternating bears 4 A at 24 V direct. The wire must bear 1.56 times the shorted current; the panel's own current blows no fuse.",
      "galport.com on one switch; NEC 690.8 for 1.56, read second-hand; local codes and licensed practice decide",
    ],
    cracked_panel: [
      "A panel with broken glass or a torn back must not be used: its frame or glass can shock, wet above all. Cover it before you touch it, and never work on it in the rain.",
      "installation manual of a panel's maker, page 3, read; local codes and licensed practice decide",
    ],
    faces_away: [
      "It turns its back on the noon sun of this latitude: {azimuth} is the wrong side. Look at the compass again, or turn it.",
      "the sun's path: south at noon in the north, north at noon in the south, outside the tropics",
    ],
    rating_disagrees: [
      "Its best voltage times its best current are {rating_of_points}, not the {rated_power} it is rated: one of the three is misread. Volts and amperes are believed.",
      DEFINITION,
    ],
    health_doubtful: [
      "{tested_health} of its label by that noon: more than a panel has. The light was brighter than a clear noon's, or a figure is off.",
      PRACTICE,
    ],
  },
  frost: {
    text: "May stay outside. Unhook it from its controller before the battery is unhooked, never the other way round; keep its ends apart and dry.",
    source: `${PRACTICE}; the controller's leaflet decides`,
  },
};
