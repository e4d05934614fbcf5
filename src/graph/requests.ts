// The full text of a heavy model's inputs: the key under which its answer is kept, so that none is shown for others.

import type { DailyRecord } from "../rainfall/record.ts";
import type { ModelWork } from "./nodes.ts";
import { none } from "./problems.ts";
import type { Model, ModelInput, Request, Result, Value } from "./types.ts";

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

/** The request of a model that runs elsewhere: name, inputs and record together are its key. */
export function requestFor(
  { name, cardKind, model }: Pick<ModelWork, "name" | "cardKind" | "model">,
  input: Readonly<Record<string, Value>>,
  record: string | null,
): Request {
  const key = canonicalText([name, input, record]);
  return { key, model: name, cardKind, input, record, heavy: model.heavy === true };
}

/** What the model's `run` is given where it is run for a request. */
export function inputOf(request: Request, { takes }: Model, record: DailyRecord | null): ModelInput {
  const results: Record<string, Result> = {};
  for (const name of takes) results[name] = none("it is not given", name);
  for (const [name, value] of Object.entries(request.input)) {
    results[name] = { state: "ready", value, origin: "computed" };
  }
  return { values: request.input, results, cards: {}, record };
}
