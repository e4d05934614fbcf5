// Where a number is from, once another one stands in its place.

import { fromSi, toSi } from "../units/unit.ts";
import { sameData } from "./same.ts";
import type { Entry, Origin } from "./worksheet.ts";

/** What a change of unit leaves of a number that was kept. */
const DUST = 1e-9;

function isSame(one: Entry, other: Entry): boolean {
  if (typeof one.value !== "number" || typeof other.value !== "number")
    return sameData(one.value, other.value);
  const [unit, otherUnit] = [one.unit || "1", other.unit || "1"];
  const value = fromSi(toSi(other.value, otherUnit), unit);
  return Math.abs(value - one.value) <= Math.abs(one.value) * DUST;
}

/**
 * Where a number that is typed or turned is from: of the one that was read off a label or measured no other number is; a
 * guess stays a guess; what was borrowed or usual is the grower's own.
 *
 * @param stood what stands there now, then what stood there before: back at that, it is from there again
 */
function stillFrom(next: Entry, stood: readonly (Entry | null | undefined)[]): Origin | undefined {
  if (stood[0]?.from === "guessed") return "guessed";
  const told = stood.find((of) => (of?.from === "label" || of?.from === "measured") && isSame(of, next));
  return told?.from;
}

/** A number that is typed or turned, with where it is from. */
export function withFrom(next: Entry, stood: readonly (Entry | null | undefined)[]): Entry {
  const from = stillFrom(next, stood);
  return from === undefined ? next : { ...next, from };
}
