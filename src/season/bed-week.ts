// A bed's coming week: what it lacks, on which days it asks and for how much, by what means, and what its lines give it.

import type { DayBound } from "../network/bounds.ts";
import { weekday } from "../units/calendar.ts";
import { type BedTanks, tanksOf } from "./bed-tanks.ts";
import type { Bed } from "./beds.ts";
import { linesOf, refusalsOf } from "./day-lines.ts";
import type { BedDay, Portion } from "./day-log.ts";
import { dryDay } from "./moment-today.ts";
import { type Wanted, wantedWaterings } from "./planned-waterings.ts";
import { isThirsty, moveRoots } from "./soil-step.ts";
import type { SeasonState } from "./state.ts";
import { type Way, waysOf } from "./ways.ts";
import { type Outlook, type Plan, totalsOf } from "./week-totals.ts";

/** A watering of the plan: what the bed asks for were it never refused, and what there will be for it. */
export type PlannedWatering = {
  /** [days since 1970-01-01], and 1 Monday to 7 Sunday. */
  readonly date: number;
  readonly weekday: number;
  /** Days from the first to the last on which water for it comes [day]; 0: none does. */
  readonly over: number;
  /** Asked for, and what of it the lines give from that day until the next watering [m3]. */
  readonly asked: number;
  readonly given: number;
  readonly from: readonly Portion[];
  readonly bound: DayBound | null;
};

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
  /** In order, as they come where it is never refused: a bed that is asks again the next day, which is no watering more. */
  readonly waterings: readonly PlannedWatering[];
  /** Mean of what is asked for each time [m3], and what that takes by each of its sources alone; null and none: nothing. */
  readonly each: number | null;
  readonly ways: readonly Way[];
  readonly tanks: BedTanks;
  /** What its lines come to, and with it what they leave wanting [m3]. */
  readonly asked: number;
  readonly given: number;
  readonly outlook: Outlook;
  /** What stands in the way of most of what it will not get. */
  readonly bound: DayBound | null;
  readonly days: readonly BedDay[];
};

export type Start = {
  readonly depletion: number;
  readonly assumed: boolean;
  readonly thirsty: number | null;
  readonly wanted: readonly Wanted[];
  readonly each: number | null;
  readonly ways: readonly Way[];
};

type Known = {
  readonly from: number;
  readonly assumed: readonly string[];
  /** What it still wants of this morning's asking, where it was watered since [m3]. */
  readonly owed: number | undefined;
};

/** A bed this morning, before its week. */
export function startOf(state: SeasonState, bed: Bed, { from, assumed, owed }: Known): Start {
  moveRoots(bed.days, from, bed.soil);
  const wanted = wantedWaterings(state, bed, from, owed);
  const asked = wanted.reduce((sum, { volume }) => sum + volume, 0);
  const each = wanted.length > 0 ? asked / wanted.length : null;
  return {
    depletion: bed.soil.depletion,
    assumed: assumed.includes(bed.part.id),
    thirsty: thirstyFrom(bed, from),
    wanted,
    each,
    ways: each === null ? [] : waysOf(state, bed, each, from),
  };
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

export function bedWeek(state: SeasonState, bed: Bed, start: Start, from: number): BedWeek {
  const { id } = bed.part;
  const days = state.log?.days.get(id) ?? [];
  const own = { id, days, lines: linesOf([{ id, days }]), refused: refusalsOf([{ id, days }]) };
  const waterings = start.wanted.map(({ day, volume }, place) => {
    const date = state.record.firstDay + day;
    const next = start.wanted[place + 1]?.day ?? state.length;
    return wateringOf(own, { date, volume, until: state.record.firstDay + next });
  });
  const readily = bed.days.readily[from] as number;
  return {
    id,
    lacks: start.depletion * bed.perDepth,
    lacksShare: readily > 0 ? start.depletion / readily : null,
    assumed: start.assumed,
    thirstyFrom: start.thirsty === null ? null : state.record.firstDay + start.thirsty,
    use: days.reduce((sum, { potential }) => sum + potential, 0) * bed.perDepth,
    waterings,
    each: start.each,
    ways: start.ways,
    tanks: tanksOf(state, bed),
    ...totalsOf(own, bed.byCalendar),
    bound: boundOf(days),
    days,
  };
}

type Own = Plan & { readonly days: readonly BedDay[] };
type Spell = { readonly date: number; readonly volume: number; readonly until: number };

/** A watering, and what the lines until the next one have for it. */
function wateringOf({ days, lines }: Own, { date, volume, until }: Spell): PlannedWatering {
  const isIn = (day: number) => day >= date && day < until;
  const served = lines.filter(({ day }) => isIn(day));
  // What is thought not to be worth a walk is no shortage.
  const isMet = served.some(({ why }) => why === null);
  const all = served.reduce((sum, line) => sum + line.volume, 0);
  const given = isMet || all >= volume ? volume : all;
  return {
    date,
    weekday: weekday(date),
    over: (served.at(-1)?.day ?? date - 1) - date + 1,
    asked: volume,
    given,
    from: days.filter((day) => isIn(day.date)).flatMap(({ from }) => from),
    bound: given < volume ? boundOf(days.filter((day) => isIn(day.date))) : null,
  };
}

/** The bound with the most that was asked for and not given, the first of equals; of thirst where nothing was asked for. */
function boundOf(days: readonly BedDay[]): DayBound | null {
  const unmet = new Map<DayBound, number>();
  for (const { bound, asked, given } of days) {
    if (bound) unmet.set(bound, (unmet.get(bound) ?? 0) + asked - given);
  }
  let most: DayBound | null = null;
  for (const [bound, amount] of unmet) {
    if (most === null || amount > (unmet.get(most) ?? 0)) most = bound;
  }
  return most;
}
