// Rows of a pan of the user's own: where it stands, its readings, and the coefficient that turns them into drying.

import type { Row } from "../../graph/types.ts";
import { choice, given, months, output } from "../rows.ts";
import { PAN_PLACES } from "./models.ts";

const FAO = "FAO Irrigation and Drainage Paper 56, ch. 4";
const BY_PAN = { when: { row: "eto_from", is: ["pan"] }, minor: true } as const;

/** Shown where drying is taken from a pan. */
export const PAN_ROWS: readonly Row[] = [
  {
    ...months(
      "pan_readings",
      "Pan loses a day, month by month",
      "evaporation",
      null,
      "mm/day",
      "Mean of each month, January first. Readings count for ten days or longer, not for single days.",
      "no pan readings given",
    ),
    ...BY_PAN,
  },
  choice("pan_place", "The pan stands with", PAN_PLACES, "green_10", "What lies upwind of it.", BY_PAN),
  choice(
    "pan_damp",
    "The air there is",
    { dry: "dry, under 40 %", middling: "middling, 40 to 70 %", damp: "damp, over 70 %" },
    "middling",
    "Mean relative humidity of the day.",
    BY_PAN,
  ),
  output("pan_usual", "Of the tables", "pan", "factor", "For where it stands and how damp the air is.", FAO, {
    hidden: true,
  }),
  given(
    "pan_coefficient",
    "Drying over what the pan loses",
    "factor",
    { formula: "pan_usual" },
    "From the tables for where the pan stands; give your own where you know better. A pan painted black loses a tenth more, one under a screen a tenth less.",
    { max: 1.5, source: FAO, ...BY_PAN },
  ),
];
