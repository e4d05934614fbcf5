// One pump with its hose as a single solved point, and the same point at every depth of its tank.

import type { Model, ModelInput, Outputs, Value } from "../graph/types.ts";
import { directRun } from "../physics/direct-drive.ts";
import type { GravityLine } from "../physics/gravity-line.ts";
import { gravityHead } from "../physics/gravity-line.ts";
import type { Pump } from "../physics/pump-curve.ts";
import {
  greatestLift,
  hydraulicPower,
  type Lifting,
  outletKFromBucket,
  type PumpRun,
  pumpRun,
  type Supply,
} from "../physics/pump-run.ts";
import { levelAt, type Vessel } from "../physics/vessel.ts";
import type { SunOnPump } from "../season/plan.ts";
import { all, numberOf, numberOrNull, outcomes } from "./inputs.ts";
import { whyNone } from "./line-hose.ts";
import { curveIn, type PanelSupply, sunOnPump } from "./panel-light.ts";

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
  "head_k",
  "tank_share",
  "bucket_volume",
  "bucket_time",
  "site.water_viscosity",
  "site.water_density",
];
export const HOSE_MAY_LACK = HOSE_TAKES.filter((name) => /^(pump|bucket)/.test(name));

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

function lineOf(input: ModelInput, k: number): GravityLine {
  return {
    length: numberOf(input, "hose_length"),
    bore: numberOf(input, "hose_bore"),
    roughness: numberOf(input, "roughness"),
    fittingsK: numberOf(input, "fittings_k") + k,
    opening: null,
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
function bucketFlow(input: ModelInput): number | null {
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
  const learnt =
    seen === null || panel
      ? { headK: numberOf(input, "head_k"), gain: 1 }
      : taught({ pump, line: lineOf(input, 0), lift }, supply, seen);
  return { pump, line: lineOf(input, learnt.headK), supply, panel, lift, ...learnt };
}

/** The rig's point under a lift, from its source. */
export function runUnder(rig: Rig, lift: number): PumpRun {
  const run = pumpRun({ ...rig, lift }, rig.supply);
  if (rig.gain === 1) return run;
  const flow = run.flow * rig.gain;
  return { ...run, flow, head: run.flow > 0 ? lift + gravityHead(rig.line, flow) : run.head };
}

const POINT = [
  "flow",
  "head",
  "arriving_voltage",
  "current",
  "source_voltage",
  "head_k_in_use",
  "bucket_over",
  "spare_head",
  "lifting",
  "has_pump",
] as const;

/** The point on a panel alone: at the hour of watering on a dry day of the month of the season with least sun. */
function pointOf(rig: Rig): PumpRun {
  if (!rig.panel) return runUnder(rig, rig.lift);
  const { wireResistance, watering, air } = rig.panel;
  return directRun(rig, wireResistance, curveIn(rig.panel, watering, air));
}

function withPump(rig: Rig): Outputs {
  const run = pointOf(rig);
  const spare = greatestLift(rig.pump, rig.supply) - rig.lift;
  const dark = rig.panel ? "the sun is too low at the hour of watering: water earlier in the day" : null;
  const none = spare <= 0 ? "its hose ends higher than this pump lifts" : dark;
  const at: Record<string, Value> = {
    flow: run.flow,
    head: run.head,
    current: run.current,
    arriving_voltage: run.arrivingVoltage,
  };
  const point = run.flow > 0 ? outcomes(at) : all(Object.keys(at), { none: none ?? "nothing comes out" });
  return {
    ...point,
    ...outcomes({
      source_voltage: rig.panel
        ? run.arrivingVoltage + run.current * rig.panel.wireResistance
        : rig.supply.voltage,
      head_k_in_use: rig.headK,
      bucket_over: rig.gain - 1,
      spare_head: spare,
      lifting: { pump: rig.pump, line: rig.line, lift: rig.lift },
      has_pump: 1,
    }),
  };
}

function byBucket(input: ModelInput): Outputs {
  const flow = bucketFlow(input);
  const voltage = numberOrNull(input, "powered_by.nominal_voltage");
  const unsolved = { none: whyNone(input, "pump.curve_in_use") };
  const source =
    voltage === null ? { none: whyNone(input, "powered_by.nominal_voltage") } : { value: voltage };
  return {
    ...all(["head", "head_k_in_use", "bucket_over", "spare_head", "lifting"], unsolved),
    flow: flow === null ? { none: "no bucket timed yet" } : { value: flow },
    current: { none: "no meter reading yet: put an ammeter in the lead while it runs" },
    arriving_voltage: source,
    source_voltage: source,
    has_pump: { value: 0 },
  };
}

/** A pump that is named but runs on nothing: what it does hangs on what feeds it. */
function unfed(): Outputs {
  return { ...all(POINT, { none: "its pump runs on no battery and no panel" }), has_pump: { value: 1 } };
}

/** Curve, hose, lift, wire and source together; without a pump's card what a bucket showed. */
export const running: Model = {
  name: "running",
  takes: [...HOSE_TAKES, "powered_by.nominal_voltage"],
  optional: [...HOSE_MAY_LACK, "powered_by.nominal_voltage"],
  outputs: POINT,
  run: (input) => {
    if (!input.values["pump.curve_in_use"]) return byBucket(input);
    const rig = rigOf(input);
    return rig ? withPump(rig) : unfed();
  },
};

/** Depths of the tank at which the season looks the pump up. */
const DEPTHS = 16;

/** What the season needs of a pump: flow and power by depth, and the sun that drives it. */
export type PumpRows = {
  readonly depths: readonly number[];
  readonly flows: readonly number[];
  readonly powers: readonly number[];
  readonly sun: SunOnPump | null;
};

/** Its rows by depth; what was measured scales all of them. */
function rowsOf(input: ModelInput, rig: Rig): PumpRows {
  const vessel = input.values["from.vessel"] as Vessel;
  const above = numberOf(input, "outlet_height") - numberOf(input, "from.floor_height");
  const depths = Array.from({ length: DEPTHS + 1 }, (_, step) => (vessel.height * step) / DEPTHS);
  const runs = depths.map((depth) => runUnder(rig, above - depth));
  const now = runUnder(rig, rig.lift);
  const share = (name: string, computed: number) =>
    computed > 0 ? (numberOrNull(input, name) ?? computed) / computed : 1;
  const [byFlow, byCurrent] = rig.panel
    ? [1, 1]
    : [share("measured.flow", now.flow), share("measured.current", now.current)];
  return {
    depths,
    flows: runs.map(({ flow }) => flow * byFlow),
    powers: runs.map(({ current }) => (rig.panel ? 0 : current * byCurrent * rig.supply.voltage)),
    sun: rig.panel ? sunOnPump(rig.panel, rig, now.flow) : null,
  };
}

/** The table that the season looks up. */
export const tabling: Model = {
  name: "tabling",
  takes: [...HOSE_TAKES, "measured.flow", "measured.current"],
  optional: [...HOSE_MAY_LACK, "measured.flow", "measured.current"],
  outputs: ["by_depth"],
  run: (input) => {
    const rig = rigOf(input);
    return outcomes({ by_depth: rig ? rowsOf(input, rig) : null }, "no pump's card stands behind it");
  },
};

/** Water lifted over power taken. */
export const efficiency: Model = {
  name: "lifting_share",
  takes: ["flow", "head", "power", "site.water_density"],
  outputs: ["efficiency"],
  run: (input) => {
    const lifted = hydraulicPower(
      numberOf(input, "flow"),
      numberOf(input, "head"),
      numberOf(input, "site.water_density"),
    );
    const power = numberOf(input, "power");
    return outcomes({ efficiency: power > 0 ? lifted / power : null }, "it takes no power");
  },
};
