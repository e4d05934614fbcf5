// The pieces of the sentence of how long it lasts: words, days, counts.

import type { Odds } from "../season/odds.ts";
import { calendarDate } from "../units/calendar.ts";
import { dayName } from "../units/calendar-names.ts";

/** "Aug 3". */
export const dayWords = (date: number): string => dayName(calendarDate(date));

const WORDS = ["none", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"];
export const counted = (count: number): string => WORDS[count] ?? String(count);

export const EITHER_WAY = "in usual weather as without rain";

/** Rank of the day that is named as one in ten. */
export const worstOf = ({ members }: Pick<Odds, "members">): number =>
  Math.max(1, Math.floor((members + 1) / 10 + 1e-9));

/** A piece of the sentence: words, or a day in the tone of what it is. */
export type LastsPiece = { readonly text: string; readonly tone: "plain" | "trouble" | "growth" };

export const plain = (text: string): LastsPiece => ({ text, tone: "plain" });
export const until = (date: number | null, last = "the season's end"): LastsPiece =>
  date === null ? { text: last, tone: "growth" } : { text: dayWords(date), tone: "trouble" };
