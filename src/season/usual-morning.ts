// How things usually stand on the morning of a calendar day: the middle of a run's years, part by part.

import type { DailyRecord } from "../rainfall/record.ts";
import { calendarDate } from "../units/calendar.ts";
import type { Bed } from "./beds.ts";
import { STEPPING } from "./gravity.ts";
import type { SeasonInput, TankPart } from "./input.ts";
import { contentKey, keeper } from "./kept.ts";
import { quantile } from "./peak-day.ts";
import { prepareSeason, runDays } from "./run.ts";
import type { Soil } from "./soil-step.ts";
import type { SeasonState } from "./state.ts";

/** Water of each tank [m3], charge of each battery [J] and what each bed's ground lacks [m], by id. */
export type UsualMorning = {
  readonly tanks: Readonly<Record<string, number>>;
  readonly batteries: Readonly<Record<string, number>>;
  readonly beds: Readonly<Record<string, Soil>>;
};

/** Water that usually stands in a tank [m3]. */
export const usualVolume = ({ id, vessel, startShare }: TankPart, { tanks }: UsualMorning): number =>
  tanks[id] ?? vessel.volume * startShare;

const KEPT = keeper<UsualMorning>(4);

/** Days around the date that count too where the record has few years: without them a short record's middle is one shower. */
const AROUND = 7;
const MANY_YEARS = 10;

/**
 * The middle of all years of a run on the morning of a date, part by part.
 *
 * @param date the day; its year says nothing [days since 1970-01-01]
 * @validity each part by itself: the middle level of one tank and that of another need not have come together
 * @source definition: the median over the years of the same run as runSeason, of fewer than ten also of the week around
 */
export function usualMorning(input: SeasonInput, record: DailyRecord, date: number): UsualMorning {
  const { month, day } = calendarDate(date);
  return KEPT(record, `${month}-${day} ${contentKey(input)}`, () => usualOn(input, record, date));
}

function usualOn(input: SeasonInput, record: DailyRecord, date: number): UsualMorning {
  const state = prepareSeason(input, record);
  if ("failed" in state) return { tanks: {}, batteries: {}, beds: {} };
  const wanted = new Set(eveningsBefore(state, date));
  const seen: Seen[] = [];
  state.watch = (day) => {
    if (wanted.has(day)) seen.push(seenIn(state));
  };
  runDays(state, STEPPING, { first: 0, last: Math.max(0, ...wanted) });
  return middleOf(state, seen);
}

/** Days of a record whose evening is that before the calendar day of a date. */
function eveningsBefore({ record, length }: SeasonState, date: number): readonly number[] {
  const years = length / 365;
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

type Seen = {
  readonly volumes: Float64Array;
  readonly charges: Float64Array;
  readonly soils: readonly Soil[];
};

const seenIn = ({ tanks, batteries, beds }: SeasonState): Seen => ({
  volumes: tanks.volume.slice(),
  charges: batteries.charge.slice(),
  soils: beds.map(({ soil }) => ({ ...soil })),
});

function middleOf({ tanks, batteries, beds }: SeasonState, seen: readonly Seen[]): UsualMorning {
  const middle = (of: (one: Seen) => number) => quantile(seen.map(of), 0.5);
  const soilOf = (place: number, part: keyof Soil) => middle(({ soils }) => (soils[place] as Soil)[part]);
  const byId = <Part, Value>(parts: readonly Part[], id: (part: Part) => string, of: (at: number) => Value) =>
    Object.fromEntries(parts.map((part, place) => [id(part), of(place)]));
  if (seen.length === 0) return { tanks: {}, batteries: {}, beds: {} };
  return {
    tanks: byId(
      tanks.parts,
      ({ id }) => id,
      (at) => middle(({ volumes }) => volumes[at] as number),
    ),
    batteries: byId(
      batteries.parts,
      ({ id }) => id,
      (at) => middle(({ charges }) => charges[at] as number),
    ),
    beds: byId<Bed, Soil>(
      beds,
      ({ part }) => part.id,
      (at) => ({
        depletion: soilOf(at, "depletion"),
        rest: soilOf(at, "rest"),
        layer: soilOf(at, "layer"),
        zone: soilOf(at, "zone"),
      }),
    ),
  };
}
