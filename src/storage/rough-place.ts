// A worksheet that tells roughly where a garden lies, not whose it is.

import {
  type EntryPlace,
  mapCard,
  mapEntries,
  mapGivens,
  mapPlan,
  mapPlans,
  type Rewrite,
} from "../document/entries.ts";
import { frozen } from "../document/freeze.ts";
import type { Entry, Worksheet } from "../document/worksheet.ts";

/** A tenth of a degree is some 11 km, and moves the length of a day by seconds. */
const PARTS_OF_DEGREE = 10;
const DEGREES = new Set(["deg", "°", "degree", "degrees"]);
const RADIANS = new Set(["rad", "radian", "radians"]);
const DEGREES_PER_RADIAN = 180 / Math.PI;

function toTenth(degrees: number): number {
  return Math.round(degrees * PARTS_OF_DEGREE) / PARTS_OF_DEGREE;
}

function rough(entry: Entry): Entry {
  const { value, unit } = entry;
  if (typeof value !== "number") return entry;
  if (RADIANS.has(unit.trim())) return { ...entry, value: toTenth(value * DEGREES_PER_RADIAN), unit: "deg" };
  // An unusual unit is left to whole numbers, which is too rough rather than too fine.
  const next = DEGREES.has(unit.trim()) ? toTenth(value) : Math.round(value);
  return next === value ? entry : { ...entry, value: next };
}

/** The worksheet with the latitude to a tenth of a degree, wherever the place card or a plan holds one. */
export function roughPlace(worksheet: Worksheet): Worksheet {
  const atSite = (entry: Entry, { card, row }: EntryPlace) =>
    card === "site" && row === "latitude" ? rough(entry) : entry;
  const rewrite: Rewrite = (entry, name) => (name === "latitude" ? rough(entry) : entry);
  const site = mapCard(worksheet, "site", (card) => {
    const measured = mapEntries(card.measured, rewrite);
    const next = mapGivens(card, rewrite);
    return measured === card.measured ? next : { ...next, measured };
  });
  return frozen(mapPlans(site, (plan) => mapPlan(site, plan, atSite)));
}
