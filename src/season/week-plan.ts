// The week from today on: what each bed lacks, on which days it asks and for how much, by what means, and what it will get.

import type { Bound } from "../network/bounds.ts";
import { DomainError } from "../physics/domain-error.ts";
import { volumeAt } from "../physics/vessel.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { weekday } from "../units/calendar.ts";
import type { SeasonFailure } from "./answer.ts";
import type { Bed } from "./beds.ts";
import { comingDays, type Drying } from "./coming-days.ts";
import { type BedDay, newLog, type Portion } from "./day-log.ts";
import { STEPPING } from "./gravity.ts";
import type { SeasonInput, TankPart } from "./input.ts";
import { type Wanted, wantedWaterings } from "./planned-waterings.ts";
import { prepareSeason, runDays } from "./run.ts";
import { type Came, fullSoil, isThirsty, moveRoots, passDay, type Soil } from "./soil-step.ts";
import { readyState, type SeasonState } from "./state.ts";
import { type Way, waysOf } from "./ways.ts";

/** How things stand today. What is not said counts as the season's start has it. */
export type WeekGiven = {
  /** [days since 1970-01-01] */
  readonly today: number;
  /** Days of the plan, today the first [day]. */
  readonly days: number;
  readonly drying: Drying;
  /** Depth of water above each tank's floor [m], by id. */
  readonly levels: Readonly<Record<string, number>>;
  /** Charge of each battery, of what can be used, by id [-]. */
  readonly charges: Readonly<Record<string, number>>;
  /** Day on which each bed was last soaked through, by id [days since 1970-01-01]. */
  readonly lastSoaked: Readonly<Record<string, number>>;
};

/** A watering of the plan: what the bed asks for were it never refused, and what there will be for it. */
export type PlannedWatering = {
  /** [days since 1970-01-01], and 1 Monday to 7 Sunday. */
  readonly date: number;
  readonly weekday: number;
  /** Asked for, and what of it can be given from that day until the next watering [m3]. */
  readonly asked: number;
  readonly given: number;
  readonly from: readonly Portion[];
  readonly bound: Bound | null;
};

/** Whether a bed gets what it asks for in the week. */
export type Outlook = "asks_nothing" | "all" | "some" | "none";

export type BedWeek = {
  readonly id: string;
  /** Short in its root zone this morning, as water to be given [m3]; and over what it can be short without stress [-]. */
  readonly lacks: number;
  readonly lacksShare: number | null;
  /** No day of a soak was said, so that it is taken to ask today. */
  readonly assumed: boolean;
  /** Goes dry so that crops hold back if nobody waters it, first day [days since 1970-01-01]; null: not in the week. */
  readonly thirstyFrom: number | null;
  /** What its crops would use in the week, over the efficiency [m3]. */
  readonly use: number;
  /** In order; a bed that is refused asks again the next day, which is no watering more. */
  readonly waterings: readonly PlannedWatering[];
  /** Mean of what is asked for each time [m3], and what that takes by each of its sources alone; null and none: nothing. */
  readonly each: number | null;
  readonly ways: readonly Way[];
  readonly asked: number;
  readonly given: number;
  readonly outlook: Outlook;
  /** What stands in the way of most of what it will not get. */
  readonly bound: Bound | null;
  readonly days: readonly BedDay[];
};

export type WeekAnswer = {
  readonly first: number;
  readonly last: number;
  /** Tanks whose level was not said. */
  readonly assumedTanks: readonly string[];
  /** In order of ids. */
  readonly beds: readonly BedWeek[];
};

/** Farthest back that a soak is believed to tell of today [day]: a year. */
const LOOK_BACK = 366;

/**
 * The plan of the coming days, were there no rain.
 *
 * @returns each bed's days, or why there are none [-]
 * @validity beds get nothing between their soak and today; no rain comes from today on
 * @source definition: the same day as in runSeason, from today's levels, charges and soils on
 */
export function weekPlan(
  input: SeasonInput,
  record: DailyRecord,
  given: WeekGiven,
): WeekAnswer | SeasonFailure {
  const whole = prepareSeason(input, record);
  if ("failed" in whole) return whole;
  const { today } = given;
  const last = today + given.days - 1;
  const soaks = whole.beds.map(({ part }) => soakOf(given, part.id) ?? today);
  const first = Math.min(knownFrom(whole, today), ...soaks);
  try {
    const coming = comingDays(record, whole.eto, { first, today, last }, given.drying);
    const known = new Map(whole.beds.map((bed) => [bed.part.id, bed]));
    const state = readyState(inputToday(input, given), coming.record, coming.eto, known);
    const starts = state.beds.map((bed) => startOf(state, bed, given, first));
    state.log = newLog();
    runDays(state, STEPPING, { first: today - first, last: last - first });
    const beds = state.beds.map((bed, place) => bedWeek(state, bed, starts[place] as Start, today - first));
    const assumedTanks = state.tanks.parts.map(({ id }) => id).filter((id) => given.levels[id] === undefined);
    return { first: today, last, assumedTanks, beds: beds.sort((a, b) => (a.id < b.id ? -1 : 1)) };
  } catch (error) {
    if (error instanceof DomainError) return { failed: error.message, at: null };
    throw error;
  }
}

/**
 * Where a bed may be let go, the record tells whether it has been: from as far back as it reaches, if it reaches to today.
 * Otherwise nobody knows of the days before a soak, and they decide nothing.
 */
