// When the far tank of a gravity line is full again, where it stops if it never is, and what a measured refill teaches.

import { all, outcomes } from "../../graph/outcomes.ts";
import { numberOf, numberOrNull, wordOf } from "../../graph/readers.ts";
import type { Model, ModelInput, Outcome, Outputs } from "../../graph/types.ts";
import { gravityHead } from "../../physics/gravity-line.ts";
import {
  openingFromFlow,
  openingFromRefill,
  type Refill,
  type RefillEnd,
  refillTime,
  type Taught,
} from "../../physics/refill.ts";
import { levelAt, type Vessel, volumeAt } from "../../physics/vessel.ts";
import { MINUTES_A_DAY } from "../../units/constants.ts";
import { MAY_LACK, noFlow, PASSES, TIMED } from "./flow.ts";
import {
  dropBehind,
  type Feed,
  HOSE,
  hoseOf,
  UNTIMED,
  untimedOpening,
  vesselAt,
  vesselOrNull,
  whyNone,
} from "./hose.ts";

/** What a refill is worked out from besides the hose. */
const ENDS = [
  "from.vessel",
  "from.floor_height",
  "from.outlet_height",
  "from.feed",
  "to.vessel",
  "to.floor_height",
  "to.lowest_drawable",
  "shut_level",
  "reference_share",
  "valve_band",
  "valve_bore",
  "end_height",
  "runs_from",
  "lift",
];
/** Missing where an end is no tank, or nothing was measured. */
const MAY_MISS = [
  "from.vessel",
  "from.floor_height",
  "from.outlet_height",
  "from.feed",
  "to.vessel",
  "to.floor_height",
  "to.lowest_drawable",
  "shut_level",
  "valve_bore",
];

type Source = Pick<Refill, "source"> & { readonly before?: Refill["line"]; readonly startHeight: number };

/** The tank that the water comes from: at the line's start, or behind the one line that fills the joint there. */
function sourceOf(input: ModelInput): Source | null {
  const vessel = vesselOrNull(input, "from.vessel");
  if (vessel) {
    const level = levelAt(vessel, vessel.volume * numberOf(input, "reference_share"));
    const outlet = numberOf(input, "from.outlet_height");
    const floor = numberOf(input, "from.floor_height");
    return { source: { vessel, floor, level, outlet }, startHeight: numberOf(input, "runs_from") };
  }
  const feed = input.values["from.feed"] as Feed | undefined;
  if (!feed) return null;
  const { line, runsFrom, ...source } = feed;
  return { source, before: line, startHeight: runsFrom };
}

/** Less than this over the brim is rounding of one height given twice [m]. */
const ROUNDING = 1e-9;

/** Why the lower tank never comes to the depth that counts as full, or null. */
function runsOver(input: ModelInput, vessel: Vessel): { none: string } | null {
  if (numberOf(input, "shut_level") <= vessel.height + ROUNDING) return null;
  return { none: "its float shuts higher than the lower tank's brim, so it runs over and never shuts" };
}

/** The refill as the physics wants it, or why there is none. */
function refillOf(input: ModelInput, opening: number | null, from: number | null): Refill | { none: string } {
  const target = vesselOrNull(input, "to.vessel");
  if (!target) return { none: "it fills no tank" };
  const over = runsOver(input, target);
  if (over) return over;
  const source = sourceOf(input);
  if (!source) return { none: whyNone(input, "from.feed") };
  return {
    line: hoseOf(input, opening),
    ...source,
    target: {
      vessel: target,
      floor: numberOf(input, "to.floor_height") + numberOf(input, "lift"),
      from: from ?? numberOf(input, "to.lowest_drawable"),
      shut: numberOf(input, "shut_level"),
    },
    band: numberOrNull(input, "valve_bore") === null ? 0 : numberOf(input, "valve_band"),
    endHeight: numberOf(input, "end_height") + numberOf(input, "lift"),
  };
}

const learned = (taught: Taught): Outcome =>
  "opening" in taught ? { value: taught.opening } : { failed: taught.reason };

/** What a flow measured behind a joint teaches, as if only this line had run: its hose behind the one that fills the joint. */
function learnedBehind(input: ModelInput, flow: number): Outcome | null {
  const drop = dropBehind(input);
  return (
    drop && learned(openingFromFlow(hoseOf(input, null), drop.head - gravityHead(drop.before, flow), flow))
  );
}

/** The opening by the seat, as a measured refill or a flow behind a joint taught it, or as it was kept from an earlier lesson. */
export const ownOpening: Model = {
  name: "own_opening",
  takes: ["valve_coefficient", "measured.opening", ...TIMED, ...HOSE, ...ENDS],
  optional: ["measured.opening", ...TIMED, ...MAY_MISS],
  outputs: ["own_opening"],
  run: (input) => {
    const kept = numberOrNull(input, "measured.opening");
    const measured = kept === null ? numberOrNull(input, "measured.refill_time") : null;
    const refill = measured === null ? null : refillOf(input, null, null);
    if (refill && measured !== null && !("none" in refill))
      return { own_opening: learned(openingFromRefill(refill, measured)) };
    const flow = kept === null && measured === null ? numberOrNull(input, "measured.flow") : null;
    const taught = flow === null ? null : learnedBehind(input, flow);
    if (taught) return { own_opening: taught };
    const opening = untimedOpening(input);
    return { own_opening: opening === null ? { none: "no valve fitted" } : { value: opening } };
  },
};

