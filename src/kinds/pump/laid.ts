// The pump of a place that is laid out from a few counts: one that is carried about, by its label until a bucket is timed.

import { type LaidPart, pumpedFrom, type Wish } from "../lay-out.ts";

/** Its key; those of hoses are numbered. */
export const LAID_PUMP = "the_pump";

export function laidPumps(wish: Wish): readonly LaidPart[] {
  if (pumpedFrom(wish).length === 0) return [];
  return [{ key: LAID_PUMP, title: "Pump", givens: {}, links: { powered_by: "battery" } }];
}
