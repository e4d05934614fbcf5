// The seasons of a record, each to be run again and again from how it stood on its first morning, under one rule or another.

import { STEPPING } from "./gravity.ts";
import type { HoldingRule } from "./holding.ts";
import { type Member, memberOf, runMember } from "./holding-runs.ts";
import type { SeasonInput } from "./input.ts";
import { type Moment, momentOf } from "./moment.ts";
import { runDays } from "./run.ts";
import type { Span } from "./spans.ts";
import type { SeasonState } from "./state.ts";
import {
  type ByCropStage,
  bookThirst,
  noDepths,
  noThirst,
  potentialOver,
  type Stakes,
  shareOfWorth,
  sharesLost,
  stakesOf,
  worthOf,
} from "./worth.ts";

/** A rule counts as better if it loses less by more than this share of all worth. */
const DUST = 1e-9;

/** A season that can be run again, and its weather's year. */
export type Trial = {
  readonly year: number;
  /** Made ready when it is first asked for: many a season is never run again. */
  readonly member: Member;
  readonly before: ByCropStage;
  /** Share of all worth that it loses by its own days [-]. */
  readonly plain: number;
};

/** Every season of a run, to be run again from its own first morning; the run goes through all of them. */
export function trialsOf(input: SeasonInput, whole: SeasonState): readonly Trial[] {
  const stakes = stakesOf(whole);
  const before = stakes.map(({ crops }) => noDepths(crops));
  let done = 0;
  const runUntil = (day: number): void => {
    runDays(whole, STEPPING, { first: done, last: day - 1 });
    done = day;
  };
  return whole.seasons.map((span): Trial => {
    runUntil(span.first);
    const moment = momentOf(whole, span.first);
    const plain = lossDuring(whole, { stakes, before, span }, () => runUntil(span.last + 1));
    let made: Member | null = null;
    return {
      year: span.year,
      before,
      plain,
      get member() {
        made ??= memberIn(input, whole, span, moment);
        return made;
      },
    };
  });
}

type Season = { readonly stakes: readonly Stakes[]; readonly before: ByCropStage; readonly span: Span };

/** Share of all worth that is lost while a season is run. */
function lossDuring(whole: SeasonState, { stakes, before, span }: Season, run: () => void): number {
  const thirst = noThirst(stakes);
  whole.watch = (day) => bookThirst(stakes, thirst, day);
  run();
  whole.watch = null;
  return shareOfWorth(worthsOf(whole), sharesLost(stakes, thirst, [before, potentialOver(stakes, span)]));
}

function memberIn(input: SeasonInput, whole: SeasonState, { first, last }: Span, moment: Moment): Member {
  const { record, eto } = whole;
  const part = (series: Float64Array) => series.slice(first, last + 1);
  const weather = {
    rain: part(record.rain),
    highest: record.highest && part(record.highest),
    lowest: record.lowest && part(record.lowest),
    eto: part(eto),
  };
  const season = { start: record.firstDay + first, end: record.firstDay + last };
  return memberOf(input, moment, weather, whole, season);
}

const worthsOf = ({ beds }: SeasonState): readonly number[] => beds.map(({ part }) => worthOf(part));

/** Share of all worth that a season loses by a rule; null: by its own days [-]. */
export const lossOf = ({ member, before }: Trial, rule: HoldingRule | null): number =>
  shareOfWorth(worthsOf(member.state), runMember(member, rule, before).lost);

/** Most seasons that a rule is tuned on. */
const MOST = 30;

/**
 * Seasons that a rule is tuned on: the half that loses most by the season's own days. In easy years any rule will do, and a mean
 * that counts them makes it careless of the hard ones. Those that lose most come first, so that a worse rule is soon seen.
 */
export function hardest(trials: readonly Trial[]): readonly Trial[] {
  const count = Math.min(MOST, Math.ceil(trials.length / 2));
  return [...trials].sort((a, b) => b.plain - a.plain).slice(0, count);
}

/** What seasons lose by a rule in all, as far as that matters: null once it is as much as by another [-]. */
export function sumBelow(trials: readonly Trial[], rule: HoldingRule, most: number): number | null {
  let sum = 0;
  for (const trial of trials) {
    sum += lossOf(trial, rule);
    if (sum >= most - DUST) return null;
  }
  return sum;
}
