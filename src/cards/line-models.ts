// What a gravity line works out from its ends, its hose and its valve.

import type { Model, ModelInput, Outcome, Outputs } from "../graph/types.ts";
import { purgeFlow } from "../physics/air-lock.ts";
import { type GravityLine, gravityFlow } from "../physics/gravity-line.ts";
import { openingOf } from "../physics/orifice.ts";
import { pipeHeadLoss } from "../physics/pipe-friction.ts";
import { openingFromFlow, openingFromRefill, type Refill, refillTime } from "../physics/refill.ts";
import { levelAt, type Vessel, volumeAt } from "../physics/vessel.ts";
import { all, numberOf, numberOrNull, outcomes } from "./inputs.ts";

export const CHURCHILL = "Churchill 1977, all flow regimes, with Darcy-Weisbach";
export const ORIFICE = "orifice in series with the hose, as in Darcy-Weisbach practice; Cd 0.62 sharp edge";

/** What the hose itself is, without its valve. */
const HOSE = ["length", "bore", "roughness", "fittings_k", "site.water_viscosity", "site.water_density"];
const ENDS = [
  "from.vessel",
  "from.floor_height",
  "to.vessel",
  "to.floor_height",
  "to.lowest_drawable",
  "shut_level",
  "reference_share",
  "valve_band",
  "end_height",
  "start_height",
  "computed_head",
  "measured.head",
  "valve_bore",
];

function hoseOf(input: ModelInput, opening: number | null): GravityLine {
  return {
    length: numberOf(input, "length"),
    bore: numberOf(input, "bore"),
    roughness: numberOf(input, "roughness"),
    fittingsK: numberOf(input, "fittings_k"),
    opening,
    viscosity: numberOf(input, "site.water_viscosity") / numberOf(input, "site.water_density"),
  };
}

function vesselAt(input: ModelInput, name: string): Vessel {
  const vessel = input.values[name];
  if (typeof vessel !== "object" || vessel === null) throw new Error(`${name} is not a tank.`);
  return vessel as Vessel;
}

/** How far the measured drop differs from the one of the cards' heights; the lower end is moved by it. */
function headShift(input: ModelInput): number {
  const [head, computed] = [numberOrNull(input, "measured.head"), numberOrNull(input, "computed_head")];
  return head === null || computed === null ? 0 : computed - head;
}

/** The refill as the physics wants it: from a level, the target's lowest drawable one if not said, to the float shut. */
function refillOf(
  input: ModelInput,
  opening: number | null,
  fromLevel = numberOf(input, "to.lowest_drawable"),
): Refill {
  const source = vesselAt(input, "from.vessel");
  return {
    line: hoseOf(input, opening),
    source: {
      vessel: source,
      floor: numberOf(input, "from.floor_height"),
      level: levelAt(source, source.volume * numberOf(input, "reference_share")),
      outlet: numberOf(input, "start_height") - numberOf(input, "from.floor_height"),
    },
    target: {
      vessel: vesselAt(input, "to.vessel"),
      floor: numberOf(input, "to.floor_height") + headShift(input),
      from: fromLevel,
      shut: numberOf(input, "shut_level"),
    },
    band: numberOrNull(input, "valve_bore") === null ? 0 : numberOf(input, "valve_band"),
    endHeight: numberOf(input, "end_height") + headShift(input),
  };
}

export const heights: Model = {
  name: "heights",
  takes: [
    "from.floor_height",
    "from.outlet_height",
    "from.vessel",
    "reference_share",
    "to.floor_height",
    "to.outlet_height",
    "shut_level",
    "valve_bore",
  ],
  optional: ["valve_bore", "shut_level"],
  outputs: ["start_height", "end_height", "source_height", "computed_head", "last_flow_height"],
  run: (input) => {
    const floor = numberOf(input, "from.floor_height");
    const source = vesselAt(input, "from.vessel");
    const start = floor + numberOf(input, "from.outlet_height");
    const valve = numberOrNull(input, "valve_bore") !== null;
    const depth = valve ? numberOf(input, "shut_level") : numberOf(input, "to.outlet_height");
    const end = numberOf(input, "to.floor_height") + depth;
    const surface = floor + levelAt(source, source.volume * numberOf(input, "reference_share"));
    return outcomes({
      start_height: start,
      end_height: end,
      source_height: surface,
      computed_head: surface - end,
      last_flow_height: Math.max(start, end),
    });
  },
};

