// Whether each small tank is full again in time: its largest single watering against its beds' shortest interval.

import { numberIn, readyList, readyWord } from "../../graph/readers.ts";
import type { CardView, ModelInput, Outcome, Outputs } from "../../graph/types.ts";

/** Rows read to know what is taken from each tank at once, and how often. */
export const TAKERS_ROWS: Readonly<Record<string, readonly string[]>> = {
  tank: ["count"],
  delivery: ["from"],
  carry: ["from"],
  bed: ["watered_by", "watering_volume", "watering_interval"],
};

function firstTank(bed: CardView, sources: ReadonlyMap<string, string>): string {
  for (const id of readyList(bed.results, "watered_by")) {
    const tank = sources.get(String(id));
    if (tank) return tank;
  }
  return "";
}

/** Largest single watering and shortest interval of the beds watered straight from each tank, by quantity id. */
export function takers(input: ModelInput): Outputs {
  const sources = new Map<string, string>();
  for (const card of [...(input.cards["delivery"] ?? []), ...(input.cards["carry"] ?? [])]) {
    sources.set(card.id, readyWord(card.results, "from"));
  }
  const outputs: Record<string, Outcome> = {};
  for (const tank of input.cards["tank"] ?? []) {
    const beds = (input.cards["bed"] ?? []).filter((bed) => firstTank(bed, sources) === tank.id);
    const volumes = beds
      .map((bed) => numberIn(bed.results["watering_volume"]))
      .filter((value) => value !== null);
    const intervals = beds
      .map((bed) => numberIn(bed.results["watering_interval"]))
      .filter((value) => value !== null);
    const none = { none: "no bed is watered straight from it" };
    outputs[`${tank.id}.largest_taken`] = volumes.length > 0 ? { value: Math.max(...volumes) } : none;
    outputs[`${tank.id}.shortest_interval`] = intervals.length > 0 ? { value: Math.min(...intervals) } : none;
  }
  return outputs;
}

/** Rows read to know how soon each tank is full again. */
export const REFILLS_ROWS: Readonly<Record<string, readonly string[]>> = {
  tank: ["count"],
  line: ["to", "refill_time"],
};

/** The quickest refill of each tank by a line, by quantity id. */
export function refills(input: ModelInput): Outputs {
  const outputs: Record<string, Outcome> = {};
  for (const tank of input.cards["tank"] ?? []) {
    const times = (input.cards["line"] ?? [])
      .filter((line) => readyWord(line.results, "to") === tank.id)
      .map((line) => numberIn(line.results["refill_time"]))
      .filter((time) => time !== null);
    outputs[`${tank.id}.refilled_in`] =
      times.length > 0 ? { value: Math.min(...times) } : { none: "no line fills it to its float" };
  }
  return outputs;
}

/** Rows read to find the tank that is nearest to being late. */
export const TIGHTEST_ROWS: Readonly<Record<string, readonly string[]>> = {
  line: ["to", "refill_after_watering"],
  tank: ["shortest_interval"],
};

export const TIGHTEST = ["tightest_line", "tightest_refill", "tightest_interval", "tightest_share"] as const;

/** The line whose refill takes the largest share of the time until the next watering. */
export function tightest(input: ModelInput): Outputs {
  const tanks = new Map((input.cards["tank"] ?? []).map((tank) => [tank.id, tank]));
  let worst: { readonly id: string; readonly refill: number; readonly interval: number } | null = null;
  for (const line of input.cards["line"] ?? []) {
    const refill = numberIn(line.results["refill_after_watering"]);
    const interval = numberIn(tanks.get(readyWord(line.results, "to"))?.results["shortest_interval"]);
    if (refill === null || interval === null) continue;
    if (!worst || refill / interval > worst.refill / worst.interval)
      worst = { id: line.id, refill, interval };
  }
  const none = { none: "no line refills a tank that beds are watered from" };
  if (!worst)
    return { tightest_line: none, tightest_refill: none, tightest_interval: none, tightest_share: none };
  return {
    tightest_line: { value: worst.id },
    tightest_refill: { value: worst.refill },
    tightest_interval: { value: worst.interval },
    tightest_share: { value: worst.refill / worst.interval },
  };
}
