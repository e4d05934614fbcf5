// What every drawer of one row needs at hand: the paper, the scale of heights, the ground, and where things stand.

import type { Cell } from "./cells.ts";
import { MARGIN } from "./cells.ts";
import { deepest, type Ground } from "./ground.ts";
import { type Paper, putLabel } from "./paper.ts";
import type { Box, Part, Place } from "./place.ts";
import { blockOf, type Type } from "./text-block.ts";

/** A tank or a joint on paper. */
export type Spot = {
  readonly id: string;
  /** Number of the row it stands in. */
  readonly row: number;
  /** Walls of all its vessels together, up to the rim. */
  readonly body: Box;
  readonly vessels: readonly Box[];
  /** Inside floor above the datum [m], its y, and how many px a metre of depth takes. */
  readonly floor: number;
  readonly floorY: number;
  readonly pxPerMetre: number;
};

export type Bench = {
  readonly place: Place;
  readonly paper: Paper;
  /** Width of the paper [px]. */
  readonly width: number;
  readonly type: Type;
  /** Height on paper of a metre [px], and the y of the datum. */
  readonly scale: number;
  readonly base: number;
  readonly row: number;
  readonly ground: Ground;
  readonly spots: Map<string, Spot>;
};

const WIDEST_LABEL = 210;

/** y of a height at a tank, which may be drawn larger than the scale where it would be too small to see. */
export const heightAt = (spot: Spot, height: number): number =>
  Math.max(spot.body.y, Math.min(spot.floorY, spot.floorY - (height - spot.floor) * spot.pxPerMetre));

/** y of a height by the scale alone. */
export const yOf = (bench: Bench, height: number): number => bench.base - height * bench.scale;

/** Words over a thing, within its column; the y of their top is returned. */
export function labelOver(bench: Bench, part: Part, cell: Cell, from: number, inset = 2): number {
  const [left, right] = [cell.x + inset, cell.x + cell.width - inset];
  const block = blockOf(part.words, right - left, bench.type);
  const middle = (left + right) / 2;
  putLabel(bench.paper, part.id, block, { middle, from, towards: "up", left, right });
  return bench.paper.labels[bench.paper.labels.length - 1]?.box.y ?? from;
}

/** Words in the ground under a place, as wide as the paper lets them. */
export function labelUnder(bench: Bench, part: Part, middle: number): void {
  const [left, right] = [MARGIN, bench.width - MARGIN];
  const block = blockOf(part.words, Math.min(WIDEST_LABEL, right - left), bench.type);
  const [first, last] = [
    Math.max(0, middle - block.width / 2),
    Math.min(bench.width, middle + block.width / 2),
  ];
  const wish = {
    middle,
    from: deepest(bench.ground, first, last) + 8,
    towards: "down" as const,
    left,
    right,
  };
  putLabel(bench.paper, part.id, block, { ...wish, under: true });
}
