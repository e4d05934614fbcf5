// One pump with its hose as a single solved point, and the same point at every depth of its tank.

import { all, outcomes } from "../../graph/outcomes.ts";
import { numberOf, numberOrNull, wordOrNull } from "../../graph/readers.ts";
import type { Model, ModelInput, Outputs } from "../../graph/types.ts";
import { directRun, frictionOf } from "../../physics/direct-drive.ts";
import { orificeK } from "../../physics/orifice.ts";
import { openFlow } from "../../physics/pump-curve.ts";
import { greatestLift, type PumpRun } from "../../physics/pump-run.ts";
import type { Vessel } from "../../physics/vessel.ts";
import type { SunOnPump } from "../../season/input.ts";
import { whyNone } from "../line/hose.ts";
import { curveIn, sunOnPump } from "../panel/light.ts";
import {
  HOSE_MAY_LACK,
  HOSE_TAKES,
  LIFT_MAY_LACK,
  LIFT_TAKES,
  liftedFrom,
  type Rig,
  rigOf,
  runUnder,
} from "./rig.ts";
import { bucketFlow } from "./test.ts";

const POINT = [
  "flow",
  "arriving_voltage",
  "current",
  "source_voltage",
  "head_k_in_use",
  "rose_k",
  "holes_in_use",
  "open_flow_here",
  "friction_here",
  "lifting",
  "has_pump",
] as const;

/** The point on a panel alone: at the hour of watering on a dry day of the month of the season with least sun. */
function pointOf(rig: Rig): PumpRun {
  if (!rig.panel) return runUnder(rig, rig.lift);
  const { wireResistance, watering, air } = rig.panel;
  return directRun(rig, wireResistance, curveIn(rig.panel, watering, air));
}

const LATER = "In the season it runs later that day, as soon as the sun drives it";
const NEVER = "In the season nothing comes through it on any day, for after that hour no sun drives it";

/** A pump that would lift so high at its own voltage wants volts, not a lower hose. */
function whyTooHigh({ pump, supply, lift, panel }: Rig): string {
  const atItsOwn = { ...supply, voltage: pump.ratedVoltage };
  if (panel || greatestLift(pump, atItsOwn) <= lift) return TOO_HIGH;
  return "its battery gives too few volts: at them the pump does not lift water to the end of the hose";
}

/** Where nothing comes out, why; on a panel alone also what the season then does. */
function whyDry(rig: Rig): string {
  if (greatestLift(rig.pump, rig.supply) <= rig.lift) return whyTooHigh(rig);
  if (!rig.panel) return "nothing comes out";
  const { panel } = rig;
  const latest = Math.max(0, ...panel.dryHours.flat());
  const comesLater = directRun(rig, panel.wireResistance, curveIn(panel, latest, panel.air)).flow > 0;
  return `the sun is too low at the hour of watering: water nearer to noon. ${comesLater ? LATER : NEVER}`;
}

/** Beside a measured flow stands what the figures say without it: by the pump it taught, it would only echo itself. */
function plainFlow(input: ModelInput, run: PumpRun): number {
  if (numberOrNull(input, "measured.flow") === null) return run.flow;
  const figured = rigOf(input, "pump.curve_figured");
  return figured ? pointOf(figured).flow : run.flow;
}

const TOO_MUCH =
  "so much current would lose all its volts in the wire: look at the reading and the wire again";

/** Flow, current and voltages; a meter's reading stands for the current in what the wire loses. */
function pointOutputs(input: ModelInput, rig: Rig): Outputs {
  const run = pointOf(rig);
  const source = rig.panel
    ? run.arrivingVoltage + run.current * rig.panel.wireResistance
    : rig.supply.voltage;
  const wire = rig.panel ? rig.panel.wireResistance : rig.supply.resistance;
  const seen = numberOrNull(input, "measured.current");
  const arriving = seen === null ? run.arrivingVoltage : source - seen * wire;
  const names = ["flow", "current", "arriving_voltage", "open_flow_here"];
  if (!(run.flow > 0)) return { ...all(names, { none: whyDry(rig) }), source_voltage: { value: source } };
  const isByCurve = seen === null && numberOrNull(input, "measured.flow") === null && arriving > 0;
  return {
    ...outcomes({ flow: plainFlow(input, run), current: run.current, source_voltage: source }),
    arriving_voltage: arriving < 0 ? { failed: TOO_MUCH } : { value: arriving },
    ...outcomes(
      { open_flow_here: isByCurve ? openFlow(rig.pump, arriving) : null },
      "what was measured stands instead of its curve",
    ),
  };
}

