// A sheet of paper in the making: shapes and labels by part, and a free place for the next label.

import type { Box, Label, Shape } from "./place.ts";
import type { Block } from "./text-block.ts";

const CLEARANCE = 4;

export const overlaps = (a: Box, b: Box, clearance = 0): boolean =>
  a.x < b.x + b.width + clearance &&
  b.x < a.x + a.width + clearance &&
  a.y < b.y + b.height + clearance &&
  b.y < a.y + a.height + clearance;

export const round = (value: number): number => Math.round(value * 10) / 10;

/** Where a label would like to be: around an x, from a y on upwards or downwards, within two edges. */
export type Wish = {
  readonly middle: number;
  readonly from: number;
  readonly towards: "up" | "down";
  readonly left: number;
  readonly right: number;
  /** The label lies in the ground. */
  readonly under?: true;
};

export type Paper = {
  readonly shapes: Map<string, Shape[]>;
  readonly labels: Label[];
  readonly taken: Box[];
  readonly hits: Map<string, Box[]>;
  readonly marks: Map<string, { readonly x: number; readonly y: number }>;
};

export function newPaper(): Paper {
  return { shapes: new Map(), labels: [], taken: [], hits: new Map(), marks: new Map() };
}

function under<T>(map: Map<string, T[]>, id: string): T[] {
  const list = map.get(id) ?? [];
  map.set(id, list);
  return list;
}

/** Draws a stroke or an area of a part. */
export function draw(paper: Paper, id: string, look: string, d: string): void {
  under(paper.shapes, id).push({ d, look });
}

/** The room a part takes: no label lies over it, and it answers to a touch. */
export function takes(paper: Paper, id: string, box: Box): void {
  paper.taken.push(box);
  under(paper.hits, id).push(box);
}

/** Steps to either side that a label may take instead of going far up or down [px]. */
const ASIDE = [0, -24, 24, -48, 48, -80, 80];
const STEP = CLEARANCE + 0.5;

/** The nearest free place straight up or down from where a box is. */
function freed(paper: Paper, start: Box, towards: "up" | "down"): Box {
  let box = start;
  let hindrance = paper.taken.find((other) => overlaps(box, other, CLEARANCE));
  while (hindrance) {
    const y = towards === "up" ? hindrance.y - box.height - STEP : hindrance.y + hindrance.height + STEP;
    box = { ...box, y };
    hindrance = paper.taken.find((other) => overlaps(box, other, CLEARANCE));
  }
  return box;
}

/** Puts a label at the nearest free place in its direction; it always finds one, the paper grows as needed. */
export function putLabel(paper: Paper, of: string, block: Block, wish: Wish): void {
  if (block.lines.length === 0) return;
  const width = Math.min(block.width, wish.right - wish.left);
  const y = wish.towards === "up" ? wish.from - block.height : wish.from;
  let box: Box | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const aside of ASIDE) {
    const wished = wish.middle + aside - width / 2;
    const x = Math.max(wish.left, Math.min(wished, wish.right - width));
    const free = freed(paper, { x, y, width, height: block.height }, wish.towards);
    const away = Math.abs(free.y - y) + Math.abs(aside) / 2;
    if (away < least) [box, least] = [free, away];
  }
  if (!box) return;
  const middle = box.x + box.width / 2;
  const top = box.y;
  paper.labels.push({
    of,
    box,
    words: block.lines.map((line) => ({ ...line, x: round(middle), y: round(top + line.y) })),
    under: wish.under ?? false,
  });
  takes(paper, of, box);
}

/** A round mark with an exclamation, where something will not work. */
export function putMark(paper: Paper, id: string, x: number, y: number): void {
  const r = 10;
  paper.marks.set(id, { x, y });
  takes(paper, id, { x: x - r, y: y - r, width: 2 * r, height: 2 * r });
}

/** Highest and lowest of all that is on the paper. */
export function extent(paper: Paper): { readonly top: number; readonly bottom: number } {
  const tops = paper.taken.map((box) => box.y);
  const bottoms = paper.taken.map((box) => box.y + box.height);
  return { top: Math.min(0, ...tops), bottom: Math.max(0, ...bottoms) };
}
