// What is told of the year besides watering: first fillings, frost, tanks that fill, this year against what was expected.

import type { FrostTask } from "./frost-jobs.ts";
import type { ToldYear } from "./this-year.ts";

/** A job before the frost, and the note that says it is done for this winter; null: none does. */
export type FrostLine = FrostTask & { readonly done: string | null };

export type FillingSteps = { readonly id: string; readonly title: string; readonly steps: readonly string[] };

export type ToldMoments = {
  readonly fillings: readonly FillingSteps[];
  readonly frost: { readonly by: string; readonly lines: readonly FrostLine[] };
  readonly full: readonly { readonly id: string; readonly title: string; readonly said: string }[];
  readonly thisYear: ToldYear | null;
};

/** What stands with the steps of a filling. */
export const FILLING_ASIDE =
  "Common practice, no source; the numbers are your line's own. Let the first water run onto the ground.";

/** What stands with a tank that fills. */
export const FULL_ASIDE =
  "Were it empty today, with all else as it is and the beds watered by their rules. A roof that is taken off for winter brings it nothing while it is off.";
