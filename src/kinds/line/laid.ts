// The lines of a place that is laid out from a few counts: one down to each small tank.

import { bigTank, type LaidPart, numbered, times, type Wish } from "../lay-out.ts";

export function laidLines(wish: Wish): readonly LaidPart[] {
  if (wish.tanks === 0) return [];
  return times(wish.small, (at) => ({
    key: `line${at}`,
    title: numbered("Hose down", at),
    givens: {},
    links: { from: bigTank(wish, at), to: `small${at}` },
  }));
}
