// A pump put to its hose, as all models of a delivery see it: its curve, the line, what feeds it, and what a bucket taught.

import { numberOf, numberOrNull } from "../../graph/readers.ts";
import type { ModelInput } from "../../graph/types.ts";
import type { GravityLine } from "../../physics/gravity-line.ts";
import type { Pump } from "../../physics/pump-curve.ts";
import {
  greatestLift,
  outletKFromBucket,
  type PumpRun,
  pumpRun,
  type Supply,
} from "../../physics/pump-run.ts";
import type { PanelSupply } from "../panel/light.ts";
import type { BucketTest } from "../pump/lesson.ts";
import { LINE_TAKES, lineOf, roseOf } from "./test.ts";

/** What a hose and its pump are, as the models read them. */
export const HOSE_TAKES = [
  "pump.curve_in_use",
  "pump.supply_voltage",
  "pump.wire_resistance",
  "pump.panel",
  "pump.dark",
  "from.vessel",
  "from.floor_height",
  "outlet_height",
  "lift",
  "hose_length",
  "hose_bore",
  ...LINE_TAKES,
  "bucket_test",
];
export const HOSE_MAY_LACK = HOSE_TAKES.filter((name) => /^(pump|bucket|rose_holes)/.test(name));

/** What tells how high a pump lifts into its hose, of whatever sun: less than the whole hose, and known sooner. */
export const LIFT_TAKES = [
  "pump.curve_in_use",
  "pump.supply_voltage",
  "pump.wire_resistance",
  "pump.panel_short",
  "from.floor_height",
  "outlet_height",
];
export const LIFT_MAY_LACK = LIFT_TAKES.filter((name) => name.startsWith("pump"));

/** Depth of the tank's water at which a pump no longer lifts any to the end of its hose [m]; null where nothing drives it. */
export function liftedFrom(input: ModelInput): number | null {
  const pump = input.values["pump.curve_in_use"] as Pump | undefined;
  const onPanel = numberOrNull(input, "pump.panel_short") !== null;
  const voltage =
    numberOrNull(input, "pump.supply_voltage") ?? (onPanel ? (pump?.ratedVoltage ?? null) : null);
  if (!pump || voltage === null) return null;
  const resistance = onPanel ? 0 : (numberOrNull(input, "pump.wire_resistance") ?? 0);
  const above = numberOf(input, "outlet_height") - numberOf(input, "from.floor_height");
  return above - greatestLift(pump, { voltage, resistance });
}

/** A pump put to a hose. */
export type Rig = {
  readonly pump: Pump;
  readonly line: GravityLine;
  readonly supply: Supply;
  readonly panel: PanelSupply | null;
  /** Loss of the watering head on the speed in the hose, taught by a bucket or given [-]. */
  readonly headK: number;
  readonly lift: number;
};

/** The bucket timed at this hose, or null. */
export function testAt(input: ModelInput): BucketTest | null {
  return (input.values["bucket_test"] as BucketTest | undefined) ?? null;
}

/**
 * What a bucket timed through the wand teaches of it, on the speed in the hose it was timed with [-]: what the pump, as
 * all its buckets show it, had left over. Null where none was timed through it.
 */
function wandByTest(pump: Pump, test: BucketTest | null): number | null {
  if (!test || test.wand === null) return null;
  const { bare: line, lift, supply, wand } = test;
  const lifting = { pump, line, lift };
  return wand < pumpRun(lifting, supply).flow ? outletKFromBucket(lifting, supply, wand) : 0;
}

/** A wand's loss stays the wand's on a wider hose: on the speed there it grows with the fourth power of the bore [-]. */
const onBore = (k: number, from: number, to: number): number => k * (to / from) ** 4;

/** The rig of a delivery, or null where it has no pump that runs on anything. */
export function rigOf(input: ModelInput, curve = "pump.curve_in_use"): Rig | null {
  const pump = input.values[curve] as Pump | undefined;
  const panel = (input.values["pump.panel"] as PanelSupply | undefined) ?? null;
  const voltage = numberOrNull(input, "pump.supply_voltage") ?? (panel ? (pump?.ratedVoltage ?? null) : null);
  if (!pump || voltage === null) return null;
  const wire = numberOrNull(input, "pump.wire_resistance") ?? 0;
  const test = testAt(input);
  const hose = { length: numberOf(input, "hose_length"), bore: numberOf(input, "hose_bore") };
  const learnt = wandByTest(pump, test);
  const headK =
    learnt === null || !test ? numberOf(input, "head_k") : onBore(learnt, test.bare.bore, hose.bore);
  return {
    pump,
    // A bucket held under the rose has the rose in what it teaches.
    line: lineOf(input, hose, headK, learnt === null ? roseOf(input) : null),
    // A panel has no one voltage: the full flow is that at the pump's own.
    supply: { voltage, resistance: panel ? 0 : wire },
    panel,
    headK,
    lift: numberOf(input, "lift"),
  };
}

/** The rig's point under a lift, from its source. */
export function runUnder(rig: Rig, lift: number): PumpRun {
  return pumpRun({ ...rig, lift }, rig.supply);
}
