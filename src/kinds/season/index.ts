// The season: the plan put together from all cards, the run over the record, and what it says of the whole.

import { outcomes } from "../../graph/outcomes.ts";
import { readyList, wordOf } from "../../graph/readers.ts";
import type { Model, ModelInput, Outputs } from "../../graph/types.ts";
import type { SeasonInput } from "../../season/input.ts";
import { runSeason } from "../../season/run.ts";
import { HANDS_ROWS, hands } from "../bed/hands.ts";
import type { Kind } from "../kind.ts";
import {
  REFILLS_ROWS,
  refills,
  TAKERS_ROWS,
  TIGHTEST,
  TIGHTEST_ROWS,
  takers,
  tightest,
} from "../line/refill-deadlines.ts";
import { DEFINITION } from "../rows.ts";
import { overflows } from "../tank/overflows.ts";
import { SERVES_ROWS, serves } from "../tank/peak-draw.ts";
import { feeds, joints } from "../tee/joints.ts";
import { PLAN_ROWS, seasonInput } from "./input.ts";
import { linking } from "./network.ts";
import { seasonOutputs } from "./outputs.ts";
import { unmetered } from "./power.ts";
import { SEASON_ROWS } from "./rows.ts";
import { SEASON_SPANS } from "./spans.ts";
import { calendar, today, week } from "./week.ts";

const PLAN_TAKES = [
  "network",
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
  outputs: ["plan", "left_out_of_plan", "unmetered"],
  run: (input) => {
    const plan = seasonInput(input);
    if (plan.beds.length + plan.draws.length + plan.tanks.length === 0) {
      return {
        plan: { none: "there is no tank and no bed yet" },
        left_out_of_plan: { value: plan.leftOut },
        unmetered: { value: 0 },
      };
    }
    return outcomes({ plan, left_out_of_plan: plan.leftOut, unmetered: unmetered(input).length });
  },
};

const run: Model = {
  name: "run",
  takes: ["plan"],
  record: "weather.record_in_use",
  heavy: true,
  outputs: "by quantity id",
  run: (input) => {
    const plan = input.values["plan"] as SeasonInput;
    if (!input.record) throw new Error("The rain record is not here.");
    return seasonOutputs(plan, runSeason(plan, input.record));
  },
};

/** What the run left out, the plan's parts among them; where there was no run, what the plan left out. */
function leftOutOf(input: ModelInput): Outputs {
  const list = readyList(input.results, "left_out_in_run");
  const all = list.length > 0 ? list : readyList(input.results, "left_out_of_plan");
  return outcomes({ left_out: all.length, left_out_list: all });
}

export const season: Kind = {
  kind: "season",
  label: "The season",
  purpose: "Every day of the record run through all of it together.",
  group: "The season and the money",
  icon: { ink: "M4 6h16v14H4zM4 10h16M8 3v4M16 3v4" },
  glance: ["days_of_autonomy", "share_met"],
  single: true,
  spans: SEASON_SPANS,
  rows: SEASON_ROWS,
  models: [
    linking,
    planning,
    run,
    today,
    week,
    calendar,
    {
      name: "hands",
      takes: [],
      surveys: HANDS_ROWS,
      tolerant: true,
      outputs: "by quantity id",
      run: hands,
    },
    feeds,
    joints,
    overflows,
    {
      name: "listing",
      takes: ["left_out_of_plan", "left_out_in_run"],
      tolerant: true,
      outputs: ["left_out", "left_out_list"],
      run: leftOutOf,
    },
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
      name: "short_first",
      takes: ["short_first_bed"],
      surveys: { bed: ["priority"] },
      outputs: ["short_first"],
      run: (input) => {
        const id = wordOf(input, "short_first_bed");
        return outcomes({ short_first: input.cards["bed"]?.find((bed) => bed.id === id)?.title ?? id });
      },
    },
    {
      name: "refills",
      takes: [],
      surveys: REFILLS_ROWS,
      tolerant: true,
      outputs: "by quantity id",
      run: refills,
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
    {
      id: "power_unknown",
      if: "unmetered > 0",
      text: "What {unmetered} of your pumps takes is not known, so these answers take their power as never running out. Put an ammeter in the lead, or give the pump a card.",
      beside: "binding",
      source: DEFINITION,
      weight: "trouble",
    },
  ],
};
