// What can hurt someone about a tank, beside the number it hangs on.

import type { Caution } from "../../graph/types.ts";
import { DEFINITION } from "../rows.ts";

export const TANK_CAUTIONS: readonly Caution[] = [
  {
    id: "heavy_stand",
    if: "stand_height > 0 ft",
    text: "Full, the water alone weighs {full_weight}. A stand that gives way kills. Level, compacted ground, a stand built for the load and braced sideways; high or big ones need a licensed engineer and often a permit.",
    beside: "full_weight",
    source: "permit practice of San Mateo, Inglewood and Minnesota; common practice",
    weight: "harm",
  },
  {
    id: "level_ground",
    if: "stand_height == 0 ft",
    text: "Full, the water alone weighs {full_weight}. Set it on level, firm ground, away from slopes and walls.",
    beside: "full_weight",
    source: "Charlottesville FAQ 256",
    weight: "harm",
  },
  {
    id: "open_water",
    where: { row: "cover", word: "open" },
    text: "Open water drowns children and animals, even a few inches of it: lid, mesh or fence. Mosquitoes need a week: screen it, or empty it within five days.",
    beside: "cover",
    source: "US CPSC document 5006; vector control districts",
    weight: "harm",
  },
  {
    id: "closed_tank",
    where: { row: "cover", word: "covered" },
    text: "Keep the lid locked and the openings under 1/16 in mesh. Never climb into a tank.",
    beside: "cover",
    source: "US CPSC; vector control districts; common practice",
    weight: "harm",
  },
  {
    id: "slender_tank",
    if: "slenderness > 2",
    text: "Taller than twice its width: it can topple, and such tanks commonly need a permit even on the ground. Tie it back, or set two lower ones.",
    beside: "slenderness",
    source:
      "permit practice of San Mateo, Inglewood and Minnesota, read: on grade, to 5,000 gal and height to width 2 to 1",
    weight: "harm",
  },
  {
    id: "floor_load",
    if: "floor_pressure > 40 lb/ft2 and stand_height == 0 ft",
    text: "Presses with {floor_pressure} on what it stands on: fine for firm ground, but more than a deck, porch or shed floor is built for (about 40 lb on a square foot).",
    beside: "floor_pressure",
    source: "US residential live load of 40 lb/ft2, from memory",
    weight: "harm",
  },
  {
    id: "stand_feet",
    if: "stand_height > 0 ft",
    text: "Its floor presses with {floor_pressure} on the stand, and the stand's feet pass all of it on to far less ground: set each on a slab, level and dry, well clear of a bank or wall.",
    beside: "floor_pressure",
    source: "definition of pressure; NRCS CPS 558 on level stable bases, read",
    weight: "harm",
  },
  {
    id: "dead_water",
    if: "dead_water * 4 > capacity * count",
    text: "{dead_water} stand under the outlet and never come out by themselves. Lower the outlet, or dip or pump the rest.",
    beside: "dead_water",
    source: DEFINITION,
    weight: "trouble",
  },
  {
    id: "stranded_water",
    // Less than a thousandth of the tank is what rounding leaves, not water.
    if: "stranded * 1000 > capacity * count and reachable > 0 gal",
    text: "{stranded} above the outlet do not come out: the line stops when levels are equal or its hump stands dry, or the pump cannot pick them up. Raise this tank, or lower the line's end or hump.",
    beside: "stranded",
    source: DEFINITION,
    weight: "note",
  },
  {
    id: "unreachable_tank",
    if: "reachable <= 0 gal",
    text: "None of its water can be reached: its lines end higher than it can stand, or its pump cannot pick it up. Raise it, lower the end, or dip from it.",
    beside: "reachable",
    source: DEFINITION,
    weight: "trouble",
  },
  {
    id: "leak_drains_it",
    if: "leak_empties < 30 day",
    text: "The leak alone empties it in {leak_empties}. Mend it first: nothing else on this sheet helps as much.",
    beside: "leak",
    source: DEFINITION,
    weight: "trouble",
  },
  {
    id: "dipped_over_the_brim",
    if: "level_today > water_height",
    text: "Dipped at {level_today}, yet full its water stands at {water_height}: one of the two is wrong. Until then it counts as full today.",
    beside: "level_today",
    source: DEFINITION,
    weight: "trouble",
  },
  {
    id: "overflow_loop",
    where: { row: "overflow_ends", word: "loop" },
    text: "Its overflow comes round to itself, so that a full circle spills on the ground where nobody looks. Let one of them overflow away, by a hose as wide as its inlets, well clear of foundations.",
    beside: "overflows_to",
    source: "NRCS CPS 558 and Charlottesville FAQ 256 on overflow, read",
    weight: "trouble",
  },
];
