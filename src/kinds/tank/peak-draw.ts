// Which beds each tank serves, directly or through lines, and how many peak days its water lasts them.

import { causeOf, numberIn, numberOrNull, readyList, readyWord, wordOrNull } from "../../graph/readers.ts";
import type { CardView, ModelInput, Outcome, Outputs } from "../../graph/types.ts";
import { OPEN_WATER_COEFFICIENT } from "../../physics/open-water.ts";
import { isoDate, parseIsoDate } from "../../units/calendar.ts";
import { DAY } from "../../units/constants.ts";

/** Rows read of every card for this. */
export const SERVES_ROWS: Readonly<Record<string, readonly string[]>> = {
  tank: ["reachable", "leak", "open_surface", "lowest_drawable", "water_today", "vessel"],
  line: ["from", "to"],
  delivery: ["from"],
  carry: ["from"],
  bed: ["watered_by", "peak_day_need"],
};

type Network = {
  /** Tank ids that a tank's lines lead to. */
  readonly next: ReadonlyMap<string, readonly string[]>;
  /** Bed cards watered straight from a tank. */
  readonly beds: ReadonlyMap<string, readonly CardView[]>;
};

function push<Key, Item>(map: Map<Key, Item[]>, key: Key, item: Item): void {
  const list = map.get(key);
  if (list) list.push(item);
  else map.set(key, [item]);
}

function networkOf(input: ModelInput): Network {
  const next = new Map<string, string[]>();
  for (const line of input.cards["line"] ?? []) {
    const [from, to] = [readyWord(line.results, "from"), readyWord(line.results, "to")];
    if (from && to) push(next, from, to);
  }
  const source = new Map<string, string>();
  for (const card of [...(input.cards["delivery"] ?? []), ...(input.cards["carry"] ?? [])]) {
    source.set(card.id, readyWord(card.results, "from"));
  }
  const beds = new Map<string, CardView[]>();
  for (const bed of input.cards["bed"] ?? []) {
    const tanks = new Set(readyList(bed.results, "watered_by").map((id) => source.get(String(id)) ?? ""));
    for (const tank of tanks) if (tank) push(beds, tank, bed);
  }
  return { next, beds };
}

/** Ids reached from a tank through lines, itself first; a loop of tanks ends where it began. */
function reachedFrom(network: Network, tank: string): readonly string[] {
  const reached = [tank];
  for (const id of reached) {
    for (const target of network.next.get(id) ?? []) if (!reached.includes(target)) reached.push(target);
  }
  return reached;
}

function bedsBehind(network: Network, tank: string): readonly CardView[] {
  const beds = new Map<string, CardView>();
  for (const id of reachedFrom(network, tank))
    for (const bed of network.beds.get(id) ?? []) beds.set(bed.id, bed);
  return [...beds.values()].sort((a, b) => (a.id < b.id ? -1 : 1));
}

type Sum = { readonly need: number } | { readonly failed: string; readonly cause: string };

/** What the beds need on a peak day [m3]; a bed without a need is left out, one that failed fails it. */
function needOf(beds: readonly CardView[]): Sum {
  let need = 0;
  for (const bed of beds) {
    const result = bed.results["peak_day_need"];
    const cause = causeOf(result);
    if (cause !== null) return { failed: `What ${bed.title} needs is not known.`, cause };
    need += numberIn(result) ?? 0;
  }
  return { need };
}

function lossesOf(tank: CardView, peakEto: number | null): number {
  const open = numberIn(tank.results["open_surface"]) ?? 0;
  return (numberIn(tank.results["leak"]) ?? 0) * DAY + open * OPEN_WATER_COEFFICIENT * (peakEto ?? 0);
}

function lastsUntil(input: ModelInput, tank: CardView, draw: number, reachable: number): Outcome {
  const today = parseIsoDate(wordOrNull(input, "site.today") ?? "");
  const water = numberIn(tank.results["water_today"]);
  if (today === null) return { none: "no day given for today" };
  if (water === null) return { none: "not dipped" };
  const vessel = tank.results["vessel"];
  const full = vessel?.state === "ready" ? (vessel.value as { readonly volume: number }).volume : 0;
  const left = Math.max(0, water - (full - reachable));
  return { value: isoDate(today + Math.floor(left / draw)) };
}

const ROWS = ["peak_day_draw", "lasts_until"];

function tankOutputs(
  input: ModelInput,
  tank: CardView,
  beds: readonly CardView[],
  peakEto: number | null,
): Outputs {
  const every = (outcome: Outcome): Outputs =>
    Object.fromEntries(ROWS.map((row) => [`${tank.id}.${row}`, outcome]));
  if (beds.length === 0) return every({ none: "serves no bed" });
  const reachable = numberIn(tank.results["reachable"]);
  if (reachable === null) return every({ failed: "What of its water can be reached is not known." });
  const sum = needOf(beds);
  if ("failed" in sum) return every(sum);
  const draw = sum.need + lossesOf(tank, peakEto);
  if (draw <= 0) return every({ none: "its beds need nothing in the season" });
  return {
    [`${tank.id}.peak_day_draw`]: { value: draw },
    [`${tank.id}.lasts_until`]: lastsUntil(input, tank, draw, reachable),
  };
}

/** Days of autonomy of each tank and of the whole, by quantity id. */
export function serves(input: ModelInput): Outputs {
  const network = networkOf(input);
  const peakEto = numberOrNull(input, "weather.peak_day_eto");
  const tanks = input.cards["tank"] ?? [];
  const outputs: Record<string, Outcome> = {};
  const served = new Map<string, CardView>();
  let reachable = 0;
  let losses = 0;
  for (const tank of tanks) {
    const beds = bedsBehind(network, tank.id);
    Object.assign(outputs, tankOutputs(input, tank, beds, peakEto));
    for (const bed of beds) served.set(bed.id, bed);
    if (beds.length === 0) continue;
    reachable += numberIn(tank.results["reachable"]) ?? 0;
    losses += lossesOf(tank, peakEto);
  }
  const sum = needOf([...served.values()].sort((a, b) => (a.id < b.id ? -1 : 1)));
  outputs["season.reachable"] = served.size > 0 ? { value: reachable } : NO_BED;
  outputs["season.peak_day_draw"] = wholeDraw(sum, served.size, losses);
  return outputs;
}

const NO_BED = { none: "no tank serves a bed yet" };

function wholeDraw(sum: Sum, beds: number, losses: number): Outcome {
  if (beds === 0) return NO_BED;
  if ("failed" in sum) return sum;
  const draw = sum.need + losses;
  return draw > 0 ? { value: draw } : { none: "the beds need nothing in the season" };
}
