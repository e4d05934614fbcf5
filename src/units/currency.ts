// The one currency of a worksheet, written as a sign or a three-letter code.

import { safeLocale } from "./signs.ts";

/** Codes that a sign may stand for. */
const CODES: ReadonlyMap<string, readonly string[]> = new Map(
  Object.entries({
    $: ["USD", "CAD", "AUD", "NZD", "SGD", "MXN"],
    "€": ["EUR"],
    "£": ["GBP"],
    "¥": ["JPY", "CNY"],
    "₹": ["INR"],
  }),
);

/** Whether a text is a sign or code of money at all. */
export function isCurrencyWord(word: string): boolean {
  return CODES.has(word) || [...CODES.values()].some((codes) => codes.includes(word));
}

/** Whether a sign or code typed by a person is the worksheet's currency. */
export function isSameCurrency(word: string, currency: string): boolean {
  if (word === currency) return true;
  return (CODES.get(currency)?.includes(word) ?? false) || (CODES.get(word)?.includes(currency) ?? false);
}

/** All that a text may say a currency by: itself, and the codes of a sign or the signs of a code. */
export function wordsOfMoney(currency: string): readonly string[] {
  const signs = [...CODES].flatMap(([sign, codes]) => (codes.includes(currency) ? [sign] : []));
  return [currency, ...(CODES.get(currency) ?? []), ...signs].filter((word) => word !== "");
}

const before = new Map<string, boolean>();

function goesBefore(locale: string): boolean {
  const known = before.get(locale);
  if (known !== undefined) return known;
  const parts = new Intl.NumberFormat(safeLocale(locale), {
    style: "currency",
    currency: "USD",
  }).formatToParts(1);
  const isBefore =
    parts.findIndex(({ type }) => type === "currency") < parts.findIndex(({ type }) => type === "integer");
  before.set(locale, isBefore);
  return isBefore;
}

/** An amount with its currency where the locale puts it: "$35", "-$35", "35 €", "35 USD". */
export function withCurrency(number: string, currency: string, locale: string): string {
  const isSign = !/\p{L}$/u.test(currency);
  if (!isSign || !goesBefore(locale)) return `${number}\u00a0${currency}`;
  return number.startsWith("-") ? `-${currency}${number.slice(1)}` : `${currency}${number}`;
}
