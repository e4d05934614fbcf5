// Water all, hold back or give up: what each would lose of what the beds are worth, asked of a whole worksheet.

import { DomainError } from "../physics/domain-error.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import type { Advice, Choice, NoAdvice, Why } from "../season/advice.ts";
import { type Weighed, weighed } from "../season/advising.ts";
import type { SeasonFailure } from "../season/answer.ts";
import { dryWeather } from "../season/coming-days.ts";
import { type Forecast, NO_FORECAST } from "../season/forecast.ts";
import { fromToday } from "../season/from-today.ts";
import { meanLoss, type Run, type Tried } from "../season/holding-choices.ts";
import { tunedRule } from "../season/holding-tuned.ts";
import type { SeasonInput } from "../season/input.ts";
import type { Weather } from "../season/moment.ts";
import { momentToday } from "../season/moment-today.ts";
import { prepareSeason } from "../season/run.ts";
import { seasonAround } from "../season/spans.ts";
import type { SeasonState } from "../season/state.ts";
import { usualMorning } from "../season/usual-morning.ts";
import type { WeekGiven } from "../season/week-plan.ts";
import { shareOfWorth } from "../season/worth.ts";
import { expecting, withForecast, type YearAhead, yearsAhead } from "../season/years-ahead.ts";
import { askedOf } from "./from-today.ts";
import type { Whole } from "./work-out.ts";

/**
 * Water all, hold back or give up.
 *
 * @param records all that are known, made-up ones among them
 * @source one step of policy improvement over a tuned rule (Bertsekas, Dynamic programming and optimal control, from memory)
 */
export function adviceOf(whole: Whole, records: readonly DailyRecord[]): Advice | NoAdvice | SeasonFailure {
  const { plan, given, record } = askedOf(whole, records);
  if (!plan) return { failed: "There is no season to go on with.", at: null };
  if (!given) return { failed: "No day is given for today.", at: null };
  if (!record) return { failed: "The rain record is not here.", at: null };
  return advise(plan, record, given);
}

/** The same of a season's input and what is known of today. */
export function advise(
  input: SeasonInput,
  record: DailyRecord,
  given: Omit<WeekGiven, "days">,
): Advice | NoAdvice | SeasonFailure {
  const whole = prepareSeason(input, record);
  if ("failed" in whole) return whole;
  const season = seasonAround(input, given.today);
  if (!season) return { kind: "out_of_season" };
  if (whole.beds.length < 2) return { kind: "one_bed" };
  try {
    return adviceFrom(input, whole, given, season);
  } catch (error) {
    if (error instanceof DomainError) return { failed: error.message, at: null };
    throw error;
  }
}

type Season = { readonly start: number; readonly end: number };

function adviceFrom(
  input: SeasonInput,
  whole: SeasonState,
  given: Omit<WeekGiven, "days">,
  season: Season,
): Advice | SeasonFailure {
  const { record, eto } = whole;
  const { forecast = NO_FORECAST } = given;
  const tuned = tunedRule(input, record);
  if (!tuned) return { failed: "The record does not hold one whole season.", at: null };
  const days = { today: given.today, last: season.end };
  const moment = momentToday(whole, given, (date) => usualMorning(input, record, date));
  const { years, ahead } = yearsAhead(record, eto, days);
  const isOdds = !record.madeUp && ahead.length > 0;
  const dry = expecting(dryWeather(record, eto, days, "usual"), forecast, days.today, () => false);
  const weathers = isOdds
    ? withForecast(
        ahead.map(({ weather }) => weather),
        forecast,
        days.today,
      )
    : usualAndDry(usualOf(input, record, given, ahead), dry, forecast, days.today);
  const seen = weighed(input, whole, { moment, season, weathers, dry, rule: tuned.rule });
  const base = { today: days.today, last: days.last, years, rule: tuned.rule };
  return { ...base, ...(isOdds ? byOdds(seen, years, days.today) : byTwo(seen, days.today)) };
}

/** The weather of the year that how long it lasts is told by: two pages must not have two usual years. */
function usualOf(
  input: SeasonInput,
  record: DailyRecord,
  given: Omit<WeekGiven, "days">,
  ahead: readonly YearAhead[],
): Weather | null {
  const lasts = fromToday(input, record, given);
  if ("failed" in lasts || lasts.kind !== "usual_and_dry") return null;
  const { year, shift } = lasts.usual;
  return ahead.find((one) => one.year === year && one.shift === shift)?.weather ?? null;
}

/** The usual year with rain that is likelier than not, and days without rain. */
function usualAndDry(
  usual: Weather | null,
  dry: Weather,
  forecast: Forecast,
  today: number,
): readonly [Weather, Weather] {
  const isLikely = (day: number) => (forecast[today + day]?.chance ?? 1) >= 0.5;
  return [usual ? expecting(usual, forecast, today, isLikely) : dry, dry];
}

type Judged = Pick<Advice, "kind" | "asking" | "choices" | "advised" | "tie" | "why">;

/** Losses that differ by less are the same [-]. */
const DUST = 1e-6;

