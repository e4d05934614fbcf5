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
};

export type Wanted = { readonly part: Part; readonly anchors: readonly Anchor[] };

/** Widths that words are tried in [px]; the first is their thing's own. */
const ROOMS = [96, 150, 230];

/** How a figure is said: in full, in short, at the least. Things that are alike all say theirs in the same form. */
export const FORMS = [0, 1, 2] as const;
export type Form = (typeof FORMS)[number];

/** One way to say something beside a thing: its name, its figure, or both. */
export type Saying = {
  readonly words: readonly Words[];
  readonly named: boolean;
  /** The form of its figure; null: it has none. */
  readonly form: Form | null;
  /** The name is cut: of the open part alone, where it would not stand beside its figure otherwise. */
  readonly cut?: true;
};

/** The figure beside a part in each form; nothing where it has none. */
function figuresOf(part: Part, small: boolean): readonly Words[] {
  const [fact] = part.words.slice(1).filter(({ text }) => text !== part.trouble);
  if (!fact) return [];
  const { live, brief, least, tone } = fact;
  if (live !== undefined) {
    const short = { ...fact, text: live };
    return small ? [short] : [{ ...fact, long: true }, short];
  }
  const shorter = [brief, least].flatMap((text): readonly Words[] =>
    text === undefined ? [] : [{ text, tone }],
  );
  return small && shorter.length > 0 ? shorter : [fact, ...shorter];
}

/** What may be said, in every form. */
function sayingsOf(part: Part, board: LabelBoard): readonly Saying[] {
  const [title] = part.words;
  const figures = figuresOf(part, board.small);
  const whole = (words: readonly (Words | undefined)[]): readonly Words[] =>
    words.flatMap((one) => (one ? [{ ...one, whole: true as const, most: one.bold ? 3 : 2 }] : []));
  const isNamed = title !== undefined && (!board.small || board.open === part.id);
  // On a phone levels and trouble are said of every part, anything else of none but the open one.
  const [fact] = part.words.slice(1).filter(({ text }) => text !== part.trouble);
  const mayStandAlone = fact?.live !== undefined || fact?.brief !== undefined;
  return [
    ...figures.flatMap((figure, at): readonly Saying[] => {
      const form = FORMS[at] ?? 2;
      return [
        ...(isNamed ? [{ words: whole([title, figure]), named: true, form }] : []),
        ...(board.open === part.id && title
          ? [{ words: [{ ...title, most: 1 }, ...whole([figure])], named: true, form, cut: true as const }]
          : []),
        ...(mayStandAlone ? [{ words: whole([{ ...figure, most: 1 }]), named: false, form }] : []),
      ];
    }),
    ...(isNamed ? [{ words: whole([title]), named: true, form: null }] : []),
  ];
}

const saysAll = (block: Block, words: readonly Words[]): boolean =>
  words.every(({ text, whole }) => !whole || block.lines.some((line) => text.includes(line.text)));

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
  /** Where else words may stand that must be read. */
  readonly spare: readonly Anchor[];
  readonly isOpen: boolean;
  readonly sayings: readonly Saying[];
  readonly hasFigure: boolean;
  /** Forms of its figure that there are. */
  readonly forms: number;
  /** Between which x the middle of its words must stand, so that they are nearer to it than to any other thing. */
  readonly own: readonly [from: number, to: number];
  readonly blocks: (words: readonly Words[], anchor: Anchor) => readonly Block[];
};

/** From halfway to the thing on its left to halfway to the one on its right; what stands in the same place counts for neither. */
function ownRoom({ anchors: [anchor] }: Wanted, all: readonly Wanted[]): readonly [number, number] {
  if (!anchor) return [0, 0];
  let [before, after] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (const { anchors } of all) {
    const [other] = anchors;
    if (other && other.right <= anchor.left) before = Math.max(before, other.right);
    if (other && other.left >= anchor.right) after = Math.min(after, other.left);
  }
  return [(before + anchor.left) / 2, (after + anchor.right) / 2];
}

export function speakerOf(wanted: Wanted, all: readonly Wanted[], board: LabelBoard): Speaker {
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
  const sayings = sayingsOf(wanted.part, board);
  const forms = new Set(sayings.flatMap(({ form }) => form ?? [])).size;
  const isOpen = wanted.part.id === board.open;
  const own = ownRoom(wanted, all);
  return { ...wanted, anchors, spare, isOpen, sayings, hasFigure: forms > 0, forms, own, blocks };
}

/** What it may say where figures are said in a form, or in the last form that it has; the name alone comes last. */
export function sayingsIn(
  { sayings, forms }: Speaker,
  form: Form,
): readonly (Saying & { readonly at: number })[] {
  const said = Math.min(form, forms - 1);
  return sayings.flatMap((one, at) => (one.form === null || one.form === said ? [{ ...one, at }] : []));
}
