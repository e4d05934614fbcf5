// Joints of lines without storage: the height to which water would stand there, worked out for all of them together.

import { isReady, numberIn, numberOf, readyNumber, readyWord, valueIn } from "../../graph/readers.ts";
import type { CardView, Model, ModelInput, Outcome, Outputs } from "../../graph/types.ts";
import { linesInto, linesMeetingAt, linesOutOf } from "../../network/feeds.ts";
import type { Edge } from "../../network/network.ts";
import type { GravityLine } from "../../physics/gravity-line.ts";
import { type TeeBranch, teeFlows } from "../../physics/tee.ts";
import { levelAt, type Vessel } from "../../physics/vessel.ts";
import type { Feed } from "../line/hose.ts";
import { networkIn } from "../network-in.ts";

/** Joints that lead to each other are settled in turn until no height moves by more than this [m]. */
const SETTLED = 1e-9;
const MOST_ROUNDS = 200;

const LOW = "the upper water does not stand over what it has to climb to the joint";

const HOSE_ROWS = ["length", "bore", "roughness", "all_k"];
const END_ROWS = ["from", "to", "start_height", "end_height", "source_water", "runs_from"];

type Results = CardView["results"];

function problemOf(line: CardView): string | null {
  for (const result of Object.values(line.results))
    if (result.state === "failed") return `${line.title}: ${result.problem.text}`;
  return null;
}

function hoseOf(results: Results, viscosity: number, opening: number | null): GravityLine {
  return {
    length: readyNumber(results, "length"),
    bore: readyNumber(results, "bore"),
    roughness: readyNumber(results, "roughness"),
    fittingsK: readyNumber(results, "all_k"),
    opening,
    viscosity,
  };
}

const viscosityOf = (input: ModelInput): number =>
  numberOf(input, "site.water_viscosity") / numberOf(input, "site.water_density");

const cardsOf = (input: ModelInput, edges: readonly Edge[]): readonly CardView[] =>
  (input.cards["line"] ?? []).filter(({ id }) => edges.some(({ by }) => by === id));

/** Lines that run and meet at a joint; one whose far end is not linked carries nothing. */
function linesAt(input: ModelInput, tee: string): readonly CardView[] {
  const network = networkIn(input);
  const leaving = linesOutOf(network, tee).filter(({ to }) => to !== null);
  return cardsOf(input, [...linesInto(network, tee), ...leaving]);
}

const arrivingAt = (input: ModelInput, tee: string): readonly CardView[] =>
  cardsOf(input, linesInto(networkIn(input), tee));

/** The trouble of a line that meets here, whether it could run or not. */
function troubleAt(input: ModelInput, tee: string): string | null {
  const meeting = cardsOf(input, linesMeetingAt(networkIn(input), tee));
  return meeting.map(problemOf).find((text) => text !== null) ?? null;
}

function feedOf(input: ModelInput, tee: string): Outcome {
  const [line, ...more] = arrivingAt(input, tee);
  if (!line) return { none: "nothing fills the joint" };
  if (more.length > 0) return { none: "several lines fill the joint: the season works its refills out" };
  const tank = (input.cards["tank"] ?? []).find(({ id }) => id === readyWord(line.results, "from"));
  const inside = valueIn(tank?.results["vessel"]) as Vessel | null;
  if (!tank || !inside) return { none: "the joint is filled by another joint" };
  const feed: Feed = {
    line: hoseOf(line.results, viscosityOf(input), null),
    vessel: inside,
    floor: readyNumber(tank.results, "floor_height"),
    level: levelAt(inside, inside.volume * readyNumber(line.results, "reference_share")),
    outlet: readyNumber(tank.results, "outlet_height"),
    runsFrom: readyNumber(line.results, "runs_from"),
  };
  return { value: feed };
}

/** Lowest end behind a joint, through joints that follow; null where nothing leaves. */
function lowestEnd(input: ModelInput, tee: string, seen: readonly string[] = []): number | null {
  const network = networkIn(input);
  const lows = linesOutOf(network, tee).flatMap(({ by, to }) => {
    if (to === null || seen.includes(to)) return [];
    const [line] = (input.cards["line"] ?? []).filter(({ id }) => id === by);
    const further = lowestEnd(input, to, [...seen, tee]) ?? numberIn(line?.results["end_height"]);
    return further === null ? [] : [further];
  });
  return lows.length > 0 ? Math.min(...lows) : null;
}

