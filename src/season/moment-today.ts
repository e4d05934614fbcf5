// How things stand this morning: what was seen of tanks, soaks and charges, and the middle of the years where nothing was.

import { volumeAt } from "../physics/vessel.ts";
import type { Bed } from "./beds.ts";
import { ownBound } from "./bounds.ts";
import { comingDays, type Drying } from "./coming-days.ts";
import { LATELY } from "./crop-days.ts";
import { nothingGone } from "./gone.ts";
import { type BedMoment, type Moment, momentOf } from "./moment.ts";
import { type Came, fullSoil, moveRoots, passDay, type Soil } from "./soil-step.ts";
import { readyState, type SeasonState } from "./state.ts";
import type { UsualMorning } from "./usual-morning.ts";

/** What is known of today. */
export type TodayGiven = {
  /** [days since 1970-01-01] */
  readonly today: number;
  readonly drying: Drying;
  /** Depth of water above each tank's floor [m], by id. */
  readonly levels: Readonly<Record<string, number>>;
  /** Charge of each battery, of what can be used, by id [-]. */
  readonly charges: Readonly<Record<string, number>>;
  /** Day on which each bed was last soaked through, by id [days since 1970-01-01]. */
  readonly lastSoaked: Readonly<Record<string, number>>;
};

/** Farthest back that a soak tells of today [day]: our definition. */
const LOOK_BACK = 60;

/** The day of a bed's soak, where it is known and tells of today. */
function soakOf({ lastSoaked, today }: TodayGiven, id: string): number | null {
  const day = lastSoaked[id];
  return day === undefined || day > today || day < today - LOOK_BACK ? null : day;
}

/** Parts of which nothing was said: they stand as in the middle of the years. */
export type Assumed = {
  readonly tanks: readonly string[];
  readonly beds: readonly string[];
  readonly batteries: readonly string[];
};

export function assumedOf({ tanks, beds, batteries }: SeasonState, given: TodayGiven): Assumed {
  return {
    tanks: tanks.parts.map(({ id }) => id).filter((id) => given.levels[id] === undefined),
    beds: beds.map(({ part }) => part.id).filter((id) => soakOf(given, id) === null),
    batteries: batteries.parts.map(({ id }) => id).filter((id) => given.charges[id] === undefined),
  };
}

/**
 * The whole state of this morning.
 *
 * @param whole the record's run, prepared and not run
 * @param usual how things usually stand today; asked only where something was not seen
 * @validity a soaked bed got nothing since but the record's rain; what the record does not reach was usual and dry
 */
export function momentToday(whole: SeasonState, given: TodayGiven, usual: () => UsualMorning): Moment {
  const { today } = given;
  const reach = today - whole.record.firstDay;
  const isKnown = reach > 0 && reach <= whole.length;
  const base = momentOf(whole, isKnown ? reach : 0);
  const before = comingDays(
    whole.record,
    whole.eto,
    { first: today - LATELY, today, last: today - 1 },
    given.drying,
  );
  return {
    ...base,
    ...(isKnown ? {} : { dry: {}, snow: 0, flushLeft: {} }),
    date: today,
    lately: before.eto,
    tanks: tanksToday(whole, given, usual),
    batteries: batteriesToday(whole, given, usual),
    beds: bedsToday(whole, given, usual),
    gone: nothingGone(whole.tanks.parts.length),
  };
}

function tanksToday({ tanks }: SeasonState, { levels }: TodayGiven, usual: () => UsualMorning) {
  return Object.fromEntries(
    tanks.parts.map(({ id, vessel, startShare }) => {
      const level = levels[id];
      if (level === undefined) return [id, usual().tanks[id] ?? vessel.volume * startShare];
      return [id, volumeAt(vessel, Math.min(vessel.height, Math.max(0, level)))];
    }),
  );
}

function batteriesToday({ batteries }: SeasonState, { charges }: TodayGiven, usual: () => UsualMorning) {
  return Object.fromEntries(
    batteries.parts.map(({ id, usable, charged, startShare }) => {
      const share = charges[id];
      const charge = share === undefined ? (usual().batteries[id] ?? usable * startShare) : usable * share;
      return [id, { charge, spare: charged === "swapped" ? charge : 0 }];
    }),
  );
}

function bedsToday(whole: SeasonState, given: TodayGiven, usual: () => UsualMorning) {
  const soaked = soilsSinceSoak(whole, given);
  return Object.fromEntries(
    whole.beds.map((bed): [string, BedMoment] => {
      const { id } = bed.part;
      const soil = soaked[id] ?? usual().beds[id] ?? fullSoil();
      const bound = ownBound(bed.sources);
      return [id, { soil, lackBefore: 0, bound, shortBound: bound, dryTank: -1 }];
    }),
  );
}

/** What the ground of each bed of a known soak lacks this morning, dried since then. */
function soilsSinceSoak(whole: SeasonState, given: TodayGiven): Readonly<Record<string, Soil>> {
  const { today } = given;
  const soaks = whole.beds.flatMap(({ part }) => soakOf(given, part.id) ?? []);
  if (soaks.length === 0) return {};
  const first = Math.min(...soaks) - LATELY;
  const since = comingDays(whole.record, whole.eto, { first, today, last: today }, given.drying);
  const known = knownBeds(whole);
  const { beds } = readyState(whole.input, since.record, since.eto, known);
  return Object.fromEntries(
    beds.flatMap((bed): [string, Soil][] => {
      const soak = soakOf(given, bed.part.id);
      return soak === null ? [] : [[bed.part.id, driedSince(bed, soak - first, today - first)]];
    }),
  );
}

function driedSince({ days }: Bed, soak: number, from: number): Soil {
  const soil = fullSoil();
  for (let day = soak; day < from; day++) dryDay(days, day, soil);
  moveRoots(days, from, soil);
  return soil;
}

/** A day on which nobody waters. */
export function dryDay(days: Bed["days"], day: number, soil: Soil): Came {
  moveRoots(days, day, soil);
  return passDay(days, day, soil, 0);
}

/** The beds of a run as those of fewer days know them. */
export const knownBeds = ({ beds }: Pick<SeasonState, "beds">): ReadonlyMap<string, Bed> =>
  new Map(beds.map((bed) => [bed.part.id, bed]));
