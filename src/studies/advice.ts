// Water all, hold back or give up: what each would lose of what the beds are worth, asked of a whole worksheet.

import { DomainError } from "../physics/domain-error.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import type { Advice, Choice, NoAdvice, Why } from "../season/advice.ts";
import { type Weighed, weighed } from "../season/advising.ts";
import type { SeasonFailure } from "../season/answer.ts";
import { dryWeather } from "../season/coming-days.ts";
import { NO_FORECAST, recordedForecast } from "../season/forecast.ts";
import { fromToday } from "../season/from-today.ts";
import { meanLoss, type Run, type Tried } from "../season/holding-choices.ts";
import type { SeasonInput } from "../season/input.ts";
import {
  bestOf,
  byRuleOf,
  DUST,
  isTurned,
  judgedByOdds,
  onePerChoice,
  unlessForNothing,
} from "../season/judging.ts";
import { tunedKeeping } from "../season/keeping.ts";
import type { Weather } from "../season/moment.ts";
import { assumedOf, momentToday } from "../season/moment-today.ts";
import { doubtedMornings } from "../season/morning-doubt.ts";
import type { FromToday } from "../season/odds.ts";
import { prepareSeason } from "../season/run.ts";
import { seasonAround } from "../season/spans.ts";
import type { SeasonState } from "../season/state.ts";
import { pastMornings, usualMorning } from "../season/usual-morning.ts";
import type { WeekGiven } from "../season/week-plan.ts";
import { NO_WHOLE_SEASON } from "../season/whole-season.ts";
import { shareOfWorth } from "../season/worth.ts";
import { expecting, weathersAhead, type YearAhead, yearsAhead } from "../season/years-ahead.ts";
import { knownOf } from "./season-asked.ts";
import type { Whole } from "./work-out.ts";

/**
 * Water all, hold back or give up.
 *
 * @param records all that are known, made-up ones among them
 * @source one step of policy improvement over a tuned rule (Bertsekas, Dynamic programming and optimal control, from memory)
 */
export function adviceOf(whole: Whole, records: readonly DailyRecord[]): Advice | NoAdvice | SeasonFailure {
  const known = knownOf(whole, records);
  return "failed" in known ? known : advise(known.plan, known.record, known.given);
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
  const forecast = recordedForecast(given.forecast ?? NO_FORECAST, input.rainScale);
  const tuned = tunedKeeping(input, record);
  if (!tuned) return { failed: NO_WHOLE_SEASON, at: null };
  const days = { today: given.today, last: season.end };
  const moment = momentToday(whole, given, (date) => usualMorning(input, record, date));
  const { years, ahead } = yearsAhead(record, eto, days);
  const isOdds = !record.madeUp && ahead.length > 0;
  const lasts = fromToday(input, record, given);
  if ("failed" in lasts) return lasts;
  const dry = expecting(dryWeather(record, eto, days, "usual"), forecast, days.today, () => false);
  const all = weathersAhead(record, ahead, forecast, days.today);
  const weathers = isOdds ? all : [usualOf(lasts, ahead, all) ?? dry, dry];
  const doubt = {
    assumed: assumedOf(whole, given),
    dip: given.dipDoubt ?? 0,
    past: () => pastMornings(input, record, days.today),
  };
  const starting = isOdds ? doubtedMornings(whole, moment, doubt, weathers.length) : () => moment;
  const { heldBack } = lasts;
  const at = { moment, starting, season, weathers, dry, rule: tuned.rule, heldBack };
  const seen = weighed(input, whole, at);
  const base = { today: days.today, last: days.last, years, held: seen.held, asSheet: shortOf(lasts) };
  return { ...base, ...(isOdds ? byOdds(seen, years, days.today) : byTwo(seen, days.today)) };
}

/** The day on which a bed is first short, of the middling year or the usual one. */
function shortOf(lasts: FromToday): number | null {
  if (lasts.kind === "out_of_season") return null;
  return lasts.kind === "odds" ? lasts.short.half : lasts.usual.short;
}

/** The weather of the year that how long it lasts is told by: two pages must not have two usual years. */
function usualOf(
  lasts: FromToday,
  ahead: readonly YearAhead[],
  weathers: readonly Weather[],
): Weather | null {
  if (lasts.kind !== "usual_and_dry") return null;
  const { year, shift } = lasts.usual;
  return weathers[ahead.findIndex((one) => one.year === year && one.shift === shift)] ?? null;
}

type Judged = Pick<Advice, "kind" | "asking" | "choices" | "advised" | "tie" | "why">;

function byOdds(seen: Weighed, years: number, today: number): Judged {
  const { choices, advised, tie } = judgedByOdds(seen, years);
  const lossOf = (one: Tried) => meanLoss(seen.worths, one);
  return {
    kind: "odds",
    asking: seen.asking,
    choices: choices.map((one) => choiceOf(one, seen, today, { loss: lossOf(one), lossIfDry: null })),
    advised: advised.choice,
    tie,
    why: whyOf(seen, choices),
  };
}

/** Without odds: advised is what loses least in both a usual and a dry run, else it is a tie, of which the rule's choice is. */
function byTwo(seen: Weighed, today: number): Judged {
  const { tried, worths } = seen;
  const lossIn = (one: Tried, run: number) => shareOfWorth(worths, (one.runs[run] as Run).lost);
  const choices = onePerChoice(tried, (one) => lossIn(one, 0) + lossIn(one, 1));
  const [usual, dry] = [0, 1].map((run) => bestOf(choices, (one) => lossIn(one, run))) as [Tried, Tried];
  const isAlone = (run: number, best: Tried) =>
    choices.every((one) => one === best || lossIn(one, run) > lossIn(best, run) + DUST);
  const isTie = usual !== dry || !isAlone(1, dry) || isTurned(choices, dry, worths);
  const best = isTie ? byRuleOf(seen) : dry;
  const advised = unlessForNothing(best, tried, worths.length, (one) => [lossIn(one, 0), lossIn(one, 1)]);
  const tie = isTie || advised !== best;
  return {
    kind: "usual_and_dry",
    asking: seen.asking,
    choices: choices.map((one) =>
      choiceOf(one, seen, today, { loss: lossIn(one, 0), lossIfDry: lossIn(one, 1) }),
    ),
    advised: advised.choice,
    tie,
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
