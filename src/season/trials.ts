// The seasons of a record, each to be run again and again from how it stood on its first morning, under one rule or another.

import { STEPPING } from "./gravity.ts";
import type { HoldingRule } from "./holding.ts";
import { type Member, memberOf, runMember } from "./holding-runs.ts";
import type { SeasonInput } from "./input.ts";
import { momentOf } from "./moment.ts";
import { runDays } from "./run.ts";
import type { SeasonState } from "./state.ts";
import { type ByCropStage, shareOfWorth, worthOf } from "./worth.ts";

/** A rule counts as better if it loses less by more than this share of all worth. */
const DUST = 1e-9;

/** A season that can be run again, and its weather's year. */
export type Trial = { readonly year: number; readonly member: Member; readonly before: ByCropStage };

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

/** Share of all worth that a season loses by a rule; null: by its own days [-]. */
export const lossOf = ({ member, before }: Trial, rule: HoldingRule | null): number =>
  shareOfWorth(
    member.state.beds.map(({ part }) => worthOf(part)),
    runMember(member, rule, before).lost,
  );

/** Most seasons that a rule is tuned on. */
const MOST = 30;

/**
 * Seasons that a rule is tuned on: the half that loses most by the season's own days. In easy years any rule will do, and a mean
 * that counts them makes it careless of the hard ones. Those that lose most come first, so that a worse rule is soon seen.
 */
export function hardest(trials: readonly Trial[]): readonly Trial[] {
  const losses = trials.map((trial) => ({ trial, loss: lossOf(trial, null) }));
  const count = Math.min(MOST, Math.ceil(trials.length / 2));
  return losses
    .sort((a, b) => b.loss - a.loss)
    .slice(0, count)
    .map(({ trial }) => trial);
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
