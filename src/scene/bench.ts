// What every drawer needs at hand: the paper, the scale of heights, the ground, and where things stand.

import type { Ground } from "./ground.ts";
import type { Paper } from "./paper.ts";
import type { Box, Place } from "./place.ts";

/** A tank or a joint on paper. */
export type Spot = {
  readonly id: string;
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
  /** Size of the paper [px]. */
  readonly width: number;
  readonly height: number;
  /** A phone's: everything a little lower and closer. */
  readonly small: boolean;
  /** Height on paper of a metre [px], and the y of the datum. */
  readonly scale: number;
  readonly base: number;
  /** Breadth on paper of a square metre of a tank [px], and how much narrower all is where it would not fit. */
  readonly perArea: number;
  readonly squeeze: number;
  readonly ground: Ground;
  readonly spots: Map<string, Spot>;
};

/** y of a height at a tank, which may be drawn larger than the scale where it would be too small to see. */
export const heightAt = (spot: Spot, height: number): number =>
  Math.max(spot.body.y, Math.min(spot.floorY, spot.floorY - (height - spot.floor) * spot.pxPerMetre));

/** y of a height by the scale alone. */
export const yOf = (bench: Pick<Bench, "base" | "scale">, height: number): number =>
  bench.base - height * bench.scale;
