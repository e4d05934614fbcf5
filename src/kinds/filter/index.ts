// A filter or strainer: the head it takes in a line, or the share of a roof's water it throws away.

import roofs from "../../../shared/roofs.json";
import { outcomes } from "../../graph/outcomes.ts";
import { numberOf, numberOrNull } from "../../graph/readers.ts";
import type { ModelInput, Outputs } from "../../graph/types.ts";
import { GRAVITY } from "../../units/constants.ts";
import type { Kind } from "../kind.ts";
import { whyNone } from "../line/hose.ts";
import { COSTS, DEFINITION, formula, given, link, MEMORY, output, PRACTICE } from "../rows.ts";
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
  joins: { on: "newest" },
  handSettings: ["clean_every"],
  glance: ["head_lost"],
  spans: FILTER_SPANS,
  rows: [
    link("on", "Sits on", "carries_dirt", "sits on nothing yet", "The line, roof or pump hose it is in."),
    given(
      "k",
      "Loss when clean",
      "factor",
      [2, "1"],
      "On the speed in the hose; the maker may give a curve instead.",
      {
        max: 10_000,
        source: PRACTICE,
      },
    ),
    given(
      "clogged_share",
      "Clogged before it is cleaned",
      "share",
      [30, "%"],
      "The share of its mesh that is blinded by then. The answers are for that moment.",
      { max: 0.95, source: PRACTICE },
    ),
    given("clean_every", "Cleaned every", "span", [14, "day"], "How often somebody rinses it.", {
      min: 3600,
      max: 31_536_000,
      source: PRACTICE,
    }),
    given(
      "clean_passes",
      "On a roof, lets through when clean",
      "share",
      [PASSES, "%"],
      "Of the roof's water, the share that goes on to the tank; the rest rinses the mesh and runs off.",
      { max: 1, minor: true, source: `${roofs.sources.STEP}: 0.9 unless its maker says otherwise` },
    ),
    formula(
      "k_in_use",
      "Loss when clogged",
      "factor",
      "k / (1 - clogged_share)^2",
      "The same flow through what is left of the mesh: the loss grows with the square of the speed.",
      DEFINITION,
      { minor: true },
    ),
    formula(
      "passes",
      "On a roof, lets through when clogged",
      "share",
      "clean_passes * (1 - clogged_share)",
      "What it lets through when clean, times the mesh that is left.",
      `in proportion to the open mesh: ${PRACTICE}`,
      { minor: true },
    ),
    output(
      "head_lost",
      "Takes of the drop",
      "losing",
      "head",
      "Its loss when clogged times the head of the speed in the hose.",
      "Darcy-Weisbach practice: K times the velocity head",
    ),
    formula(
      "cleanings",
      "Rinsed in a year",
      "count",
      "365 day / clean_every",
      "A year over the time between two cleanings.",
      DEFINITION,
      { minor: true },
    ),
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
      text: "A screen of this kind can fall from nine tenths to under a third of the water when algae or leaves blind it. Rinse it every {clean_every} at least, and after every storm.",
      beside: "clogged_share",
      source: roofs.sources.CAT,
      weight: "trouble",
    },
    {
      id: "filter_bypass",
      text: "Shut the line and let the pressure off before you open it. Keep the way over it open in a storm, so that water never backs up the downspout.",
      beside: "clean_every",
      source: MEMORY,
      weight: "note",
    },
  ],
};
