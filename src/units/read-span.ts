// Reads a number that somebody is not sure of: "225 to 300 gal", "250 gal give or take 25", "250 gal +/- 10 %".

import { MEASURES } from "./measures.ts";
import { type Reading, type ReadOptions, readQuantity } from "./read.ts";
import { tidy } from "./tidy.ts";
import { fromSi, toSi } from "./unit.ts";

/** Ends in the unit, low first; `value` is their middle, a whole number where the measure counts. */
export type SpanReading =
  | {
      readonly ok: true;
      readonly value: number;
      readonly unit: string;
      readonly low: number;
      readonly high: number;
    }
  | Extract<Reading, { readonly ok: false }>;

type Good = Extract<Reading, { readonly ok: true }>;

const BETWEEN =
  /^(?<head>\s*(?:between\s+|from\s+)?)(?<one>.+?)(?<word>\s+(?:to|and|or)\s+|\s*(?:–|\.\.+|…)\s*)(?<other>.+)$/i;
const AROUND =
  /^(?<one>.+?)(?<word>\s*(?:,?\s*give\s+or\s+take|±|\+\s*\/\s*-|\+-|plus\s+or\s+minus)\s*)(?<other>.+)$/i;
const moved = (reading: Reading, by: number): Reading =>
  reading.ok ? reading : { ...reading, start: reading.start + by, end: reading.end + by };

const inUnitOf = ({ unit }: Good, si: number): number => tidy(fromSi(si, unit));

function spanOf(first: Good, low: number, high: number, options: ReadOptions): SpanReading {
  const ends = [low, high].sort((a, b) => a - b);
  const [least = low, most = high] = ends;
  const middle = tidy((least + most) / 2);
  const isCount = options.measure !== undefined && MEASURES[options.measure].form === "count";
  return { ok: true, value: isCount ? Math.round(middle) : middle, unit: first.unit, low: least, high: most };
}

const BARE = /^\s*[\d.,\s]+$/;

/** A bare first end takes the unit of the second, as in "225 to 300 gal". */
function betweenEnds(text: string, at: RegExpExecArray, options: ReadOptions): SpanReading {
  const { head = "", one = "", word = "", other = "" } = at.groups ?? {};
  const start = head.length + one.length + word.length;
  const second = moved(readQuantity(other, options), start);
  if (!second.ok) return second;
  const bare = BARE.test(one) && !BARE.test(other);
  const first = moved(
    readQuantity(one, bare ? { ...options, defaultUnit: second.unit } : options),
    head.length,
  );
  if (!first.ok) return first;
  if (first.si === second.si)
    return { ok: false, message: "Both ends are the same.", start, end: text.length };
  return spanOf(first, first.value, inUnitOf(first, second.si), options);
}

const SHARE_OF_IT = /^\s*(?<percent>[\d.,]+\s*%)\s*$/;

/** How far it may be off to either side, in the number's own unit; a percentage is a share of it unless it is one itself. */
function reachOf(first: Good, text: string, options: ReadOptions): Reading | number {
  const percent = SHARE_OF_IT.test(text) && options.measure !== "share";
  if (percent) {
    const { currency, locale } = options;
    const read = readQuantity(text, {
      measure: "share",
      ...(locale ? { locale } : {}),
      ...(currency ? { currency } : {}),
    });
    return read.ok ? Math.abs(first.value) * read.si : read;
  }
  const read = readQuantity(text, { ...options, defaultUnit: first.unit });
  if (!read.ok) return read;
  const reach = toSi(read.value, read.unit) - toSi(0, read.unit);
  return fromSi(toSi(first.value, first.unit) + reach, first.unit) - first.value;
}

function aroundValue(at: RegExpExecArray, options: ReadOptions): SpanReading {
  const { one = "", word = "", other = "" } = at.groups ?? {};
  const start = one.length + word.length;
  const first = readQuantity(one, options);
  if (!first.ok) return first;
  const reach = reachOf(first, other, options);
  if (typeof reach !== "number") return moved(reach, start) as SpanReading;
  if (reach === 0)
    return { ok: false, message: "Give or take nothing is no span.", start, end: start + other.length };
  const size = Math.abs(reach);
  return spanOf(first, tidy(first.value - size), tidy(first.value + size), options);
}

/**
 * Reads a span as a person types it.
 * @returns null where the text names one number only; else the ends with their middle, or a sentence and the place it is about
 */
export function readSpan(text: string, options: ReadOptions): SpanReading | null {
  const around = AROUND.exec(text);
  if (around) return aroundValue(around, options);
  const between = BETWEEN.exec(text);
  return between ? betweenEnds(text, between, options) : null;
}
