// A holding rule tuned on the seasons of a record: each is run again from how it stood on its first morning.

import type { DailyRecord } from "../rainfall/record.ts";
import { STEPPING } from "./gravity.ts";
import type { HoldingRule } from "./holding.ts";
import { type Member, memberOf, runMember } from "./holding-runs.ts";
import type { SeasonInput } from "./input.ts";
import { contentKey, keeper } from "./kept.ts";
import { momentOf } from "./moment.ts";
import { prepareSeason, runDays } from "./run.ts";
import type { SeasonState } from "./state.ts";
import { type ByCropStage, shareOfWorth, worthOf } from "./worth.ts";

/** A season of the record: what is lost of all that the beds are worth, by the rule and by the season's own days [-]. */
export type TriedYear = { readonly year: number; readonly loss: number; readonly plain: number };

export type Tuned = { readonly rule: HoldingRule; readonly years: readonly TriedYear[] };

/** Marks of a rule, spread over the season. */
const MARKS = 5;
/** Days that are tried for all marks at once, then what each mark alone is multiplied by, finer each time: our definition. */
const ALIKE: readonly number[] = [0, 3, 7, 14, 28, 56, 112];
const FINER: readonly (readonly number[])[] = [
  [0.4, 2.5],
  [0.7, 1.4],
];
/** A mark of 0 is tried at so many days. */
const FROM_NOTHING = 4;
/** Of more seasons so many are tuned on, spread evenly. */
const MOST_SEASONS = 40;
/** A rule counts as better if it loses less by more than this share of all worth. */
const DUST = 1e-9;

/** A season that can be run again, and its weather's year. */
export type Trial = { readonly year: number; readonly member: Member; readonly before: ByCropStage };

const KEPT = keeper<Tuned>(8);

/**
 * The rule by which the beds would have lost least of their worth over the record's seasons.
 *
 * @returns null where no season can be run
 * @source parameterisation, simulation, optimisation: Koutsoyiannis and Economou 2003 (from memory); marks with hedging:
 *   Shih and ReVelle 1994 (from memory); the search is ours, and finds a good rule, not surely the best
 */
export function tunedRule(input: SeasonInput, record: DailyRecord): Tuned | null {
  const whole = prepareSeason(input, record);
  if ("failed" in whole) return null;
  return KEPT(record, contentKey(input), () => tunedOn(trialsOf(input, whole)));
}

/** Every season of a run, ready to be run again from its own first morning. */
export function trialsOf(input: SeasonInput, whole: SeasonState): readonly Trial[] {
  const { record, eto } = whole;
  let done = 0;
  return whole.seasons.map((span) => {
    if (span.first > done) runDays(whole, STEPPING, { first: done, last: span.first - 1 });
    done = span.first;
    const part = (series: Float64Array | null) => series?.slice(span.first, span.last + 1) ?? null;
    const weather = {
      rain: record.rain.slice(span.first, span.last + 1),
      highest: part(record.highest),
      lowest: part(record.lowest),
      eto: eto.slice(span.first, span.last + 1),
    };
    const season = { start: record.firstDay + span.first, end: record.firstDay + span.last };
    const member = memberOf(input, momentOf(whole, span.first), weather, whole, season);
    return { year: span.year, member, before: member.potential.map((part) => new Float64Array(part.length)) };
  });
}

const lossOf = ({ member, before }: Trial, rule: HoldingRule | null): number =>
  shareOfWorth(
    member.state.beds.map(({ part }) => worthOf(part)),
    runMember(member, rule, before).lost,
  );

/** Evenly so many of a list. */
function spread<Item>(items: readonly Item[], most: number): readonly Item[] {
  if (items.length <= most) return items;
  return Array.from({ length: most }, (_, place) => items[Math.floor((place * items.length) / most)] as Item);
}

function tunedOn(trials: readonly Trial[]): Tuned {
  const plain = trials.map((trial) => lossOf(trial, null));
  const rule = searched(spread(trials, MOST_SEASONS));
  const years = trials.map((trial, place) => ({
    year: trial.year,
    loss: lossOf(trial, rule),
    plain: plain[place] as number,
  }));
  return { rule, years };
}

/** The best of rules that keep the same all season, then mark by mark finer. */
export function searched(trials: readonly Trial[]): HoldingRule {
  let best = { marks: Array<number>(MARKS).fill(0) };
  let order = trials.map((trial) => ({ trial, loss: lossOf(trial, best) }));
  let least = order.reduce((sum, { loss }) => sum + loss, 0);
  // The seasons that lose most come first, so that a worse rule is soon seen to be one.
  order = [...order].sort((a, b) => b.loss - a.loss);
  const attempt = (marks: readonly number[]): void => {
    let sum = 0;
    for (const { trial } of order) {
      sum += lossOf(trial, { marks });
      if (sum >= least - DUST) return;
    }
    least = sum;
    best = { marks: [...marks] };
  };
  for (const days of ALIKE.slice(1)) attempt(Array<number>(MARKS).fill(days));
  for (const factors of FINER) {
    for (let mark = 0; mark < MARKS; mark++) {
      for (const factor of factors) {
        attempt(best.marks.map((other, at) => (at === mark ? (other || FROM_NOTHING) * factor : other)));
      }
    }
  }
  return best;
}
