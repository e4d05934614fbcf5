// Rows of a bed that tell of now and of single weeks and seasons: its sentence, its week, what charts and tables read.

import type { Row } from "../../graph/types.ts";
import { output } from "../rows.ts";

const FAO = "FAO Irrigation and Drainage Paper 56";
const RUN = "your record, day by day";

/** Shown first; most of them are only read by the sentence, charts and tables. */
export const BED_NOW_ROWS: readonly Row[] = [
  output(
    "needs_today",
    "Now",
    "now",
    "text",
    "From the coming week, run day by day from today's levels and soils without rain; without a day for today, from peak days and the record's seasons.",
    RUN,
    { fills: true, lead: true },
  ),
  output("week", "The coming week", "season.week", "series", "Days, amounts and means.", RUN, {
    hidden: true,
  }),
  output(
    "calendar",
    "A season day by day",
    "season.calendar",
    "series",
    "Of the season that is looked at.",
    RUN,
    {
      hidden: true,
    },
  ),
  output("by_year", "Season by season", "season.run", "series", "Need, given, stress, loss.", RUN, {
    hidden: true,
  }),
  output("through_year", "Through the year", "demand", "series", "Weeks and months of a usual year.", FAO, {
    hidden: true,
  }),
  output("wants_next", "Wants next", "now", "volume", "Asked for the next time.", RUN, { hidden: true }),
  output("gets_next", "Gets next", "now", "volume", "What there will be of it.", RUN, { hidden: true }),
  output(
    "lacks_today",
    "Lacks today",
    "now",
    "volume",
    "What its crops used since it was last soaked through, less the rain that counted, over what reaches the roots.",
    `${RUN}; ${FAO}, chapter 8`,
    { minor: true, quiet: true },
  ),
  output(
    "week_days",
    "Waters this week on",
    "now",
    "text",
    "Days on which it will ask, if no rain comes.",
    RUN,
    { minor: true, quiet: true },
  ),
  output("week_each", "Each time", "now", "volume", "The mean of what it will ask for.", RUN, {
    minor: true,
    quiet: true,
  }),
  output("week_cans", "In cans, each time", "now", "count", "What it will ask for over your can.", RUN, {
    hidden: true,
  }),
];
