// How long full tanks last: each for the beds it serves, all together, and from the worst day of the record.

import { volumeAt } from "../physics/vessel.ts";
import { DAY } from "../units/constants.ts";
import type { Bed } from "./beds.ts";
import { dueOn } from "./draws.ts";
import type { LinePart, TankPart } from "./input.ts";
import { OPEN_WATER } from "./losses.ts";
import { peakDay } from "./peak-day.ts";
import type { Span } from "./spans.ts";
import type { SeasonState } from "./state.ts";

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
 * @param state the run [-]
 * @returns durations [s] and volumes [m3]
 * @source definition: reachable water from full over the peak-day need of every bed served, directly or through lines
 */
export function autonomyOf(state: SeasonState): Autonomy {
  const peakEto = state.seasons.length > 0 ? peakDay(state.eto, state.seasons) : 0;
  const served = state.tanks.parts.map((_, place) => bedsServed(state, place));
  const losses = (place: number) =>
    (state.tanks.leak[place] as number) + (state.tanks.openArea[place] as number) * OPEN_WATER * peakEto;
  const tanks = state.tanks.parts.map((_, place): TankAutonomy => {
    const beds = served[place] ?? [];
    return {
      reachable: reachableOf(state, place),
      draw: beds.length > 0 ? needOf(beds) + losses(place) : null,
    };
  });
  const serving = [...tanks.keys()].filter((place) => (served[place] ?? []).length > 0);
  const beds = state.beds.filter((bed) => served.some((list) => list.includes(bed)));
  const reachable = serving.reduce((sum, place) => sum + (tanks[place]?.reachable ?? 0), 0);
  const draw = needOf(beds) + serving.reduce((sum, place) => sum + losses(place), 0);
  return {
    tanks,
    whole: serving.length > 0 && draw > 0 ? (reachable / draw) * DAY : null,
    soil: soilOf(state.beds),
    worst: worstOf(state, beds, serving, reachable),
  };
}

function needOf(beds: readonly Bed[]): number {
  return beds.reduce((sum, { demand }) => sum + (demand?.peakDayNeed ?? 0), 0);
}

/** Beds that take from a tank, or from one that its lines feed. */
function bedsServed(state: SeasonState, place: number): readonly Bed[] {
  return state.beds.filter((bed) =>
    bed.sources.some(({ tank }) => (state.feeders[tank] ?? []).includes(place)),
  );
}

function soilOf(beds: readonly Bed[]): number | null {
  const need = needOf(beds);
  const held = beds.reduce((sum, { demand }) => sum + (demand?.wateringVolume ?? 0), 0);
  return need > 0 ? (held / need) * DAY : null;
}

/** Water above the highest of its outlet, its pumps' lowest water and, where it leaves only by lines, where they stop. */
function reachableOf(state: SeasonState, place: number): number {
  const { vessel } = state.tanks.parts[place] as TankPart;
  return vessel.volume - volumeAt(vessel, lowestDrawable(state, place, new Set([place])));
}

/** Depth under which nothing leaves a tank [m]. */
function lowestDrawable(state: SeasonState, place: number, seen: ReadonlySet<number>): number {
  const { vessel, outlet, floor } = state.tanks.parts[place] as TankPart;
  const { input, draws, sources, pipes } = state;
  const byHand =
    draws.some(({ tank }) => tank === place) || sources.some((s) => s.tank === place && s.roundVolume > 0);
  const id = (state.tanks.parts[place] as TankPart).id;
  const pumps = input.deliveries.filter(({ from }) => from === id).map(({ lowestWater }) => lowestWater);
  const lines = [...pipes.parts.keys()].filter((i) => pipes.from[i] === place);
  const stops = byHand ? [] : lines.map((i) => stopOf(state, i, seen) - floor);
  const lows = pumps.length > 0 ? pumps : stops;
  const lowest = lows.length > 0 ? Math.min(...lows) : 0;
  return Math.min(Math.max(0, outlet, lowest), vessel.height);
}

/** Height at which a line stops giving water on [m]. */
function stopOf(state: SeasonState, i: number, seen: ReadonlySet<number>): number {
  const line = state.pipes.parts[i] as LinePart;
  const to = state.pipes.to[i] as number;
  const end = Math.max(line.startHeight, line.endHeight);
  if (to < 0 || to >= state.pipes.firstTee || seen.has(to)) return end;
  const target = state.tanks.parts[to] as TankPart;
  return Math.max(end, target.floor + lowestDrawable(state, to, new Set([...seen, to])));
}

/** The day of a season from which full tanks, with no more rain, are used up soonest. */
function worstOf(
  state: SeasonState,
  beds: readonly Bed[],
  serving: readonly number[],
  reachable: number,
): Autonomy["worst"] {
  if (reachable <= 0 || beds.length === 0) return null;
  const taken = dailyTaken(state, beds, serving);
  let worst = { day: -1, lasts: Infinity };
  for (const span of state.seasons) {
    const found = soonestIn(taken, span, reachable);
    if (found.lasts < worst.lasts) worst = found;
  }
  return worst.day < 0 ? null : { date: state.record.firstDay + worst.day, lasts: worst.lasts * DAY };
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
function dailyTaken(state: SeasonState, beds: readonly Bed[], serving: readonly number[]): Float64Array {
  const taken = new Float64Array(state.length);
  const leak = serving.reduce((sum, place) => sum + (state.tanks.leak[place] as number), 0);
  const open = serving.reduce((sum, place) => sum + (state.tanks.openArea[place] as number), 0);
  const draws = state.draws.filter(({ tank }) => serving.includes(tank));
  for (let day = 0; day < taken.length; day++) {
    let sum = leak + open * OPEN_WATER * (state.eto[day] as number);
    for (const bed of beds) sum += (bed.days.potential[day] as number) * bed.perDepth;
    for (const draw of draws) sum += dueOn(draw, day);
    taken[day] = sum;
  }
  return taken;
}
