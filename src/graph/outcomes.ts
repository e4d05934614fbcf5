// What a model answers, put together.

import type { Missing } from "./readers.ts";
import type { Outcome, Outputs, Value } from "./types.ts";

/** Says of an output why it cannot be worked out. */
export function failedBy({ reason, cause }: Missing): Outcome {
  return cause === undefined ? { failed: reason } : { failed: reason, cause };
}

/** The same outcome for several outputs. */
export function all(names: readonly string[], outcome: Outcome): Outputs {
  return Object.fromEntries(names.map((name) => [name, outcome]));
}

/** A plain value, or none with its reason where there is none. */
export const valueOr = (value: Value, reason: string): Outcome =>
  value === null ? { none: reason } : { value };

/** Plain values as outcomes; null becomes `none` with the reason given for it. */
export function outcomes(
  values: Readonly<Record<string, Value>>,
  reason = "there is nothing to work it out from",
): Outputs {
  return Object.fromEntries(Object.entries(values).map(([name, value]) => [name, valueOr(value, reason)]));
}
