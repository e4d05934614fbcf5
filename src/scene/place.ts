// The place as the drawing knows it: every part with its heights in SI, what it is joined to, and the words beside it.

import type { Vessel } from "../physics/vessel.ts";

export type Tone = "ink" | "soft" | "water" | "power" | "growth" | "trouble";

/** A line of words beside a thing; `most` lines of paper at the most. */
export type Words = {
  readonly text: string;
  readonly tone: Tone;
  readonly bold?: true;
  readonly most?: number;
  /** Shown whole or not at all. */
  readonly whole?: true;
  /** The words change with the day; this is their shorter form, for where there is little room. */
  readonly live?: string;
  /** Of such words: the longer form or none. */
  readonly long?: true;
  /** All that is said of it where there is hardly any room: a level, or what is in trouble. */
  readonly brief?: string;
  /** Less still, for many of them side by side. */
  readonly least?: string;
  /** How much is wrong, against what is alike: the worst of them is named where the others are not. */
  readonly wrong?: number;
};

export type Part = {
  readonly id: string;
  readonly title: string;
  /** Beside it on paper. */
  readonly words: readonly Words[];
  /** What will not work as drawn, in one sentence, and the number that its disc and the list of parts show. */
  readonly trouble: string | null;
  readonly number: number | null;
};

export type DrawnRoof = Part & { readonly drainsTo: string | null };

/** Heights above the datum [m]; depths above the floor [m]. */
export type DrawnTank = Part & {
  readonly ground: number;
  readonly stand: number;
  /** All vessels together; null where its numbers are wrong, it is then drawn by `height` alone. */
  readonly vessel: Vessel | null;
  readonly height: number;
  /** Across one vessel [m]. */
  readonly across: number;
  readonly count: number;
  readonly open: boolean;
  readonly overflowsTo: string | null;
  /** Depth dipped today [m]. */
  readonly dipped: number | null;
  readonly startShare: number;
};

/** A joint of lines, without storage. */
export type DrawnTee = Part & { readonly height: number };

export type DrawnLine = Part & {
  readonly from: string | null;
  readonly to: string | null;
  /** Of both ends [m]; null where they are not known. */
  readonly startHeight: number | null;
  readonly endHeight: number | null;
  /** Along the hose [m]. */
  readonly length: number | null;
  /** Points [distance, height] [m]; empty where no route is given. */
  readonly route: readonly (readonly [number, number])[];
};

export type DrawnDelivery = Part & {
  readonly from: string | null;
  readonly poweredBy: string | null;
  readonly waters: readonly string[];
};

export type DrawnTake = Part & { readonly from: string | null };
export type DrawnPanel = Part & { readonly charges: string | null };
export type DrawnBed = Part & { readonly covered: boolean };

export type Place = {
  readonly roofs: readonly DrawnRoof[];
  readonly tanks: readonly DrawnTank[];
  readonly tees: readonly DrawnTee[];
  readonly lines: readonly DrawnLine[];
  readonly deliveries: readonly DrawnDelivery[];
  readonly draws: readonly DrawnTake[];
  readonly carries: readonly DrawnTake[];
  readonly batteries: readonly Part[];
  readonly panels: readonly DrawnPanel[];
  readonly beds: readonly DrawnBed[];
  /** Whatever has no shape of its own. */
  readonly things: readonly Part[];
};

export type Box = {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
};

/** One stroke or area on paper; the look names how it is drawn. */
export type Shape = { readonly d: string; readonly look: string };

/** A line of words with its baseline on paper. */
export type PlacedWords = {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly tone: Tone;
  readonly bold: boolean;
  /** Room for words that change with the day [px]; null for fixed words. */
  readonly room: number | null;
};

/** How it came to stand where it does: which of its sayings, in how many lines, and how far from where it would like to be. */
export type LabelWay = {
  readonly saying: number;
  readonly lines: number;
  readonly width: number;
  readonly under: boolean;
  /** From the anchor to the left and top of the middle of its words [px]. */
  readonly aside: number;
  readonly away: number;
};

export type Label = {
  readonly of: string;
  readonly box: Box;
  readonly words: readonly PlacedWords[];
  /** It lies in the ground. */
  readonly under: boolean;
  readonly way: LabelWay;
};