/** Of several ways to make a choice the one that loses least, the first of equals. */
function bestOf(tried: readonly Tried[], lossOf: (one: Tried) => number): Tried {
  return tried.reduce((best, one) => (lossOf(one) < lossOf(best) - DUST ? one : best));
}

/** One way of each choice. */
function onePerChoice(tried: readonly Tried[], lossOf: (one: Tried) => number): readonly Tried[] {
  const names = [...new Set(tried.map(({ choice }) => choice))];
  return names.map((name) =>
    bestOf(
      tried.filter(({ choice }) => choice === name),
      lossOf,
    ),
  );
}

function byOdds(seen: Weighed, years: number, today: number): Judged {
  const { tried, worths } = seen;
  const lossOf = (one: Tried) => meanLoss(worths, one);
  const choices = onePerChoice(tried, lossOf);
  const best = bestOf(choices, lossOf);
  return {
    kind: "odds",
    asking: seen.asking,
    choices: choices.map((one) => choiceOf(one, seen, today, { loss: lossOf(one), lossIfDry: null })),
    advised: best.choice,
    tie: isWithinError(choices, best, worths, years) || isTurned(choices, best, worths),
    why: whyOf(seen, choices),
  };
}

/** Whether another choice loses no more than the odds' error more: the standard error of the differences year by year. */
function isWithinError(
  choices: readonly Tried[],
  best: Tried,
  worths: readonly number[],
  years: number,
): boolean {
  return choices.some((one) => {
    if (one === best) return false;
    const more = one.runs.map(
      (run, at) => shareOfWorth(worths, run.lost) - shareOfWorth(worths, (best.runs[at] as Run).lost),
    );
    const mean = more.reduce((sum, loss) => sum + loss, 0) / more.length;
    const spread = more.reduce((sum, loss) => sum + (loss - mean) ** 2, 0) / Math.max(1, more.length - 1);
    return mean <= Math.max(DUST, Math.sqrt(spread / Math.max(1, years)));
  });
}

/** Whether half or twice the worth of one bed makes another choice the best. */
function isTurned(choices: readonly Tried[], best: Tried, worths: readonly number[]): boolean {
  return worths.some((_, bed) =>
    [0.5, 2].some((factor) => {
      const other = worths.map((worth, at) => (at === bed ? worth * factor : worth));
      return bestOf([best, ...choices], (one) => meanLoss(other, one)) !== best;
    }),
  );
}

/** Without odds: advised is what loses least in both a usual and a dry run, else it is a tie. */
function byTwo(seen: Weighed, today: number): Judged {
  const { tried, worths } = seen;
  const lossIn = (one: Tried, run: number) => shareOfWorth(worths, (one.runs[run] as Run).lost);
  const choices = onePerChoice(tried, (one) => lossIn(one, 0) + lossIn(one, 1));
  const [usual, dry] = [0, 1].map((run) => bestOf(choices, (one) => lossIn(one, run))) as [Tried, Tried];
  const isAlone = (run: number, best: Tried) =>
    choices.every((one) => one === best || lossIn(one, run) > lossIn(best, run) + DUST);
  return {
    kind: "usual_and_dry",
    asking: seen.asking,
    choices: choices.map((one) =>
      choiceOf(one, seen, today, { loss: lossIn(one, 0), lossIfDry: lossIn(one, 1) }),
    ),
    advised: dry.choice,
    tie: usual !== dry || !isAlone(1, dry) || isTurned(choices, dry, worths),
    why: whyOf(seen, choices),
  };
}

type Losses = Pick<Choice, "loss" | "lossIfDry">;

function choiceOf({ choice, beds, runs }: Tried, seen: Weighed, today: number, losses: Losses): Choice {
  // Without odds the first run is the usual one.
  const told = losses.lossIfDry === null ? runs : runs.slice(0, 1);
  return {
    choice,
    beds,
    ...losses,
    perBed: seen.standing.map(({ bed }, place) => {
      const first = middle(
        told.map(({ from }) => ((from[place] as number) < 0 ? Infinity : (from[place] as number))),
      );
      return {
        bed,
        loss: told.reduce((sum, { lost }) => sum + (lost[place] as number), 0) / told.length,
        shortDays: middle(told.map(({ shortDays }) => shortDays[place] as number)),
        from: first === Infinity ? null : today + first - seen.first,
      };
    }),
    left: middle(told.map(({ left }) => left)),
  };
}

/** The middle one of some numbers, of an even count the lower. */
function middle(numbers: readonly number[]): number {
  const sorted = [...numbers].sort((a, b) => a - b);
  return sorted[Math.floor((sorted.length - 1) / 2)] ?? 0;
}

function whyOf({ standing }: Weighed, choices: readonly Tried[]): Why {
  const held = choices.find(({ choice }) => choice === "hold_back")?.beds.at(-1) ?? null;
  const asking = standing.filter(({ asks }) => asks !== null);
  const pays = [...asking].sort((a, b) => b.pays - a.pays)[0]?.bed ?? null;
  return { beds: standing, held, pays };
}
