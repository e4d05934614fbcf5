// How long it lasts from today on: this morning's state through the weather of every past year, with one's own forecast.

import { bedsServed } from "../network/beds.ts";
import { DomainError } from "../physics/domain-error.ts";
import { volumeAt } from "../physics/vessel.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import type { SeasonFailure } from "./answer.ts";
import { dryWeather } from "./coming-days.ts";
import type { Forecast } from "./forecast.ts";
import { STEPPING } from "./gravity.ts";
import type { SeasonInput } from "./input.ts";
import { goingOn, type Moment, type Weather } from "./moment.ts";
import { type Assumed, assumedOf, knownBeds, momentToday, type TodayGiven } from "./moment-today.ts";
import { reachOf } from "./reachable.ts";
import { prepareSeason, runDays } from "./run.ts";
import { seasonAround } from "./spans.ts";
import type { SeasonState } from "./state.ts";
import { usualMorning } from "./usual-morning.ts";
import { expecting, withForecast, type YearAhead, yearsAhead } from "./years-ahead.ts";

/** One run from today to the season's end; days null where they do not come before it [days since 1970-01-01]. */
export type Ahead = {
  /** The year whose weather it has, and by how many days that is shifted; null: dry days, or usual ones. */
  readonly year: number | null;
  readonly shift: number;
  /** First day on which a bed is short. */
  readonly short: number | null;
  /** First evening on which next to nothing is left in reach of any bed. */
  readonly empty: number | null;
  /** Water in reach of the beds each evening from today on [m3]. */
  readonly water: Float64Array;
};

/** Days by rank: of a day it is said that the truth comes sooner in at most that share of cases. */
export type Ranks = {
  readonly oneInTen: number | null;
  readonly half: number | null;
  readonly nineInTen: number | null;
};

export type Odds = {
  readonly kind: "odds";
  /** Years of the record that reach so far, and runs: more where each counts shifted too. */
  readonly years: number;
  readonly members: number;
  readonly short: Ranks;
  readonly empty: Ranks;
  /** Chance that no bed goes short before the season's end: at least so much. */
  readonly reachesEnd: number;
  readonly ahead: readonly Ahead[];
};

export type UsualAndDry = { readonly kind: "usual_and_dry"; readonly usual: Ahead; readonly dry: Ahead };

export type FromToday = {
  readonly today: number;
  /** The season's last day. */
  readonly last: number;
  readonly assumed: Assumed;
} & (Odds | UsualAndDry | { readonly kind: "out_of_season" });

/** Less in reach than this share of what full tanks give is empty: our definition. */
const EMPTY = 0.01;

/**
 * Rank of the latest day such that the truth comes sooner in at most a share of cases.
 *
 * @param days in any order, null: not before the season's end
 * @param share 0..1
 * @returns that day, the soonest of all where there are too few to say; null where it is not before the season's end
 * @source ranks k / (n + 1), Weibull 1939; Day 1985
 */
export function dayAtRank(days: readonly (number | null)[], share: number): number | null {
  const sorted = days.map((day) => day ?? Infinity).sort((a, b) => a - b);
  const rank = Math.max(1, Math.floor(share * (sorted.length + 1) + 1e-9));
  const day = sorted[rank - 1] ?? Infinity;
  return day === Infinity ? null : day;
}

const ranksOf = (days: readonly (number | null)[]): Ranks => ({
  oneInTen: dayAtRank(days, 0.1),
  half: dayAtRank(days, 0.5),
  nineInTen: dayAtRank(days, 0.9),
});

/** What runs from this morning start from. */
type Morning = {
  readonly input: SeasonInput;
  readonly whole: SeasonState;
  readonly moment: Moment;
  readonly reach: InReach;
};

type InReach = {
  readonly tanks: readonly { readonly place: number; readonly under: number }[];
  full: number;
};

