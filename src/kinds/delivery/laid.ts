// The hoses of a place that is laid out from a few counts: one at each tank that beds are watered from.

import { type LaidPart, numbered, pumpedFrom, type Wish } from "../lay-out.ts";
import { LAID_PUMP } from "../pump/laid.ts";

export function laidDeliveries(wish: Wish): readonly LaidPart[] {
  return pumpedFrom(wish).map((from, at) => ({
    key: `pump${at}`,
    title: numbered("Pump and hose", at),
    givens: {},
    links: { from, pump: LAID_PUMP },
  }));
}
