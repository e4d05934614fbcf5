// What was noted of the last weeks, run day by day to this morning by the season's own balance.

import { type Happened, TELLS_FOR } from "../happened/happened.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import type { KnownBeds } from "./beds.ts";
import { comingDays } from "./coming-days.ts";
import { STEPPING } from "./gravity.ts";
import { byDay, type HappenedDay, isWatering, withGauge } from "./happened-days.ts";
import type { SeasonInput } from "./input.ts";
import { isMeasured } from "./measured.ts";
import { type GoingOn, goingOn, type Moment, momentOf, type Weather } from "./moment.ts";
import { drawRest, notedAsk, wantsRest, waterNoted } from "./noted-watering.ts";
import { runDays } from "./run.ts";
import { fill, isThirsty, moveRoots } from "./soil-step.ts";
import type { SeasonState } from "./state.ts";
import { setLevel } from "./tank-moves.ts";
import { type TodayClock, todayClock } from "./today-clock.ts";
import type { TodayGiven, Usual } from "./today-given.ts";
import { type RainTaken, takenFor, type UnknownDays } from "./unknown-days.ts";
import { nothingUsed } from "./used.ts";
import { usualVolume } from "./usual-morning.ts";

export type Carrying = {
  readonly given: TodayGiven;
  /** What tells of today, in order. */
  readonly happened: readonly Happened[];
  readonly usual: Usual;
  /** A morning of which no more is known than the record's sky. */
  readonly start: (date: number) => Moment;
  readonly known: KnownBeds;
  /** Gets each bed's day before today, and whether it was short on it. */
  readonly look?: (bed: string, date: number, isShort: boolean) => void;
};

/** A run that stands on the morning of a date. */
type Standing = { readonly state: SeasonState; readonly date: number; readonly day: number };

const TELLS_OF_WATER: ReadonlySet<string> = new Set(["dipped", "charged", "swapped"]);

/**
 * The state of this morning as it follows from what happened, whatever no note tells of left as it may be.
 *
 * @returns null where nothing happened that tells of it
 */
export function carriedOn(whole: SeasonState, asked: Carrying): Moment | null {
  const { happened, given } = asked;
  const first = firstTold(happened);
  if (first === null) return null;
  const { today } = given;
  const weather = weatherOf(whole, asked, first);
  const stand = (date: number, moment: Moment) =>
    watched(goingOn(whole.input, moment, daysFrom(weather, date - first), asked.known), date, asked.look);
  let { state, first: place } = stand(first, asked.start(first));
  let from = first;
  const beds = new Set(happened.flatMap((one) => (isWatering(one) ? [one.where] : [])));
  const days = byDay(happened, whole.input.waterAt);
  for (let date = first; date <= today; date++) {
    if (date > from && isOtherwise(whole.input, date)) {
      ({ state, first: place } = stand(date, momentOf(state, place + date - from)));
      from = date;
    }
    const standing = { state, date, day: place + date - from };
    anchor(standing, asked, beds);
    const noon = days(date);
    const clock = date < today || given.dawn === undefined ? null : todayClock(state, given.dawn);
    state.noted = {
      beds,
      noon: noon.noon,
      left: [],
      used: nothingUsed(),
      ...(clock && { before: clock.until }),
    };
    if (date < today) throughDay(standing, noon);
    else untilNow(standing, noon, clock);
  }
  const used = state.noted?.used ?? nothingUsed();
  state.noted = null;
  return {
    ...momentOf(state, place + today - from),
    ...(Object.keys(used.running).length > 0 ? { used } : {}),
  };
}

/** A run from a date on, of which each bed's days are looked at. */
function watched(going: GoingOn, from: number, look: Carrying["look"]): GoingOn {
  const { state, first } = going;
  if (look)
    state.watch = (day) => {
      for (const { part, days, came } of state.beds)
        look(part.id, from + day - first, isThirsty(days.potential[day] as number, came.use));
    };
  return going;
}

/** Whether something broke or was mended on a day. */
const isOtherwise = ({ breaks = [] }: SeasonInput, on: number): boolean =>
  breaks.some(({ date }) => date === on);

const daysFrom = ({ rain, eto, highest, lowest }: Weather, day: number): Weather => ({
  rain: rain.slice(day),
  eto: eto.slice(day),
  highest: highest?.slice(day) ?? null,
  lowest: lowest?.slice(day) ?? null,
});

/** The day from which on something is known of the parts; null: of none. */
function firstTold(happened: readonly Happened[]): number | null {
  const dates = happened.flatMap(({ what, date }) => (what === "rain" ? [] : [date]));
  return dates.length === 0 ? null : Math.min(...dates);
}

const gaugeOf = ({ waterAt, rainScale }: SeasonInput, today: number) => ({ today, waterAt, rainScale });

/** What was taken for rain that nothing tells of; null: all is known. */
export function rainTaken({ record, eto, input }: SeasonState, given: TodayGiven): RainTaken | null {
  const happened = happenedOf(given);
  const first = firstTold(happened);
  if (first === null) return null;
  const gauge = { ...gaugeOf(input, given.today), first };
  return takenFor(record, eto, happened, { first, gauge })?.taken ?? null;
}

