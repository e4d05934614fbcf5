// How long full tanks last: each for the beds it serves, all together, and from the worst day of the record.

import { volumeAt } from "../physics/vessel.ts";
import { DAY } from "../units/constants.ts";
import type { Bed } from "./beds.ts";
import { dueOn } from "./draws.ts";
import { OPEN_WATER } from "./losses.ts";
import type { Machine } from "./machine.ts";
import { peakDay } from "./peak-day.ts";
import type { LinePart, TankPart } from "./plan.ts";
import type { Span } from "./spans.ts";

export type TankAutonomy = {
  /** Full, above what nothing can draw [m3]. */
  readonly reachable: number;
  /** On a peak day by its beds, its leak and its open water [m3]; null where it serves no bed. */
  readonly draw: number | null;
};

export type Autonomy = {
  readonly tanks: readonly TankAutonomy[];
  /** [s]; null where no tank serves a bed that needs water. */
  readonly whole: number | null;
  /** What the beds' soil holds within easy reach over their peak-day need [s]. */
  readonly soil: number | null;
  readonly worst: { readonly date: number; readonly lasts: number } | null;
};

/**
 * Days of autonomy of the tanks of a run.
 *
 * @param machine the run [-]
 * @returns durations [s] and volumes [m3]
 * @source definition: reachable water from full over the peak-day need of every bed served, directly or through lines
 */
export function autonomyOf(machine: Machine): Autonomy {
  const peakEto = machine.seasons.length > 0 ? peakDay(machine.eto, machine.seasons) : 0;
  const served = machine.tanks.parts.map((_, place) => bedsServed(machine, place));
  const losses = (place: number) =>
    (machine.tanks.leak[place] as number) + (machine.tanks.openArea[place] as number) * OPEN_WATER * peakEto;
  const tanks = machine.tanks.parts.map((_, place): TankAutonomy => {
    const beds = served[place] ?? [];
    return {
      reachable: reachableOf(machine, place),
      draw: beds.length > 0 ? needOf(beds) + losses(place) : null,
    };
  });
  const serving = [...tanks.keys()].filter((place) => (served[place] ?? []).length > 0);
  const beds = machine.beds.filter((bed) => served.some((list) => list.includes(bed)));
  const reachable = serving.reduce((sum, place) => sum + (tanks[place]?.reachable ?? 0), 0);
  const draw = needOf(beds) + serving.reduce((sum, place) => sum + losses(place), 0);
  return {
    tanks,
    whole: serving.length > 0 && draw > 0 ? (reachable / draw) * DAY : null,
    soil: soilOf(machine.beds),
    worst: worstOf(machine, beds, serving, reachable),
  };
}

function needOf(beds: readonly Bed[]): number {
  return beds.reduce((sum, { demand }) => sum + (demand?.peakDayNeed ?? 0), 0);
}

/** Beds that take from a tank, or from one that its lines feed. */
function bedsServed(machine: Machine, place: number): readonly Bed[] {
  return machine.beds.filter((bed) =>
    bed.sources.some(({ tank }) => (machine.feeders[tank] ?? []).includes(place)),
  );
}

function soilOf(beds: readonly Bed[]): number | null {
  const need = needOf(beds);
  const held = beds.reduce((sum, { demand }) => sum + (demand?.wateringVolume ?? 0), 0);
  return need > 0 ? (held / need) * DAY : null;
}

/** Water above the highest of its outlet, its pumps' lowest water and, where it leaves only by lines, where they stop. */
function reachableOf(machine: Machine, place: number): number {
  const { vessel } = machine.tanks.parts[place] as TankPart;
  return vessel.volume - volumeAt(vessel, lowestDrawable(machine, place, new Set([place])));
}

/** Depth under which nothing leaves a tank [m]. */
function lowestDrawable(machine: Machine, place: number, seen: ReadonlySet<number>): number {
  const { vessel, outlet, floor } = machine.tanks.parts[place] as TankPart;
  const { plan, draws, sources, pipes } = machine;
  const byHand =
    draws.some(({ tank }) => tank === place) || sources.some((s) => s.tank === place && s.roundVolume > 0);
  const id = (machine.tanks.parts[place] as TankPart).id;
  const pumps = plan.deliveries.filter(({ from }) => from === id).map(({ lowestWater }) => lowestWater);
  const lines = [...pipes.parts.keys()].filter((i) => pipes.from[i] === place);
  const stops = byHand ? [] : lines.map((i) => stopOf(machine, i, seen) - floor);
  const lows = pumps.length > 0 ? pumps : stops;
  const lowest = lows.length > 0 ? Math.min(...lows) : 0;
  return Math.min(Math.max(0, outlet, lowest), vessel.height);
}

/** Height at which a line stops giving water on [m]. */
function stopOf(machine: Machine, i: number, seen: ReadonlySet<number>): number {
  const line = machine.pipes.parts[i] as LinePart;
  const to = machine.pipes.to[i] as number;
  const end = Math.max(line.startHeight, line.endHeight);
  if (to < 0 || to >= machine.pipes.firstTee || seen.has(to)) return end;
  const target = machine.tanks.parts[to] as TankPart;
  return Math.max(end, target.floor + lowestDrawable(machine, to, new Set([...seen, to])));
}

/** The day of a season from which full tanks, with no more rain, are used up soonest. */
function worstOf(
  machine: Machine,
  beds: readonly Bed[],
  serving: readonly number[],
  reachable: number,
): Autonomy["worst"] {
  if (reachable <= 0 || beds.length === 0) return null;
  const taken = dailyTaken(machine, beds, serving);
  let worst = { day: -1, lasts: Infinity };
  for (const span of machine.seasons) {
    const found = soonestIn(taken, span, reachable);
    if (found.lasts < worst.lasts) worst = found;
  }
  return worst.day < 0 ? null : { date: machine.record.firstDay + worst.day, lasts: worst.lasts * DAY };
}

/** Of all days in a span the one from which a volume is used up within it soonest, and how long it lasts [day]. */
function soonestIn(
  taken: Float64Array,
  { first, last }: Span,
  volume: number,
): { readonly day: number; readonly lasts: number } {
  let soonest = { day: -1, lasts: Infinity };
  let [sum, until] = [0, first];
  for (let day = first; day <= last; day++) {
    while (until <= last && sum < volume) sum += taken[until++] as number;
    if (sum < volume) break;
    // The last day counts only as far as the water goes.
    const lasts = until - day - (sum - volume) / (taken[until - 1] as number);
    if (lasts < soonest.lasts) soonest = { day, lasts };
    sum -= taken[day] as number;
  }
  return soonest;
}

/** What the beds would use, other draws take and the tanks lose on each day without rain [m3]. */
function dailyTaken(machine: Machine, beds: readonly Bed[], serving: readonly number[]): Float64Array {
  const taken = new Float64Array(machine.length);
  const leak = serving.reduce((sum, place) => sum + (machine.tanks.leak[place] as number), 0);
  const open = serving.reduce((sum, place) => sum + (machine.tanks.openArea[place] as number), 0);
  const draws = machine.draws.filter(({ tank }) => serving.includes(tank));
  for (let day = 0; day < taken.length; day++) {
    let sum = leak + open * OPEN_WATER * (machine.eto[day] as number);
    for (const bed of beds) sum += (bed.days.potential[day] as number) * bed.perDepth;
    for (const draw of draws) sum += dueOn(draw, day);
    taken[day] = sum;
  }
  return taken;
}
