// What was worked out once and is asked for again: kept under everything it depends on, the latest few of it.

import type { DailyRecord } from "../rainfall/record.ts";

/**
 * A bounded memory of one kind of answer.
 *
 * @param most answers kept for each owner; the one not asked for longest goes first
 * @returns gives the answer kept for an owner under a key that holds all else it depends on, or makes and keeps it
 */
export function keeper<Value extends object>(
  most: number,
): (owner: object, key: string, make: () => Value) => Value {
  const books = new WeakMap<object, Map<string, Value>>();
  return (owner, key, make) => {
    const book = books.get(owner) ?? new Map<string, Value>();
    const held = book.get(key);
    const value = held ?? make();
    if (held) book.delete(key);
    else if (book.size >= most) book.delete(book.keys().next().value as string);
    book.set(key, value);
    books.set(owner, book);
    return value;
  };
}

/** Plain data as text, different for different data: numbers that JSON knows no word for are told apart too. */
export function contentKey(data: unknown): string {
  return JSON.stringify(data, (_, value) =>
    typeof value === "number" && (!Number.isFinite(value) || Object.is(value, -0))
      ? `number ${Object.is(value, -0) ? "-0" : value}`
      : value,
  );
}

/** A short mark of a series' every bit, so that what was kept for it is not shown once somebody has changed it in place. */
export function markOf(series: Float64Array | null): string {
  if (!series) return "none";
  const bits = new Int32Array(series.buffer, series.byteOffset, series.length * 2);
  let [one, two] = [bits.length, 0x9e3779b9 | 0];
  for (let place = 0; place < bits.length; place++) {
    const word = bits[place] as number;
    one = Math.imul(one ^ word, 0x01000193);
    two = Math.imul((two << 13) | (two >>> 19), 5) + (word ^ place);
  }
  return `${one}:${two | 0}:${series.length}`;
}

/** The marks of all of a record's columns, and its first day. */
export function recordMark(record: DailyRecord): string {
  const { firstDay, rain, highest, lowest, wind, vapour, sun } = record;
  return [firstDay, ...[rain, highest, lowest, wind, vapour, sun].map(markOf)].join(" ");
}
