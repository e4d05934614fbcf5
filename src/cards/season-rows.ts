// What the season card shows: its one given number, the answers of the run, and what other rows read.

import type { Row } from "../graph/types.ts";
import { DEFINITION, formula, given, output } from "./rows.ts";
import { STORAGE_ROWS } from "./storage-answers.ts";
import { WEEK_ROWS } from "./week.ts";

const RUN = "your record, day by day";
const FAO = "FAO Irrigation and Drainage Paper 56";

const BINDING_OPTIONS = [
  { word: "rain", label: "rain" },
  { word: "storage", label: "storage" },
  { word: "transfer", label: "the gravity line" },
  { word: "pump_time", label: "the pump's time" },
  { word: "energy", label: "the battery" },
  { word: "hands", label: "your time" },
  { word: "held_back", label: "held back for other beds" },
];

/** Rows of the season card, in the order in which they are shown. */
export const SEASON_ROWS: readonly Row[] = [
  given(
    "hold_days",
    "Hold back for the beds before, days",
    "count",
    [7, "1"],
    "A bed is watered only if what is left still covers so many days of the beds that come before it.",
    { max: 365 },
  ),
  ...WEEK_ROWS,
  output("plan", "Plan", "planning", "series", "What one run needs to know.", DEFINITION, { hidden: true }),
  output("left_out_of_plan", "Left out before the run", "planning", "series", "Parts.", DEFINITION, {
    hidden: true,
  }),
  output("left_out_list", "Left out", "listing", "series", "Parts, each with its reason.", DEFINITION, {
    hidden: true,
  }),
  output(
    "left_out",
    "Parts left out",
    "listing",
    "count",
    "Parts whose numbers are missing or wrong, or that cannot work as drawn; the rest is worked out without them.",
    DEFINITION,
  ),
  output(
    "reachable",
    "Reachable in all tanks",
    "serves",
    "volume",
    "The reachable water of all tanks that serve beds, full.",
    DEFINITION,
    { minor: true },
  ),
  output(
    "peak_day_draw",
    "Taken on a peak day",
    "serves",
    "volume",
    "What those beds need on a peak day, with the tanks' leaks and open water.",
    FAO,
    { minor: true },
  ),
  formula(
    "days_of_autonomy",
    "Full tanks last",
    "span",
    "reachable / peak_day_draw * 1 day",
    "The reachable water of all tanks that serve beds over what is taken on a peak day. Other draws, for animals or rinsing, are not in it.",
    `definition; bed need after ${FAO}`,
  ),
  ...STORAGE_ROWS,
  output(
    "need",
    "Beds need, a season",
    "run",
    "volume",
    "Crop use less the rain that counted, over what reaches the roots; the mean of whole seasons.",
    FAO,
  ),
  output(
    "met",
    "Beds get, a season",
    "run",
    "volume",
    "Water given to all beds; the mean of whole seasons.",
    RUN,
  ),
  output(
    "share_met",
    "Share of their thirst met",
    "run",
    "share",
    "What all crops used over what they would have used, all seasons together.",
    RUN,
  ),
  output(
    "days_short",
    "Days short, a season",
    "run",
    "count",
    "Days on which any bed was short; the mean of whole seasons.",
    RUN,
  ),
  output(
    "longest_short_run",
    "Longest run of short days",
    "run",
    "count",
    "The most days on end on which some bed was short, over the record.",
    RUN,
  ),
  output(
    "driest_year_share_met",
    "Share met, driest year",
    "run",
    "share",
    "The same share in the calendar year with the least rain.",
    RUN,
  ),
  output(
    "driest_year_days_short",
    "Days short, driest year",
    "run",
    "count",
    "Days short in the calendar year with the least rain.",
    RUN,
  ),
  output(
    "short_first_bed",
    "Goes short first, by its id",
    "run",
    "text",
    "The bed with the earliest short day of the driest year.",
    RUN,
    { hidden: true },
  ),
  output(
    "short_first",
    "Goes short first, driest year",
    "short_first",
    "text",
    "The bed with the earliest short day of that season; of equals the one that is served first.",
    RUN,
  ),
  output("short_first_day", "From", "run", "text", "The first day on which it is short.", RUN, {
    minor: true,
  }),
  output(
    "spill",
    "Spills, a season",
    "run",
    "volume",
    "Roof water that found no room, in a usual season.",
    RUN,
  ),
  output(
    "binding",
    "Gives out first",
    "run",
    "text",
    "Of what a watering could lack (rain, storage, transfer, pump, energy, hands, held back), the one behind the most unmet water.",
    `${RUN}; the order is our definition`,
    { options: BINDING_OPTIONS },
  ),
  output(
    "tightest_line",
    "Slowest line for its beds",
    "keeping_up",
    "text",
    "The line whose refill takes the largest share of the time until the next watering.",
    DEFINITION,
    { hidden: true },
  ),
  output(
    "tightest_refill",
    "Its refill",
    "keeping_up",
    "duration",
    "After the largest watering from the tank it fills.",
    DEFINITION,
    { minor: true },
  ),
  output(
    "tightest_interval",
    "Its beds ask again after",
    "keeping_up",
    "span",
    "The shortest time between waterings at the peak.",
    DEFINITION,
    { minor: true },
  ),
  output(
    "tightest_share",
    "Refill over that time",
    "keeping_up",
    "share",
    "Over 100 % it is late.",
    DEFINITION,
    { minor: true },
  ),
  output(
    "balance_error",
    "Water not accounted for",
    "run",
    "factor",
    "In less out less change in store, over all that went through: measured from the days, not assumed.",
    RUN,
    { minor: true },
  ),
  output("stored_total", "Water in all tanks", "run", "series", "Each evening of the record.", RUN, {
    hidden: true,
  }),
  output("short_days", "Short days", "run", "series", "1 on a day on which any bed was short.", RUN, {
    hidden: true,
  }),
  output("left_out_in_run", "Left out", "run", "series", "Parts, each with its reason.", RUN, {
    hidden: true,
  }),
  output("record_first_day", "First day", "run", "count", "First day of the record.", RUN, {
    hidden: true,
  }),
];
