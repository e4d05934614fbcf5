// The full text of a heavy model's inputs: the key under which its answer is kept, so that none is shown for others.

import type { DailyRecord } from "../rainfall/record.ts";
import type { ModelInput, Request, Result, Value } from "./types.ts";

const SERIES = { Float64Array: "f64", Uint8Array: "u8" } as const;

function sorted(_key: string, value: unknown): unknown {
  if (value instanceof Float64Array) return { [SERIES.Float64Array]: Array.from(value) };
  if (value instanceof Uint8Array) return { [SERIES.Uint8Array]: Array.from(value) };
  if (typeof value !== "object" || value === null || Array.isArray(value)) return value;
  const entries = Object.entries(value);
  return Object.fromEntries(entries.sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)));
}

/** Plain data as text that does not depend on the order in which it was put together. */
function canonicalText(value: unknown): string {
  return JSON.stringify(value, sorted) ?? "null";
}

/** The request of a heavy model: name, inputs and record together are its key. */
export function requestFor(
  model: string,
  input: Readonly<Record<string, Value>>,
  record: string | null,
): Request {
  return { key: canonicalText([model, input, record]), model, input, record };
}

/** What the model's `run` is given where it is run for a request. */
export function inputOf(request: Request, record: DailyRecord | null): ModelInput {
  const results: Record<string, Result> = {};
  for (const [name, value] of Object.entries(request.input)) {
    results[name] = { state: "ready", value, origin: "computed" };
  }
  return { values: request.input, results, cards: {}, record };
}
