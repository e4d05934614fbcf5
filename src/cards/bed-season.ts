// What a season's days say of a bed.

import type { Row } from "../graph/types.ts";
import { output } from "./rows.ts";

const FAO = "FAO Irrigation and Drainage Paper 56";
const RUN = "your record, day by day";

export const BED_SEASON_ROWS: readonly Row[] = [
  output(
    "met",
    "Gets in a season",
    "season.run",
    "volume",
    "What it was given in a usual season.",
    "your record, day by day",
  ),
  output(
    "share_met",
    "Share of its thirst met",
    "season.run",
    "share",
    "What the crops used over what they would have used, all seasons together.",
    `your record, day by day; ${FAO}, Eq. 84`,
  ),
  output(
    "days_short",
    "Days short, a season",
    "season.run",
    "count",
    "Days on which the soil was so dry that the crop held back.",
    `your record, day by day; ${FAO}, Eq. 84`,
  ),
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
