// Words beside things, once everything is drawn: each takes the nearest place where no line, no thing and no other word
// is. Where there is none it says less, and at last nothing: the disc and the list still say it.

import { deepest } from "./ground.ts";
import { type LabelBoard, type Speaker, speakerOf, type Wanted } from "./label-words.ts";
import { type Anchor, round } from "./paper.ts";
import type { Box, Label, LabelWay, Words } from "./place.ts";
import type { Block } from "./text-block.ts";

const STEP = 6;
/** Furthest that words go from where they would like to be [px]. */
const FURTHEST = { over: 54, under: 96 };
/** At least so much of their thing they stand over or under [px]. */
const TOUCH = 12;
const HALO = 2;
/** A step aside costs so many up or down; beside others of its kind, whose room it would take, more. */
const ASIDE_COSTS = { alone: 0.6, crowded: 5 };
const WAYS = [-1, 1] as const;

type Found = { readonly block: Block; readonly box: Box; readonly cost: number };

/** The first free box up or down from the anchor at one place along the row, if it costs less than so much. */
function freeTier(block: Block, left: number, anchor: Anchor, board: LabelBoard, most: number): Found | null {
  const { width, height } = block;
  const isOver = anchor.side === "over";
  const aside =
    Math.abs(left + width / 2 - anchor.middle) * (board.crowded ? ASIDE_COSTS.crowded : ASIDE_COSTS.alone);
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

const withHalo = ({ x, y, width, height }: Box): Box => ({
  x: x - HALO,
  y: y - HALO,
  width: width + 2 * HALO,
  height: height + 2 * HALO,
});

const isClear = ({ y, height }: Box, edge: number, isOver: boolean): boolean =>
  isOver ? y + height + HALO < edge : y - HALO >= edge;

/**
 * The nearest free place for a block, if it is nearer than what was found before: along a row from the middle outwards,
 * as far as the words still touch their thing's width.
 */
function nearest(block: Block, anchor: Anchor, board: LabelBoard, best: Found | null): Found | null {
  const { middle, left, right } = anchor;
  const reach = Math.max(0, (right - left + block.width) / 2 - TOUCH);
  const most = board.width - block.width - 4;
  const tried: Record<-1 | 1, number> = { [-1]: Number.NaN, 1: Number.NaN };
  let found = best;
  for (let aside = 0; aside <= reach; aside += STEP)
    for (const way of WAYS) {
      const at = Math.max(4, Math.min(middle + way * aside - block.width / 2, most));
      // Beyond the paper's edges the same place would be tried again and again.
      if (at === tried[way]) continue;
      tried[way] = at;
      found = freeTier(block, at, anchor, board, found?.cost ?? Number.POSITIVE_INFINITY) ?? found;
    }
  return found;
}

type Said = Found & { readonly anchor: Anchor };

/** The nearest place for some words at the first anchor that has one. */
function placed(
  { blocks }: Speaker,
  words: readonly Words[],
  anchors: readonly Anchor[],
  board: LabelBoard,
): Said | null {
  for (const anchor of anchors) {
    let found: Found | null = null;
    for (const block of blocks(words, anchor)) found = nearest(block, anchor, board, found);
    if (found) return { ...found, anchor };
  }
  return null;
}

/** @param from how much less is said than could be: the first of its sayings that is tried */
function labelOf(speaker: Speaker, board: LabelBoard, from = 0): Label | null {
  const { part, anchors, sayings: all } = speaker;
  for (const [index, words] of all.entries()) {
    if (index < Math.min(from, all.length - 1)) continue;
    // Where little is said, it is said in the ground, out of the way of everything.
    const hasName = words.some(({ bold }) => bold);
    const found = placed(speaker, words, hasName ? anchors : [...anchors].reverse(), board);
    if (!found) continue;
    return labelFound(part.id, index, found, board);
  }
  return null;
}

function labelFound(of: string, saying: number, { block, box, anchor }: Said, board: LabelBoard): Label {
  board.room.take(box, HALO);
  const middle = round(box.x + box.width / 2);
  const under = anchor.side === "under";
  return {
    of,
    box,
    words: block.lines.map((line) => ({ ...line, x: middle, y: round(box.y + line.y) })),
    under,
    way: {
      saying,
      lines: block.lines.length,
      under,
      aside: box.x + box.width / 2 - anchor.middle,
      away: box.y - anchor.from,
    },
  };
}

/** The same saying where it stood beside its thing before, in as many lines; null where something has come there. */
function labelKept(speaker: Speaker, way: LabelWay, board: LabelBoard): Label | null {
  const { part, sayings: all, blocks } = speaker;
  const anchors = [...speaker.anchors, ...speaker.spare];
  const words = all[way.saying];
  const anchor = anchors.find(({ side }) => (side === "under") === way.under);
  if (!words || !anchor) return null;
  const block = blocks(words, anchor).find(({ lines }) => lines.length === way.lines);
  if (!block) return null;
  const { width, height } = block;
  const box = { x: anchor.middle + way.aside - width / 2, y: anchor.from + way.away, width, height };
  if (board.room.edge(withHalo(box), true) !== null) return null;
  return labelFound(part.id, way.saying, { block, box, cost: 0, anchor }, board);
}

/** While something moves: each where it stood, else nearby; what was not labelled is not labelled now. */
function labelsKept(
  wanted: readonly Speaker[],
  ways: ReadonlyMap<string, readonly LabelWay[]>,
  board: LabelBoard,
): readonly Label[] {
  const known = wanted.flatMap((one) => (ways.get(one.part.id) ?? []).map((way) => ({ one, way })));
  const kept = known.flatMap(({ one, way }) => labelKept(one, way, board) ?? []);
  const stand = new Set(kept.map(({ of }) => of));
  const others = known.filter(({ one }) => !stand.has(one.part.id));
  return [...kept, ...others.flatMap(({ one, way }) => labelOf(one, board, way.saying) ?? [])];
}

const isNamed = ({ words }: Label): boolean => words.some(({ bold }) => bold);

const wrongOf = ({ part }: Wanted): number => Math.max(0, ...part.words.map(({ wrong }) => wrong ?? 0));

/** So few of a kind are all named where there is room. */
const FEW = 3;

/** Of parts that are alike those whose name must be read: of many whatever is in trouble, and the worst of the rest. */
function toName(group: readonly Speaker[]): readonly Speaker[] {
  if (group.length <= FEW) return group;
  const troubled = group.filter(({ part }) => part.trouble !== null);
  const most = Math.max(0, ...group.map(wrongOf));
  const worst = most > 0 ? group.filter((one) => wrongOf(one) === most && !troubled.includes(one)) : [];
  return [...troubled, ...worst.slice(0, 1)];
}

/** The name over what must be named and is not, else under its figure, once all else has its words. */
function namesBeside(
  these: readonly Speaker[],
  labels: readonly Label[],
  board: LabelBoard,
): readonly Label[] {
  if (board.small) return [];
  const named = new Set(labels.filter(isNamed).map(({ of }) => of));
  return these.flatMap((one): readonly Label[] => {
    if (named.has(one.part.id)) return [];
    const saying = one.sayings.findIndex((words) => words.length === 1 && words[0]?.bold === true);
    const words = one.sayings[saying];
    const found = words ? placed(one, words, [...one.spare, ...one.anchors], board) : null;
    return found ? [labelFound(one.part.id, saying, found, board)] : [];
  });
}

const MOST_SAYINGS = 6;
/** A word beside each of them is worth more than names beside some. */
const NAME_COUNTS = 0.25;

/**
 * The last saying to begin with at which the labels come out the same as at this one: where none of them says so much as
 * could be said, saying less changes nothing until it forbids what one of them does say.
 */
function sameUntil(labels: readonly Label[], speakers: readonly Speaker[], from: number): number {
  const last = new Map(speakers.map(({ part, sayings: all }) => [part.id, all.length - 1]));
  const bound = labels.flatMap(({ of, way }) => (way.saying < (last.get(of) ?? 0) ? [way.saying] : []));
  return Math.max(from, Math.min(MOST_SAYINGS, ...bound));
}

/**
 * The labels of parts that are alike. Where the first ones would take the room of the others, all say less: a figure
 * beside each bed tells more than the names of three out of eight.
 */
function alike(wanted: readonly Speaker[], board: LabelBoard): readonly Label[] {
  if (wanted.length === 0) return [];
  const takeBack = board.room.kept();
  const said = (from: number): readonly Label[] => wanted.flatMap((one) => labelOf(one, board, from) ?? []);
  const countOf = (labels: readonly Label[]): number =>
    labels.reduce((sum, { words }) => sum + 1 + (words.some(({ bold }) => bold) ? NAME_COUNTS : 0), 0);
  let labels: readonly Label[] = [];
  let best = { from: 0, count: 0 };
  for (let from = 0; from < MOST_SAYINGS; from = sameUntil(labels, wanted, from) + 1) {
    labels = said(from);
    if (labels.length === wanted.length && best.count < countOf(labels)) return labels;
    if (best.count < countOf(labels)) best = { from, count: countOf(labels) };
    takeBack();
  }
  return said(best.from);
}

/** The labels of groups of parts that are alike; those that come first choose first, the open one before all. */
export function placeLabels(groups: readonly (readonly Wanted[])[], board: LabelBoard): readonly Label[] {
  const isOpen = ({ part }: Wanted): boolean => part.id === board.open;
  const speakers = groups.map((group) => group.map((one) => speakerOf(one, board)));
  if (board.ways) return labelsKept(speakers.flat(), board.ways, board);
  const open = speakers.flat().filter(isOpen);
  const others = speakers.map((group) => group.filter((one) => !isOpen(one)));
  const labels = [
    ...open.flatMap((one) => labelOf(one, board) ?? []),
    ...others.flatMap((group) => alike(group, board)),
  ];
  return [...labels, ...namesBeside([...open, ...others.flatMap(toName)], labels, board)];
}
