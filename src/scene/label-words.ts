// What may be said beside a thing, from the most to the least, and in what blocks; `labels.ts` finds a place for it.

import type { Ground } from "./ground.ts";
import type { Anchor } from "./paper.ts";
import type { LabelWay, Part, Words } from "./place.ts";
import type { Room } from "./room.ts";
import { type Block, blockOf, type Type, textWidth } from "./text-block.ts";

export type LabelBoard = {
  readonly room: Room;
  readonly width: number;
  readonly ground: Ground;
  readonly type: Type;
  /** Only the open part, levels and trouble are labelled. */
  readonly small: boolean;
  readonly open: string | null;
  /** Where words of a part stood before, and are to stay; null: wherever they are best. */
  readonly ways?: ReadonlyMap<string, readonly LabelWay[]> | null;
  /** There are so many of a kind that each says less. */
  readonly crowded?: true;
};

export type Wanted = { readonly part: Part; readonly anchors: readonly Anchor[] };

/** Widths that words are tried in [px]; the first is their thing's own. */
const ROOMS = [96, 150, 230];

/** What may be said, from the most to the least. */
function sayings(part: Part, board: LabelBoard): readonly (readonly Words[])[] {
  const whole = (words: readonly Words[]): readonly Words[] =>
    words.map((one): Words => ({ ...one, whole: true, most: 2 }));
  const [title, ...facts] = part.words.filter(({ text }) => text !== part.trouble);
  const fact = facts[0];
  const briefs = facts.flatMap((one): readonly Words[] =>
    one.live !== undefined
      ? [{ ...one, text: one.live }]
      : one.brief !== undefined
        ? [{ text: one.brief, tone: one.tone }]
        : [],
  );
  const isOpen = board.open === part.id;
  const brief = briefs.slice(0, 1);
  const least = facts.flatMap(({ least: text, tone }): readonly Words[] => (text ? [{ text, tone }] : []));
  // What is in trouble is said before its name.
  const first = fact?.tone === "trouble" ? [brief] : [];
  const named = title ? [[title, ...(fact ? [fact] : [])], [title, ...brief], ...first, [title]] : [];
  const all = board.small
    ? [...(isOpen && title ? [[title, ...brief], [title]] : []), brief, least]
    : [...named, brief, least];
  return all.filter((words) => words.length > 0).map(whole);
}

const saysAll = (block: Block, words: readonly Words[]): boolean =>
  words.every(({ text }) => block.lines.some((line) => text.includes(line.text)));

/** The same words in narrower and wider blocks, none of them cut. */
function blocksOf(words: readonly Words[], anchor: Anchor, board: LabelBoard): readonly Block[] {
  const own = Math.max(56, anchor.right - anchor.left);
  const longest = Math.max(...words.map((one) => textWidth(one.text, board.type.size, one.bold)));
  const rooms = [...new Set([own, ...ROOMS, longest])].filter((room) => room <= board.width - 8);
  const seen = new Set<string>();
  return rooms
    .map((room) => blockOf(words, room, board.type))
    .filter((block) => {
      const key = block.lines.map(({ text }) => text).join("\n");
      if (seen.has(key) || !saysAll(block, words)) return false;
      seen.add(key);
      return true;
    });
}

/** A part with all that may be said of it, and what that takes: asked for over and over while the places are sought. */
export type Speaker = Wanted & {
  /** Where else a name may stand that must be read. */
  readonly spare: readonly Anchor[];
  readonly sayings: readonly (readonly Words[])[];
  readonly blocks: (words: readonly Words[], anchor: Anchor) => readonly Block[];
};

export function speakerOf(wanted: Wanted, board: LabelBoard): Speaker {
  const known = new Map<readonly Words[], Map<Anchor, readonly Block[]>>();
  const blocks = (words: readonly Words[], anchor: Anchor): readonly Block[] => {
    const beside = known.get(words) ?? new Map<Anchor, readonly Block[]>();
    known.set(words, beside);
    const found = beside.get(anchor) ?? blocksOf(words, anchor, board);
    beside.set(anchor, found);
    return found;
  };
  const spare = wanted.anchors.filter((anchor) => anchor.spare);
  const anchors = wanted.anchors.filter((anchor) => !anchor.spare);
  return { ...wanted, anchors, spare, sayings: sayings(wanted.part, board), blocks };
}
