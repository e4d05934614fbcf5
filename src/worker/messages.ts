// What the page and its worker say to each other.

import type { Outputs, Request } from "../graph/types.ts";
import type { Choices, ImportResult } from "../rainfall/import-result.ts";
import type { DailyRecord } from "../rainfall/record.ts";

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
  /** Calls an import off. */
  | { readonly say: "cancel"; readonly id: number };

export type FromWorker =
  | { readonly say: "answer"; readonly id: number; readonly key: string; readonly outputs: Outputs }
  | { readonly say: "imported"; readonly id: number; readonly result: ImportResult }
  | { readonly say: "progress"; readonly id: number; readonly share: number }
  | { readonly say: "failed"; readonly id: number; readonly reason: string };
