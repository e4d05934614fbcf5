// How things usually stand on the morning of a calendar day: in each of a run's years, and in their middle, part by part.

import type { DailyRecord } from "../rainfall/record.ts";
import { calendarDate } from "../units/calendar.ts";
import { COMMON_YEAR } from "../units/constants.ts";
import { STEPPING } from "./gravity.ts";
import type { SeasonInput, TankPart } from "./input.ts";
import { contentKey, keeper } from "./kept.ts";
import { quantile } from "./quantile.ts";
import { prepareSeason, runDays } from "./run.ts";
import type { Soil } from "./soil-step.ts";
import type { SeasonState } from "./state.ts";
import { MANY_YEARS } from "./years-ahead.ts";

/** Water of each tank [m3], charge of each battery [J] and what each bed's ground lacks [m], by id. */
export type UsualMorning = {
  readonly tanks: Readonly<Record<string, number>>;
  readonly batteries: Readonly<Record<string, number>>;
  readonly beds: Readonly<Record<string, Soil>>;
};

/** Water that usually stands in a tank [m3]. */
export const usualVolume = ({ id, vessel, startShare }: TankPart, { tanks }: UsualMorning): number =>
  tanks[id] ?? vessel.volume * startShare;

const KEPT = keeper<readonly UsualMorning[]>(4);
const KEPT_MIDDLE = keeper<UsualMorning>(4);

/** Days around the date that count too where the record has few years: without them a short record's middle is one shower. */
const AROUND = 7;

function keyOf(input: SeasonInput, date: number): string {
  const { month, day } = calendarDate(date);
  return `${month}-${day} ${contentKey(input)}`;
}

/**
 * The middle of all years of a run on the morning of a date, part by part.
 * The median over the years of the same run as runSeason, of fewer than ten also of the week around.
 *
 * @param date the day; its year says nothing [days since 1970-01-01]
 * @validity each part by itself: the middle level of one tank and that of another need not have come together
 */
export function usualMorning(input: SeasonInput, record: DailyRecord, date: number): UsualMorning {
  return KEPT_MIDDLE(record, keyOf(input, date), () => middleOf(pastMornings(input, record, date)));
}

/** The mornings of a date in a run's years, as they were; of fewer than ten years also those of the week around. */
export function pastMornings(input: SeasonInput, record: DailyRecord, date: number): readonly UsualMorning[] {
  return KEPT(record, keyOf(input, date), () => seenOn(input, record, date));
}

function seenOn(input: SeasonInput, record: DailyRecord, date: number): readonly UsualMorning[] {
  const state = prepareSeason(input, record);
  if ("failed" in state) return [];
  const wanted = new Set(eveningsBefore(state, date));
  const seen: UsualMorning[] = [];
  state.watch = (day) => {
    if (wanted.has(day)) seen.push(standing(state));
  };
  runDays(state, STEPPING, { first: 0, last: Math.max(0, ...wanted) });
  return seen;
}

/** Days of a record whose evening is that before the calendar day of a date. */
function eveningsBefore({ record, length }: SeasonState, date: number): readonly number[] {
  const years = length / COMMON_YEAR;
  const around = years < MANY_YEARS ? AROUND : 0;
  const { month, day } = calendarDate(date - 1);
  const days: number[] = [];
  for (let place = 0; place < length; place++) {
    const on = calendarDate(record.firstDay + place);
    if (on.month !== month || on.day !== day) continue;
    for (let near = place - around; near <= place + around; near++)
      if (near >= 0 && near < length) days.push(near);
  }
  return days;
}

/** As it stands now. */
const standing = ({ tanks, batteries, beds }: SeasonState): UsualMorning => ({
  tanks: Object.fromEntries(tanks.parts.map(({ id }, place) => [id, tanks.volume[place] as number])),
  batteries: Object.fromEntries(
    batteries.parts.map(({ id }, place) => [id, batteries.charge[place] as number]),
  ),
  beds: Object.fromEntries(beds.map(({ part, soil }) => [part.id, { ...soil }])),
});

function middleOf(seen: readonly UsualMorning[]): UsualMorning {
  const [first] = seen;
  if (!first) return { tanks: {}, batteries: {}, beds: {} };
  const middle = (of: (one: UsualMorning) => number) => quantile(seen.map(of), 0.5);
  const mapped = <Value>(parts: object, of: (id: string) => Value): Record<string, Value> =>
    Object.fromEntries(Object.keys(parts).map((id) => [id, of(id)]));
  return {
    tanks: mapped(first.tanks, (id) => middle(({ tanks }) => tanks[id] as number)),
    batteries: mapped(first.batteries, (id) => middle(({ batteries }) => batteries[id] as number)),
    beds: mapped(first.beds, (id) => {
      const part = (name: keyof Soil) => middle(({ beds }) => (beds[id] as Soil)[name]);
      return { depletion: part("depletion"), rest: part("rest"), layer: part("layer"), zone: part("zone") };
    }),
  };
}
