// Which numbers are worth turning for an answer: asked at both ends of what each is turned over, in the order in which they
// are to be told.

import { isMet, type Wish } from "./work-back.ts";

/** The answer with a number at either end; null where there is none. */
export type AtEnds = (number: string) => Promise<readonly (number | null)[]>;

/** The first number with which an end meets the wish; else the first that helps at all, null where none does. */
export async function helping(
  numbers: readonly string[],
  wish: Wish,
  now: number,
  atEnds: AtEnds,
): Promise<string | null> {
  let helps: string | null = null;
  for (const number of numbers) {
    const ends = (await atEnds(number)).filter((answer) => answer !== null);
    if (ends.some((answer) => isMet(wish, answer))) return number;
    // What it comes to there is more than now comes to.
    if (ends.some((target) => !isMet({ ...wish, target }, now))) helps ??= number;
  }
  return helps;
}

/** Those with which the answer is another at an end. */
export async function moving(
  numbers: readonly string[],
  now: number,
  atEnds: AtEnds,
): Promise<readonly string[]> {
  const found: string[] = [];
  for (const number of numbers)
    if ((await atEnds(number)).some((answer) => answer !== null && answer !== now)) found.push(number);
  return found;
}
