// What of each tank's water can be reached, by quantity id: the season's own reckoning, fed from the cards.

import { all, failedBy } from "../../graph/outcomes.ts";
import { firstMissing, numberIn, readyNumber, valueIn } from "../../graph/readers.ts";
import type { CardView, Model, ModelInput, Outputs } from "../../graph/types.ts";
import { type Vessel, volumeAt } from "../../physics/vessel.ts";
import { type Reach, type ReachAsked, reachOf } from "../../season/reachable.ts";
import { networkIn } from "../network-in.ts";

const TANK_ROWS = ["vessel", "floor_height", "outlet_height"];
const LINE_ROWS = ["runs_from", "end_height", "lift"];
const ROWS = ["reachable", "stranded", "lowest_drawable"];

const tankOf = ({ id, results }: CardView): ReachAsked["tanks"][number] => ({
  id,
  vessel: valueIn(results["vessel"]) as Vessel,
  floor: readyNumber(results, "floor_height"),
  outlet: readyNumber(results, "outlet_height"),
});

function askedOf(input: ModelInput): ReachAsked {
  const { tank = [], line = [], delivery = [] } = input.cards;
  return {
    network: networkIn(input),
    tanks: tank.filter((card) => !firstMissing(card.results, TANK_ROWS)).map(tankOf),
    lines: line
      .filter((card) => !firstMissing(card.results, LINE_ROWS))
      .map(({ id, results }) => ({
        id,
        startHeight: readyNumber(results, "runs_from"),
        endHeight: readyNumber(results, "end_height"),
        lift: readyNumber(results, "lift"),
      })),
    pumps: delivery.map(({ id, results }) => ({
      id,
      lowestWater: numberIn(results["gives_down_to"]) ?? numberIn(results["dead_depth"]) ?? 0,
    })),
  };
}

function rowsOf(tank: CardView, reach: Reach | undefined): Outputs {
  const missing = firstMissing(tank.results, TANK_ROWS);
  if (missing || !reach) {
    const why = missing ?? { reason: "its water is not known" };
    return all(
      ROWS.map((row) => `${tank.id}.${row}`),
      why.cause === undefined ? { none: why.reason } : failedBy(why),
    );
  }
  const { vessel, outlet } = tankOf(tank);
  const stranded = volumeAt(vessel, reach.lowest) - volumeAt(vessel, outlet);
  return {
    [`${tank.id}.reachable`]: { value: reach.reachable },
    [`${tank.id}.stranded`]: { value: stranded },
    [`${tank.id}.lowest_drawable`]: { value: reach.lowest },
  };
}

export const reach: Model = {
  name: "reach",
  takes: ["network"],
  surveys: { tank: TANK_ROWS, line: LINE_ROWS, delivery: ["gives_down_to", "dead_depth"] },
  tolerant: true,
  outputs: "by quantity id",
  run: (input) => {
    const reaches = reachOf(askedOf(input));
    const tanks = input.cards["tank"] ?? [];
    return Object.assign({}, ...tanks.map((tank) => rowsOf(tank, reaches.get(tank.id))));
  },
};
