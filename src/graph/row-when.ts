// Whether a row stands on its card, by the row that it hangs on.

import { isReady, valueIn } from "./readers.ts";
import type { Result, Row } from "./types.ts";

/** @param result of the row that it hangs on */
export const isMet = (when: Row["when"], result: Result | undefined): boolean =>
  !when || (isReady(result) && (when.is?.includes(String(valueIn(result))) ?? true));
