// Rows of a bed that tell of now and of single weeks and seasons: its sentence, its week, what charts and tables read.

import type { Row } from "../../graph/types.ts";
import { hidden, output } from "../rows.ts";

/** Shown first; most of them are only read by the sentence, charts and tables. */
export const BED_NOW_ROWS: readonly Row[] = [
  output("needs_today", "Now", "now", "text", { fills: true, lead: true }),
  hidden("week", "The coming week", "season.week", "series"),
  hidden("calendar", "A season day by day", "season.calendar", "series"),
  hidden("by_year", "Season by season", "season.run", "series"),
  hidden("through_year", "Through the year", "demand", "series"),
  hidden("wants_next", "Wants next", "now", "volume"),
  hidden("gets_next", "Gets next", "now", "volume"),
  output("lacks_today", "Lacks today", "now", "volume", { minor: true, quiet: true }),
  output("week_days", "Never refused, asks this week on", "now", "text", { minor: true, quiet: true }),
  output("week_each", "And asks each time for", "now", "volume", { minor: true, quiet: true }),
];
