// The battery of a place that is laid out from a few counts: one, where there is a pump.

import { type LaidPart, pumpedFrom, type Wish } from "../lay-out.ts";

export function laidBatteries(wish: Wish): readonly LaidPart[] {
  return pumpedFrom(wish).length > 0 ? [{ key: "battery", title: "Battery", givens: {}, links: {} }] : [];
}
