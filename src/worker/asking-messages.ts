// What the page and the workers that are asked about whole worksheets say to each other.

import type { Worksheet } from "../document/worksheet.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import type { Freeing } from "../season/relief.ts";
import type { Answers, Otherwise } from "../studies/ask.ts";
import type { LastsAsked } from "../studies/from-today.ts";

/** What is different in one run: changes to the worksheet, a plan laid over it, or bounds set free in its season. */
export type Run = Otherwise | Freeing | Advising | LastsAsked;

/** What to do with the water of the day that counts as today. */
export type Advising = { readonly asks: "advice" };

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
