// What of a battery can hurt someone, or leave the beds dry.

import type { Caution } from "../../graph/types.ts";
import { DEFINITION, PRACTICE } from "../rows.ts";

const LICENSED = "local codes and licensed practice decide";

export const BATTERY_CAUTIONS: readonly Caution[] = [
  {
    id: "lead_gas",
    where: { row: "chemistry", word: "flooded" },
    text: "Charging it gives off hydrogen, which explodes from 4 % in air: stand it in the open or in a box vented at the top, no sparks, posts covered. Acid burns eyes: goggles and water at hand.",
    beside: "chemistry",
    source: `OSHA on 29 CFR 1910.178(g)(2), 1976, and 33 CFR 183.420 (boats), read in copies; ${LICENSED}`,
    weight: "harm",
  },
  {
    id: "sealed_gas",
    where: { row: "chemistry", word: "agm" },
    text: "Sealed lead gasses too when it is overcharged: not in a tight box, and no flame near it while it charges.",
    beside: "chemistry",
    source: `33 CFR 183.420 (boats), read in a copy; ${LICENSED}`,
    weight: "harm",
  },
  {
    id: "ups_gas",
    where: { row: "chemistry", word: "ups" },
    text: "Sealed lead gasses too when it is overcharged: not in a tight box. One whose case has swollen goes to the recycler.",
    beside: "chemistry",
    source: `33 CFR 183.420 (boats), read in a copy; swelling: ${PRACTICE}; ${LICENSED}`,
    weight: "harm",
  },
  {
    id: "lithium_cold",
    where: { row: "chemistry", word: "lifepo4" },
    text: "Never charge it below freezing: it is ruined and may fail later. It may be used down to -20 °C.",
    beside: "chemistry",
    source: "Battery University BU-410, table 1, and a maker's manual, read",
    weight: "harm",
  },
  {
    id: "bare_cells",
    where: { row: "chemistry", word: "lifepo4" },
    text: "Only a pack with its own protection board, in a whole case. Loose used cells without one catch fire, and no sum on this page makes them safe.",
    beside: "health",
    source: "US Consumer Product Safety Commission, 8 January 2021, on loose lithium cells, read in a copy",
    weight: "harm",
  },
  {
    id: "battery_short",
    text: "A short across its posts melts tools and burns. Take off rings, cover the posts, fix it so that it cannot tip, fuse it at the post, and lift with your legs.",
    beside: "usable_energy",
    source: `33 CFR 183.420 (boats), read in a copy; lifting: ${PRACTICE}; ${LICENSED}`,
    weight: "harm",
  },
  {
    id: "cold_charge",
    if: "frost_months > 0",
    text: "Nights of your season fall below freezing where it stands. Charged in frost a lithium battery is ruined: take it in, or switch the panel off until it thaws.",
    beside: "charged",
    source: "Battery University BU-410, table 1, read",
    weight: "harm",
  },
  {
    id: "flat_before_one_watering",
    if: "round_energy > usable_energy",
    text: "It is flat before one watering of all its beds is done: {usable_energy} against {round_energy}.",
    beside: "waterings_per_charge",
    source: DEFINITION,
    weight: "trouble",
  },
  {
    id: "not_a_week",
    if: "uncharged > 0 and days_without_sun < 7 day",
    text: "Nothing charges it, and it carries only {days_without_sun} of peak days: without a charge for a week the beds go dry.",
    beside: "days_without_sun",
    source: DEFINITION,
    weight: "trouble",
  },
  {
    id: "worn_out",
    if: "health_in_use < 80 %",
    text: "Under 80 % of its label: worn, and it goes on falling. Test it again each spring.",
    beside: "health_in_use",
    source: "US Bureau of Reclamation, Storage Battery Maintenance (1997), read",
    weight: "note",
  },
  {
    id: "house_charger",
    where: { row: "charged", word: "mains" },
    text: "Charge it under a roof, dry, with air around it, by a listed charger made for its kind, from a socket behind a ground-fault breaker that is tested monthly; no mains lead out to the water.",
    beside: "charged",
    source: `utilities' pages on ground-fault breakers, read; ${PRACTICE}; ${LICENSED}`,
    weight: "harm",
  },
];
