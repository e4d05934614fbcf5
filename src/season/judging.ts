// Which of today's choices loses least by the past years, and whether that can be told.

import { ALIKE, isPlenty } from "./advice.ts";
import type { Weighed } from "./advising.ts";
import { meanLoss, type Run, type Tried } from "./holding-choices.ts";
import { shareOfWorth } from "./worth.ts";

/** Losses that differ by less are the same [-]. */
export const DUST = 1e-6;

/** Less of all worth is not worth leaving every bed dry: our definition [-]. */
const MATTERS = 1e-3;

/**
 * What is advised, or water all in its place: nobody is held back where there is plenty, for a gain that reads as none, nor
 * everybody at once for one that does not matter.
 *
 * @param beds how many there are
 * @param lossesOf what one loses of all worth, on the mean, or in a usual run and in a dry one [-]
 */
export function unlessForNothing(
  advised: Tried,
  tried: readonly Tried[],
  beds: number,
  lossesOf: (one: Tried) => readonly number[],
): Tried {
  const all = tried.find(({ choice }) => choice === "water_all");
  if (!all || advised.choice === "water_all") return advised;
  const [lost, saved] = [lossesOf(all), lossesOf(advised)];
  const gains = lost.map((loss, at) => loss - (saved[at] as number));
  const isEverybody = advised.choice === "hold_back" && advised.beds.length === beds;
  const least = isEverybody ? MATTERS : ALIKE;
  return isPlenty(lost, gains) || gains.every((gain) => gain < least) ? all : advised;
}

/** Of several ways to make a choice the one that loses least, the first of equals. */
export function bestOf(tried: readonly Tried[], lossOf: (one: Tried) => number): Tried {
  return tried.reduce((best, one) => (lossOf(one) < lossOf(best) - DUST ? one : best));
}

/** One way of each choice. */
export function onePerChoice(tried: readonly Tried[], lossOf: (one: Tried) => number): readonly Tried[] {
  const names = [...new Set(tried.map(({ choice }) => choice))];
  return names.map((name) =>
    bestOf(
      tried.filter(({ choice }) => choice === name),
      lossOf,
    ),
  );
}

export type Judged = {
  /** One way of each choice. */
  readonly choices: readonly Tried[];
  /** One of them: what the rule does, unless another surely loses less. */
  readonly advised: Tried;
  readonly tie: boolean;
};

/**
 * What is advised by the past years.
 *
 * @param seen each choice run through them
 * @param years that they stand for: with each of them also shifted there are more runs
 */
export function judgedByOdds({ tried, worths, byRule }: Weighed, years: number): Judged {
  const lossOf = (one: Tried) => meanLoss(worths, one);
  const own = byRuleOf({ tried, byRule });
  const surer = tried.filter((one) => {
    const { mean, error } = lostMore(own, one, worths, years);
    return mean > Math.max(DUST, error);
  });
  const surest = surer.length > 0 ? bestOf(surer, lossOf) : own;
  const advised = unlessForNothing(surest, tried, worths.length, (one) => [lossOf(one)]);
  const choices = onePerChoice(tried, lossOf).map((one) => (one.choice === advised.choice ? advised : one));
  const isWithinError = choices.some((one) => {
    const { mean, error } = lostMore(one, advised, worths, years);
    return one !== advised && mean <= Math.max(DUST, error);
  });
  return { choices, advised, tie: isWithinError || isTurned(choices, advised, worths) };
}

/** The choice that the rule makes. */
export const byRuleOf = ({ tried, byRule }: Pick<Weighed, "tried" | "byRule">): Tried =>
  tried.find((one) => isSame(one, byRule)) ?? (tried[0] as Tried);

const isSame = ({ choice, beds }: Tried, held: readonly string[]): boolean =>
  choice !== "give_up" && beds.length === held.length && beds.every((bed) => held.includes(bed));

/** How much more one loses than another, on the mean, and the standard error of that by the differences year by year. */
function lostMore(one: Tried, other: Tried, worths: readonly number[], years: number) {
  const more = one.runs.map(
    (run, at) => shareOfWorth(worths, run.lost) - shareOfWorth(worths, (other.runs[at] as Run).lost),
  );
  const mean = more.reduce((sum, loss) => sum + loss, 0) / more.length;
  const spread = more.reduce((sum, loss) => sum + (loss - mean) ** 2, 0) / Math.max(1, more.length - 1);
  return { mean, error: Math.sqrt(spread / Math.max(1, years)) };
}

/** Whether half or twice the worth of one bed makes another choice the best. */
export function isTurned(choices: readonly Tried[], best: Tried, worths: readonly number[]): boolean {
  return worths.some((_, bed) =>
    [0.5, 2].some((factor) => {
      const other = worths.map((worth, at) => (at === bed ? worth * factor : worth));
      return bestOf([best, ...choices], (one) => meanLoss(other, one)) !== best;
    }),
  );
}
