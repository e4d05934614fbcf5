// How long full tanks last: each for the beds it serves, all together, and from the worst day of the record. The one place
// where that is worked out: tank cards, the season's card and the run all ask here.

import { bedsMeant, bedsServed } from "../network/beds.ts";
import type { Network } from "../network/network.ts";
import { DAY } from "../units/constants.ts";
import type { Bed } from "./beds.ts";
import { dueOn } from "./draws.ts";
import { OPEN_WATER } from "./losses.ts";
import { peakDay } from "./peak-day.ts";
import { reachOf } from "./reachable.ts";
import { addTo, type Span } from "./spans.ts";
import type { SeasonState } from "./state.ts";

export type AutonomyAsked = {
  readonly network: Network;
  /** Water to be had from full [m3], open surface [m2] and leak [m3/s] of each tank. */
  readonly tanks: readonly {
    readonly id: string;
    readonly reachable: number;
    readonly openArea: number;
    readonly leak: number;
  }[];
  /** What each bed needs on a peak day [m3]; a bed that is not in it is not counted. */
  readonly needs: ReadonlyMap<string, number>;
  /** Reference evapotranspiration of a peak day [m]. */
  readonly peakEto: number;
};

export type TankAutonomy = {
  readonly id: string;
  /** Beds that its water comes to; where none of it can leave by a line that runs, those it was meant for. */
  readonly beds: readonly string[];
  readonly reachable: number;
  /** On a peak day by those beds, its leak and its open water [m3]; null where it is there for no bed. */
  readonly draw: number | null;
};

/** All tanks that serve beds taken together. */
export type WholeAutonomy = {
  readonly tanks: readonly TankAutonomy[];
  /** Tanks whose water comes to a bed, and those beds. */
  readonly serving: readonly string[];
  readonly beds: readonly string[];
  readonly reachable: number;
  /** Null where no tank serves a bed [m3]. */
  readonly draw: number | null;
};

/**
 * Reachable water of full tanks beside what is taken of it on a peak day.
 * Goes by the need of every bed served, directly or through lines that run, once each, with the tanks' leaks and open water.
 *
 * @returns volumes [m3]
 */
export function autonomyOf(asked: AutonomyAsked): WholeAutonomy {
  const needOf = (beds: readonly string[]) => beds.reduce((sum, id) => sum + (asked.needs.get(id) ?? 0), 0);
  const tanks = asked.tanks.map((tank) => {
    const known = (beds: readonly string[]) => beds.filter((id) => asked.needs.has(id));
    const served = known(bedsServed(asked.network, tank.id));
    const isShut = served.length === 0 && tank.reachable === 0;
    const beds = isShut ? known(bedsMeant(asked.network, tank.id)) : served;
    const losses = tank.leak * DAY + tank.openArea * OPEN_WATER * asked.peakEto;
    const draw = beds.length > 0 ? needOf(beds) + losses : null;
    return { id: tank.id, beds, reachable: tank.reachable, draw, losses, serves: served.length > 0 };
  });
  const serving = tanks.filter(({ serves }) => serves);
  const beds = [...new Set(serving.flatMap((tank) => tank.beds))].sort();
  const lost = serving.reduce((sum, { losses }) => sum + losses, 0);
  return {
    tanks,
    beds,
    serving: serving.map(({ id }) => id),
    reachable: serving.reduce((sum, { reachable }) => sum + reachable, 0),
    draw: beds.length > 0 ? needOf(beds) + lost : null,
  };
}

/** How long a store lasts [s]; null where nothing is taken of it. */
export const lasting = (store: {
  readonly reachable: number;
  readonly draw: number | null;
}): number | null => (store.draw !== null && store.draw > 0 ? (store.reachable / store.draw) * DAY : null);

export type Autonomy = WholeAutonomy & {
  /** What the beds' soil holds within easy reach over their peak-day need [s]. */
  readonly soil: number | null;
  readonly worst: { readonly date: number; readonly lasts: number } | null;
};

/**
 * Days of autonomy of the tanks of a run.
 *
 * @returns durations [s] and volumes [m3]
 * @source autonomyOf
 */
export function runAutonomy(state: SeasonState): Autonomy {
  const { input, tanks } = state;
  const reach = reachOf({
    network: input.network,
    tanks: tanks.parts,
    lines: input.lines,
    pumps: input.deliveries,
  });
  const whole = autonomyOf({
    network: input.network,
    tanks: tanks.parts.map((part) => ({ ...part, reachable: reach.get(part.id)?.reachable ?? 0 })),
    needs: new Map(state.beds.map(({ part, demand }) => [part.id, demand?.peakDayNeed ?? 0])),
    peakEto: state.seasons.length > 0 ? peakDay(state.eto, state.seasons) : 0,
  });
  const beds = state.beds.filter(({ part }) => whole.beds.includes(part.id));
  const serving = whole.serving.flatMap((id) => tanks.placeOf.get(id) ?? []);
  return {
    ...whole,
    soil: soilOf(state.beds),
    worst: worstOf(state, beds, serving, whole.reachable),
  };
}

function needOf(beds: readonly Bed[]): number {
  return beds.reduce((sum, { demand }) => sum + (demand?.peakDayNeed ?? 0), 0);
}

function soilOf(beds: readonly Bed[]): number | null {
  const need = needOf(beds);
  const held = beds.reduce((sum, { demand }) => sum + (demand?.easyVolume ?? 0), 0);
  return need > 0 ? (held / need) * DAY : null;
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
  for (let day = 0; day < taken.length; day++)
    taken[day] = leak + open * OPEN_WATER * (state.eto[day] as number);
  for (const { days, perDepth } of beds) addTo(taken, days.potential, perDepth);
  for (const draw of draws)
    for (let day = 0; day < taken.length; day++) taken[day] = (taken[day] as number) + dueOn(draw, day);
  return taken;
}
