// The signs a locale writes numbers with, and reading a number in them.

export type Signs = { readonly decimal: string; readonly group: string };

export type Scanned =
  | { readonly value: number; readonly end: number; readonly note?: string }
  | { readonly message: string; readonly start: number; readonly end: number };

const FALLBACK_LOCALE = "en-US";
const ANY_SPACE = "[ \u00a0\u2009\u202f]";
const FRACTIONS: Readonly<Record<string, number>> = {
  "½": 1 / 2,
  "¼": 1 / 4,
  "¾": 3 / 4,
  "⅓": 1 / 3,
  "⅔": 2 / 3,
  "⅛": 1 / 8,
  "⅜": 3 / 8,
  "⅝": 5 / 8,
  "⅞": 7 / 8,
};

/** A locale tag that the runtime accepts; an ill-formed one becomes en-US. */
export function safeLocale(locale: string): string {
  try {
    return Intl.getCanonicalLocales(locale)[0] ?? FALLBACK_LOCALE;
  } catch {
    return FALLBACK_LOCALE;
  }
}

const cache = new Map<string, Signs>();

/** Decimal and grouping sign of a locale. */
export function signsOf(locale: string): Signs {
  const known = cache.get(locale);
  if (known) return known;
  const parts = new Intl.NumberFormat(safeLocale(locale), { numberingSystem: "latn" }).formatToParts(
    1_234_567.8,
  );
  const signs = {
    decimal: parts.find(({ type }) => type === "decimal")?.value ?? ".",
    group: parts.find(({ type }) => type === "group")?.value ?? ",",
  };
  cache.set(locale, signs);
  return signs;
}

const escaped = (sign: string) => sign.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");

/** One digit group mark: the locale's own, or a non-breaking or thin space, which nobody types by chance. */
function groupPattern(group: string): string {
  if (/\s/.test(group)) return ANY_SPACE;
  if (/['’]/.test(group)) return "['’]";
  return `(?:${escaped(group)}|[\u00a0\u2009\u202f])`;
}

type Patterns = { readonly whole: RegExp; readonly loose: RegExp; readonly signs: Signs };

const patterns = new Map<string, Patterns>();

function patternsOf(locale: string): Patterns {
  const known = patterns.get(locale);
  if (known) return known;
  const signs = signsOf(locale);
  const decimal = escaped(signs.decimal);
  const group = groupPattern(signs.group);
  const digits = `\\d{1,3}(?:${group}\\d{2,3})*${group}\\d{3}(?!\\d)|\\d+`;
  const made = {
    whole: new RegExp(
      `(?:(?<digits>${digits})(?:${decimal}(?<part>\\d*))?|${decimal}(?<only>\\d+))(?:[eE](?<power>[+-]?\\d{1,3})(?![\\dA-Za-z]))?`,
      "y",
    ),
    loose: /[\d.,]*\d/y,
    signs,
  };
  patterns.set(locale, made);
  return made;
}

function misplaced(text: string, start: number, end: number, signs: Signs): Scanned {
  const written = text.slice(start, end);
  const last = /[.,](?=\d+$)/.exec(written)?.[0] ?? "";
  const repeats = written.split(last).length > 2 && !/[.,]{2}/.test(written);
  const meant = repeats ? written.replaceAll(last, "") : withDecimal(written, signs);
  return {
    message: `In this worksheet "${signs.decimal}" is the decimal sign, so "${written}" is unclear. Write ${meant} if that is meant.`,
    start,
    end,
  };
}

function withDecimal(written: string, signs: Signs): string {
  return written.replace(/[.,](?=\d+$)/, signs.decimal).replace(/[.,](?=.*[.,])/g, "");
}

function scanDecimal(text: string, start: number, locale: string): Scanned | null {
  const { whole, loose, signs } = patternsOf(locale);
  whole.lastIndex = start;
  const match = whole.exec(text);
  if (!match) return null;
  const end = start + match[0].length;
  loose.lastIndex = start;
  const looseEnd = start + (loose.exec(text)?.[0].length ?? 0);
  if (looseEnd > end) return misplaced(text, start, looseEnd, signs);
  const { digits = "0", part, only, power } = match.groups ?? {};
  const bare = digits.replace(/\D/g, "");
  const value = Number(`${bare}.${part ?? only ?? ""}0e${power ?? "0"}`);
  if (!Number.isFinite(value)) return { message: "That number is too large.", start, end };
  const oneGroup = bare !== digits && part === undefined && !/\s/.test(digits) && signs.decimal === ",";
  return oneGroup ? { value, end, note: `Read ${digits} as ${bare}.` } : { value, end };
}

function fractionAfter(text: string, start: number): { readonly value: number; readonly end: number } | null {
  const sign = FRACTIONS[text[start] ?? ""];
  if (sign !== undefined) return { value: sign, end: start + 1 };
  const match = /^(\d{1,3})[/⁄](\d{1,3})(?![\d.,])/.exec(text.slice(start, start + 9));
  if (!match || Number(match[2]) === 0) return null;
  return { value: Number(match[1]) / Number(match[2]), end: start + match[0].length };
}

/**
 * Reads one number without its sign: "1,200", "1.200,5", "3/4", "1 1/2", "1-1/2", "2½", "1.5e-6".
 * @returns the number and where it ends, a message with the place, or null where no number starts
 */
export function scanNumber(text: string, start: number, locale: string): Scanned | null {
  const alone = fractionAfter(text, start);
  if (alone) return alone;
  const first = scanDecimal(text, start, locale);
  if (!first || "message" in first || !Number.isInteger(first.value)) return first;
  const gap = /^[ \u00a0\u202f-]?/.exec(text.slice(first.end))?.[0].length ?? 0;
  if (gap === 0 && !((text[first.end] ?? "") in FRACTIONS)) return first;
  const rest = fractionAfter(text, first.end + gap);
  return rest && rest.value < 1 ? { value: first.value + rest.value, end: rest.end } : first;
}
