// How the parts hang together, for whoever goes from one to the next: what stands before and after a part, and all of
// them in a row as water and power go.

import type { Edge, EdgeKind } from "../network/network.ts";
import { type Asked, networkOfSheet } from "./asked.ts";

/** Parts on one side of a part, and what ties it to them. */
export type Tie = { readonly words: string; readonly ids: readonly string[] };

export type Neighbours = { readonly before: readonly Tie[]; readonly after: readonly Tie[] };

/** What a part says of one that stands before it, and of one after. */
const WORDS: Readonly<Record<EdgeKind, readonly [before: string, after: string]>> = {
  catches: ["filled by", "fills"],
  feeds: ["filled by", "feeds"],
  spills: ["filled by", "spills to"],
  draws: ["draws from", "feeds"],
  powers: ["powered by", "powers"],
  charges: ["charged by", "charges"],
  waters: ["watered by", "waters"],
};

type Hop = { readonly from: string; readonly to: string; readonly kind: EdgeKind };

/** An edge as steps from card to card: a line stands between the tanks that it joins. */
function hopsOf({ by, from, to, kind }: Edge): readonly Hop[] {
  const ends = to === null ? [from] : [from, to];
  const cards = ends.includes(by) ? ends : [from, by, ...(to === null ? [] : [to])];
  return cards.slice(1).map((card, at) => ({ from: cards[at] as string, to: card, kind }));
}

const hopsOfSheet = (asked: Asked): readonly Hop[] => networkOfSheet(asked).edges.flatMap(hopsOf);

function tiesOf(hops: readonly Hop[], side: 0 | 1): readonly Tie[] {
  const ties = new Map<string, string[]>();
  for (const { from, to, kind } of hops) {
    const words = WORDS[kind][side];
    const id = side === 0 ? from : to;
    const ids = ties.get(words) ?? [];
    if (!ids.includes(id)) ties.set(words, [...ids, id]);
  }
  return [...ties].map(([words, ids]) => ({ words, ids }));
}

/** What stands before a part and what after it. */
export function neighboursOf(asked: Asked, card: string): Neighbours {
  const hops = hopsOfSheet(asked);
  return {
    before: tiesOf(
      hops.filter(({ to }) => to === card),
      0,
    ),
    after: tiesOf(
      hops.filter(({ from }) => from === card),
      1,
    ),
  };
}

/**
 * All cards in one row, each behind those before it; where that leaves a choice, and on a ring, as they are given.
 *
 * @param ids of all cards, in the order of the page
 */
export function partsInRow(asked: Asked, ids: readonly string[]): readonly string[] {
  const hops = hopsOfSheet(asked);
  const row: string[] = [];
  const left = new Set(ids);
  const isNext = (id: string): boolean =>
    !hops.some(({ from, to }) => to === id && from !== id && left.has(from));
  while (left.size > 0) {
    const next = [...left].find(isNext) ?? ([...left][0] as string);
    left.delete(next);
    row.push(next);
  }
  return row;
}