function withPump(input: ModelInput, rig: Rig): Outputs {
  const { opening, bore } = rig.line;
  return {
    ...pointOutputs(input, rig),
    ...outcomes({
      friction_here: rig.panel ? frictionOf(rig.pump) : 0,
      head_k_in_use: rig.headK,
      rose_k: opening === null ? 0 : orificeK(bore, opening),
      lifting: { pump: rig.pump, line: rig.line, lift: rig.lift },
      has_pump: 1,
    }),
    ...outcomes(
      { holes_in_use: opening === null ? null : numberOf(input, "rose_holes") },
      "no rose with counted holes",
    ),
  };
}

function byBucket(input: ModelInput): Outputs {
  const flow = bucketFlow(input) ?? bucketFlow(input, "open_time");
  const voltage = numberOrNull(input, "powered_by.nominal_voltage");
  const unsolved = { none: whyNone(input, "pump.curve_in_use") };
  const source =
    voltage === null ? { none: whyNone(input, "powered_by.nominal_voltage") } : { value: voltage };
  return {
    ...all(
      ["head_k_in_use", "rose_k", "holes_in_use", "open_flow_here", "friction_here", "lifting"],
      unsolved,
    ),
    flow: flow === null ? { none: "no bucket timed yet" } : { value: flow },
    current: { none: "no meter reading yet: put an ammeter in the lead while it runs" },
    arriving_voltage: source,
    source_voltage: source,
    has_pump: { value: 0 },
  };
}

const UNFED = "its pump runs on no battery and no panel";

/** Why a pump that is named has nothing to run on: no source, or a panel whose light cannot be worked out. */
const whyUnfed = (input: ModelInput): string => wordOrNull(input, "pump.dark") ?? UNFED;

/** A pump that is named but runs on nothing: what it does hangs on what feeds it. */
function unfed(input: ModelInput): Outputs {
  return { ...all(POINT, { none: whyUnfed(input) }), has_pump: { value: 1 } };
}

const BUCKET = ["bucket_volume", "bucket_time", "open_time"];
const RUNNING_ON = [
  "pump.curve_figured",
  "powered_by.nominal_voltage",
  "measured.flow",
  "measured.current",
  ...BUCKET,
];

/** Curve, hose, lift, wire and source together; without a pump's card what a bucket showed. */
export const running: Model = {
  name: "running",
  takes: [...HOSE_TAKES, ...RUNNING_ON],
  optional: [...HOSE_MAY_LACK, ...RUNNING_ON],
  outputs: POINT,
  run: (input) => {
    if (!input.values["pump.curve_in_use"]) return byBucket(input);
    const rig = rigOf(input);
    return rig ? withPump(input, rig) : unfed(input);
  },
};

const TOO_HIGH = "its hose ends higher than this pump lifts";

/** Why no water ever comes of a pump that has a card, however full its tank is: as a line that cannot run. */
export const stopping: Model = {
  name: "stopping",
  takes: [...LIFT_TAKES, "from.vessel"],
  optional: LIFT_MAY_LACK,
  outputs: ["stopped_by"],
  run: (input) => {
    if (!input.values["pump.curve_in_use"]) return { stopped_by: { none: "its bucket tells" } };
    const lowest = liftedFrom(input);
    if (lowest === null) return { stopped_by: { value: UNFED } };
    const { height } = input.values["from.vessel"] as Vessel;
    return { stopped_by: lowest < height ? { none: "water comes" } : { value: TOO_HIGH } };
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

/** Its rows by depth; a meter's reading scales the power at all of them. */
function rowsOf(input: ModelInput, rig: Rig): PumpRows {
  const vessel = input.values["from.vessel"] as Vessel;
  const above = numberOf(input, "outlet_height") - numberOf(input, "from.floor_height");
  const depths = Array.from({ length: DEPTHS + 1 }, (_, step) => (vessel.height * step) / DEPTHS);
  const runs = depths.map((depth) => runUnder(rig, above - depth));
  const now = runUnder(rig, rig.lift);
  const share = (name: string, computed: number) =>
    computed > 0 ? (numberOrNull(input, name) ?? computed) / computed : 1;
  const byCurrent = rig.panel ? 1 : share("measured.current", now.current);
  return {
    depths,
    flows: runs.map(({ flow }) => flow),
    powers: runs.map(({ current }) => (rig.panel ? 0 : current * byCurrent * rig.supply.voltage)),
    sun: rig.panel ? sunOnPump(rig.panel, rig, now.flow) : null,
  };
}

/** The table that the season looks up. */
export const tabling: Model = {
  name: "tabling",
  takes: [...HOSE_TAKES, "measured.current"],
  optional: [...HOSE_MAY_LACK, "measured.current"],
  outputs: ["by_depth"],
  run: (input) => {
    const rig = rigOf(input);
    return outcomes({ by_depth: rig ? rowsOf(input, rig) : null }, "no pump's card stands behind it");
  },
};
