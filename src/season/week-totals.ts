// What the lines of a bed's week come to, and what they leave wanting.

import type { DayLine, Refusal } from "./day-lines.ts";

export type Plan = { readonly lines: readonly DayLine[]; readonly refused: readonly Refusal[] };

/** Whether a bed gets what it asks for in the week; late: all of it, but not each time when it asks. */
export type Outlook = "asks_nothing" | "all" | "late" | "some" | "none";

type Totals = { readonly asked: number; readonly given: number; readonly outlook: Outlook };

/**
 * The week of one bed.
 *
 * @param byCalendar each of its waterings is due by itself; else what was not given is asked for again with the next
 * @returns volumes [m3]
 */
export function totalsOf({ lines, refused }: Plan, byCalendar: boolean): Totals {
  const given = lines.reduce((sum, { volume }) => sum + volume, 0);
  const wanting = [
    ...lines.map(({ day, asked, volume, why }) => ({ day, left: why === null ? 0 : asked - volume })),
    ...refused.map(({ day, asked }) => ({ day, left: asked })),
  ].sort((a, b) => a.day - b.day);
  const left = byCalendar
    ? wanting.reduce((sum, one) => sum + one.left, 0)
    : (wanting[wanting.length - 1]?.left ?? 0);
  const isLate = wanting.some((one) => one.left > 0);
  return { asked: given + left, given, outlook: outlookOf(given, left, isLate) };
}

function outlookOf(given: number, left: number, isLate: boolean): Outlook {
  if (left > 0) return given > 0 ? "some" : "none";
  if (given === 0) return "asks_nothing";
  return isLate ? "late" : "all";
}
