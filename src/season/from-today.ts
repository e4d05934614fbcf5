// How long it lasts from today on: this morning's state through the weather of every past year, with one's own forecast.

import { bedsServed } from "../network/beds.ts";
import { DomainError } from "../physics/domain-error.ts";
import { volumeAt } from "../physics/vessel.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import type { SeasonFailure } from "./answer.ts";
import type { Bed } from "./beds.ts";
import { workingOn } from "./breaks.ts";
import { dryWeather } from "./coming-days.ts";
import { type Forecast, NO_FORECAST, recordedForecast } from "./forecast.ts";
import { STEPPING } from "./gravity.ts";
import { holdingBack } from "./held-today.ts";
import type { SeasonInput } from "./input.ts";
import { type GoingOn, goingOn, goingOnAgain, type Moment, type Weather } from "./moment.ts";
import { assumedOf, knownBeds, momentToday, shortSince, type TodayGiven } from "./moment-today.ts";
import { type Doubt, doubtedMornings } from "./morning-doubt.ts";
import { type Ahead, type FromToday, type Odds, oddsOf, type UsualAndDry } from "./odds.ts";
import { reachOf } from "./reachable.ts";
import { prepareSeason, runDays } from "./run.ts";
import { seasonAround } from "./spans.ts";
import type { SeasonState } from "./state.ts";
import { pastMornings, usualMorning } from "./usual-morning.ts";
import { expecting, weathersAhead, type YearAhead, yearsAhead } from "./years-ahead.ts";

/** What is known of today and expected of the coming days. */
export type AheadGiven = TodayGiven & {
  readonly forecast?: Forecast;
  /** By how much a dip is off, one standard deviation [m]; left out: dips are exact. */
  readonly dipDoubt?: number;
  /** The one bed that is watered from today on; left out: all as they ask. */
  readonly only?: string;
};

/** Every so-manieth member, from one of them on: so that a few are known at once. */
export type Members = { readonly from: number; readonly every: number };
const ALL: Members = { from: 0, every: 1 };

/** Less in reach than this share of what full tanks give is empty: our definition. */
const EMPTY = 0.01;

/** What runs from this morning start from. */
type Morning = {
  readonly input: SeasonInput;
  readonly whole: SeasonState;
  readonly moment: Moment;
  readonly reach: InReach;
  readonly doubt: Doubt;
  /** Beds that get nothing today, whatever they ask for. */
  readonly heldBack: readonly string[];
};

export type InReach = {
  readonly tanks: readonly { readonly place: number; readonly under: number }[];
  readonly full: number;
};

/** Tanks whose water comes to a bed, and what of it lies too low [m3]. */
export function inReachOf({ input, tanks }: Pick<SeasonState, "input" | "tanks">): InReach {
  const { network, lines, deliveries } = input;
  const reach = reachOf({ network, tanks: tanks.parts, lines, pumps: deliveries });
  const serving = tanks.parts.flatMap(({ id, vessel }, place) => {
    if (bedsServed(network, id).length === 0) return [];
    return [{ place, under: volumeAt(vessel, reach.get(id)?.lowest ?? 0), full: vessel.volume }];
  });
  return { tanks: serving, full: serving.reduce((sum, { full, under }) => sum + full - under, 0) };
}

/**
 * How long what there is lasts, from the state of this morning.
 *
 * @param given what was noted, and one's own forecast of the next seven days
 * @param members of the odds that are run; of made-up weather all are
 * @returns odds of past years; of made-up weather, which gives none, a usual and a dry run; or why there is nothing to say
 * @source Day 1985 (Extended streamflow forecasting), ranks k / (n + 1); the same day as in runSeason
 */
