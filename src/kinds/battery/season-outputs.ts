// What a season's days ask of a battery and say of it.

import batteries from "../../../shared/batteries.json";
import type { Row } from "../../graph/types.ts";
import { given, hidden, output } from "../rows.ts";
import { column } from "../tabled.ts";

export const BATTERY_SEASON_ROWS: readonly Row[] = [
  given(
    "self_discharge",
    "Loses by itself in a month",
    "share",
    { by: "chemistry", pick: column(batteries.chemistries, (row) => row.self_discharge) },
    { max: 1, minor: true },
  ),
  hidden("coldest_charge", "Least warmth to charge at", "charging", "series"),
  output("days_flat", "Days it stopped a watering, a season", "season.run", "count"),
  output("lowest_charge", "Lowest it fell", "season.run", "share"),
  output("season_charge", "Put into it in a season", "season.run", "energy", { minor: true }),
  output("season_use", "Taken by pumps in a season", "season.run", "energy", { minor: true }),
  output("season_loss", "Lost in it and by other loads in a season", "season.run", "energy", { minor: true }),
];
