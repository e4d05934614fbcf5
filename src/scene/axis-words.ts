// The words under the axis of the number in hand, none on another.

import { textWidth } from "./text-block.ts";

/** Words under the axis; the first of them choose their room first. */
export type AxisWord = { readonly place: number; readonly text: string; readonly look: string };

export type PlacedWord = AxisWord & { readonly left: number; readonly width: number; readonly row: number };

const GAP = 8;
/** Between words to choose among, so that two do not read as one [px]. */
const WORDS_GAP = 12;
/** A word that steps aside ends no further from its place [px]. */
const NEAR = 20;

/** Where a word has room: about its place, else beside what stands there, as long as it still reaches its place. */
function freeLeft(
  placed: readonly PlacedWord[],
  middle: number,
  wide: number,
  width: number,
  gap: number,
): number | null {
  const inPaper = (left: number) => Math.round(Math.max(0, Math.min(width - wide, left)));
  const isFree = (left: number) =>
    placed.every((other) => left >= other.left + other.width + gap || left + wide + gap <= other.left);
  const about = inPaper(middle - wide / 2);
  const beside = placed.flatMap((other) => [other.left - gap - wide, other.left + other.width + gap]);
  const reaches = (left: number) =>
    left === inPaper(left) && left <= middle + NEAR && left + wide >= middle - NEAR;
  return [about, ...beside.filter(reaches)].find(isFree) ?? null;
}

type Wide = AxisWord & { readonly width: number; readonly middle: number };

/** Words that push one another aside: how wide they are together, and where the first of them would best stand. */
type Pushed = { readonly words: readonly Wide[]; readonly width: number; readonly left: number };

const joined = (one: Pushed, next: Pushed, gap: number): Pushed => {
  const [n, m] = [one.words.length, next.words.length];
  const ahead = one.width + gap;
  return {
    words: [...one.words, ...next.words],
    width: ahead + next.width,
    // So that all of them together are moved as little as can be.
    left: (one.left * n + (next.left - ahead) * m) / (n + m),
  };
};

/** Words of one line, each as near to its place as the others let it; null where one would stand away from its place. */
function inLine(
  words: readonly Wide[],
  width: number,
  gap: number,
  row: number,
): readonly PlacedWord[] | null {
  const inPaper = ({ left, width: wide }: Pushed) => Math.max(0, Math.min(width - wide, left));
  const groups: Pushed[] = [];
  for (const word of [...words].sort((a, b) => a.place - b.place)) {
    let last: Pushed = { words: [word], width: word.width, left: word.middle - word.width / 2 };
    for (let before = groups.at(-1); before; before = groups.at(-1)) {
      if (inPaper(before) + before.width + gap <= inPaper(last)) break;
      last = joined(before, last, gap);
      groups.pop();
    }
    groups.push(last);
  }
  const placed = groups.flatMap((group) => {
    let left = Math.round(inPaper(group));
    return group.words.map(({ middle: _, ...word }) => {
      const at = left;
      left += word.width + gap;
      return { ...word, left: at, row };
    });
  });
  const isNear = ({ left, width: wide, place }: PlacedWord) => {
    const middle = words.find((word) => word.place === place)?.middle ?? 0;
    return left >= 0 && left + wide <= width && left <= middle + NEAR && left + wide >= middle - NEAR;
  };
  return placed.every(isNear) ? placed : null;
}

/** How far words stand from their places, those that the paper's edge holds back not counted. */
function asideOf(placed: readonly PlacedWord[], words: readonly Wide[], width: number): number {
  const wishes = new Map(words.map((word) => [word.place, word]));
  return placed.reduce((sum, { place, left }) => {
    const wish = wishes.get(place);
    const about = wish ? Math.max(0, Math.min(width - wish.width, wish.middle - wish.width / 2)) : left;
    return sum + (left - about) ** 2;
  }, 0);
}

/** So many words are tried in every arrangement. */
const FEW = 7;

/** All words in so many lines, each as near to its place as can be; null where they have not all room. */
function allInLines(
  words: readonly Wide[],
  width: number,
  gap: number,
  rows: number,
): readonly PlacedWord[] | null {
  if (words.length > FEW || new Set(words.map(({ place }) => place)).size < words.length) return null;
  let best: { readonly placed: readonly PlacedWord[]; readonly aside: number } | null = null;
  for (let ways = 0; ways < rows ** words.length; ways++) {
    const lines = Array.from({ length: rows }, (_, row) =>
      inLine(
        words.filter((_word, at) => Math.floor(ways / rows ** at) % rows === row),
        width,
        gap,
        row,
      ),
    );
    if (lines.some((line) => line === null)) continue;
    const placed = lines.flatMap((line) => line ?? []);
    const aside = asideOf(placed, words, width);
    if (best === null || aside < best.aside) best = { placed, aside };
  }
  const placed = best?.placed ?? null;
  return placed && words.flatMap(({ place }) => placed.filter((one) => one.place === place));
}

/** The first words where they have room, the others where they leave some. */
function firstInLines(
  words: readonly Wide[],
  width: number,
  gap: number,
  rows: number,
): readonly PlacedWord[] {
  const placed: PlacedWord[] = [];
  for (const { middle, ...word } of words) {
    for (let row = 0; row < rows; row++) {
      const beside = placed.filter((other) => other.row === row);
      const left = freeLeft(beside, middle, word.width, width, gap);
      if (left === null) continue;
      placed.push({ ...word, left, row });
      break;
    }
  }
  return placed;
}

/**
 * Words under the axis where they have room: each about its place, none over the paper's edge or another word; where not
 * all have room, a word without it is left out.
 *
 * @param inset from either edge of the paper to the axis's ends [px]
 * @param rows lines of words, the first of them first
 */
export function placeAxisWords(
  marks: readonly AxisWord[],
  width: number,
  inset: number,
  size: number,
  rows = 1,
): readonly PlacedWord[] {
  const wide = marks.flatMap((mark): readonly Wide[] => {
    const ownWidth = Math.ceil(textWidth(mark.text, size, true));
    const middle = inset + mark.place * (width - 2 * inset);
    return mark.text === "" || ownWidth > width ? [] : [{ ...mark, width: ownWidth, middle }];
  });
  const gap = rows > 1 ? WORDS_GAP : GAP;
  return (rows > 1 ? allInLines(wide, width, gap, rows) : null) ?? firstInLines(wide, width, gap, rows);
}