export function fromToday(
  input: SeasonInput,
  record: DailyRecord,
  given: AheadGiven,
  members: Members = ALL,
): FromToday | SeasonFailure {
  const whole = prepareSeason(input, record);
  if ("failed" in whole) return whole;
  const { today } = given;
  const season = seasonAround(input, today);
  const assumed = assumedOf(whole, given);
  const heldBack = (given.heldBack ?? []).filter((id) => whole.beds.some(({ part }) => part.id === id));
  const base = { today, last: season?.end ?? today, now: 0, assumed, heldBack, since: {} };
  if (!season) return { ...base, kind: "out_of_season", dates: { start: input.start, end: input.end } };
  try {
    const moment = momentToday(whole, given, (date) => usualMorning(input, record, date));
    const reach = inReachOf({ input: workingOn(input, today), tanks: whole.tanks });
    const doubt = { assumed, dip: given.dipDoubt ?? 0, past: () => pastMornings(input, record, today) };
    const { only } = given;
    const watered =
      only === undefined ? input : { ...input, beds: input.beds.filter(({ id }) => id === only) };
    const morning = { input: watered, whole, moment, reach, doubt, heldBack };
    const now = inReach(reach, (place) => moment.tanks[whole.tanks.parts[place]?.id ?? ""] ?? 0);
    const days = { today, last: season.end };
    const runs = lasting(morning, record, { days, forecast: given.forecast, members });
    const isShort = shortsOf(runs).some((short) => short === today);
    const since = isShort ? shortSince(whole, given, (date) => usualMorning(input, record, date)) : {};
    return { ...base, now, since, ...runs };
  } catch (error) {
    if (error instanceof DomainError) return { failed: error.message, at: null };
    throw error;
  }
}

const shortsOf = (runs: Odds | UsualAndDry): readonly (number | null)[] =>
  runs.kind === "odds" ? runs.ahead.map(({ short }) => short) : [runs.usual.short, runs.dry.short];

type Days = { readonly today: number; readonly last: number };
type Asked = {
  readonly days: Days;
  readonly forecast: Forecast | undefined;
  readonly members: Members;
};

function lasting(morning: Morning, record: DailyRecord, asked: Asked): Odds | UsualAndDry {
  const { days, forecast: said = NO_FORECAST, members } = asked;
  const forecast = recordedForecast(said, morning.whole.input.rainScale);
  const { years, ahead } = yearsAhead(record, morning.whole.eto, days);
  if (record.madeUp || ahead.length === 0) return usualAndDry(morning, record, days, ahead, forecast);
  const weathers = weathersAhead(record, ahead, forecast, days.today);
  const { whole, moment, doubt } = morning;
  const starting = doubtedMornings(whole, moment, doubt, ahead.length);
  const runOf = runner(morning);
  const runs = ahead.flatMap((one, member) => {
    if (member % members.every !== members.from) return [];
    return [runOf(starting(member), one, weathers[member] as Weather)];
  });
  return oddsOf(runs, years, ahead.length - runs.length);
}

/**
 * The middle one of the made-up years, rain that is expected in so many of them as it is likely: in none of them, where it is
 * less likely than not, would make a usual year drier than one of which nothing is expected. And days as dry as they usually
 * are, with no rain.
 */
function usualAndDry(
  morning: Morning,
  record: DailyRecord,
  days: Days,
  ahead: readonly YearAhead[],
  forecast: Forecast,
): UsualAndDry {
  const runOf = runner(morning);
  const dry = runOf(
    morning.moment,
    { year: null, shift: 0 },
    expecting(dryWeather(record, morning.whole.eto, days, "usual"), forecast, days.today, () => false),
  );
  const weathers = weathersAhead(record, ahead, forecast, days.today);
  const runs = ahead.map((one, member) => runOf(morning.moment, one, weathers[member] as Weather));
  const usual = middlingOf(runs, days.last + 1) ?? dry;
  return { kind: "usual_and_dry", because: record.madeUp ? "made_up" : "too_short", usual, dry };
}

/**
 * The run of a usual year: short from the middle one of all their days on, and of those that are the one whose tanks are empty
 * nearest to the middle of all such days. Of many that are short on the same day any other would be chance.
 *
 * @param never stands for a day that does not come before the season's end
 */
