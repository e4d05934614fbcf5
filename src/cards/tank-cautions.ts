// What can hurt someone about a tank, beside the number it hangs on.

import type { Caution } from "../graph/types.ts";

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
];
