// Rows of a pan of the user's own: where it stands, its readings, and the coefficient that turns them into drying.

import type { Row } from "../../graph/types.ts";
import { choice, given, hidden, months } from "../rows.ts";
import { PAN_PLACES } from "./models.ts";

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
      "no pan readings given",
    ),
    ...BY_PAN,
  },
  choice("pan_place", "The pan stands with", PAN_PLACES, "green_10", BY_PAN),
  choice(
    "pan_damp",
    "The air there is",
    { dry: "dry, under 40 %", middling: "middling, 40 to 70 %", damp: "damp, over 70 %" },
    "middling",
    BY_PAN,
  ),
  hidden("pan_usual", "Of the tables", "pan", "factor"),
  given(
    "pan_coefficient",
    "Drying over what the pan loses",
    "factor",
    { formula: "pan_usual" },
    { max: 1.5, ...BY_PAN },
  ),
];