/** The record's weather of the days, with the gauge's rain in it, and a usual year's where neither tells. */
function weatherOf(
  { record, eto, input }: SeasonState,
  { given, happened }: Carrying,
  first: number,
): Weather {
  const { today, drying } = given;
  const isGauged = happened.some(({ what }) => what === "rain");
  const from = isGauged ? Math.min(first, today - TELLS_FOR - 1) : first;
  const days = comingDays(record, eto, { first: from, today, last: today }, drying);
  const gauge = { ...gaugeOf(input, today), first: from };
  const rain = withGauge(days.record.rain, happened, gauge).slice(first - from);
  const length = today - first + 1;
  const weather = {
    rain,
    eto: days.eto.slice(first - from),
    highest: known(record.highest, record, first, length),
    lowest: known(record.lowest, record, first, length),
  };
  layOver(weather, takenFor(record, eto, happened, { first, gauge }), first);
  return weather;
}

/** Lays the rain of a usual year over the days that nothing tells of, with its warmth. */
function layOver(weather: Weather, unknown: UnknownDays | null, first: number): void {
  if (!unknown?.weather) return;
  const usual = unknown.weather;
  for (const date of unknown.dates) {
    const day = date - first;
    weather.rain[day] = usual.rain[day] as number;
    if (weather.highest) weather.highest[day] = usual.highest?.[day] ?? Number.NaN;
    if (weather.lowest) weather.lowest[day] = usual.lowest?.[day] ?? Number.NaN;
  }
}

/** Days of a series as far as the record has them. */
function known(
  series: Float64Array | null,
  record: DailyRecord,
  first: number,
  length: number,
): Float64Array | null {
  const on = (date: number) => (isMeasured(record, date) ? series?.[date - record.firstDay] : undefined);
  return series && Float64Array.from({ length }, (_, day) => on(first + day) ?? Number.NaN);
}

/** What nobody noted stands as it usually does from the day on which others first were. */
function anchor({ state, date }: Standing, asked: Carrying, beds: ReadonlySet<string>): void {
  const { happened, given, usual } = asked;
  for (const bed of state.beds) {
    const first = happened.find((one) => isWatering(one) && one.where === bed.part.id);
    if (first?.what === "gave" && first.date === date) setSoil(bed, usual(date).beds[bed.part.id]);
  }
  const wet = happened.find(({ what }) => TELLS_OF_WATER.has(what));
  if (wet?.date !== date || date >= given.today) return;
  const seen = new Set(
    happened.flatMap((one) => (one.date <= date && TELLS_OF_WATER.has(one.what) ? [one.where] : [])),
  );
  const { tanks, batteries } = state;
  tanks.parts.forEach((part, place) => {
    if (!seen.has(part.id)) tanks.volume[place] = usualVolume(part, usual(date));
  });
  batteries.parts.forEach(({ id, charged }, place) => {
    if (seen.has(id)) return;
    const charge = usual(date).batteries[id] ?? (batteries.charge[place] as number);
    batteries.charge[place] = charge;
    batteries.spare[place] = charged === "swapped" ? charge : 0;
  });
  for (const bed of state.beds) if (!beds.has(bed.part.id)) setSoil(bed, usual(date).beds[bed.part.id]);
}

function setSoil({ soil }: SeasonState["beds"][number], usual: object | undefined): void {
  Object.assign(soil, usual);
}

function throughDay({ state, day }: Standing, { morning, evening }: HappenedDay): void {
  for (const one of morning) setLevel(state, one);
  runDays(state, STEPPING, { first: day, last: day });
  for (const one of evening) setLevel(state, one);
}

/** What was noted of today by now, its day not run: water that came is in the ground and out of the tank, as it will stand
 * at the hour of watering where the lines are asked about. */
function untilNow(
  { state, day }: Standing,
  { morning, evening }: HappenedDay,
  clock: TodayClock | null,
): void {
  const { noted } = state;
  if (!noted) return;
  for (const one of morning) {
    clock?.until(one);
    setLevel(state, one);
  }
  for (const bed of state.beds) {
    if (!noted.beds.has(bed.part.id)) continue;
    moveRoots(bed.days, day, bed.soil);
    bed.asked = notedAsk(bed, day, noted);
  }
  waterNoted(state, day);
  for (const bed of state.beds) {
    if ((bed.days.total[day] as number) > 0)
      fill(bed.days, day, bed.soil, (bed.given[day] as number) / bed.perDepth);
  }
  clock?.untilWatering(() => drawRest(state, () => true), wantsRest(state));
  for (const one of evening) setLevel(state, one);
}

/** All that tells of today, in order: the notes, and what is said of parts that are not in them. */
export function happenedOf({ today, ...given }: TodayGiven): readonly Happened[] {
  const { levels, dippedOn = {}, charges, lastSoaked, happened = [] } = given;
  const noted = new Set(happened.map(({ what, where }) => `${what} ${where}`));
  const said = (
    what: Happened["what"],
    days: (id: string) => number,
    amounts: Readonly<Record<string, number | null>>,
  ) =>
    Object.entries(amounts).flatMap(([where, amount]): Happened[] =>
      noted.has(`${what} ${where}`)
        ? []
        : [{ date: Math.min(today, days(where)), minute: null, side: null, what, where, amount, by: null }],
    );
  const soaks = Object.fromEntries(Object.entries(lastSoaked).filter(([, day]) => day <= today));
  const all = [
    ...happened,
    ...said("dipped", (id) => dippedOn[id] ?? today, levels),
    ...said("charged", () => today, charges),
    ...said(
      "soaked",
      (id) => soaks[id] ?? today,
      Object.fromEntries(Object.keys(soaks).map((id) => [id, null])),
    ),
  ];
  const telling = all.filter(({ date }) => date <= today && date >= today - TELLS_FOR);
  return telling.sort((one, other) => one.date - other.date);
}
