// What pages of the season know beside the sheet's own quantities: asked while such a page stands. The app provides it.

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
};
