// A bare number in the figures and signs that suit the reader.

import { safeLocale } from "./signs.ts";

const NO_BREAK = "\u00a0";
const SMALLEST_PLAIN = 1e-5;
const LARGEST_PLAIN = 1e12;
const MOST_DECIMALS = 12;
const SUPERSCRIPTS = "⁰¹²³⁴⁵⁶⁷⁸⁹";

/** A whole number as raised digits. */
export function superscript(power: number): string {
  const digits = [...String(Math.abs(power))].map((digit) => SUPERSCRIPTS[Number(digit)] ?? digit).join("");
  return power < 0 ? `⁻${digits}` : digits;
}

const formatters = new Map<string, Intl.NumberFormat>();

function formatter(locale: string, decimals: number, least: number): Intl.NumberFormat {
  const key = `${locale}|${decimals}|${least}`;
  const known = formatters.get(key);
  if (known) return known;
  const made = new Intl.NumberFormat(safeLocale(locale), {
    numberingSystem: "latn",
    minimumFractionDigits: least,
    maximumFractionDigits: decimals,
  });
  formatters.set(key, made);
  return made;
}

/** English as it is written nearly everywhere: a point, and commas from four digits on. */
const ENGLISH = /^en(-(US|GB|CA|AU|NZ|IE))?$/;
const SHORTEST_PLAIN = 1e-6;
const THOUSANDS = /\B(?=(\d{3})+$)/g;

/** The same by hand: the machine's own writer of numbers takes longer to wake than all else that a page first shows. */
function inEnglish(rounded: number, decimals: number, least: number): string {
  // In the fewest digits that mean this number; of very small ones that would be a power of ten.
  const digits = Math.abs(rounded) < SHORTEST_PLAIN ? rounded.toFixed(decimals) : String(rounded);
  const [whole = "0", part = ""] = digits.split(".");
  const kept = part.replace(/0+$/, "").padEnd(least, "0");
  const grouped = whole.replace(THOUSANDS, ",");
  return kept === "" ? grouped : `${grouped}.${kept}`;
}

/** A number with so many decimals at the most, `least` at the least, and never "-0". */
export function fixedNumber(value: number, decimals: number, locale: string, least = 0): string {
  // Adding 0 turns -0 into 0, which a rounded small negative number would otherwise show.
  const rounded = Number(value.toFixed(decimals)) + 0;
  if (ENGLISH.test(locale) && Math.abs(rounded) < LARGEST_PLAIN) return inEnglish(rounded, decimals, least);
  return formatter(locale, decimals, least).format(rounded);
}

/**
 * A number with the given significant figures. Figures decide the decimals only: whole digits are never rounded away,
 * so that a number typed by a person is not shown as another one. Trailing zeros are left out.
 */
export function showNumber(value: number, figures: number, locale: string): string {
  if (!Number.isFinite(value)) return "–";
  const size = Math.abs(value);
  if (size === 0) return "0";
  if (size < SMALLEST_PLAIN || size >= LARGEST_PLAIN) {
    const [digits = "0", power = "0"] = value.toExponential(figures - 1).split("e");
    return `${fixedNumber(Number(digits), figures - 1, locale)}${NO_BREAK}×${NO_BREAK}10${superscript(Number(power))}`;
  }
  const exponent = Number(value.toExponential(figures - 1).split("e")[1]);
  return fixedNumber(value, Math.min(MOST_DECIMALS, Math.max(0, figures - 1 - exponent)), locale);
}
