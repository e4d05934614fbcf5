// What is said under answers that are not sure: which doubt matters most, how it is best measured, and what that leaves.

import { capital, listed } from "./words/lists.ts";

/** A doubt as it is named: its row's label, and the cards that share it. */
export type NamedDoubt = { readonly label: string; readonly titles: readonly string[] };

const MOST_TITLES = 3;

/** "Share that runs off (Barn roof and Porch roof)". */
export function doubtName({ label, titles }: NamedDoubt): string {
  const few = titles.length <= MOST_TITLES;
  return `${label} (${few ? listed(titles) : `${titles.length} parts alike`})`;
}

/** Shares from which on a doubt makes that much of the spread. */
const NEARLY_ALL = 0.9;
const MOST = 0.5;
/** Two shares as near as this cannot be told apart from so few runs. */
const ALIKE = 0.05;
/** Less than this makes no doubt stand out. */
export const LEAST = 0.05;
/** Measuring that leaves more than this of the spread is hardly worth it. */
const HARDLY = 0.9;

export type ToldShare = { readonly name: string; readonly share: number };

/** How much of the spread the first doubt makes, or that none stands out. */
export function mostFromSaid([first, second]: readonly ToldShare[]): string {
  if (!first || first.share < LEAST) return "No single doubt makes much of the spread.";
  const percent = `${Math.round(100 * first.share)} %`;
  if (second && first.share - second.share < ALIKE) {
    return `Two doubts matter about alike: ${first.name} and ${second.name}.`;
  }
  if (first.share >= NEARLY_ALL) return `Nearly all of the spread comes from one doubt: ${first.name}.`;
  if (first.share >= MOST) return `Most of the spread, ${percent}, comes from one doubt: ${first.name}.`;
  return `What matters most, with ${percent} of the spread, is ${first.name}.`;
}

/** Parts of a whole as they are said; what is left lies next to one of them. */
const PARTS: readonly (readonly [part: number, said: string])[] = [
  [0, "next to nothing"],
  [0.1, "about a tenth"],
  [0.2, "about a fifth"],
  [0.33, "about a third"],
  [0.5, "about half"],
  [0.67, "about two thirds"],
  [0.8, "about four fifths"],
];

/** "about half": a share of a whole in words. */
export function partSaid(share: number): string {
  const off = ([part]: readonly [number, string]) => Math.abs(part - share);
  const [first = [0, ""] as const] = PARTS;
  return PARTS.reduce((best, one) => (off(one) < off(best) ? one : best), first)[1];
}

/** A doubt that could be measured: what to do, and the share of the spread that this would leave. */
export type ToldMeasuring = { readonly name: string; readonly how: string; readonly leaves: number };

/**
 * Which measurement helps most, and how much.
 *
 * @param best of what can be measured and matters, the one that leaves least; null where there is none
 * @param isFirst whether it is the doubt that matters most
 */
export function measuringSaid(best: ToldMeasuring | null, isFirst: boolean): string {
  if (best === null) return "Nothing simple would measure it.";
  if (!isFirst && best.leaves > HARDLY) return "Nothing that is simple to measure would narrow it much.";
  const helps = best.leaves > HARDLY ? "narrow it little" : `leave ${partSaid(best.leaves)} of the spread`;
  const then = `Known to a tenth of its span, it would ${helps}.`;
  if (isFirst) return `${capital(best.how)}. ${then}`;
  return `Of what can be measured, ${best.name} helps most: ${best.how}. ${then}`;
}

/** "With 10 other numbers not sure: 40 to 70": beside what one number alone makes; of one alone what eight of ten runs lie between. */
export function othersSaid(others: number, span: string): string {
  if (others === 0) return `Eight of ten: ${span}`;
  return `With ${others === 1 ? "one other number" : `${others} other numbers`} not sure: ${span}`;
}

/** How many numbers an answer's span comes from; of one alone nothing needs to be said. */
export const manySaid = (taken: number): string => (taken > 1 ? `${taken} numbers are not sure.` : "");

/** A doubt that the answer which stands now leans on: what is taken of it, and between which ends it may be. */
export type Leaning = { readonly name: string; readonly taken: string; readonly between: string };

/** Why the answer that stands now lies beyond its own span: most of what may be is worse, or better, than what is taken. */
export function beyondSaid(own: string, { name, taken, between }: Leaning): string {
  return `${own} goes by ${taken} of ${name}, which may be ${between}.`;
}

/** How many doubts were asked, and which were held. */
export function askedSaid(taken: number, held: number, runs: number, seasons: number | null): string {
  const years =
    seasons === null ? "" : `, each over the same ${seasons === 1 ? "season" : `${seasons} seasons`}`;
  const asked = `${taken === 1 ? "One number is" : `${taken} numbers are`} not sure: ${runs} runs${years}, eight of ten lie between the ends.`;
  return held === 0
    ? asked
    : `${asked} ${held === 1 ? "One more doubt was" : `${held} more doubts were`} held as they stand.`;
}
