// How much a gravity line carries, how fast, and whether that clears its air.

import { all, outcomes } from "../../graph/outcomes.ts";
import { numberOf, numberOrNull, wordOrNull } from "../../graph/readers.ts";
import type { Model, ModelInput, Outcome, Outputs } from "../../graph/types.ts";
import { purgeFlow } from "../../physics/air-lock.ts";
import { gravityFlow, seriesFlow } from "../../physics/gravity-line.ts";
import { boreArea, frictionFactor, pipeHeadLoss } from "../../physics/pipe-friction.ts";
import { BEHIND, dropBehind, HOSE, hoseOf, UNTIMED, untimedOpening } from "./hose.ts";

/** What decides whether any water runs at all. */
export const PASSES = ["head", "source_height", "runs_from", "hump_height", "blocked"];
export const MAY_LACK = ["hump_height", "blocked"];

/** What may have been timed of a line. */
export const TIMED = ["measured.flow", "measured.refill_time"];

/** Why nothing runs, or null. */
export function noFlow(input: ModelInput): Outcome | null {
  if (numberOf(input, "head") <= 0) return { none: "the far end is as high as the water, so nothing runs" };
  const blocked = wordOrNull(input, "blocked");
  if (blocked) return { none: blocked };
  const runsFrom = numberOf(input, "runs_from");
  if (numberOf(input, "source_height") > runsFrom) return null;
  return runsFrom === numberOrNull(input, "hump_height")
    ? { none: "its hump stands above the upper water, and it is not primed" }
    : { none: "the upper water stands no higher than the line's start" };
}

const STEADY = ["flow", "velocity", "reynolds", "friction_factor", "friction_head"];

/** Friction factor where Churchill's curve has one, else null: still water, or a wall rougher than a tenth of the bore. */
function factorOf(reynolds: number, rough: number): number | null {
  return reynolds > 0 && rough <= 0.1 ? frictionFactor(reynolds, rough) : null;
}

function steady(input: ModelInput): Outputs {
  const reason = noFlow(input);
  if (reason) return all(STEADY, reason);
  const line = hoseOf(input, numberOrNull(input, "opening"));
  const measured = numberOrNull(input, "measured.flow");
  const taughtByIt = measured !== null && numberOrNull(input, "measured.refill_time") === null;
  // Beside a measured flow stands what the figures say without it: by the opening it taught, it would only echo itself.
  const untaught = taughtByIt ? hoseOf(input, untimedOpening(input)) : line;
  // Behind a joint it was timed as if only this line ran.
  const behind = taughtByIt ? dropBehind(input) : null;
  const computed = behind
    ? seriesFlow(behind.before, untaught, behind.head)
    : gravityFlow(untaught, numberOf(input, "head"));
  const flow = measured ?? computed;
  const velocity = flow / boreArea(line.bore);
  const reynolds = (velocity * line.bore) / line.viscosity;
  return outcomes({
    flow: computed,
    velocity,
    reynolds,
    friction_factor: factorOf(reynolds, line.roughness / line.bore),
    friction_head: pipeHeadLoss({ ...line, flow }),
  });
}

export const running: Model = {
  name: "running",
  takes: [...PASSES, "opening", "valve_bore", ...UNTIMED, ...TIMED, ...HOSE, ...BEHIND],
  optional: [...MAY_LACK, "opening", "measured.opening", "valve_bore", "from.feed", ...TIMED],
  outputs: STEADY,
  run: steady,
};

export const purging: Model = {
  name: "purging",
  takes: ["bore"],
  outputs: ["purge_flow"],
  run: (input) => outcomes({ purge_flow: purgeFlow(numberOf(input, "bore"), 0) }),
};
