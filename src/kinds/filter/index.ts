// A filter or strainer: the head it takes in a line, or the share of a roof's water it throws away.

import roofs from "../../../shared/roofs.json";
import { outcomes } from "../../graph/outcomes.ts";
import { numberOf, numberOrNull } from "../../graph/readers.ts";
import type { ModelInput, Outputs } from "../../graph/types.ts";
import { COMMON_YEAR, DAY, GRAVITY, HOUR } from "../../units/constants.ts";
import type { Kind } from "../kind.ts";
import { whyNone } from "../line/hose.ts";
import { COSTS, formula, given, link, output } from "../rows.ts";
import { FILTER_SPANS } from "./spans.ts";

const PASSES = roofs.filter_efficiency.value * 100;

function losing(input: ModelInput): Outputs {
  const velocity = numberOrNull(input, "on.velocity");
  if (velocity === null) return { head_lost: { none: whyNone(input, "on.velocity") } };
  return outcomes({ head_lost: (numberOf(input, "k_in_use") * velocity ** 2) / (2 * GRAVITY) });
}

export const filter: Kind = {
  kind: "filter",
  label: "Filter",
  purpose: "A screen or strainer in a line, behind a pump, or between a roof and its tank.",
  group: "Ways for the water",
  icon: { ink: "M4 5h16l-6 7v8l-4-3v-5z", tone: "M8 8h8", color: "water" },
  noted: ["cleaned", "drained"],
  joins: { on: "newest" },
  handSettings: ["clean_every"],
  glance: ["head_lost"],
  spans: FILTER_SPANS,
  rows: [
    link("on", "Sits on", "carries_dirt", "sits on nothing yet"),
    given("k", "Loss when clean", "factor", [2, "1"], { max: 10_000 }),
    given("clogged_share", "Clogged before it is cleaned", "share", [30, "%"], { max: 0.95 }),
    given("clean_every", "Cleaned every", "span", [14, "day"], { min: HOUR, max: COMMON_YEAR * DAY }),
    given("clean_passes", "On a roof, lets through when clean", "share", [PASSES, "%"], {
      max: 1,
      minor: true,
    }),
    formula("k_in_use", "Loss when clogged", "factor", "k / (1 - clogged_share)^2", { minor: true }),
    formula("passes", "On a roof, lets through when clogged", "share", "clean_passes * (1 - clogged_share)", {
      minor: true,
    }),
    output("head_lost", "Takes of the drop", "losing", "head"),
    formula("cleanings", "Rinsed in a year", "count", "365 day / clean_every", { minor: true }),
    ...COSTS,
  ],
  models: [
    {
      name: "losing",
      takes: ["k_in_use", "on.velocity"],
      optional: ["on.velocity"],
      outputs: ["head_lost"],
      run: losing,
    },
  ],
  cautions: [
    {
      id: "filter_clogs",
      if: "clogged_share > 50 %",
      beside: "clogged_share",
      weight: "trouble",
    },
    {
      id: "filter_bypass",
      beside: "clean_every",
      weight: "note",
    },
  ],
};
