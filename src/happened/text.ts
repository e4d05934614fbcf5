// What happened as the text of one hidden given: a JSON list, of each its day, minute, side of the watering, word, part,
// amount and means, in that order, and 1 where its grower was asked and read it so.

import { type Happened, isHappenedWord } from "./happened.ts";

/** As text; "" for nothing. */
export function happenedText(happened: readonly Happened[]): string {
  if (happened.length === 0) return "";
  return JSON.stringify(
    happened.map(({ date, minute, side, what, where, amount, by, asRead }) => [
      date,
      minute,
      side,
      what,
      where,
      amount,
      by,
      ...(asRead ? [1] : []),
    ]),
  );
}

const numberOr = (value: unknown): number | null => (typeof value === "number" ? value : null);

function rowsOf(text: string): readonly (readonly unknown[])[] {
  try {
    const rows: unknown = JSON.parse(text);
    return Array.isArray(rows) ? rows.filter((row) => Array.isArray(row)) : [];
  } catch {
    return [];
  }
}

/** In order; nothing of a text that is no such list, and no row of it that tells no day, word or part. */
export function readHappened(text: string): readonly Happened[] {
  return rowsOf(text).flatMap(([date, minute, side, what, where, amount, by, asRead]): Happened[] => {
    if (typeof date !== "number" || !isHappenedWord(what) || typeof where !== "string") return [];
    return [
      {
        date,
        minute: numberOr(minute),
        side: side === "before" || side === "after" ? side : null,
        what,
        where,
        amount: numberOr(amount),
        by: typeof by === "string" ? by : null,
        ...(asRead === 1 ? { asRead: true } : {}),
      },
    ];
  });
}
