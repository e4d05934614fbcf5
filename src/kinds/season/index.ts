// The season: the plan put together from all cards, the run over the record, and what it says of the whole.

import { outcomes } from "../../graph/outcomes.ts";
import { readyList, recordOf, wordOf } from "../../graph/readers.ts";
import type { Model, ModelInput, Outputs } from "../../graph/types.ts";
import type { SeasonInput } from "../../season/input.ts";
import { runSeason } from "../../season/run.ts";
import { hands } from "../bed/hands.ts";
import { unmetered } from "../delivery/season.ts";
import type { Kind } from "../kind.ts";
import { refilled, taken, tightest } from "../line/refill-deadlines.ts";
import { overflows } from "../tank/overflows.ts";
import { peakDraw } from "../tank/peak-draw.ts";
import { reach } from "../tank/reach.ts";
import { feeds, joints } from "../tee/joints.ts";
import { planRows, type Shares, seasonInput } from "./input.ts";
import { linking } from "./network-of-cards.ts";
import { type Answered, type PartKinds, seasonOutputs } from "./outputs.ts";
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

const planning = (shares: Shares): Model => ({
  name: "planning",
  takes: PLAN_TAKES,
  surveys: planRows(shares),
  optional: ["site.minutes_per_day"],
  outputs: ["plan", "left_out_of_plan", "part_kinds", "unmetered"],
  run: (input) => {
    const plan = seasonInput(input, shares);
    if (plan.beds.length + plan.draws.length + plan.tanks.length === 0) {
      return {
        plan: { none: "there is no tank and no bed yet" },
        left_out_of_plan: { value: plan.leftOut },
        part_kinds: { value: {} },
        unmetered: { value: 0 },
      };
    }
    return outcomes({
      plan,
      left_out_of_plan: plan.leftOut,
      part_kinds: partKinds(input),
      unmetered: unmetered(input).length,
    });
  },
});

/** The kind of each card that may be a part of the plan, by its id. */
const partKinds = ({ cards }: ModelInput): PartKinds =>
  Object.fromEntries(
    Object.entries(cards).flatMap(([kind, its]) => its.map(({ id }): [string, string] => [id, kind])),
  );

const running = (kinds: readonly Answered[]): Model => ({
  name: "run",
  takes: ["plan", "part_kinds"],
  record: "weather.record_in_use",
  heavy: true,
  outputs: "by quantity id",
  run: (input) => {
    const plan = input.values["plan"] as SeasonInput;
    const kindOf = input.values["part_kinds"] as PartKinds;
    return seasonOutputs(plan, runSeason(plan, recordOf(input)), kinds, kindOf);
  },
});

/** What the run left out, the plan's parts among them; where there was no run, what the plan left out. */
function leftOutOf(input: ModelInput): Outputs {
  const list = readyList(input.results, "left_out_in_run");
  const all = list.length > 0 ? list : readyList(input.results, "left_out_of_plan");
  return outcomes({ left_out: all.length, left_out_list: all });
}

const sharesOf = (kinds: readonly Kind[]): Shares =>
  Object.fromEntries(kinds.flatMap(({ kind, season: share }) => (share ? [[kind, share]] : [])));

/** Kinds that take part in the season, with their rows that the run answers. */
const answeredOf = (kinds: readonly Kind[]): readonly Answered[] =>
  kinds.flatMap(({ kind, season: share, rows }) => {
    const answered = rows.filter((row) => row.row === "output" && row.of === "season.run");
    return share ? [{ kind, share, rows: answered.map(({ name }) => name) }] : [];
  });

const modelsOf = (shares: Shares, kinds: readonly Answered[]): readonly Model[] => [
  linking(shares),
  planning(shares),
  running(kinds),
  today,
  week,
  calendar,
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
  hands,
  reach,
  peakDraw,
  taken,
  refilled,
  tightest,
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
];

export const season: Kind = {
  kind: "season",
  label: "The season",
  purpose: "Every day of the record run through all of it together.",
  group: "The season and the money",
  icon: { ink: "M4 6h16v14H4zM4 10h16M8 3v4M16 3v4" },
  glance: ["days_of_autonomy", "share_met"],
  single: true,
  spans: SEASON_SPANS,
  once: { met: "got" },
  rows: SEASON_ROWS,
  models: [],
  among: (others) => ({ models: modelsOf(sharesOf(others), answeredOf(others)) }),
  cautions: [
    {
      id: "left_out",
      if: "left_out > 0",
      beside: "left_out",
      weight: "trouble",
    },
    {
      id: "power_unknown",
      if: "unmetered > 0",
      beside: "binding",
      weight: "trouble",
    },
  ],
};
