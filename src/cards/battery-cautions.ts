// What of a battery can hurt someone, or leave the beds dry.

import type { Caution } from "../graph/types.ts";
import { DEFINITION, PRACTICE } from "./rows.ts";

export const BATTERY_CAUTIONS: readonly Caution[] = [
  {
    id: "lead_gas",
    where: { row: "chemistry", word: "flooded" },
    text: "Charging it gives off explosive gas: in the open or well vented, no sparks, terminals covered. Acid burns eyes: goggles and water at hand.",
    beside: "chemistry",
    source: PRACTICE,
    weight: "harm",
  },
  {
    id: "lithium_cold",
    where: { row: "chemistry", word: "lifepo4" },
    text: "Never charge it below freezing: it is ruined and may fail later. Bare used cells without a protection board are not for a garden.",
    beside: "chemistry",
    source: PRACTICE,
    weight: "harm",
  },
  {
    id: "battery_short",
    text: "A short across its posts melts tools and burns. Take off rings, cover the posts, fuse it, and lift with your legs: these are heavy.",
    beside: "usable_energy",
    source: PRACTICE,
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
    text: "Charge it indoors or under a roof, dry, with air around it, by a charger made for its kind; no mains lead out to the water.",
    beside: "charged",
    source: `${PRACTICE}; licensed practice decides`,
    weight: "harm",
  },
];
