// What pages of the season know beside the sheet's own quantities: asked while such a page stands. The app provides it.

import type { ToldAdvice } from "../../telling/advice.ts";
import type { ToldStick } from "../../telling/stick.ts";
import type { ToldMoments } from "../../telling/told-moments.ts";

/** An answer that may still be worked out; the last one stays until the next is here. */
export type Standing<Answer> = {
  readonly answer: () => Answer | null;
  readonly working: () => boolean;
  /** Why there is none; "" where there is, or will be. */
  readonly failure: () => string;
};

export type SeasonAnswers = {
  /** Asked anew with every change of the sheet, as long as the one who asks stands. */
  readonly moments: () => Standing<ToldMoments>;
  /** Water all, hold back or give up, the same way. */
  readonly advice: () => Standing<ToldAdvice>;
  /** The marks of a tank's dip stick. */
  readonly stick: (tank: string) => Standing<ToldStick>;
};
