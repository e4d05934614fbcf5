// The season: the plan put together from all cards, the run over the record, and what it says of the whole.

import type { CardKind, Model } from "../graph/types.ts";
import type { SeasonPlan } from "../season/plan.ts";
import { runSeason } from "../season/run.ts";
import { outcomes } from "./inputs.ts";
import { TAKERS_ROWS, TIGHTEST, TIGHTEST_ROWS, takers, tightest } from "./keeping-up.ts";
import { DEFINITION, formula, given, output } from "./rows.ts";
import { seasonOutputs } from "./season-outputs.ts";
import { PLAN_ROWS, seasonPlan } from "./season-plan.ts";
import { SERVES_ROWS, serves } from "./serves.ts";

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

const PLAN_TAKES = [
  "hold_days",
  "site.season_start",
  "site.season_end",
  "site.storage_rule",
  "site.minutes_per_day",
  "site.water_at",
  "site.water_viscosity",
  "site.water_density",
  "weather.rain_scale",
  "weather.eto_choice",
];

const planning: Model = {
  name: "planning",
  takes: PLAN_TAKES,
  surveys: PLAN_ROWS,
  optional: ["site.minutes_per_day"],
  outputs: ["plan", "left_out"],
  run: (input) => {
    const plan = seasonPlan(input);
    if (plan.beds.length + plan.draws.length + plan.tanks.length === 0) {
      return { plan: { none: "there is no tank and no bed yet" }, left_out: { value: plan.leftOut.length } };
    }
    return outcomes({ plan, left_out: plan.leftOut.length });
  },
};

const run: Model = {
  name: "run",
  takes: ["plan"],
  record: "weather.record_in_use",
  heavy: true,
  outputs: "by quantity id",
  run: (input) => {
    const plan = input.values["plan"] as SeasonPlan;
    if (!input.record) throw new Error("The rain record is not here.");
    return seasonOutputs(plan, runSeason(plan, input.record));
  },
};

export const season: CardKind = {
  kind: "season",
  label: "The season",
  purpose: "Every day of the record run through all of it together.",
  single: true,
  rows: [
    given(
      "hold_days",
      "Hold back for the beds before, days",
      "count",
      [7, "1"],
      "A bed is watered only if what is left still covers so many days of the beds that come before it.",
      { max: 365 },
    ),
    output("plan", "Plan", "planning", "series", "What one run needs to know.", DEFINITION, { hidden: true }),
    output(
      "left_out",
      "Parts left out",
      "planning",
      "count",
      "Parts whose numbers are missing or wrong; the rest is worked out without them.",
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
      "The reachable water of all tanks that serve beds over what is taken on a peak day.",
      `definition; bed need after ${FAO}`,
    ),
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
    output("record_first_day", "First day", "run", "count", "First day of the record.", RUN, {
      hidden: true,
    }),
  ],
  models: [
    planning,
    run,
    {
      name: "serves",
      takes: ["weather.peak_day_eto", "site.today"],
      surveys: SERVES_ROWS,
      tolerant: true,
      outputs: "by quantity id",
      run: serves,
    },
    {
      name: "takers",
      takes: [],
      surveys: TAKERS_ROWS,
      tolerant: true,
      outputs: "by quantity id",
      run: takers,
    },
    {
      name: "keeping_up",
      takes: [],
      surveys: TIGHTEST_ROWS,
      tolerant: true,
      outputs: [...TIGHTEST],
      run: tightest,
    },
  ],
  cautions: [
    {
      id: "left_out",
      if: "left_out > 0",
      text: "Some parts are left out of the season because a number of theirs is missing. Each says so on its card.",
      beside: "left_out",
      source: DEFINITION,
      weight: "trouble",
    },
  ],
};
