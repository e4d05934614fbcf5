// What a bucket lays at whose door: the pump, the wand, both or neither, and whether one test only is guessing.

import { outcomes } from "../../graph/outcomes.ts";
import type { Model, ModelInput } from "../../graph/types.ts";
import type { GravityLine } from "../../physics/gravity-line.ts";
import type { Pump } from "../../physics/pump-curve.ts";
import { pumpRun } from "../../physics/pump-run.ts";
import { type BucketTest, shareByTest, TELLS_NOTHING, taughtPump, unlessNothing } from "../pump/lesson.ts";
import { testAt } from "./rig.ts";

/** A bucket tells no better than this: what lies within it is as the figures have it [-]. Judgement, no source. */
const TELLS = 0.07;

export const BLAMES = {
  neither: "neither: as the figures say",
  pump: "the pump, not the wand",
  wand: "the wand, not the pump",
  both: "the pump and the wand",
  pump_by_one: "the pump, by one test alone",
  wand_by_one: "the wand, by one test alone",
};

const isOff = (ratio: number): boolean => Math.abs(ratio - 1) > TELLS;

/** Flow in the bucket over what figures and hose say [-]. */
function against(pump: Pump, line: GravityLine, test: BucketTest, flow: number): number {
  const expected = pumpRun({ pump, line, lift: test.lift }, test.supply).flow;
  return expected > 0 ? flow / expected : Number.POSITIVE_INFINITY;
}

function byTwo(figured: Pump, test: BucketTest, open: number, wand: number): keyof typeof BLAMES {
  const pump = taughtPump(figured, shareByTest(figured, test));
  const wandOff = isOff(against(pump, test.whole, test, wand));
  if (isOff(against(figured, test.bare, test, open))) return wandOff ? "both" : "pump";
  return wandOff ? "wand" : "neither";
}

function blameOf(figured: Pump, test: BucketTest): keyof typeof BLAMES {
  const { open, wand } = test;
  if (open !== null && wand !== null) return byTwo(figured, test, open, wand);
  const line = open === null ? test.whole : test.bare;
  if (!isOff(against(figured, line, test, open ?? wand ?? 0))) return "neither";
  return shareByTest(figured, test) === null ? "wand_by_one" : "pump_by_one";
}

/** Whose fault it is that more or less comes than the figures say. */
export const blaming: Model = {
  name: "blaming",
  takes: ["bucket_test", "pump.curve_figured"],
  outputs: ["blames"],
  run: (input: ModelInput) => {
    const test = testAt(input);
    const figured = input.values["pump.curve_figured"] as Pump;
    const blames = test && unlessNothing(() => blameOf(figured, test));
    if (blames === "nothing") return { blames: { failed: TELLS_NOTHING } };
    return outcomes({ blames }, "no bucket timed yet");
  },
};
