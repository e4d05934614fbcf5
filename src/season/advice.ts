// What is advised on today's water: each choice with what it would lose, and what a reason is made of.

import type { BedStanding } from "./advising.ts";
import type { ChoiceName } from "./holding-choices.ts";

/**
 * Where watering all loses less of all worth, there is plenty: our definition [-]. Elsewhere a gain of less is advised all the
 * same: the gains of one day are small, and waterings are many. On dry years that nothing was tuned on the advice
 * saves a third of what seven days kept lose; a quarter only where each day's gain under this is passed over.
 */
export const PLENTY = 1e-2;

/** Shares of all worth that read alike even in percent with a place behind the point [-]. */
export const ALIKE = 5e-4;

/** What watering all loses, and what it loses more than another choice, on the mean, or in a usual run and in a dry one [-]. */
export const isPlenty = (lost: readonly number[], gains: readonly number[]): boolean =>
  // A run without any rain loses much in any case: of plenty it tells by what would be gained in it.
  (lost[0] ?? 0) < PLENTY && gains.every((gain) => gain < PLENTY);

/** What a choice means for a bed: of past years the middle one. */
export type BedUnder = {
  readonly bed: string;
  /** Share of its worth that it loses, on the mean [-]. */
  readonly loss: number;
  readonly shortDays: number;
  /** First short day; null: none in half of the years [days since 1970-01-01]. */
  readonly from: number | null;
};

export type Choice = {
  readonly choice: ChoiceName;
  /** Beds that it leaves dry: today, or for good. */
  readonly beds: readonly string[];
  /** Share of all worth that is lost by the season's end: on the mean of past years, or in a usual one [-]. */
  readonly loss: number;
  /** The same with no rain at all, where there are no odds; null where there are. */
  readonly lossIfDry: number | null;
  readonly perBed: readonly BedUnder[];
  /** In reach of the beds at the season's end, of past years the middle one [m3]. */
  readonly left: number;
};

/** What a sentence of the reason is made of. */
export type Why = {
  readonly beds: readonly BedStanding[];
  /** Of the beds that can be held back the one worth least, and the one whose next watering pays most; null: no such bed. */
  readonly held: string | null;
  readonly pays: string | null;
};

export type Advice = {
  readonly kind: "odds" | "usual_and_dry";
  readonly today: number;
  /** The season's last day. */
  readonly last: number;
  /** Beds that ask for water today; of none, the choices are about the next waterings. */
  readonly asking: readonly string[];
  /** Beds that ask and are held back today by a note: every choice leaves them dry. */
  readonly held: readonly string[];
  /** First day on which a bed is short as the sheet waters, by the very runs of how long it lasts: in a middling or usual year; null: none before the season's end. */
  readonly asSheet: number | null;
  readonly choices: readonly Choice[];
  /** What loses less than the rule's own choice by more than the years' error; else, and of a tie, that choice. */
  readonly advised: ChoiceName;
  /** Nothing tells the choices apart: within what the years can tell, or half or twice the worth of one bed turns it. */
  readonly tie: boolean;
  readonly why: Why;
  /** Past years that it rests on. */
  readonly years: number;
};

export type NoAdvice = { readonly kind: "out_of_season" | "one_bed" };