export function middlingOf<Run extends Pick<Ahead, "short" | "empty">>(
  runs: readonly Run[],
  never: number,
): Run | null {
  const dayOf = (one: Run, of: "short" | "empty") => one[of] ?? never;
  const middle = (of: "short" | "empty") =>
    runs.map((one) => dayOf(one, of)).sort((a, b) => a - b)[Math.floor((runs.length - 1) / 2)] ?? never;
  const [short, empty] = [middle("short"), middle("empty")];
  const far = (one: Run) => Math.abs(dayOf(one, "empty") - empty);
  return runs
    .filter((one) => dayOf(one, "short") === short)
    .reduce<Run | null>((best, one) => (best === null || far(one) < far(best) ? one : best), null);
}

type Runner = (moment: Moment, year: Pick<Ahead, "year" | "shift">, weather: Weather) => Ahead;

/** Runs from a morning, one after the other: each in the place of the one before it, so that all is put together once. */
export function runner({ input, whole, reach, heldBack }: Omit<Morning, "doubt" | "moment">): Runner {
  const known = knownBeds(whole);
  let going: GoingOn | null = null;
  return (moment, year, weather) => {
    going = going ? goingOnAgain(going, moment, weather) : goingOn(input, moment, weather, known);
    going.state.quiet = true;
    return throughDays(going, { moment, reach, heldBack }, year);
  };
}

/** From a morning on through the weather of the days to come, as the season goes. */
function throughDays(
  { state, first }: GoingOn,
  { moment, reach, heldBack }: Pick<Morning, "moment" | "reach" | "heldBack">,
  { year, shift }: Pick<Ahead, "year" | "shift">,
): Ahead {
  const last = state.length - 1;
  holdingBack(state, heldBack, () => runDays(state, STEPPING, { first, last: first }));
  runDays(state, STEPPING, { first: first + 1, last });
  const water = waterIn(state, reach, first);
  // What comes on the season's last day does not come before its end; what is so today is told all the same.
  const dayWhere = (found: number) =>
    found < 0 || found === Infinity || (found > 0 && first + found >= last) ? null : moment.date + found;
  const short = state.shortDay.subarray(first);
  return {
    year,
    shift,
    short: dayWhere(short.indexOf(1)),
    beds: Object.fromEntries(state.beds.map((bed) => [bed.part.id, dayWhere(firstShortOf(bed) - first)])),
    again: againOf(short, dayWhere),
    empty: dayWhere(water.findIndex((held) => held <= EMPTY * reach.full)),
    water,
  };
}

/** First day of a run on which a bed is short; Infinity: none [day of the run]. */
const firstShortOf = ({ firstShort }: Bed): number =>
  firstShort.reduce((least, day) => (day < 0 ? least : Math.min(least, day)), Infinity);

/** Beds that are not watered within so many days stay short: our definition. */
const STAYS_SHORT = 7;

/** First short day after one that is not, of days from today on; today where none comes within the week. */
function againOf(short: Uint8Array, dayWhere: (found: number) => number | null): number | null {
  const met = short.indexOf(0);
  return dayWhere(met < 0 || met >= STAYS_SHORT ? 0 : short.indexOf(1, met));
}

/** Water that can come to a bed each evening from a day on [m3]. */
function waterIn({ stored, length }: SeasonState, { tanks }: InReach, first: number): Float64Array {
  const water = new Float64Array(length - first);
  for (const { place, under } of tanks) {
    const held = stored[place] as Float64Array;
    for (let day = 0; day < water.length; day++)
      water[day] = (water[day] as number) + Math.max(0, (held[first + day] as number) - under);
  }
  return water;
}

/** Water that can come to a bed [m3]. */
const inReach = ({ tanks }: InReach, heldIn: (place: number) => number): number =>
  tanks.reduce((sum, { place, under }) => sum + Math.max(0, heldIn(place) - under), 0);
