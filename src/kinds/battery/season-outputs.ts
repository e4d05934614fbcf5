// What a season's days ask of a battery and say of it.

import batteries from "../../../shared/batteries.json";
import type { Row } from "../../graph/types.ts";
import { given, MEMORY, output } from "../rows.ts";
import { column } from "../tabled.ts";

const RUN = "your record, day by day";

export const BATTERY_SEASON_ROWS: readonly Row[] = [
  given(
    "self_discharge",
    "Loses by itself in a month",
    "share",
    { by: "chemistry", pick: column(batteries.chemistries, (row) => row.self_discharge) },
    "Of what it holds when full, in thirty days on the shelf.",
    { max: 1, minor: true, source: MEMORY },
  ),
  output("coldest_charge", "Least warmth to charge at", "charging", "series", "None for lead.", MEMORY, {
    hidden: true,
  }),
  output(
    "days_flat",
    "Days it stopped a watering, a season",
    "season.run",
    "count",
    "Days on which a watering stopped, or never began, because it was drawn down; the mean of whole seasons.",
    RUN,
  ),
  output(
    "lowest_charge",
    "Lowest it fell",
    "season.run",
    "share",
    "After a watering, of what you can use: the lowest of the record.",
    RUN,
  ),
  output(
    "season_charge",
    "Put into it in a season",
    "season.run",
    "energy",
    "By its panel or from the house, before its own losses; the mean of whole seasons.",
    RUN,
    { minor: true },
  ),
  output(
    "season_use",
    "Taken by pumps in a season",
    "season.run",
    "energy",
    "The pumps' and their wires' together; the mean of whole seasons.",
    RUN,
    { minor: true },
  ),
  output(
    "season_loss",
    "Lost in it and by other loads in a season",
    "season.run",
    "energy",
    "Turned into heat while charging, lost by itself, and taken by its other loads; the mean of whole seasons.",
    RUN,
    { minor: true },
  ),
];
