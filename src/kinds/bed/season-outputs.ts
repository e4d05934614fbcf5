// What a season's days say of how a bed was watered.

import type { Row } from "../../graph/types.ts";
import { output } from "../rows.ts";

const RUN = "your record, day by day";

export const BED_SEASON_ROWS: readonly Row[] = [
  output(
    "days_helped",
    "Days another way helped, a season",
    "season.run",
    "count",
    "Days on which a later way in its list gave what an earlier one could not: by can, say, when the battery was flat.",
    RUN,
  ),
  output(
    "lacked_by",
    "Waterings lacked",
    "season.run",
    "text",
    "Days of a usual season on which its first way could not give all it asked for, by what was lacking; another way may have helped.",
    RUN,
  ),
  output("day_notes", "Day by day", "season.run", "series", "Given and lacking on each day.", RUN, {
    hidden: true,
  }),
];
