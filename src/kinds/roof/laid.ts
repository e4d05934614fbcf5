// The roofs of a place that is laid out from a few counts.

import { bigTank, type LaidPart, numbered, times, type Wish } from "../lay-out.ts";

export function laidRoofs(wish: Wish): readonly LaidPart[] {
  const target = (at: number) => (wish.tanks > 0 ? bigTank(wish, at) : "small0");
  return times(wish.roofs, (at) => ({
    key: `roof${at}`,
    title: numbered("Roof", at),
    givens: {},
    links: wish.tanks + wish.small > 0 ? { drains_to: target(at) } : {},
  }));
}