export const teaching: Model = {
  name: "teaching",
  takes: ["valve_coefficient", "measured.refill_time", "measured.flow", "head", ...HOSE, ...ENDS],
  optional: ["measured.refill_time", "measured.flow", "head", "valve_bore", ...ENDS],
  outputs: ["opening"],
  run: (input) => {
    const refill = numberOrNull(input, "measured.refill_time");
    const flow = numberOrNull(input, "measured.flow");
    const bore = numberOrNull(input, "valve_bore");
    if (refill !== null && "to.vessel" in input.values) {
      const learned = openingFromRefill(refillOf(input, null), refill);
      return { opening: "opening" in learned ? { value: learned.opening } : { failed: learned.reason } };
    }
    if (flow !== null && numberOrNull(input, "head") !== null) {
      const learned = openingFromFlow(hoseOf(input, null), numberOf(input, "head"), flow);
      return { opening: "opening" in learned ? { value: learned.opening } : { failed: learned.reason } };
    }
    if (bore === null) return { opening: { none: "no valve fitted" } };
    return { opening: { value: openingOf(bore, numberOf(input, "valve_coefficient")) } };
  },
};

const STEADY = ["flow", "velocity", "reynolds", "friction_head"];

/** No flow, or the reason why there is none. */
function steady(input: ModelInput): Outputs {
  const head = numberOf(input, "head");
  if (head <= 0) return all(STEADY, { none: "the far end is as high as the water, so nothing runs" });
  const line = hoseOf(input, numberOrNull(input, "opening"));
  const flow = numberOrNull(input, "measured.flow") ?? gravityFlow(line, head);
  const velocity = flow / ((Math.PI * line.bore ** 2) / 4);
  return outcomes({
    flow: gravityFlow(line, head),
    velocity,
    reynolds: (velocity * line.bore) / line.viscosity,
    friction_head: pipeHeadLoss({ ...line, flow }),
  });
}

export const running: Model = {
  name: "running",
  takes: ["head", "opening", "measured.flow", ...HOSE],
  optional: ["opening", "measured.flow"],
  outputs: STEADY,
  run: steady,
};

/** Why nothing refills, or null. */
function noRefill(input: ModelInput): Outcome | null {
  if (numberOf(input, "head") <= 0) return { none: "the far end is as high as the water, so nothing runs" };
  return null;
}

function timeOf(refill: Refill): Outcome {
  const answer = refillTime(refill);
  return answer.state === "fills" ? { value: answer.time } : { none: answer.reason };
}

export const filling: Model = {
  name: "filling",
  takes: ["opening", "head", ...HOSE, ...ENDS],
  optional: ["opening", "valve_bore", "measured.head"],
  outputs: ["refill_time"],
  run: (input) => ({
    refill_time: noRefill(input) ?? timeOf(refillOf(input, numberOrNull(input, "opening"))),
  }),
};

export const afterWatering: Model = {
  name: "after_watering",
  takes: ["opening", "head", ...HOSE, ...ENDS, "to.largest_taken"],
  optional: ["opening", "valve_bore", "measured.head"],
  outputs: ["refill_after_watering"],
  run: (input) => {
    const reason = noRefill(input);
    if (reason) return { refill_after_watering: reason };
    const taken = numberOf(input, "to.largest_taken");
    const vessel = vesselAt(input, "to.vessel");
    const full = volumeAt(vessel, numberOf(input, "shut_level"));
    const left = levelAt(vessel, Math.max(0, full - taken));
    const from = Math.max(left, numberOf(input, "to.lowest_drawable"));
    return { refill_after_watering: timeOf(refillOf(input, numberOrNull(input, "opening"), from)) };
  },
};

const CLOCK_DAYS = ["", " the next day", " two days on", " three days on"];

function clock(seconds: number): string {
  const minutes = Math.round(seconds / 60);
  const days = Math.floor(minutes / 1440);
  const hour = Math.floor((minutes % 1440) / 60);
  const day = CLOCK_DAYS[days] ?? ` ${days} days on`;
  const half = hour < 12 ? "am" : "pm";
  return `${hour % 12 === 0 ? 12 : hour % 12}:${String(minutes % 60).padStart(2, "0")} ${half}${day}`;
}

export const finishing: Model = {
  name: "finishing",
  takes: ["refill_after_watering", "site.water_at"],
  outputs: ["full_by"],
  run: (input) =>
    outcomes({
      full_by: clock(numberOf(input, "site.water_at") + numberOf(input, "refill_after_watering")),
    }),
};

export const purging: Model = {
  name: "purging",
  takes: ["bore"],
  outputs: ["purge_flow"],
  run: (input) => outcomes({ purge_flow: purgeFlow(numberOf(input, "bore"), 0) }),
};