/** Tanks whose water comes to a bed, and what of it lies too low [m3]. */
function inReachOf({ input, tanks }: SeasonState): InReach {
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
 * @param forecast of the next seven days; none is known of the others
 * @returns odds of past years; of made-up weather, which gives none, a usual and a dry run; or why there is nothing to say
 * @source Day 1985 (Extended streamflow forecasting), ranks k / (n + 1); the same day as in runSeason
 */
export function fromToday(
  input: SeasonInput,
  record: DailyRecord,
  given: TodayGiven,
  forecast: Forecast,
): FromToday | SeasonFailure {
  const whole = prepareSeason(input, record);
  if ("failed" in whole) return whole;
  const { today } = given;
  const season = seasonAround(input, today);
  const base = { today, last: season?.end ?? today, assumed: assumedOf(whole, given) };
  if (!season) return { ...base, kind: "out_of_season" };
  try {
    const moment = momentToday(whole, given, (date) => usualMorning(input, record, date));
    const morning = { input, whole, moment, reach: inReachOf(whole) };
    return { ...base, ...lasting(morning, record, { today, last: season.end }, forecast) };
  } catch (error) {
    if (error instanceof DomainError) return { failed: error.message, at: null };
    throw error;
  }
}

type Days = { readonly today: number; readonly last: number };
function lasting(morning: Morning, record: DailyRecord, days: Days, forecast: Forecast): Odds | UsualAndDry {
  const { years, ahead } = yearsAhead(record, morning.whole.eto, days);
  if (record.madeUp || ahead.length === 0) return usualAndDry(morning, record, days, ahead, forecast);
  const weathers = withForecast(
    ahead.map(({ weather }) => weather),
    forecast,
    days.today,
  );
  const runs = ahead.map((one, member) => run(morning, one, weathers[member] as Weather));
  const neverShort = runs.filter(({ short }) => short === null).length;
  return {
    kind: "odds",
    years,
    members: runs.length,
    short: ranksOf(runs.map(({ short }) => short)),
    empty: ranksOf(runs.map(({ empty }) => empty)),
    reachesEnd: neverShort / (runs.length + 1),
    ahead: runs,
  };
}

/** The middle one of the made-up years, with rain that is likelier than not; and days as dry as they usually are, with none. */
function usualAndDry(
  morning: Morning,
  record: DailyRecord,
  days: Days,
  ahead: readonly YearAhead[],
  forecast: Forecast,
): UsualAndDry {
  const isLikely = (day: number) => (forecast[days.today + day]?.chance ?? 1) >= 0.5;
  const dry = run(
    morning,
    { year: null, shift: 0 },
    expecting(dryWeather(record, morning.whole.eto, days, "usual"), forecast, days.today, () => false),
  );
  const runs = ahead
    .map((one) => run(morning, one, expecting(one.weather, forecast, days.today, isLikely)))
    .sort((a, b) => (a.short ?? Infinity) - (b.short ?? Infinity) || 0);
  const usual = runs[Math.floor((runs.length - 1) / 2)] ?? dry;
  return { kind: "usual_and_dry", usual, dry };
}

function run(
  { input, whole, moment, reach }: Morning,
  { year, shift }: Pick<Ahead, "year" | "shift">,
  weather: Weather,
): Ahead {
  const { state, first } = goingOn(input, moment, weather, knownBeds(whole));
  runDays(state, STEPPING, { first, last: state.length - 1 });
  const water = waterIn(state, reach).subarray(first);
  const dayWhere = (found: number) => (found < 0 ? null : moment.date + found);
  return {
    year,
    shift,
    short: dayWhere(state.shortDay.subarray(first).indexOf(1)),
    empty: dayWhere(water.findIndex((held) => held <= EMPTY * reach.full)),
    water,
  };
}

function waterIn({ stored, length }: SeasonState, { tanks }: InReach): Float64Array {
  const water = new Float64Array(length);
  for (const { place, under } of tanks) {
    const held = stored[place] as Float64Array;
    for (let day = 0; day < length; day++)
      water[day] = (water[day] as number) + Math.max(0, (held[day] as number) - under);
  }
  return water;
}
