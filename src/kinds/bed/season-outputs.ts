// What a season's days say of how a bed was watered.

import type { Row } from "../../graph/types.ts";
import { hidden, output } from "../rows.ts";

export const BED_SEASON_ROWS: readonly Row[] = [
  output("days_helped", "Days another way helped, a season", "season.run", "count", { minor: true }),
  output("lacked_by", "Waterings short, by what", "season.run", "text"),
  hidden("day_notes", "Day by day", "season.run", "series"),
];
