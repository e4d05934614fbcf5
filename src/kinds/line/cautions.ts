// What can go wrong with a gravity line, beside the number it hangs on.

import type { Caution } from "../../graph/types.ts";
import { DEFINITION } from "../rows.ts";

const SANKS = "Sanks, Pumping Station Design, read second-hand";
const PRIMING =
  "To prime it: shut both ends, fill both legs from the top until no bubble comes, close the top, then open the lower end first.";

// Heights are surveyed to no better than a hundredth of a foot: a caution says nothing of less.
const NO_DROP: Caution = {
  id: "no_drop",
  if: "head <= 0 ft",
  text: "The far end is as high as the water, so nothing runs. Raise the upper tank or lower the lower one.",
  beside: "head",
  source: DEFINITION,
  weight: "trouble",
};

const SLOW: readonly Caution[] = [
  {
    id: "too_little_drop",
    if: "head > 0 ft and head * 75 < length",
    text: "A drop of {head} over {length} of hose is little: a small error in a height, or one pocket of air, uses it up. Measure both waters with a level or a clear hose.",
    beside: "head",
    source:
      "NRCS Missouri, Watering Systems for Serious Graziers p. 29: 300 ft with 4 ft of fall needs a careful survey",
    weight: "trouble",
  },
  {
    id: "cannot_clear_air",
    if: "flow < purge_flow",
    text: "Too slow to sweep its own air: it clears itself only from {purge_flow}. Lay the hose so that it only falls, and fill it once from the low end.",
    beside: "flow",
    source: SANKS,
    weight: "trouble",
  },
  {
    id: "high_pressure_seat",
    // Timed or kept, an opening tells more than the hole: a 4 mm sharp-edged hole passes what 7.8 mm2 would.
    if: "valve_bore < 4 mm and opening < 7.8 mm2 and head > 0 ft and head < 33 ft",
    text: "A seat this small is made for mains pressure. Under {head} of drop it fills painfully slowly: fit the wide, low-pressure seat.",
    beside: "valve_bore",
    source: "City and Guilds plumbing text on high- and low-pressure seats, read; seat sizes from memory",
    weight: "trouble",
  },
  {
    id: "between_regimes",
    if: "reynolds > 2000 and reynolds < 4000",
    text: "At this flow the water is neither smooth nor turbulent. Take the figure as right to about a third, and time a bucket.",
    beside: "flow",
    source: "textbook limits 2000 and 4000; from memory",
    weight: "note",
  },
];

const STOPPING: readonly Caution[] = [
  {
    id: "levels_equal",
    where: { row: "refill_end", word: "levels_equal" },
    text: "Stops at {settles_volume}, levels equal: from there on the lower tank gets no more, however long you wait. Raise the upper tank, or lower the lower one.",
    beside: "settles_at",
    source: "continuity of both tanks",
    weight: "trouble",
  },
  {
    id: "never_fills",
    where: { row: "refill_end", word: "source_dry" },
    text: "Never fills it: the upper tank gives out first, with {settles_volume} in the lower one.",
    beside: "settles_at",
    source: "continuity of both tanks",
    weight: "trouble",
  },
  {
    id: "float_over_brim",
    // A hundredth of a foot of slack, as for every height.
    if: "shut_level > to.water_height + 0.01 ft",
    text: "Its float shuts at a depth of {shut_level}, and the lower tank holds water only up to {to.water_height}: it never shuts, and the upper tank runs out over the brim. Set the float lower.",
    beside: "shut_level",
    source: DEFINITION,
    weight: "trouble",
  },
  {
    id: "refill_too_late",
    if: "refill_after_watering > to.shortest_interval",
    text: "Not full again in time: it takes {refill_after_watering}, and the beds ask again after {to.shortest_interval}. A wider seat or hose, more drop, or a bigger tub.",
    beside: "refill_after_watering",
    source: DEFINITION,
    weight: "trouble",
  },
  {
    id: "runs_both_ways",
    where: { row: "ways", word: "both_ways" },
    text: "Nothing stops this line from running back when the lower water stands higher. Fit a check valve, or end it above the lower water, unless that is what you want.",
    beside: "ways",
    source: DEFINITION,
    weight: "note",
  },
  {
    id: "end_below_tank",
    if: "falls_below > 0.01 ft",
    text: "Its open end lies {falls_below} below the upper tank's floor and nothing shuts it: it runs until the upper tank is down to its outlet, and the lower one runs over. Fit a float valve.",
    beside: "to",
    source: DEFINITION,
    weight: "trouble",
  },
];

const ROUTE: readonly Caution[] = [
  {
    id: "hump_above_source",
    if: "siphon_by >= 0 ft and siphon_by <= siphon_limit",
    text: `The hose climbs {siphon_by} above the upper water at {hump_at}: it runs only as a siphon, and stops for good when air gets in. ${PRIMING} Better lay it lower.`,
    beside: "hump_height",
    source: "FEMA 484 and Colorado DWR note on siphons, read",
    weight: "trouble",
  },
  {
    id: "hump_too_high",
    if: "siphon_by > siphon_limit",
    text: "The hump at {hump_at} stands {siphon_by} above the upper water, and no siphon lifts more than {siphon_limit} here. Nothing can run.",
    beside: "hump_height",
    source: "hydrostatics; in practice 20 ft: FEMA 484, read",
    weight: "trouble",
  },
  {
    id: "siphon_practice",
    if: "siphon_by > 20 ft and siphon_by <= siphon_limit",
    text: "Siphons are built for no more than about 20 ft; a soft hose is sucked flat before that.",
    beside: "siphon_by",
    source: "FEMA 484, read; Colorado DWR note, read",
    weight: "trouble",
  },
  {
    id: "under_grade_line",
    if: "suction_by > 0.01 ft",
    text: "At {suction_at} the hose lies {suction_by} over its grade line, the height that the water has left there: it is under suction, air comes out of the water and stays, and a soft hose goes flat. Lay it lower there, or put the tight valve at the far end.",
    beside: "suction_by",
    source: "definition of the hydraulic grade line",
    weight: "trouble",
  },
  {
    id: "hump_traps_air",
    if: "air_head > 0 ft",
    text: "The flow is too slow to push air over the hump at {air_at}, and trapped air may take {air_head} of the {head} of drop. Lay the hose so that it only falls; or fit a small tap at the top of the hump and let the air out there; or fill it from the low end until no bubble comes.",
    beside: "air_head",
    source: `May, Allen and Nelson 2018, abstract read; ${SANKS}`,
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
    text: "Never join this to a drinking-water pipe, not even through a valve. An air gap or a tested backflow preventer is the law in most places.",
    beside: "length",
    source: "Nevada NAC 446.425; local code decides",
    weight: "harm",
  },
];
