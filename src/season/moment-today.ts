// How things stand this morning: what was seen and done on the days before, carried on to it by the season's own balance; and
// the middle of the years where nothing was.

import type { Happened } from "../happened/happened.ts";
import type { Bed } from "./beds.ts";
import { ownBound } from "./bounds.ts";
import { brokenOn } from "./breaks.ts";
import { carriedOn, happenedOf, rainTaken } from "./carry-on.ts";
import { comingDays } from "./coming-days.ts";
import { LATELY } from "./crop-days.ts";
import { nothingGone } from "./gone.ts";
import { type BedMoment, type Moment, momentOf } from "./moment.ts";
import { type Came, fullSoil, moveRoots, passDay, type Soil } from "./soil-step.ts";
import type { SeasonState } from "./state.ts";
import type { TodayGiven, Usual } from "./today-given.ts";
import type { RainTaken } from "./unknown-days.ts";
import { type UsualMorning, usualVolume } from "./usual-morning.ts";

export type { TodayGiven, Usual } from "./today-given.ts";

/** Parts of which nothing was said: they stand as in the middle of the years. */
export type Assumed = {
  readonly tanks: readonly string[];
  readonly beds: readonly string[];
  readonly batteries: readonly string[];
  /** Left out of the run, because something of them is wrong. */
  readonly leftOut: readonly string[];
  /** Noted broken, and so done without. */
  readonly broken: readonly string[];
  /** Rain of the days before today that nothing tells of; null: all of it is known. */
  readonly rain: RainTaken | null;
};

export function assumedOf(whole: SeasonState, given: TodayGiven): Assumed {
  const { tanks, beds, batteries, input } = whole;
  const known = knownBy(happenedOf(given));
  const of = (ids: readonly string[]) => ids.filter((id) => !known.has(id));
  // Nothing is reckoned with what a broken battery holds.
  const broken = brokenOn(input.breaks, given.today);
  return {
    tanks: of(tanks.parts.map(({ id }) => id)),
    beds: of(beds.map(({ part }) => part.id)),
    batteries: of(batteries.parts.map(({ id }) => id)).filter((id) => !broken.has(id)),
    leftOut: input.leftOut.map(({ id }) => id),
    broken: [...broken].sort(),
    rain: rainTaken(whole, given),
  };
}

const TELLS_OF_STATE: ReadonlySet<string> = new Set(["dipped", "gave", "soaked", "charged", "swapped"]);

/** Parts whose state this morning follows from what happened: one that was only drawn from or filled stands nobody knows how. */
const knownBy = (happened: readonly Happened[]): ReadonlySet<string> =>
  new Set(happened.flatMap(({ what, where }) => (TELLS_OF_STATE.has(what) ? [where] : [])));

/**
 * The whole state of this morning.
 *
 * @param whole the record's run, prepared and not run
 * @param usual how things usually stand on a morning; asked only where something was not seen
 * @validity a bed of which anything was noted got nothing but what was; the others go by their rules. What no record
 *   measured dried as usual and rained as in the middling year, but for the gauge. Of today counts what was noted by now, the
 *   watering included
 */
export function momentToday(whole: SeasonState, given: TodayGiven, usual: Usual): Moment {
  const happened = happenedOf(given);
  const start = (date: number) => morningOf(whole, given, date);
  const carried = carriedOn(whole, { given, happened, usual, start, known: knownBeds(whole) });
  const base = carried ?? start(given.today);
  const known = knownBy(happened);
  return {
    ...base,
    tanks: tanksOf(whole, carried, known, () => usual(given.today)),
    batteries: batteriesOf(whole, carried, known, () => usual(given.today)),
    beds: bedsOf(whole, carried, known, () => usual(given.today)),
    gone: nothingGone(whole.tanks.parts.length),
  };
}

/** Since when beds have been short without a break up to yesterday, of those whose state follows from notes, by id. */
export function shortSince(
  whole: SeasonState,
  given: TodayGiven,
  usual: Usual,
): Readonly<Record<string, number>> {
  const happened = happenedOf(given);
  const known = knownBy(happened);
  const since: Record<string, number> = {};
  const look = (bed: string, date: number, isShort: boolean): void => {
    if (!isShort || !known.has(bed)) delete since[bed];
    else since[bed] ??= date;
  };
  const start = (date: number) => morningOf(whole, given, date);
  carriedOn(whole, { given, happened, usual, start, known: knownBeds(whole), look });
  return since;
}

/** A morning of which no more is known than the record's sky. */
function morningOf(whole: SeasonState, { drying, today }: TodayGiven, date: number): Moment {
  const reach = date - whole.record.firstDay;
  const isKnown = reach > 0 && reach <= whole.length && !whole.record.madeUp;
  const before = comingDays(whole.record, whole.eto, { first: date - LATELY, today, last: date - 1 }, drying);
  return {
    ...momentOf(whole, isKnown ? reach : 0),
    ...(isKnown ? {} : { dry: {}, snow: 0, flushLeft: {} }),
    date,
    lately: before.eto,
  };
}

type Usually = () => UsualMorning;
type Known = ReadonlySet<string>;

function tanksOf({ tanks }: SeasonState, carried: Moment | null, known: Known, usual: Usually) {
  return Object.fromEntries(
    tanks.parts.map((part) => [
      part.id,
      carried && known.has(part.id) ? (carried.tanks[part.id] ?? 0) : usualVolume(part, usual()),
    ]),
  );
}

function batteriesOf({ batteries }: SeasonState, carried: Moment | null, known: Known, usual: Usually) {
  return Object.fromEntries(
    batteries.parts.map(({ id, usable, charged, startShare }) => {
      const held = known.has(id) ? carried?.batteries[id] : undefined;
      if (held) return [id, held];
      const charge = usual().batteries[id] ?? usable * startShare;
      return [id, { charge, spare: charged === "swapped" ? charge : 0 }];
    }),
  );
}

function bedsOf({ beds }: SeasonState, carried: Moment | null, known: Known, usual: Usually) {
  return Object.fromEntries(
    beds.map(({ part, sources }): [string, BedMoment] => {
      const own = known.has(part.id) ? carried?.beds[part.id]?.soil : undefined;
      const soil = own ?? usual().beds[part.id] ?? fullSoil();
      const bound = ownBound(sources);
      return [part.id, { soil, lackBefore: 0, bound, shortBound: bound, dryTank: -1 }];
    }),
  );
}

/** A day on which nobody waters. */
export function dryDay(days: Bed["days"], day: number, soil: Soil): Came {
  moveRoots(days, day, soil);
  return passDay(days, day, soil, 0);
}

/** The beds of a run as those of fewer days know them. */
export const knownBeds = ({ beds }: Pick<SeasonState, "beds">): ReadonlyMap<string, Bed> =>
  new Map(beds.map((bed) => [bed.part.id, bed]));
