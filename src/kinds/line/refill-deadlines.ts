// Whether each small tank is full again in time: its largest single watering against its beds' shortest interval.

import { all } from "../../graph/outcomes.ts";
import { numberIn } from "../../graph/readers.ts";
import type { CardView, Model, ModelInput, Outcome, Outputs } from "../../graph/types.ts";
import { firstTankOf } from "../../network/beds.ts";
import { feedsTank, linesInto } from "../../network/feeds.ts";
import { networkIn } from "../network-in.ts";

const numbersOf = (cards: readonly CardView[], row: string): readonly number[] =>
  cards.map(({ results }) => numberIn(results[row])).filter((value) => value !== null);

function largestTaken(input: ModelInput): Outputs {
  const network = networkIn(input);
  const outputs: Record<string, Outcome> = {};
  for (const tank of input.cards["tank"] ?? []) {
    const beds = (input.cards["bed"] ?? []).filter(({ id }) => firstTankOf(network, id) === tank.id);
    const volumes = numbersOf(beds, "asked_volume");
    const intervals = numbersOf(beds, "asked_interval");
    const none = { none: "no bed is watered straight from it" };
    outputs[`${tank.id}.largest_taken`] = volumes.length > 0 ? { value: Math.max(...volumes) } : none;
    outputs[`${tank.id}.shortest_interval`] = intervals.length > 0 ? { value: Math.min(...intervals) } : none;
  }
  return outputs;
}

/** Largest single watering and shortest interval of the beds watered straight from each tank, by quantity id. */
export const taken: Model = {
  name: "taken",
  takes: ["network"],
  surveys: { tank: ["count"], bed: ["asked_volume", "asked_interval"] },
  tolerant: true,
  outputs: "by quantity id",
  run: largestTaken,
};

function quickestRefill(input: ModelInput): Outputs {
  const network = networkIn(input);
  const outputs: Record<string, Outcome> = {};
  for (const tank of input.cards["tank"] ?? []) {
    const filling = linesInto(network, tank.id).map(({ by }) => by);
    const lines = (input.cards["line"] ?? []).filter(({ id }) => filling.includes(id));
    const times = numbersOf(lines, "refill_time");
    outputs[`${tank.id}.refilled_in`] =
      times.length > 0 ? { value: Math.min(...times) } : { none: "no line fills it to its float" };
  }
  return outputs;
}

/** The quickest refill of each tank by a line, by quantity id. */
export const refilled: Model = {
  name: "refilled",
  takes: ["network"],
  surveys: { tank: ["count"], line: ["refill_time"] },
  tolerant: true,
  outputs: "by quantity id",
  run: quickestRefill,
};

const TIGHTEST = ["tightest_line", "tightest_refill", "tightest_interval", "tightest_share"] as const;

function tightestOf(input: ModelInput): Outputs {
  const tanks = new Map((input.cards["tank"] ?? []).map((tank) => [tank.id, tank]));
  const network = networkIn(input);
  let worst: { readonly id: string; readonly refill: number; readonly interval: number } | null = null;
  for (const line of input.cards["line"] ?? []) {
    const refill = numberIn(line.results["refill_after_watering"]);
    const interval = numberIn(tanks.get(feedsTank(network, line.id) ?? "")?.results["shortest_interval"]);
    if (refill === null || interval === null) continue;
    if (!worst || refill / interval > worst.refill / worst.interval)
      worst = { id: line.id, refill, interval };
  }
  if (!worst) return all(TIGHTEST, { none: "no line refills a tank that beds are watered from" });
  return {
    tightest_line: { value: worst.id },
    tightest_refill: { value: worst.refill },
    tightest_interval: { value: worst.interval },
    tightest_share: { value: worst.refill / worst.interval },
  };
}

/** The line whose refill takes the largest share of the time until the next watering. */
export const tightest: Model = {
  name: "tightest",
  takes: ["network"],
  surveys: { line: ["refill_after_watering"], tank: ["shortest_interval"] },
  tolerant: true,
  outputs: [...TIGHTEST],
  run: tightestOf,
};
