// Whether two values or results are the same to the last bit, so that an unchanged one keeps its object.

import type { Result, Value } from "./types.ts";

type Plain = Readonly<Record<string, unknown>>;

function sameNumbers(a: ArrayLike<number>, b: ArrayLike<number>): boolean {
  if (a.length !== b.length) return false;
  for (let index = 0; index < a.length; index++) if (!Object.is(a[index], b[index])) return false;
  return true;
}

function sameLists(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length === b.length && a.every((item, index) => sameData(item, b[index]));
}

function sameObjects(a: Plain, b: Plain): boolean {
  const keys = Object.keys(a);
  return (
    keys.length === Object.keys(b).length &&
    keys.every((key) => Object.hasOwn(b, key) && sameData(a[key], b[key]))
  );
}

function isSeries(value: object): value is Float64Array | Uint8Array {
  return value instanceof Float64Array || value instanceof Uint8Array;
}

/** Whether two pieces of plain data are the same, series by their elements. */
export function sameData(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return false;
  if (isSeries(a) || isSeries(b))
    return isSeries(a) && isSeries(b) && a.constructor === b.constructor && sameNumbers(a, b);
  if (Array.isArray(a) || Array.isArray(b)) return Array.isArray(a) && Array.isArray(b) && sameLists(a, b);
  return sameObjects(a as Plain, b as Plain);
}

/** Whether two results say the same. */
export function sameResult(a: Result, b: Result): boolean {
  if (a === b) return true;
  if (a.state !== b.state) return false;
  if (a.state === "ready" && b.state === "ready") return a.origin === b.origin && sameData(a.value, b.value);
  return sameData(a, b);
}

/** The place of the first number that is not finite in a value, as words for a reader; null where all are finite. */
export function notFinite(value: Value | unknown): boolean {
  if (typeof value === "number") return !Number.isFinite(value);
  if (typeof value !== "object" || value === null || value instanceof Uint8Array) return false;
  if (value instanceof Float64Array) return value.some((item) => !Number.isFinite(item));
  return Object.values(value).some(notFinite);
}
