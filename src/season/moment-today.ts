// How things stand this morning: what was seen of tanks, soaks and charges, and the middle of the years where nothing was.

import { volumeAt } from "../physics/vessel.ts";
import type { Bed } from "./beds.ts";
import { ownBound } from "./bounds.ts";
import { comingDays, type Drying } from "./coming-days.ts";
import { LATELY } from "./crop-days.ts";
import { nothingGone } from "./gone.ts";
import { STEPPING } from "./gravity.ts";
import type { TankPart } from "./input.ts";
import { type BedMoment, goingOn, type Moment, momentOf } from "./moment.ts";
import { runDays } from "./run.ts";
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
  /** Day on which a level was read, by id, left out: today. */
  readonly dippedOn?: Readonly<Record<string, number>>;
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

/** How things usually stand on the morning of a date. */
export type Usual = (date: number) => UsualMorning;

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
 * @param usual how things usually stand on a morning; asked only where something was not seen
 * @validity a soaked bed got nothing since but the record's rain; what the record does not reach was usual and dry
 */
export function momentToday(whole: SeasonState, given: TodayGiven, usual: Usual): Moment {
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

/** Water in each tank this morning [m3]: as it was read, carried on from the day on which it was. */
function tanksToday(whole: SeasonState, given: TodayGiven, usual: Usual): Readonly<Record<string, number>> {
  const { tanks } = whole;
  const { levels, dippedOn = {}, today } = given;
  const readOn = (id: string): number => Math.min(today, dippedOn[id] ?? today);
  const first = Math.min(today, ...Object.keys(levels).map(readOn));
  const readAt = (date: number) =>
    Object.fromEntries(Object.entries(levels).filter(([id]) => readOn(id) === date));
  if (first < today) return carriedOn(whole, { given, usual, first, readAt });
  return Object.fromEntries(
    tanks.parts.map((part) => [part.id, volumeOf(part, levels[part.id]) ?? usualVolume(part, usual(today))]),
  );
}

const usualVolume = ({ id, vessel, startShare }: TankPart, { tanks }: UsualMorning): number =>
  tanks[id] ?? vessel.volume * startShare;

function volumeOf({ vessel }: TankPart, level: number | undefined): number | null {
  return level === undefined ? null : volumeAt(vessel, Math.min(vessel.height, Math.max(0, level)));
}

type Carrying = {
  readonly given: TodayGiven;
  readonly usual: Usual;
  readonly first: number;
  readonly readAt: (date: number) => Readonly<Record<string, number>>;
};

/** From the first dip on day by day, as the season goes by its rules, each later dip put in on its morning. */
function carriedOn(
  whole: SeasonState,
  { given, usual, first, readAt }: Carrying,
): Readonly<Record<string, number>> {
  const { today, drying } = given;
  const then = { ...given, today: first, levels: readAt(first), dippedOn: {} };
  const moment = momentToday(whole, then, usual);
  const days = comingDays(whole.record, whole.eto, { first, today, last: today }, drying);
  const weather = { rain: days.record.rain, highest: null, lowest: null, eto: days.eto };
  const { state, first: place } = goingOn(whole.input, moment, weather, knownBeds(whole));
  for (let date = first; date < today; date++) {
    if (date > first) putIn(state, readAt(date));
    runDays(state, STEPPING, { first: place + date - first, last: place + date - first });
  }
  putIn(state, readAt(today));
  return Object.fromEntries(state.tanks.parts.map(({ id }, at) => [id, state.tanks.volume[at] as number]));
}

function putIn({ tanks }: SeasonState, levels: Readonly<Record<string, number>>): void {
  tanks.parts.forEach((part, place) => {
    tanks.volume[place] = volumeOf(part, levels[part.id]) ?? (tanks.volume[place] as number);
  });
}

function batteriesToday({ batteries }: SeasonState, given: TodayGiven, usual: Usual) {
  const { charges } = given;
  return Object.fromEntries(
    batteries.parts.map(({ id, usable, charged, startShare }) => {
      const share = charges[id];
      const charge =
        share === undefined ? (usual(given.today).batteries[id] ?? usable * startShare) : usable * share;
      return [id, { charge, spare: charged === "swapped" ? charge : 0 }];
    }),
  );
}

function bedsToday(whole: SeasonState, given: TodayGiven, usual: Usual) {
  const soaked = soilsSinceSoak(whole, given);
  return Object.fromEntries(
    whole.beds.map((bed): [string, BedMoment] => {
      const { id } = bed.part;
      const soil = soaked[id] ?? usual(given.today).beds[id] ?? fullSoil();
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
