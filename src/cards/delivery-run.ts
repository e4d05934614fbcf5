// One pump with its hose as a single solved point, and the same point at every depth of its tank.

import type { Model, ModelInput, Outputs, Value } from "../graph/types.ts";
import { directRun } from "../physics/direct-drive.ts";
import { greatestLift, hydraulicPower, type PumpRun } from "../physics/pump-run.ts";
import type { Vessel } from "../physics/vessel.ts";
import type { SunOnPump } from "../season/plan.ts";
import { bucketFlow, HOSE_MAY_LACK, HOSE_TAKES, type Rig, rigOf, runUnder } from "./delivery-rig.ts";
import { all, numberOf, numberOrNull, outcomes } from "./inputs.ts";
import { whyNone } from "./line-hose.ts";
import { curveIn, sunOnPump } from "./panel-light.ts";

const POINT = [
  "flow",
  "head",
  "arriving_voltage",
  "current",
  "source_voltage",
  "head_k_in_use",
  "bucket_over",
  "spare_head",
  "lift",
  "rose_opening",
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
      lift: rig.lift,
      lifting: { pump: rig.pump, line: rig.line, lift: rig.lift },
      has_pump: 1,
    }),
    ...outcomes({ rose_opening: rig.line.opening }, "no rose with counted holes"),
  };
}

function byBucket(input: ModelInput): Outputs {
  const flow = bucketFlow(input);
  const voltage = numberOrNull(input, "powered_by.nominal_voltage");
  const unsolved = { none: whyNone(input, "pump.curve_in_use") };
  const source =
    voltage === null ? { none: whyNone(input, "powered_by.nominal_voltage") } : { value: voltage };
  return {
    ...all(
      ["head", "head_k_in_use", "bucket_over", "spare_head", "lift", "rose_opening", "lifting"],
      unsolved,
    ),
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
