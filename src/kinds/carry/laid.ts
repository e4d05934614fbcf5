// The cans of a place that is laid out from a few counts.

import { carriedFrom, type LaidPart, numbered, type Wish } from "../lay-out.ts";

export function laidCans(wish: Wish): readonly LaidPart[] {
  return carriedFrom(wish).map((from, at) => ({
    key: `cans${at}`,
    title: numbered("Cans", at),
    givens: {},
    links: { from },
  }));
}
