// Words on paper: how wide they are, about, and how they break into lines. Widths lean to the wide side.

import type { PlacedWords, Words } from "./place.ts";

/** Size of the words, and from one baseline to the next [px]. */
export type Type = { readonly size: number; readonly leading: number };

const ELLIPSIS = "…";
const BOLD = 1.07;
/** Letters by their width in shares of the size, measured in the page's own typeface and rounded up. */
const WIDTHS: readonly (readonly [letters: string, share: number])[] = [
  ["ijl'.,:;!|·", 0.25],
  [" \u00a0()", 0.28],
  ["frt/-°", 0.34],
  ["I²³", 0.38],
  ["cosvyz", 0.48],
  ["aekJLTY", 0.53],
  ["bdghnpquxEF", 0.55],
  ["0123456789ABCKPRSVXZ", 0.62],
  ["DGHNOQUw&…–", 0.7],
  ["mMW%—", 0.9],
];
const SHARES = new Map(WIDTHS.flatMap(([letters, share]) => [...letters].map((letter) => [letter, share])));
/** Letters of other scripts, some of which are as wide as they are high. */
const OTHER = 1.05;

function widthOf(letter: string): number {
  // An accent stands over its letter and takes no width.
  return SHARES.get(letter) ?? SHARES.get(letter.normalize("NFD").charAt(0)) ?? OTHER;
}

/** Of the letters that most texts are made of, by their codes: a drawing asks for thousands. */
const USUAL = Float64Array.from({ length: 256 }, (_, code) => widthOf(String.fromCharCode(code)));

/** Width of a text in shares of the size, after so many of them. */
function sharesOf(text: string, before = 0): number {
  let shares = before;
  for (const letter of text) shares += USUAL[letter.codePointAt(0) ?? 0] ?? widthOf(letter);
  return shares;
}

/** Width of a text in one line [px], a little more than it takes. */
export function textWidth(text: string, size: number, bold = false): number {
  return sharesOf(text) * size * (bold ? BOLD : 1);
}

/** The text cut to a width, with an ellipsis where something is gone. */
export function fitted(text: string, room: number, size: number, bold = false): string {
  if (textWidth(text, size, bold) <= room) return text;
  const ellipsis = widthOf(ELLIPSIS);
  let [kept, shares] = ["", 0];
  for (const letter of text) {
    shares += widthOf(letter);
    if ((shares + ellipsis) * size * (bold ? BOLD : 1) > room) break;
    kept += letter;
  }
  return `${kept.trimEnd()}${ELLIPSIS}`;
}

/** Words of a text; a number and its unit stay one word unless the column is too narrow for that. */
function wordsOf(text: string, room: number, size: number, bold: boolean): readonly string[] {
  return text
    .split(" ")
    .filter((word) => word !== "")
    .flatMap((word) => (textWidth(word, size, bold) > room ? word.split("\u00a0") : [word]));
}

/** How many of the words, one at least, fit in a line. */
function fitting(words: readonly string[], room: number, size: number, bold: boolean): number {
  let shares = sharesOf(words[0] ?? "");
  let take = 1;
  for (; take < words.length; take++) {
    shares = sharesOf(` ${words[take]}`, shares);
    if (shares * size * (bold ? BOLD : 1) > room) break;
  }
  return take;
}

/** Breaks at plain spaces; what does not fit in `most` lines is cut. */
function wrapped(text: string, room: number, size: number, bold: boolean, most: number): readonly string[] {
  const lines: string[] = [];
  let left = wordsOf(text, room, size, bold);
  while (left.length > 0 && lines.length < most) {
    const last = lines.length === most - 1;
    const take = fitting(left, room, size, bold);
    lines.push(fitted((last ? left : left.slice(0, take)).join(" "), room, size, bold));
    left = last ? [] : left.slice(take);
  }
  return lines;
}

/** Words broken into lines, with the size of the whole; baselines from its top, x from its middle or its left. */
export type Block = {
  readonly width: number;
  readonly height: number;
  readonly lines: readonly Omit<PlacedWords, "x">[];
};

/** The lines of paper that words take; none where they must stand whole and cannot. */
function linesOf(words: Words, room: number, size: number): readonly string[] {
  const { text, most = 2, live, long, whole } = words;
  const bold = words.bold ?? false;
  if (live !== undefined) {
    if (long && textWidth(text, size, bold) > room) return [];
    const fits = textWidth(text, size, bold) > room ? live : text;
    return [fitted(fits, room, size, bold)];
  }
  const lines = wrapped(text, room, size, bold, most);
  return whole && lines.some((line) => line.endsWith(ELLIPSIS)) ? [] : lines;
}

/** Sets words in a column of the given room [px]. */
export function blockOf(words: readonly Words[], room: number, type: Type): Block {
  const lines: Omit<PlacedWords, "x">[] = [];
  let width = 0;
  for (const one of words) {
    const { tone, live } = one;
    const bold = one.bold ?? false;
    for (const text of linesOf(one, room, type.size)) {
      const across = Math.min(room, textWidth(text, type.size, bold));
      width = Math.max(width, across);
      const y = lines.length * type.leading + type.size;
      lines.push({ text, y, tone, bold, room: live === undefined ? null : across });
    }
  }
  return { width, height: lines.length * type.leading + type.size * 0.25, lines };
}
