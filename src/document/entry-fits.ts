// Whether an entry may stand in a worksheet, said without the checker of whole worksheets, which need not be here for an edit.
// A test holds the two to the same answer.

import { LIMITS } from "./limits.ts";
import { isPlainObject, type Plain, plainCopy } from "./plain.ts";
import type { Entry, Origin } from "./worksheet.ts";

export const ORIGINS = [
  "default",
  "guessed",
  "borrowed",
  "label",
  "measured",
] as const satisfies readonly Origin[];

/** Why an entry's ends do not make a span, or null where there are none or they do. */
export function spanProblem({
  value,
  low,
  high,
}: {
  readonly value: unknown;
  readonly low?: number;
  readonly high?: number;
}): string | null {
  if (low === undefined && high === undefined) return null;
  if (low === undefined || high === undefined)
    return "A number that is not sure has both ends, low and high.";
  if (typeof value !== "number") return "Only a number has a low and a high end.";
  return low <= value && value <= high ? null : "The value lies between low and high.";
}

const isText = (value: Plain | undefined, longest: number): boolean =>
  typeof value === "string" && value.length <= longest;

const isScalar = (value: Plain): boolean =>
  value === null || typeof value === "number" || isText(value, LIMITS.text);

const isPoint = (value: Plain): boolean =>
  Array.isArray(value) && value.length <= LIMITS.point && value.every((one) => typeof one === "number");

function isContent(value: Plain): boolean {
  if (!isPlainObject(value)) return false;
  const { crop, planted, share, until, trained } = value;
  const isTold = isText(crop, LIMITS.title) && isText(planted, LIMITS.title) && typeof share === "number";
  const endsWell = !("until" in value) || isText(until, LIMITS.title);
  return isTold && endsWell && (!("trained" in value) || typeof trained === "boolean");
}

const isValue = (value: Plain): boolean =>
  Array.isArray(value)
    ? value.length <= LIMITS.list && value.every((one) => isScalar(one) || isPoint(one) || isContent(one))
    : isScalar(value);

/** Whether an entry may stand in a worksheet, so that what is saved can be read again. */
export function entryFits(entry: Entry): boolean {
  const copied = plainCopy(entry);
  if (!copied.ok || !isPlainObject(copied.value)) return false;
  const { value, unit, from } = copied.value;
  const endsFit = (["low", "high"] as const).every(
    (end) => !(end in entry) || typeof entry[end] === "number",
  );
  const isFrom = from === undefined || ORIGINS.some((origin) => origin === from);
  const isTold = value !== undefined && isValue(value) && isText(unit, LIMITS.unit);
  return isTold && endsFit && isFrom && spanProblem(entry) === null;
}
