// What the page and its worker say to each other.

import type { Outputs, Request } from "../graph/types.ts";
import type { Choices, ImportResult } from "../rainfall/import-result.ts";
import type { DailyRecord } from "../rainfall/record.ts";

export type ToWorker =
  | { readonly say: "record"; readonly record: DailyRecord }
  | { readonly say: "run"; readonly id: number; readonly requests: readonly Request[] }
  | {
      readonly say: "import";
      readonly id: number;
      readonly file: Blob;
      readonly name: string;
      readonly choices: Choices;
    }
  /** Calls an import off. */
  | { readonly say: "cancel"; readonly id: number };

/** What a run came to, or the reason why it came to nothing, for the request with this key. */
export type Ran = { readonly key: string } & ({ readonly outputs: Outputs } | { readonly failed: string });

export type FromWorker =
  | { readonly say: "ran"; readonly id: number; readonly answers: readonly Ran[] }
  /** A record that was made up where it is used. */
  | { readonly say: "made_up"; readonly record: DailyRecord }
  | { readonly say: "imported"; readonly id: number; readonly result: ImportResult }
  | { readonly say: "progress"; readonly id: number; readonly share: number }
  | { readonly say: "failed"; readonly id: number; readonly reason: string };
