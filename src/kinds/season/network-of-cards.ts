// The network of the worksheet, put together once from the links of all cards, as each room says what they tie together.

import { numberIn, readyList, readyWord, whyMissing } from "../../graph/readers.ts";
import type { CardView, Model, ModelInput } from "../../graph/types.ts";
import {
  type Edge,
  type LineHeights,
  type Network,
  type NetworkNode,
  networkOf,
  withDryJoints,
} from "../../network/network.ts";
import type { Tie } from "../season-share.ts";
import type { Shares } from "./input.ts";

const rowsOfTie = ({ from, to, passes }: Tie): readonly string[] => [
  ...(from === "itself" ? [] : from),
  ...(to === "itself" ? [] : to),
  ...(passes ? [passes.blocked] : []),
  ...(passes?.heights ? [passes.heights.over, passes.heights.brim] : []),
];

/** Link rows of every kind that ties anything together. */
function linkRows(shares: Shares): Record<string, readonly string[]> {
  return Object.fromEntries(
    Object.entries(shares).map(([kind, { ties = [] }]) => [kind, [...new Set(ties.flatMap(rowsOfTie))]]),
  );
}

/** Ids at an end of a tie: none where nothing is linked; several where a list is. */
function endsOf(card: CardView, end: Tie["from"]): readonly string[] {
  if (end === "itself") return [card.id];
  for (const row of end) {
    const listed = readyList(card.results, row).map(String);
    const word = readyWord(card.results, row);
    if (listed.length > 0 || word !== "") return listed.length > 0 ? listed : [word];
  }
  return [];
}

function whyStopped({ results }: CardView, { passes }: Tie): string | null {
  if (!passes) return null;
  const blocked = readyWord(results, passes.blocked);
  if (blocked) return blocked;
  return passes.heights ? (whyMissing(results, passes.heights.over)?.reason ?? null) : null;
}

function edgesOf(card: CardView, tie: Tie): readonly Edge[] {
  const stopped = whyStopped(card, tie);
  const ends = endsOf(card, tie.to);
  // Only water from a line may run out over the ground.
  const targets: readonly (string | null)[] = ends.length === 0 && tie.kind === "feeds" ? [null] : ends;
  return endsOf(card, tie.from).flatMap((from) =>
    targets.map((to) => ({ kind: tie.kind, by: card.id, from, to, stopped })),
  );
}

function heightsOf(card: CardView, { passes }: Tie): readonly (readonly [string, LineHeights])[] {
  if (!passes?.heights) return [];
  const over = numberIn(card.results[passes.heights.over]);
  return over === null ? [] : [[card.id, { over, brim: numberIn(card.results[passes.heights.brim]) }]];
}

/** The network of all cards surveyed. */
function networkFrom(cards: ModelInput["cards"], shares: Shares): Network {
  const nodes: NetworkNode[] = [];
  const edges: Edge[] = [];
  const heights: (readonly [string, LineHeights])[] = [];
  for (const [kind, { role, ties = [] }] of Object.entries(shares)) {
    for (const card of cards[kind] ?? []) {
      if (role) nodes.push({ id: card.id, role });
      edges.push(...ties.flatMap((tie) => edgesOf(card, tie)));
      heights.push(...ties.flatMap((tie) => heightsOf(card, tie)));
    }
  }
  return withDryJoints(networkOf(nodes, edges), new Map(heights));
}

export const linking = (shares: Shares): Model => ({
  name: "linking",
  takes: [],
  surveys: linkRows(shares),
  tolerant: true,
  outputs: ["network"],
  run: (input) => ({ network: { value: networkFrom(input.cards, shares) } }),
});
