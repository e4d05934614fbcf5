// Reading a model's inputs without casts at every line.

import type { ModelInput, Outcome, Outputs, Result, Value } from "../graph/types.ts";
import type { DailyRecord } from "../rainfall/record.ts";

/** A number among the ready values. */
export function numberOf(input: ModelInput, name: string): number {
  const value = input.values[name];
  if (typeof value !== "number") throw new Error(`${name} is not a number.`);
  return value;
}

/** A number, or null where it is none, failed or pending. */
export function numberOrNull(input: ModelInput, name: string): number | null {
  const result = input.results[name];
  return result?.state === "ready" && typeof result.value === "number" ? result.value : null;
}

/** A word, id, date or text. */
export function wordOf(input: ModelInput, name: string): string {
  const value = input.values[name];
  if (typeof value !== "string") throw new Error(`${name} is not a word.`);
  return value;
}

/** A word, id or date, or null where there is none. */
export function wordOrNull(input: ModelInput, name: string): string | null {
  const result = input.results[name];
  return result?.state === "ready" && typeof result.value === "string" && result.value !== ""
    ? result.value
    : null;
}

/** The record that the model asked for; the graph does not run it without. */
export function recordOf(input: ModelInput): DailyRecord {
  if (!input.record) throw new Error("The rain record is not here.");
  return input.record;
}

/** Where the trouble of a failed result began; null where it did not fail. */
export function causeOf(result: Result | undefined): string | null {
  return result?.state === "failed" ? (result.problem.cause ?? result.problem.at) : null;
}

/** A long series. */
export function seriesOf(input: ModelInput, name: string): Float64Array {
  const value = input.values[name];
  if (!(value instanceof Float64Array)) throw new Error(`${name} is not a series.`);
  return value;
}

/** The same outcome for several outputs. */
export function all(names: readonly string[], outcome: Outcome): Outputs {
  return Object.fromEntries(names.map((name) => [name, outcome]));
}

/** Plain values as outcomes; null becomes `none` with the reason given for it. */
export function outcomes(
  values: Readonly<Record<string, Value>>,
  reason = "there is nothing to work it out from",
): Outputs {
  return Object.fromEntries(
    Object.entries(values).map(([name, value]) => [name, value === null ? { none: reason } : { value }]),
  );
}
