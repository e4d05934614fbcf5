// What the page and its worker say to each other.

import type { Outputs, Request } from "../graph/types.ts";
import type { Choices, ImportResult } from "../rainfall/import-result.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import type { SizeFailure, SizePoint, SizeQuestion } from "../studies/tank-sizes.ts";

export type ToWorker =
  | { readonly say: "record"; readonly record: DailyRecord }
  | { readonly say: "run"; readonly id: number; readonly request: Request }
  | {
      readonly say: "import";
      readonly id: number;
      readonly file: Blob;
      readonly name: string;
      readonly choices: Choices;
    }
  | {
      readonly say: "study";
      readonly id: number;
      readonly question: SizeQuestion;
      /** Key of a record that was sent before. */
      readonly record: string;
    }
  /** Calls an import or a study off. */
  | { readonly say: "cancel"; readonly id: number };

export type FromWorker =
  | { readonly say: "answer"; readonly id: number; readonly key: string; readonly outputs: Outputs }
  | { readonly say: "imported"; readonly id: number; readonly result: ImportResult }
  | { readonly say: "progress"; readonly id: number; readonly share: number }
  | { readonly say: "study_part"; readonly id: number; readonly part: SizePoint }
  | { readonly say: "study_end"; readonly id: number; readonly end: SizeFailure | null }
  | { readonly say: "failed"; readonly id: number; readonly reason: string };
