// What the page and the workers that are asked about whole worksheets say to each other.

import type { Worksheet } from "../document/worksheet.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import type { Freeing } from "../season/relief.ts";
import type { Answers, Otherwise } from "../studies/ask.ts";
import type { LastsAsked } from "../studies/from-today.ts";

/** The year's other moments, asked on a day [days since 1970-01-01]. */
export type MomentsRun = { readonly moments: number };

/** What to do with the water of the day that counts as today, and the marks of the dip stick. */
export type Advising = { readonly asks: "advice" | "stick" };

/**
 * What is different in one run: changes to the worksheet, a plan laid over it, or bounds set free in its season; or another
 * question to the worksheet as it is.
 */
export type Run = Otherwise | Freeing | MomentsRun | Advising | LastsAsked;

/** A question: the same worksheet under several lists of changes. */
export type Question = {
  readonly worksheet: Worksheet;
  readonly records: readonly DailyRecord[];
  /** One list of changes a run, in the order in which they are best run. */
  readonly runs: readonly Run[];
  readonly wanted: readonly string[];
};

export type ToAsked =
  /** The worksheet that is asked from now on, and the records that it may name and this worker was not sent yet. */
  | { readonly say: "base"; readonly worksheet: Worksheet; readonly records: readonly DailyRecord[] }
  | {
      readonly say: "ask";
      readonly id: number;
      readonly run: Run;
      readonly wanted: readonly string[];
    };

export type FromAsked =
  | { readonly say: "answers"; readonly id: number; readonly answers: Answers }
  | { readonly say: "failed"; readonly id: number; readonly reason: string };