/** The same, or as a measured flow taught it; the refill teaches where both were measured. */
export const teaching: Model = {
  name: "teaching",
  takes: ["own_opening", "measured.refill_time", "measured.flow", "head", "plain_head", ...HOSE],
  optional: ["own_opening", "measured.refill_time", "measured.flow", "head", "plain_head"],
  outputs: ["opening"],
  run: (input) => {
    const [flow, head] = [numberOrNull(input, "measured.flow"), numberOrNull(input, "head")];
    // At a joint the head hangs on every line's opening: there it teaches the own one, as if only this line had run.
    const alone = numberOrNull(input, "plain_head") !== null;
    if (numberOrNull(input, "measured.refill_time") === null && flow !== null && head !== null && alone)
      return { opening: learned(openingFromFlow(hoseOf(input, null), head, flow)) };
    const own = numberOrNull(input, "own_opening");
    return { opening: own === null ? { none: whyNone(input, "own_opening") } : { value: own } };
  },
};

const FILLING = ["refill_time", "refill_end", "settles_at", "settles_volume"];

const timeRow = (end: RefillEnd): Outputs => ({
  refill_time: end.state === "fills" ? { value: end.time } : { none: end.reason },
});

/** A refill's end as rows: its time, or where and why it stops. */
function endRows(input: ModelInput, end: RefillEnd): Outputs {
  if (end.state === "fills") {
    const none = { none: "it fills to the brim, or until the float shuts" };
    return {
      ...timeRow(end),
      refill_end: { value: "fills" },
      settles_at: none,
      settles_volume: none,
    };
  }
  return {
    ...timeRow(end),
    refill_end: { value: end.cause },
    settles_at: { value: end.level },
    settles_volume: { value: volumeAt(vesselAt(input, "to.vessel"), end.level) },
  };
}

export const filling: Model = {
  name: "filling",
  takes: [...PASSES, "opening", ...UNTIMED, "measured.refill_time", ...HOSE, ...ENDS],
  optional: [...MAY_LACK, "opening", "measured.opening", "measured.refill_time", ...MAY_MISS],
  outputs: FILLING,
  run: (input) => {
    const reason = noFlow(input);
    if (reason) return all(FILLING, reason);
    const refill = refillOf(input, numberOrNull(input, "opening"), null);
    if ("none" in refill) return all(FILLING, refill);
    const rows = endRows(input, refillTime(refill));
    if (numberOrNull(input, "measured.refill_time") === null) return rows;
    // Beside a timed refill stands what the figures say without it: by the opening it taught, it would only echo itself.
    const untimed = refillOf(input, untimedOpening(input), null);
    return "none" in untimed ? rows : { ...rows, ...timeRow(refillTime(untimed)) };
  },
};

export const afterWatering: Model = {
  name: "after_watering",
  takes: [...PASSES, "opening", ...HOSE, ...ENDS, "to.largest_taken"],
  optional: [...MAY_LACK, "opening", "to.largest_taken", ...MAY_MISS],
  outputs: ["refill_after_watering"],
  run: (input) => {
    const reason = noFlow(input);
    const vessel = vesselOrNull(input, "to.vessel");
    if (reason || !vessel) return { refill_after_watering: reason ?? { none: "it fills no tank" } };
    const over = runsOver(input, vessel);
    if (over) return { refill_after_watering: over };
    const taken = numberOrNull(input, "to.largest_taken");
    if (taken === null) return { refill_after_watering: { none: whyNone(input, "to.largest_taken") } };
    const full = volumeAt(vessel, numberOf(input, "shut_level"));
    const left = levelAt(vessel, Math.max(0, full - taken));
    const from = Math.max(left, numberOf(input, "to.lowest_drawable"));
    const refill = refillOf(input, numberOrNull(input, "opening"), from);
    if ("none" in refill) return { refill_after_watering: refill };
    const end = refillTime(refill);
    return { refill_after_watering: end.state === "fills" ? { value: end.time } : { none: end.reason } };
  },
};

const CLOCK_DAYS = ["", " the next day", " two days on", " three days on"];

function clock(seconds: number): string {
  const minutes = Math.round(seconds / 60);
  const days = Math.floor(minutes / MINUTES_A_DAY);
  const hour = Math.floor((minutes % MINUTES_A_DAY) / 60);
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

/** Whether nothing but the hose's open end stops the water: what is said of an open end and its lower tank. */
export const openEnd: Model = {
  name: "open_end",
  takes: ["ways", "end_height", "lift", "from.floor_height", "to.vessel", "valve_bore"],
  optional: ["from.floor_height", "to.vessel", "valve_bore"],
  outputs: ["falls_below"],
  run: (input) => {
    const floor = numberOrNull(input, "from.floor_height");
    if (!vesselOrNull(input, "to.vessel")) return { falls_below: { none: "it ends in no tank" } };
    const shut = numberOrNull(input, "valve_bore") !== null || wordOf(input, "ways") === "both_ways";
    if (shut || floor === null)
      return { falls_below: { none: "a float or the level in the lower tank stops it" } };
    return outcomes({ falls_below: floor - numberOf(input, "end_height") - numberOf(input, "lift") });
  },
};
