// Failed and none results, and the sentences in them. No card titles: a title changes without changing a result.

import type { Problem, ProblemCode, QuantityId, Result } from "./types.ts";

/** A failed result at a quantity. */
export function failed(code: ProblemCode, at: QuantityId, text: string, more: Partial<Problem> = {}): Result {
  return { state: "failed", problem: { code, at, text, ...more } };
}

/** A result that does not apply, with the reason. */
export function none(reason: string, cause: QuantityId): Result {
  return { state: "none", reason, cause };
}

/** A given that must have a value and has none. */
export function missing(label: string, at: QuantityId): Result {
  return failed("missing", at, `${label}: give a value.`);
}

/** What a reader of a failed quantity says: the label of the first cause and its own sentence. */
export function upstreamText(causeLabel: string | null, cause: Problem): string {
  return causeLabel === null || cause.text.startsWith(causeLabel)
    ? cause.text
    : `${causeLabel}: ${cause.text}`;
}

/** The reason in what a model or a formula threw. */
export function reasonOf(error: unknown): string {
  const text = error instanceof Error ? error.message : String(error);
  return text === "" ? "This could not be worked out." : text;
}
