// What a worksheet's money is called, when somebody calls it otherwise; nothing is converted.

import { wordsOfMoney } from "./currency.ts";
import { parseUnit } from "./unit.ts";

const LONGEST = 20;

const escaped = (text: string): string => text.replace(/[\\^$.*+?()[\]{}|/-]/g, "\\$&");

/** Why money cannot be counted in what somebody typed, in a sentence; null where it can. */
export function currencyProblem(text: string): string | null {
  if (text.length > LONGEST) return `Say it in at most ${LONGEST} letters.`;
  if (/[\d+*/^()<>=,;:%"]/.test(text) || !/[\p{L}\p{Sc}]/u.test(text))
    return "A sign, a code or a word is wanted, as in $, EUR or francs.";
  // It would be read as that unit wherever a number is typed.
  return parseUnit(text) ? `"${text}" is a unit here. Write the code, as in CHF or HUF.` : null;
}

/**
 * A formula, or the unit it is shown in, with one currency named for another.
 *
 * @param from what the worksheet counted in
 * @param to what it counts in now
 */
export function inOtherMoney(text: string, from: string, to: string): string {
  const words = wordsOfMoney(from).map((word) => {
    const [head, tail] = [/^\p{L}/u, /\p{L}$/u].map((letter) => letter.test(word));
    return `${head ? "(?<![\\p{L}_.])" : ""}${escaped(word)}${tail ? "(?![\\p{L}_.])" : ""}`;
  });
  if (words.length === 0) return text;
  const found = new RegExp(`(?:${words.join("|")})(\\d[\\d.]*)?`, "gu");
  // A word stands behind its number, a sign may stand before it.
  return text.replace(found, (_all, number: string | undefined) => {
    if (number === undefined) return to;
    return /\p{L}$/u.test(to) ? `${number} ${to}` : `${to}${number}`;
  });
}
