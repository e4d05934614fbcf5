// How long a watering takes and how long the tank lasts, while its level falls and the lift grows.

import { all, outcomes } from "../../graph/outcomes.ts";
import { numberOf, numberOrNull } from "../../graph/readers.ts";
import type { Model, ModelInput, Outcome, Outputs } from "../../graph/types.ts";
import { greatestLift, type PumpRun } from "../../physics/pump-run.ts";
import type { Vessel } from "../../physics/vessel.ts";
import { type PumpedTank, type Watering, watering } from "../../physics/watering-time.ts";
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

/** Disagreement of the integrals that is accepted: far under what a bucket shows [-]. */
const CLOSE = 1e-5;

/** What the tank's own heights add to a hose. */
export const TANK_TAKES: readonly string[] = ["dead_depth", "from.outlet_height"];

const TIMES = ["watering_time", "drawdown_time", "watering_end"];

function tankOf(input: ModelInput, rig: Rig): PumpedTank {
  const vessel = input.values["from.vessel"] as Vessel;
  return {
    vessel,
    floor: numberOf(input, "from.floor_height"),
    level: vessel.height,
    lowest: Math.min(
      vessel.height,
      Math.max(numberOf(input, "dead_depth"), numberOf(input, "from.outlet_height")),
    ),
    outletHeight: numberOf(input, "outlet_height"),
    greatestLift: greatestLift(rig.pump, rig.supply),
  };
}

/** By the bucket's flow alone, the same at every level. */
function plainTimes(input: ModelInput, flow: number): Outputs {
  const [largest, reachable] = [
    numberOrNull(input, "largest_watering"),
    numberOrNull(input, "from.reachable"),
  ];
  const time = (volume: number | null, reason: string): Outcome =>
    volume === null ? { none: reason } : { value: volume / flow };
  const end = largest !== null && reachable !== null && largest > reachable ? "dry" : "done";
  return {
    watering_time: time(largest, "it waters no bed"),
    drawdown_time: time(reachable, "nothing of the tank can be reached"),
    watering_end: largest === null ? { none: "it waters no bed" } : { value: end },
  };
}

/** What the tank does not hold takes as long again as its last water would. */
function wholeTime(done: Watering, wanted: number, last: number): Outcome {
  if (done.end === "done") return { value: done.time };
  return last > 0
    ? { value: done.time + (wanted - done.volume) / last }
    : { none: "the tank falls too low for the pump first" };
}

/** Its point under a lift; a watering asks for the same lifts twice, for its time and for its charge. */
function runningAt(rig: Rig, gain: number): (lift: number) => PumpRun {
  const solved = new Map<number, PumpRun>();
  return (lift) => {
    const known = solved.get(lift);
    if (known) return known;
    const run = runUnder(rig, lift);
    const scaled = { ...run, flow: run.flow * gain };
    solved.set(lift, scaled);
    return scaled;
  };
}

/** Time of the largest watering from the full tank, or null where there is none or the tank falls too low for it [s]. */
export function timeOf(input: ModelInput, rig: Rig, gain: number, close: number): number | null {
  const largest = numberOrNull(input, "largest_watering");
  if (largest === null) return null;
  const tank = tankOf(input, rig);
  const runAt = runningAt(rig, gain);
  const done = watering(tank, runAt, largest, close);
  const time = wholeTime(done, largest, runAt(tank.outletHeight - tank.floor - done.level).flow);
  return "value" in time && typeof time.value === "number" ? time.value : null;
}

function integrated(input: ModelInput, rig: Rig, gain: number): Outputs {
  const tank = tankOf(input, rig);
  const runAt = runningAt(rig, gain);
  const emptied = watering(tank, runAt, null, CLOSE);
  const largest = numberOrNull(input, "largest_watering");
  const done = largest === null ? null : watering(tank, runAt, largest, CLOSE);
  const last = runAt(tank.outletHeight - tank.floor - emptied.level).flow;
  return {
    watering_time: done && largest !== null ? wholeTime(done, largest, last) : { none: "it waters no bed" },
    watering_end: done ? { value: done.end } : { none: "it waters no bed" },
    drawdown_time: { value: emptied.time },
  };
}

/** Times from the full tank, with nothing running in. */
export const timing: Model = {
  name: "timing",
  takes: [...HOSE_TAKES, "flow", ...TANK_TAKES, "largest_watering", "from.reachable", "measured.flow"],
  optional: [...HOSE_MAY_LACK, "largest_watering", "from.reachable", "measured.flow"],
  outputs: TIMES,
  run: (input) => {
    const flow = numberOf(input, "flow");
    if (!(flow > 0)) return all(TIMES, { none: "nothing comes out of it" });
    const rig = rigOf(input);
    // On a panel alone the flow follows the sun, not the level: as at the hour of watering.
    if (!rig || rig.panel) return plainTimes(input, flow);
    const computed = runUnder(rig, rig.lift).flow;
    return integrated(input, rig, computed > 0 ? flow / computed : 1);
  },
};

/**
 * Depth under which nothing comes out at the hose's end: where the pump draws air, or where it would have to lift higher
 * than it ever does. On a panel alone that is the lift at the pump's own voltage.
 */
export const reaching: Model = {
  name: "reaching",
  takes: [...LIFT_TAKES, "dead_depth"],
  optional: LIFT_MAY_LACK,
  outputs: ["gives_down_to"],
  run: (input) =>
    outcomes({ gives_down_to: Math.max(numberOf(input, "dead_depth"), liftedFrom(input) ?? -Infinity) }),
};

/** Depth under which nothing comes: the pump's, or what was given for it. */
export const leaving: Model = {
  name: "leaving",
  takes: ["lowest_water", "pump.lowest_water"],
  optional: ["pump.lowest_water"],
  outputs: ["dead_depth"],
  run: (input) =>
    outcomes({ dead_depth: numberOrNull(input, "pump.lowest_water") ?? numberOf(input, "lowest_water") }),
};
