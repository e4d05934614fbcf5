// The only readers of results: of one, of a card's by name, and of what a model takes; so that no one else tells states apart.

import type { DailyRecord } from "../rainfall/record.ts";
import type { ModelInput, Result, Value } from "./types.ts";

/** Results of one card by row name. */
export type CardResults = Readonly<Record<string, Result>>;

/** What a result holds; null where it is not ready. */
export const valueIn = (result: Result | undefined): Value =>
  result?.state === "ready" ? result.value : null;

/** Whether a result holds its value now. */
export const isReady = (result: Result | undefined): boolean => result?.state === "ready";

/** What a result holds, or held last while a new one is worked out; null where there is nothing. */
export const shownIn = (result: Result | undefined): Value =>
  result?.state === "pending" ? result.last : valueIn(result);

/** The number a result holds, or null where it holds none. */
export function numberIn(result: Result | undefined): number | null {
  const value = valueIn(result);
  return typeof value === "number" ? value : null;
}

/** The word, id, date or text a result holds, or "" where it holds none. */
export function wordIn(result: Result | undefined): string {
  const value = valueIn(result);
  return typeof value === "string" ? value : "";
}

/** The list a result holds, or an empty one. */
function listIn(result: Result | undefined): readonly unknown[] {
  const value = valueIn(result);
  return Array.isArray(value) ? value : [];
}

/** Where the trouble of a failed result began; null where it did not fail. */
export function causeOf(result: Result | undefined): string | null {
  return result?.state === "failed" ? (result.problem.cause ?? result.problem.at) : null;
}

/** Why a part cannot be made, and the quantity at which the trouble began, where one is to blame. */
export type Missing = { readonly reason: string; readonly cause?: string };

/** Why a row that must be ready is not; null where it is. */
export function whyMissing(results: CardResults, name: string): Missing | null {
  const result = results[name];
  if (result?.state === "ready") return null;
  if (result?.state === "none") return { reason: result.reason };
  if (result?.state !== "failed") return { reason: `${name.replaceAll("_", " ")} is not known` };
  return { reason: result.problem.text, cause: causeOf(result) ?? result.problem.at };
}

/** The first row of a card that is missing, in words; null where all are ready. */
export function firstMissing(results: CardResults, names: readonly string[]): Missing | null {
  for (const name of names) {
    const missing = whyMissing(results, name);
    if (missing) return missing;
  }
  return null;
}

/** A number of a card that must be ready. */
export function readyNumber(results: CardResults, name: string): number {
  const value = numberIn(results[name]);
  if (value === null) throw new Error(`${name} is not a number.`);
  return value;
}

/** A word of a card, or "" where there is none. */
export const readyWord = (results: CardResults, name: string): string => wordIn(results[name]);

/** A list of a card, or an empty one. */
export const readyList = (results: CardResults, name: string): readonly unknown[] => listIn(results[name]);

/** A number among the ready values. */
export function numberOf(input: ModelInput, name: string): number {
  const value = input.values[name];
  if (typeof value !== "number") throw new Error(`${name} is not a number.`);
  return value;
}

/** A number, or null where it is none, failed or pending. */
export const numberOrNull = (input: ModelInput, name: string): number | null => numberIn(input.results[name]);

/** A word, id, date or text. */
export function wordOf(input: ModelInput, name: string): string {
  const value = input.values[name];
  if (typeof value !== "string") throw new Error(`${name} is not a word.`);
  return value;
}

/** A word, id or date, or null where there is none. */
export const wordOrNull = (input: ModelInput, name: string): string | null =>
  wordIn(input.results[name]) || null;

/** Said wherever a record that is named has not come along. */
export const NO_RECORD = "The rain record is not here.";

/** The record that the model asked for; the graph does not run it without. */
export function recordOf(input: ModelInput): DailyRecord {
  if (!input.record) throw new Error(NO_RECORD);
  return input.record;
}