function knownFrom({ beds, record }: SeasonState, today: number): number {
  const reaches = record.firstDay < today && today <= record.firstDay + record.rain.length;
  const mayBeGone = beds.some(({ part }) => part.letGo !== null);
  return reaches && mayBeGone ? Math.max(record.firstDay, today - LOOK_BACK) : today;
}

function soakOf({ lastSoaked, today }: WeekGiven, id: string): number | null {
  const day = lastSoaked[id];
  return day === undefined || day > today || day < today - LOOK_BACK ? null : day;
}

/** The input with today's levels and charges as its start. */
function inputToday(input: SeasonInput, { levels, charges }: WeekGiven): SeasonInput {
  const shareOf = ({ id, vessel, startShare }: TankPart) => {
    const level = levels[id];
    if (level === undefined) return startShare;
    return volumeAt(vessel, Math.min(vessel.height, Math.max(0, level))) / vessel.volume;
  };
  return {
    ...input,
    tanks: input.tanks.map((tank) => ({ ...tank, startShare: shareOf(tank) })),
    batteries: input.batteries.map((part) => ({ ...part, startShare: charges[part.id] ?? part.startShare })),
  };
}

type Start = {
  readonly depletion: number;
  readonly assumed: boolean;
  readonly thirsty: number | null;
  readonly wanted: readonly Wanted[];
};

/** Sets a bed's soil as it is this morning, dried since its soak. */
function startOf(state: SeasonState, bed: Bed, given: WeekGiven, first: number): Start {
  const { days, soil } = bed;
  const soak = soakOf(given, bed.part.id);
  const from = given.today - first;
  const total = days.total[from] as number;
  Object.assign(soil, fullSoil());
  if (soak === null) {
    const asks = Math.max(days.trigger[from] as number, days.potential[from] as number);
    Object.assign(soil, { depletion: Math.min(asks, total), zone: total });
  } else {
    for (let day = soak - first; day < from; day++) dryDay(days, day, soil);
    moveRoots(days, from, soil);
  }
  return {
    depletion: soil.depletion,
    assumed: soak === null,
    thirsty: thirstyFrom(bed, from),
    wanted: wantedWaterings(state, bed, from),
  };
}

/** A day on which nobody waters. */
function dryDay(days: Bed["days"], day: number, soil: Soil): Came {
  moveRoots(days, day, soil);
  return passDay(days, day, soil, 0);
}

/** First day on which its crops hold back, were it not watered; null where none comes. */
function thirstyFrom({ days, soil }: Bed, from: number): number | null {
  const dried = { ...soil };
  for (let day = from; day < days.total.length; day++) {
    const { use } = dryDay(days, day, dried);
    if (isThirsty(days.potential[day] as number, use)) return day;
  }
  return null;
}

function bedWeek(state: SeasonState, bed: Bed, start: Start, from: number): BedWeek {
  const days = state.log?.days.get(bed.part.id) ?? [];
  const waterings = start.wanted.map((wanted, place) => {
    const next = start.wanted[place + 1]?.day ?? state.length;
    return wateringOf(wanted, days.slice(wanted.day - from, next - from));
  });
  const asked = waterings.reduce((sum, watering) => sum + watering.asked, 0);
  const given = waterings.reduce((sum, watering) => sum + watering.given, 0);
  const each = waterings.length > 0 ? asked / waterings.length : null;
  const readily = bed.days.readily[from] as number;
  return {
    id: bed.part.id,
    lacks: start.depletion * bed.perDepth,
    lacksShare: readily > 0 ? start.depletion / readily : null,
    assumed: start.assumed,
    thirstyFrom: start.thirsty === null ? null : state.record.firstDay + start.thirsty,
    use: days.reduce((sum, { potential }) => sum + potential, 0) * bed.perDepth,
    waterings,
    each,
    ways: each === null ? [] : waysOf(state, bed, each),
    asked,
    given,
    outlook: outlookOf(asked, given),
    bound: boundOf(days),
    days,
  };
}

/** A watering, and what the days until the next one have for it. */
function wateringOf({ volume }: Wanted, days: readonly BedDay[]): PlannedWatering {
  const all = days.reduce((sum, { given }) => sum + given, 0);
  const given = volume - all <= volume * ROUNDING ? volume : all;
  const date = days[0]?.date ?? 0;
  return {
    date,
    weekday: weekday(date),
    asked: volume,
    given,
    from: days.flatMap(({ from }) => from),
    bound: given < volume ? boundOf(days) : null,
  };
}

/** Shortfall that is rounding rather than want [-]. */
const ROUNDING = 1e-9;

function outlookOf(asked: number, given: number): Outlook {
  if (asked === 0) return "asks_nothing";
  if (asked - given <= asked * ROUNDING) return "all";
  return given > 0 ? "some" : "none";
}

/** The bound with the most that was asked for and not given, the first of equals; of thirst where nothing was asked for. */
function boundOf(days: readonly BedDay[]): Bound | null {
  const unmet = new Map<Bound, number>();
  for (const { bound, asked, given } of days) {
    if (bound) unmet.set(bound, (unmet.get(bound) ?? 0) + asked - given);
  }
  let most: Bound | null = null;
  for (const [bound, amount] of unmet) {
    if (most === null || amount > (unmet.get(most) ?? 0)) most = bound;
  }
  return most;
}
