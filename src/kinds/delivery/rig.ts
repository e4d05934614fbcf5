// A pump put to its hose, as all models of a delivery see it: its curve, the line, what feeds it, and what a bucket taught.

import { numberOf, numberOrNull } from "../../graph/readers.ts";
import type { ModelInput } from "../../graph/types.ts";
import { type GravityLine, gravityHead } from "../../physics/gravity-line.ts";
import { openingOf, SHARP_EDGE } from "../../physics/orifice.ts";
import type { Pump } from "../../physics/pump-curve.ts";
import {
  type Lifting,
  outletKFromBucket,
  type PumpRun,
  pumpRun,
  type Supply,
} from "../../physics/pump-run.ts";
import { levelAt, type Vessel } from "../../physics/vessel.ts";
import type { PanelSupply } from "../panel/light.ts";

/** What a hose and its pump are, as the models read them. */
export const HOSE_TAKES = [
  "pump.curve_in_use",
  "pump.supply_voltage",
  "pump.wire_resistance",
  "pump.panel",
  "from.vessel",
  "from.floor_height",
  "outlet_height",
  "hose_length",
  "hose_bore",
  "roughness",
  "fittings_k",
  "filters_k",
  "head_k",
  "rose_holes",
  "rose_hole",
  "tank_share",
  "bucket_volume",
  "bucket_time",
  "site.water_viscosity",
  "site.water_density",
];
export const HOSE_MAY_LACK = HOSE_TAKES.filter((name) => /^(pump|bucket|rose_holes)/.test(name));

/** A pump put to a hose: everything but the lift, the source, and what a bucket taught. */
export type Rig = {
  readonly pump: Pump;
  readonly line: GravityLine;
  readonly supply: Supply;
  readonly panel: PanelSupply | null;
  /** Loss of the watering head, taught by the bucket or given [-]. */
  readonly headK: number;
  /** Flow in the bucket over what the pump could give at most, 1 unless it beat that [-]. */
  readonly gain: number;
  readonly lift: number;
};

/** All holes of the rose together as one opening, or null where it has none [m2]. */
function roseOf(input: ModelInput): number | null {
  const holes = numberOrNull(input, "rose_holes");
  return holes === null ? null : holes * openingOf(numberOf(input, "rose_hole"), SHARP_EDGE);
}

function lineOf(input: ModelInput, k: number, opening: number | null): GravityLine {
  return {
    length: numberOf(input, "hose_length"),
    bore: numberOf(input, "hose_bore"),
    roughness: numberOf(input, "roughness"),
    fittingsK: numberOf(input, "fittings_k") + numberOf(input, "filters_k") + k,
    opening,
    viscosity: numberOf(input, "site.water_viscosity") / numberOf(input, "site.water_density"),
  };
}

/** Lift with the tank filled to a share [m]. */
function liftOf(input: ModelInput): number {
  const vessel = input.values["from.vessel"] as Vessel;
  const level = levelAt(vessel, vessel.volume * numberOf(input, "tank_share"));
  return numberOf(input, "outlet_height") - numberOf(input, "from.floor_height") - level;
}

/** Flow that a bucket showed, or null [m3/s]. */
export function bucketFlow(input: ModelInput): number | null {
  const [volume, time] = [numberOrNull(input, "bucket_volume"), numberOrNull(input, "bucket_time")];
  return volume === null || time === null ? null : volume / time;
}

/** What the bucket teaches: the watering head's loss, or that the pump is better than its figures. */
function taught(
  lifting: Lifting,
  supply: Supply,
  flow: number,
): { readonly headK: number; readonly gain: number } {
  const most = pumpRun(lifting, supply).flow;
  if (most <= 0) return { headK: 0, gain: 1 };
  return flow > most
    ? { headK: 0, gain: flow / most }
    : { headK: outletKFromBucket(lifting, supply, flow), gain: 1 };
}

/** The rig of a delivery, or null where it has no pump that runs on anything. */
export function rigOf(input: ModelInput): Rig | null {
  const pump = input.values["pump.curve_in_use"] as Pump | undefined;
  const panel = (input.values["pump.panel"] as PanelSupply | undefined) ?? null;
  const voltage = numberOrNull(input, "pump.supply_voltage") ?? (panel ? (pump?.ratedVoltage ?? null) : null);
  if (!pump || voltage === null) return null;
  const wire = numberOrNull(input, "pump.wire_resistance") ?? 0;
  // A panel has no one voltage: the full flow is that at the pump's own.
  const supply = { voltage, resistance: panel ? 0 : wire };
  const lift = liftOf(input);
  const seen = bucketFlow(input);
  if (seen === null || panel) {
    const headK = numberOf(input, "head_k");
    return { pump, line: lineOf(input, headK, roseOf(input)), supply, panel, lift, headK, gain: 1 };
  }
  // The bucket was held under the rose: what it teaches has the rose in it.
  const learnt = taught({ pump, line: lineOf(input, 0, null), lift }, supply, seen);
  return { pump, line: lineOf(input, learnt.headK, null), supply, panel, lift, ...learnt };
}

/** The rig's point under a lift, from its source. */
export function runUnder(rig: Rig, lift: number): PumpRun {
  const run = pumpRun({ ...rig, lift }, rig.supply);
  if (rig.gain === 1) return run;
  const flow = run.flow * rig.gain;
  return { ...run, flow, head: run.flow > 0 ? lift + gravityHead(rig.line, flow) : run.head };
}
