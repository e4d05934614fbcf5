// A pump's curve as it is believed, the circuit that feeds it, and the two ends of its curve.

import { all, outcomes } from "../../graph/outcomes.ts";
import { numberOf, numberOrNull, wordOf, wordOrNull } from "../../graph/readers.ts";
import type { Model, ModelInput } from "../../graph/types.ts";
import {
  believedCurve,
  curveFromPoints,
  curveFromRatings,
  openFlow,
  type Pump,
  type PumpCurve,
} from "../../physics/pump-curve.ts";
import { greatestLift } from "../../physics/pump-run.ts";
import { whyNone } from "../line/hose.ts";
import { type BucketTest, shareByTests, TELLS_NOTHING, taughtPump, unlessNothing } from "./lesson.ts";

const hasPoints = (input: ModelInput): boolean => {
  const points = input.values["curve"];
  return Array.isArray(points) && points.length > 0;
};

function curveOf(input: ModelInput): PumpCurve {
  const rated = numberOf(input, "rated_voltage");
  if (hasPoints(input)) {
    const points = input.values["curve"];
    const listed = (points as readonly (readonly [number, number])[]).map(([flow, head]) => ({ flow, head }));
    return curveFromPoints(listed, rated);
  }
  const label = curveFromRatings(numberOf(input, "open_flow"), numberOf(input, "shutoff_head"), rated);
  return believedCurve(label, numberOf(input, "believed_share"));
}

/** Whose word is taken for its curve. */
export const WORDS = {
  label: "its label, in part",
  tested: "its figures, as tested",
  sheet: "its data sheet",
  bucket: "your bucket",
};

function wordOfIt(input: ModelInput, tests: readonly BucketTest[]): keyof typeof WORDS {
  if (tests.length > 0) return "bucket";
  if (hasPoints(input)) return "sheet";
  return wordOf(input, "figures") === "tested" ? "tested" : "label";
}

const LEARNED = [
  "curve_in_use",
  "shutoff_in_use",
  "open_in_use",
  "tested_share",
  "tests_apart",
  "believed_by",
] as const;

const believing: Model = {
  name: "believing",
  takes: [
    "rated_voltage",
    "curve",
    "figures",
    "open_flow",
    "shutoff_head",
    "believed_share",
    "rated_current",
    "no_flow_current",
    "no_load_current",
    "tests",
  ],
  optional: ["curve"],
  outputs: ["curve_figured", ...LEARNED],
  run: (input) => {
    const figured: Pump = {
      ...curveOf(input),
      noFlowCurrent: numberOf(input, "no_flow_current"),
      openFlowCurrent: numberOf(input, "rated_current"),
      frictionCurrent: numberOf(input, "no_load_current"),
    };
    const tests = input.values["tests"] as readonly BucketTest[];
    const taught = unlessNothing(() => shareByTests(figured, tests));
    if (taught === "nothing")
      return { ...all(LEARNED, { failed: TELLS_NOTHING }), curve_figured: { value: figured } };
    const pump = taughtPump(figured, taught?.share ?? null);
    return {
      ...outcomes({
        curve_figured: figured,
        curve_in_use: pump,
        shutoff_in_use: pump.shutoffHead,
        open_in_use: openFlow(pump, pump.ratedVoltage),
        tests_apart: taught?.apart ?? 1,
        believed_by: wordOfIt(input, tests),
      }),
      ...outcomes({ tested_share: taught?.share ?? null }, "no bucket timed yet that tells of the pump"),
    };
  },
};

const FED = [
  "powered_by.nominal_voltage",
  "powered_by.chemistry",
  "powered_by.short_current",
  "powered_by.whole_short",
];

/** What stands at the other end of its wire; a panel's light takes longer to know than that it is there. */
const source: Model = {
  name: "source",
  takes: FED,
  optional: FED,
  outputs: ["supply_voltage", "panel_short", "source_kind", "source_short"],
  run: (input) => {
    const short = numberOrNull(input, "powered_by.whole_short");
    return {
      ...outcomes(
        {
          supply_voltage: numberOrNull(input, "powered_by.nominal_voltage"),
          source_kind: wordOrNull(input, "powered_by.chemistry"),
          source_short: numberOrNull(input, "powered_by.short_current"),
        },
        short === null ? "it runs on no battery" : "it runs on a panel, whose voltage follows the sun",
      ),
      ...outcomes({ panel_short: short }, "it runs on no panel"),
    };
  },
};

const LIT = ["powered_by.supply", "powered_by.whole_short"];

/** The light that a panel at its wire gives, or why that is not known. */
const lighting: Model = {
  name: "lighting",
  takes: LIT,
  optional: LIT,
  outputs: ["panel", "dark"],
  run: (input) => {
    const isDark =
      numberOrNull(input, "powered_by.whole_short") !== null && !input.values["powered_by.supply"];
    return {
      ...outcomes({ panel: input.values["powered_by.supply"] ?? null }, "it runs on no panel"),
      // A panel whose light cannot be worked out is a source all the same.
      ...outcomes(
        { dark: isDark ? whyNone(input, "powered_by.supply") : null },
        "nothing is wrong with its light",
      ),
    };
  },
};

const ends: Model = {
  name: "ends",
  takes: ["curve_in_use", "supply_voltage", "wire_resistance", "rated_voltage"],
  optional: ["supply_voltage"],
  outputs: ["head_at_no_flow", "flow_at_no_head"],
  run: (input) => {
    const pump = input.values["curve_in_use"] as Pump;
    const voltage = numberOrNull(input, "supply_voltage") ?? numberOf(input, "rated_voltage");
    const supply = { voltage, resistance: numberOf(input, "wire_resistance") };
    return outcomes({
      head_at_no_flow: greatestLift(pump, supply),
      flow_at_no_head: openFlow(pump, voltage),
    });
  },
};

export const PUMP_MODELS: readonly Model[] = [believing, source, lighting, ends];
