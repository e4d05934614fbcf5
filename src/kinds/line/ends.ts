// Where a gravity line starts and ends, which way it may run, and down to where it still runs.

import { all, outcomes } from "../../graph/outcomes.ts";
import { numberOf, numberOrNull, wordOf } from "../../graph/readers.ts";
import type { Model, ModelInput, Outputs, Value } from "../../graph/types.ts";
import { levelAt } from "../../physics/vessel.ts";
import { vesselOrNull, whyNone } from "./hose.ts";

const ENDS = [
  "start_height",
  "end_height",
  "source_water",
  "full_source",
  "plain_head",
  "lift",
  "ways",
] as const;

/** Heights at the line's start: of the opening, of the water at the reference share and when full. */
function startOf(input: ModelInput) {
  const vessel = vesselOrNull(input, "from.vessel");
  if (!vessel) return { start: numberOrNull(input, "from.height"), water: null, full: null };
  const floor = numberOf(input, "from.floor_height");
  return {
    start: floor + numberOf(input, "from.outlet_height"),
    water: floor + levelAt(vessel, vessel.volume * numberOf(input, "reference_share")),
    full: floor + vessel.height,
  };
}

/** Heights at the line's end: of the valve or the open end, and of the lower tank's brim. */
function endOf(input: ModelInput) {
  const vessel = vesselOrNull(input, "to.vessel");
  if (!vessel) return { end: numberOrNull(input, "to.height"), brim: null };
  const floor = numberOf(input, "to.floor_height");
  const valved = numberOrNull(input, "valve_bore") !== null;
  const depth = valved ? numberOf(input, "shut_level") : numberOf(input, "to.outlet_height");
  return { end: floor + depth, brim: floor + vessel.height };
}

/** How much less drop a measured one leaves between two tanks than their heights say; everything at the end counts as
 * that much higher. At a joint the drop hangs on every line that meets there: then 0. */
function liftOf(input: ModelInput, computed: number | null): number {
  const measured = numberOrNull(input, "measured.head");
  return measured === null || computed === null ? 0 : computed - measured;
}

function waysOf(input: ModelInput, start: number, brim: number | null): string {
  const stopped = numberOrNull(input, "valve_bore") !== null || wordOf(input, "check_valve") === "yes";
  return !stopped && brim !== null && brim > start ? "both_ways" : "one_way";
}

function endsOf(input: ModelInput): Outputs {
  const { start, water, full } = startOf(input);
  const { end, brim } = endOf(input);
  if (start === null) return all(ENDS, { none: whyNone(input, "from.floor_height") });
  if (end === null) return all(ENDS, { none: whyNone(input, "to.floor_height") });
  const plain = water !== null && brim !== null ? water - end : null;
  const lift = liftOf(input, plain);
  const values: Record<string, Value> = { start_height: start, end_height: end, source_water: water };
  return outcomes(
    {
      ...values,
      full_source: full,
      plain_head: plain,
      lift,
      ways: waysOf(input, start, brim === null ? null : brim + lift),
    },
    "it ends at a joint",
  );
}

/** The heights that the cards at both ends give, before anything flows. */
export const ends: Model = {
  name: "ends",
  takes: [
    "from.floor_height",
    "from.outlet_height",
    "from.vessel",
    "from.height",
    "reference_share",
    "to.floor_height",
    "to.outlet_height",
    "to.vessel",
    "to.height",
    "shut_level",
    "valve_bore",
    "check_valve",
    "measured.head",
  ],
  optional: [
    "from.floor_height",
    "from.outlet_height",
    "from.vessel",
    "from.height",
    "to.floor_height",
    "to.outlet_height",
    "to.vessel",
    "to.height",
    "shut_level",
    "valve_bore",
    "measured.head",
  ],
  outputs: ENDS,
  run: endsOf,
};

/** Down to where the upper tank's water still runs out through the line. */
export const stopping: Model = {
  name: "stopping",
  takes: ["runs_from", "end_height", "lift", "to.lowest_end"],
  optional: ["to.lowest_end"],
  outputs: ["last_flow_height"],
  run: (input) => {
    const end =
      numberOrNull(input, "to.lowest_end") ?? numberOf(input, "end_height") + numberOf(input, "lift");
    return outcomes({ last_flow_height: Math.max(numberOf(input, "runs_from"), end) });
  },
};

const HEIGHTS = ["source_height", "end_water"] as const;

/** Height of the water at the line's start, and of its end; joints have their own height of water. */
export const heights: Model = {
  name: "heights",
  takes: ["end_height", "source_water", "from.head", "to.head"],
  optional: ["source_water", "from.head", "to.head"],
  outputs: HEIGHTS,
  run: (input) => {
    const source = numberOrNull(input, "source_water") ?? numberOrNull(input, "from.head");
    if (source === null) return all(HEIGHTS, { none: whyNone(input, "from.head") });
    const end = numberOrNull(input, "to.head") ?? numberOf(input, "end_height");
    return outcomes({
      source_height: source,
      end_water: end,
    });
  },
};
