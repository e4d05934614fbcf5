// How long it lasts from today on: this morning's state through the weather of every past year, with one's own forecast.

import { bedsServed } from "../network/beds.ts";
import { DomainError } from "../physics/domain-error.ts";
import { volumeAt } from "../physics/vessel.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import type { SeasonFailure } from "./answer.ts";
import { workingOn } from "./breaks.ts";
import { dryWeather } from "./coming-days.ts";
import { type Forecast, NO_FORECAST } from "./forecast.ts";
import { STEPPING } from "./gravity.ts";
import { holdingBack } from "./held-today.ts";
import type { SeasonInput } from "./input.ts";
import { goingOn, type Moment, type Weather } from "./moment.ts";
import { assumedOf, knownBeds, momentToday, type TodayGiven } from "./moment-today.ts";
import { type Doubt, doubtedMornings } from "./morning-doubt.ts";
import { type Ahead, type FromToday, type Odds, oddsOf, type UsualAndDry } from "./odds.ts";
import { reachOf } from "./reachable.ts";
import { prepareSeason, runDays } from "./run.ts";
import { seasonAround } from "./spans.ts";
import type { SeasonState } from "./state.ts";
import { pastMornings, usualMorning } from "./usual-morning.ts";
import { expecting, isLikely, withForecast, type YearAhead, yearsAhead } from "./years-ahead.ts";

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
  const base = { today, last: season?.end ?? today, now: 0, assumed, heldBack };
  if (!season) return { ...base, kind: "out_of_season" };
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
    return { ...base, now, ...lasting(morning, record, { days, forecast: given.forecast, members }) };
  } catch (error) {
    if (error instanceof DomainError) return { failed: error.message, at: null };
    throw error;
  }
}

type Days = { readonly today: number; readonly last: number };
type Asked = {
  readonly days: Days;
  readonly forecast: Forecast | undefined;
  readonly members: Members;
};

function lasting(morning: Morning, record: DailyRecord, asked: Asked): Odds | UsualAndDry {
  const { days, forecast = NO_FORECAST, members } = asked;
  const { years, ahead } = yearsAhead(record, morning.whole.eto, days);
  if (record.madeUp || ahead.length === 0) return usualAndDry(morning, record, days, ahead, forecast);
  const weathers = withForecast(
    ahead.map(({ weather }) => weather),
    forecast,
    days.today,
  );
  const { whole, moment, doubt } = morning;
  const starting = doubtedMornings(whole, moment, doubt, ahead.length);
  const runs = ahead.flatMap((one, member) => {
    if (member % members.every !== members.from) return [];
    return [run({ ...morning, moment: starting(member) }, one, weathers[member] as Weather)];
  });
  return oddsOf(runs, years, ahead.length - runs.length);
}

/** The middle one of the made-up years, with rain that is likelier than not; and days as dry as they usually are, with none. */
function usualAndDry(
  morning: Morning,
  record: DailyRecord,
  days: Days,
  ahead: readonly YearAhead[],
  forecast: Forecast,
): UsualAndDry {
  const comes = (day: number) => isLikely(forecast, days.today + day);
  const dry = run(
    morning,
    { year: null, shift: 0 },
    expecting(dryWeather(record, morning.whole.eto, days, "usual"), forecast, days.today, () => false),
  );
  const runs = ahead.map((one) => run(morning, one, expecting(one.weather, forecast, days.today, comes)));
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

/** From a morning on through the weather of the days to come, as the season goes. */
export function run(
  { input, whole, moment, reach, heldBack }: Omit<Morning, "doubt">,
  { year, shift }: Pick<Ahead, "year" | "shift">,
  weather: Weather,
): Ahead {
  const { state, first } = goingOn(input, moment, weather, knownBeds(whole));
  const last = state.length - 1;
  holdingBack(state, heldBack, () => runDays(state, STEPPING, { first, last: first }));
  runDays(state, STEPPING, { first: first + 1, last });
  const water = waterIn(state, reach).subarray(first);
  // What comes on the season's last day does not come before its end; what is so today is told all the same.
  const dayWhere = (found: number) =>
    found < 0 || (found > 0 && first + found >= last) ? null : moment.date + found;
  return {
    year,
    shift,
    short: dayWhere(state.shortDay.subarray(first).indexOf(1)),
    empty: dayWhere(water.findIndex((held) => held <= EMPTY * reach.full)),
    water,
  };
}

const waterIn = ({ stored, length }: SeasonState, reach: InReach): Float64Array =>
  Float64Array.from({ length }, (_, day) => inReach(reach, (place) => stored[place]?.[day] ?? 0));

/** Water that can come to a bed [m3]. */
const inReach = ({ tanks }: InReach, heldIn: (place: number) => number): number =>
  tanks.reduce((sum, { place, under }) => sum + Math.max(0, heldIn(place) - under), 0);
