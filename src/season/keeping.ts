// The rule that the advice goes on by after today's choice: how much is kept for later, tuned on the seasons of a record.

import type { DailyRecord } from "../rainfall/record.ts";
import type { HoldingRule } from "./holding.ts";
import type { SeasonInput } from "./input.ts";
import { contentKey, keeper } from "./kept.ts";
import { watersOf } from "./later-use.ts";
import { prepareSeason } from "./run.ts";
import type { SeasonState } from "./state.ts";
import { hardest, sumBelow, type Trial, trialsOf } from "./trials.ts";
import { keptForLater, type Leaning } from "./worth-later.ts";

/** How much more or less than the past years' is needed, and comes: our definition. */
const NEEDS: readonly number[] = [0.85, 1, 1.15];
const COMES: readonly number[] = [1.3, 1, 0.8, 0.6, 0.4];

const KEPT = keeper<{ readonly keeping: Keeping | null }>(8);

export type Keeping = { readonly rule: HoldingRule; readonly leaning: Leaning };

/**
 * The rule that keeps water for later by which the beds would have lost least over the record's seasons.
 *
 * @returns null where no season can be run
 * @source parameterisation, simulation, optimisation: Koutsoyiannis and Economou 2003 (from memory)
 */
export function tunedKeeping(input: SeasonInput, record: DailyRecord): Keeping | null {
  return KEPT(record, contentKey(input), () => {
    const whole = prepareSeason(input, record);
    return { keeping: "failed" in whole ? null : tunedOn(whole, trialsOf(input, whole)) };
  }).keeping;
}

/** The best of the leanings over some seasons. */
function tunedOn(whole: SeasonState, trials: readonly Trial[]): Keeping {
  const waters = watersOf(whole);
  const leanings = COMES.flatMap((comes) => NEEDS.map((need): Leaning => ({ need, comes })));
  const tried = leanings.map((leaning) => ({ leaning, rule: keptForLater(whole, waters, leaning) }));
  const hard = hardest(trials);
  let [best, least] = [tried[0] as Keeping, Infinity];
  for (const one of tried) {
    const sum = sumBelow(hard, one.rule, least);
    if (sum !== null) [best, least] = [one, sum];
  }
  return best;
}