/** What fills each joint, and the lowest end behind it, by quantity id. */
export const feeds: Model = {
  name: "feeds",
  takes: ["network", "site.water_viscosity", "site.water_density"],
  surveys: {
    tee: ["height"],
    line: [...HOSE_ROWS, ...END_ROWS, "reference_share"],
    tank: ["vessel", "floor_height", "outlet_height"],
  },
  outputs: "by quantity id",
  run: (input) => {
    const outputs: Record<string, Outcome> = {};
    for (const { id } of input.cards["tee"] ?? []) {
      const problem = troubleAt(input, id);
      const lowest = lowestEnd(input, id);
      outputs[`${id}.feed`] = problem ? { failed: problem } : feedOf(input, id);
      outputs[`${id}.lowest_end`] = lowest === null ? { none: "no line leaves it" } : { value: lowest };
    }
    return outputs;
  },
};

/** Heights by joint: those of its water while all floats are down, and of the upper water behind it [m]. */
type Heights = ReadonlyMap<string, number>;

/** Height of the highest water that runs to each joint, through other joints too; none where no water comes so high. */
function standingAt(input: ModelInput, tees: readonly string[]): Heights {
  const standing = new Map(tees.map((id) => [id, -Infinity]));
  // As many rounds as there are joints settle every chain.
  for (let round = 0; round < tees.length; round++) {
    for (const tee of tees) {
      for (const { results } of arrivingAt(input, tee)) {
        const above = standing.get(readyWord(results, "from")) ?? readyNumber(results, "source_water");
        if (above <= readyNumber(results, "runs_from")) continue;
        standing.set(tee, Math.max(standing.get(tee) ?? -Infinity, above));
      }
    }
  }
  return standing;
}

/** One line as the joint sees it: its far end's water, and which ways it may run. */
function branchOf(
  line: CardView,
  tee: string,
  viscosity: number,
  { heads, standing }: { readonly heads: Heights; readonly standing: Heights },
): TeeBranch {
  const { results } = line;
  const opening = numberIn(results["own_opening"]);
  const oneWay = opening !== null || readyWord(results, "check_valve") === "yes";
  const pipe = hoseOf(results, viscosity, opening);
  if (readyWord(results, "to") === tee) {
    const from = readyWord(results, "from");
    const end = heads.get(from) ?? readyNumber(results, "source_water");
    const above = standing.get(from) ?? end;
    const runs = above > readyNumber(results, "runs_from");
    return { line: pipe, end, inward: runs, outward: !oneWay };
  }
  const next = heads.get(readyWord(results, "to"));
  return {
    line: pipe,
    end: next ?? readyNumber(results, "end_height"),
    inward: next !== undefined && !oneWay,
    outward: (standing.get(tee) ?? -Infinity) > readyNumber(results, "runs_from"),
  };
}

function settle(input: ModelInput, tees: readonly string[], standing: Heights): Heights {
  const viscosity = viscosityOf(input);
  const heads = new Map(tees.map((id) => [id, 0]));
  for (const { id, results } of input.cards["tee"] ?? [])
    if (heads.has(id)) heads.set(id, readyNumber(results, "height"));
  for (let round = 0; round < MOST_ROUNDS; round++) {
    let shift = 0;
    for (const tee of tees) {
      const { head } = teeFlows(
        linesAt(input, tee).map((line) => branchOf(line, tee, viscosity, { heads, standing })),
      );
      shift = Math.max(shift, Math.abs(head - (heads.get(tee) ?? head)));
      heads.set(tee, head);
    }
    if (tees.length === 1 || shift < SETTLED) break;
  }
  return heads;
}

function whyNot(input: ModelInput, tee: CardView): Outcome | null {
  if (!isReady(tee.results["height"])) return { failed: `The height of ${tee.title} is not known.` };
  const problem = troubleAt(input, tee.id);
  if (problem !== null) return { failed: problem };
  if (linesMeetingAt(networkIn(input), tee.id).length === 0) return { none: "no line meets here yet" };
  return arrivingAt(input, tee.id).length === 0 ? { none: "no line that runs brings water here" } : null;
}

/** Height of the water at each joint with all floats open, by quantity id. */
export const joints: Model = {
  name: "joints",
  takes: ["network", "site.water_viscosity", "site.water_density"],
  surveys: { tee: ["height"], line: [...HOSE_ROWS, ...END_ROWS, "own_opening", "check_valve"] },
  outputs: "by quantity id",
  run: (input): Outputs => {
    const outputs: Record<string, Outcome> = {};
    const good: string[] = [];
    for (const tee of input.cards["tee"] ?? []) {
      const reason = whyNot(input, tee);
      if (reason) Object.assign(outputs, { [`${tee.id}.head`]: reason, [`${tee.id}.standing`]: reason });
      else good.push(tee.id);
    }
    const standing = standingAt(input, good);
    for (const [id, head] of settle(input, good, standing)) {
      const above = standing.get(id) ?? -Infinity;
      outputs[`${id}.head`] = { value: head };
      outputs[`${id}.standing`] = above > -Infinity ? { value: above } : { none: LOW };
    }
    return outputs;
  },
};
