// The week from today on: what each bed lacks, on which days it asks and for how much, by what means, and what it will get.

import { DomainError } from "../physics/domain-error.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import type { SeasonFailure } from "./answer.ts";
import { type BedWeek, bedWeek, type Start, startOf } from "./bed-week.ts";
import { withBreaks } from "./breaks.ts";
import { type ByHand, byHand } from "./by-hand.ts";
import { dryWeather } from "./coming-days.ts";
import { type DayLine, linesOf, type Refusal, refusalsOf } from "./day-lines.ts";
import { newLog } from "./day-log.ts";
import { type Forecast, NO_FORECAST, recordedForecast } from "./forecast.ts";
import { STEPPING } from "./gravity.ts";
import { holdingBack, sayHeld } from "./held-today.ts";
import type { PartEvent, SeasonInput } from "./input.ts";
import { goingOn, type Moment, type Weather } from "./moment.ts";
import { type Assumed, assumedOf, knownBeds, momentToday, type TodayGiven } from "./moment-today.ts";
import { type CropNote, withCropNotes } from "./noted-crops.ts";
import { type Opening, openings } from "./openings.ts";
import { owedToday } from "./owed.ts";
import { prepareSeason, runDays } from "./run.ts";
import { type Spared, sparedOf } from "./spared.ts";
import type { SeasonState } from "./state.ts";
import type { Usual } from "./today-given.ts";
import { usualMorning } from "./usual-morning.ts";
import type { Plan } from "./week-totals.ts";
import { expecting, isLikely } from "./years-ahead.ts";

/** How things stand today, and for how long to plan. */
export type WeekGiven = TodayGiven & {
  /** Days of the plan, today the first [day]. */
  readonly days: number;
  /** Its heat is reckoned with, and rain that is likelier than not. */
  readonly forecast?: Forecast;
  /** What was planted and pulled up, and what broke and was mended, by the notes, in order: for the input (withNotes). */
  readonly crops?: readonly CropNote[];
  readonly breaks?: readonly PartEvent[];
  /** How far off dips are [m]: odds start from as many mornings. */
  readonly dipDoubt?: number;
};

/** A season's input with what the notes tell of its beds and parts. */
export function withNotes(input: SeasonInput, { crops, breaks }: WeekGiven): SeasonInput {
  return withBreaks(withCropNotes(input, crops ?? []), breaks ?? []);
}

export type WeekAnswer = {
  readonly first: number;
  readonly last: number;
  /** Tanks whose level was not said. */
  readonly assumedTanks: readonly string[];
  /** In order of ids. */
  readonly beds: readonly BedWeek[];
  readonly lines: readonly DayLine[];
  readonly refused: readonly Refusal[];
  /** Rain of one's own forecast that is reckoned with [m], and the waterings that it makes needless. */
  readonly rains: readonly { readonly day: number; readonly rain: number }[];
  readonly spared: readonly Spared[];
  /** Hoses to be opened today. */
  readonly opens: readonly Opening[];
  /** Parts that are noted broken: the plan does without them. */
  readonly broken: readonly string[];
  /** Charging that its grower does. */
  readonly byHand: readonly ByHand[];
  /** Water in each tank as it was seen last and carried on to today, by its id [m3]. */
  readonly now: Readonly<Record<string, number>>;
  /** The tank of each delivery or carry that waters a bed, by its id. */
  readonly tankBy: Readonly<Record<string, string>>;
};

/**
 * The plan of the coming days, with the rain of one's own forecast where it is likelier than not, else without any.
 * The same day as in runSeason, from the whole state of this morning on.
 *
 * @returns each bed's days, or why there are none
 */
export function weekPlan(
  input: SeasonInput,
  record: DailyRecord,
  given: WeekGiven,
): WeekAnswer | SeasonFailure {
  const whole = prepareSeason(input, record);
  if ("failed" in whole) return whole;
  try {
    return planned(whole, given, (date) => usualMorning(input, record, date));
  } catch (error) {
    if (error instanceof DomainError) return { failed: error.message, at: null };
    throw error;
  }
}

