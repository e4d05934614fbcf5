// The nearest free place for words over or under their thing, wherever it is.

import { deepest } from "./ground.ts";
import type { LabelBoard, Speaker } from "./label-words.ts";
import type { Anchor } from "./paper.ts";
import type { Box, Words } from "./place.ts";
import type { Block } from "./text-block.ts";

/** From one place that is tried to the next [px]. */
export const STEP = 6;
/** Furthest that words go from where they would like to be [px]. */
const FURTHEST = { over: 54, under: 96 };
/** At least so much of their thing they stand over or under [px]. */
export const TOUCH = 12;
export const HALO = 2;
/** A step aside costs so many up or down. */
const ASIDE_COSTS = 0.6;
/** And each line of the words so many. */
const LINE_COSTS = 3;
const WAYS = [-1, 1] as const;

export type Found = { readonly block: Block; readonly box: Box; readonly cost: number };

/** The first free box up or down from the anchor at one place along the row, if it costs less than so much. */
export function freeTier(
  block: Block,
  left: number,
  anchor: Anchor,
  board: LabelBoard,
  most: number,
): Found | null {
  const { width, height } = block;
  const isOver = anchor.side === "over";
  const aside = Math.abs(left + width / 2 - anchor.middle) * ASIDE_COSTS + block.lines.length * LINE_COSTS;
  if (aside >= most) return null;
  const foot = isOver ? 0 : deepest(board.ground, left, left + width) + 6;
  const from = isOver ? anchor.from - height : Math.max(anchor.from, foot);
  const onward = isOver ? -STEP : STEP;
  let cost = aside + (isOver ? 0 : (from - anchor.from) / 4);
  let edge = isOver ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY;
  for (let away = 0; away <= FURTHEST[anchor.side] && cost < most; away += STEP, cost += STEP) {
    const box = { x: left, y: from + (onward * away) / STEP, width, height };
    // What stood in the way a step before may do so still.
    if (!isClear(box, edge, isOver)) continue;
    const next = board.room.edge(withHalo(box), !isOver);
    if (next === null) return { block, box, cost };
    edge = next;
  }
  return null;
}

export const withHalo = ({ x, y, width, height }: Box): Box => ({
  x: x - HALO,
  y: y - HALO,
  width: width + 2 * HALO,
  height: height + 2 * HALO,
});

const isClear = ({ y, height }: Box, edge: number, isOver: boolean): boolean =>
  isOver ? y + height + HALO < edge : y - HALO >= edge;

/**
 * The nearest free place for a block, if it is nearer than what was found before: along a row from the middle outwards,
 * as far as the words still touch their thing's width and their middle is nearer to it than to any other.
 */
function nearest(
  block: Block,
  anchor: Anchor,
  speaker: Speaker,
  board: LabelBoard,
  best: Found | null,
): Found | null {
  const { middle, left, right } = anchor;
  const reach = Math.max(0, (right - left + block.width) / 2 - TOUCH);
  const most = board.width - block.width - 4;
  const [first, last] = speaker.isOpen ? [0, board.width] : speaker.own;
  const tried: Record<-1 | 1, number> = { [-1]: Number.NaN, 1: Number.NaN };
  let found = best;
  for (let aside = 0; aside <= reach; aside += STEP)
    for (const way of WAYS) {
      const at = Math.max(4, Math.min(middle + way * aside - block.width / 2, most));
      // Beyond the paper's edges the same place would be tried again and again.
      if (at === tried[way]) continue;
      tried[way] = at;
      const centre = at + block.width / 2;
      if (centre < first || centre > last) continue;
      found = freeTier(block, at, anchor, board, found?.cost ?? Number.POSITIVE_INFINITY) ?? found;
    }
  return found;
}

export type Said = Found & { readonly anchor: Anchor };

/** The nearest place for some words at the first anchor that has one. */
export function placed(
  speaker: Speaker,
  words: readonly Words[],
  anchors: readonly Anchor[],
  board: LabelBoard,
): Said | null {
  for (const anchor of anchors) {
    let found: Found | null = null;
    for (const block of speaker.blocks(words, anchor)) found = nearest(block, anchor, speaker, board, found);
    if (found) return { ...found, anchor };
  }
  return null;
}
