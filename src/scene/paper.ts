// A sheet of paper in the making: shapes by part, the room they take, and where each part would like its words and its disc.

import type { Box, Shape } from "./place.ts";

export const overlaps = (a: Box, b: Box, clearance = 0): boolean =>
  a.x < b.x + b.width + clearance &&
  b.x < a.x + a.width + clearance &&
  a.y < b.y + b.height + clearance &&
  b.y < a.y + a.height + clearance;

export const round = (value: number): number => Math.round(value * 10) / 10;

/** Where a part's words would like to be: around an x, from a y upwards or downwards into the ground. */
export type Anchor = {
  readonly middle: number;
  readonly from: number;
  readonly side: "over" | "under";
  /** From where to where its thing goes: its words stay over or under some of it. */
  readonly left: number;
  readonly right: number;
  /** Only for a name that must be read and finds no place elsewhere. */
  readonly spare?: true;
};

type Spot = { readonly x: number; readonly y: number };

export type Paper = {
  readonly shapes: Map<string, Shape[]>;
  readonly taken: Box[];
  readonly hits: Map<string, Box[]>;
  readonly marks: Map<string, Spot>;
  /** The first is the best. */
  readonly anchors: Map<string, readonly Anchor[]>;
};

export function newPaper(): Paper {
  return { shapes: new Map(), taken: [], hits: new Map(), marks: new Map(), anchors: new Map() };
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

/** What is drawn there: no words lie over it. */
export function covers(paper: Paper, box: Box): void {
  paper.taken.push(box);
}

/** The room a part takes: no words lie over it, and it answers to a touch. */
export function takes(paper: Paper, id: string, box: Box): void {
  paper.taken.push(box);
  under(paper.hits, id).push(box);
}

/** Radius of a disc of trouble [px]. */
export const DISC = 10;
const APART = 2 * DISC + 2;

/** A numbered disc where something will not work: at the nearest place at which it covers no other. */
export function putMark(paper: Paper, id: string, x: number, y: number): void {
  const discs = [...paper.marks.values()];
  const isFree = (spot: Spot): boolean =>
    discs.every((other) => Math.hypot(other.x - spot.x, other.y - spot.y) >= APART);
  const nudges = [0, 1, 2, 3, 4].flatMap((up) => [
    { x, y: y - up * APART },
    { x: x + APART / 2, y: y - up * APART },
    { x: x - APART / 2, y: y - up * APART },
  ]);
  paper.marks.set(id, nudges.find(isFree) ?? { x, y });
}