function planned(whole: SeasonState, given: WeekGiven, usual: Usual): WeekAnswer {
  const { today, forecast = NO_FORECAST } = given;
  const recorded = recordedForecast(forecast, whole.input.rainScale);
  const last = today + given.days - 1;
  const { dawn: _dawn, ...still } = given;
  // By how the tanks were seen last: until the hour of watering the lines are taken to run.
  const seen = momentToday(whole, still, usual);
  const dry = dryWeather(whole.record, whole.eto, { today, last }, given.drying);
  const under = (comes: (date: number) => boolean) =>
    expecting(dry, recorded, today, (day) => comes(today + day));
  const assumed = assumedOf(whole, given);
  const morning: Morning = { whole, moment: momentToday(whole, given, usual), given, usual, assumed };
  const weather = under((date) => isLikely(forecast, date));
  const { state, first, beds, plan } = runWeek(morning, weather);
  const asking = beds.flatMap(({ id, days }) => ((days[0]?.asked ?? 0) > 0 ? [id] : []));
  const isDry = weather.rain.every((fell) => fell === 0);
  return {
    first: today,
    last,
    assumedTanks: assumed.tanks,
    ...plan,
    rains: rainsOf(forecast, today, last),
    spared: isDry
      ? []
      : sparedOf(
          runWeek(
            morning,
            under(() => false),
          ).plan,
          plan,
          forecast,
          today,
        ),
    opens: opensToday(whole, seen, weather, asking),
    broken: assumed.broken,
    byHand: byHand(state, plan.lines, { first, date: today }),
    now: seen.tanks,
    tankBy: Object.fromEntries(state.sources.map(({ id, tank }) => [id, state.tanks.parts[tank]?.id ?? ""])),
    beds: [...beds].sort((a, b) => (a.id < b.id ? -1 : 1)),
  };
}

type Morning = {
  readonly whole: SeasonState;
  readonly moment: Moment;
  readonly given: WeekGiven;
  readonly usual: Usual;
  readonly assumed: Assumed;
};

/** Every bed's days under a weather. */
function runWeek({ whole, moment, given, usual, assumed }: Morning, weather: Weather) {
  const { state, first } = goingOn(whole.input, moment, weather, knownBeds(whole));
  const owed = owedToday(whole, given, usual, weather);
  const starts = state.beds.map((bed) =>
    startOf(state, bed, { from: first, assumed: assumed.beds, owed: owed.get(bed.part.id) }),
  );
  const log = newLog();
  state.log = log;
  state.owed = owed;
  holdingBack(state, given.heldBack ?? [], () => runDays(state, STEPPING, { first, last: first }));
  runDays(state, STEPPING, { first: first + 1, last: state.length - 1 });
  sayHeld(log, given.heldBack ?? []);
  const beds = state.beds.map((bed, place) => bedWeek(state, bed, starts[place] as Start, first));
  const plan: Plan = { lines: linesOf(beds), refused: refusalsOf(beds) };
  return { state, first, beds, plan };
}

/** The rain that is reckoned with. */
function rainsOf(forecast: Forecast, today: number, last: number): WeekAnswer["rains"] {
  return Object.entries(forecast).flatMap(([day, { rain }]) => {
    const date = Number(day);
    const counts = date >= today && date <= last && rain !== null && rain > 0 && isLikely(forecast, date);
    return counts ? [{ day: date, rain }] : [];
  });
}

/** Hoses to be opened, by how the tanks were seen last. */
function opensToday(
  whole: SeasonState,
  seen: Moment,
  weather: Weather,
  asking: readonly string[],
): readonly Opening[] {
  if (asking.length === 0 || whole.pipes.lines.every(({ float }) => float === null)) return [];
  return openings(goingOn(whole.input, seen, weather, knownBeds(whole)).state, new Set(asking));
}
