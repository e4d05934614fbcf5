// The first frost of each winter that a record tells, and the day that most winters are later than.

import type { DailyRecord } from "../rainfall/record.ts";
import { calendarDate, dayNumber } from "../units/calendar.ts";
import { toSi } from "../units/unit.ts";
import { dayAtRank } from "./odds.ts";

const FREEZING = toSi(0, "degC");
/** Winters are counted from midsummer: July in the north, January in the south. */
const MIDSUMMER = { north: 7, south: 1 };
/** Any year without a 29th of February in its winter: turns days since midsummer into a date. */
const PLAIN_YEAR = 2001;

export type FirstFrosts = {
  /** Winters of which the whole or a frost is known, and those of them that froze. */
  readonly winters: number;
  readonly frozen: number;
  /** Winters in which it froze before that day. */
  readonly sooner: number;
  /** Day before which it freezes in no more than one winter in ten, `MM-DD`; null: it freezes in fewer. */
  readonly oneInTen: string | null;
};

/**
 * First days on which it froze, winter by winter.
 *
 * @param record with lowest temperatures [K]
 * @param latitude of the site, which says when winter is [rad]
 * @returns null for a record without temperatures, or without a winter
 * @source ranks k / (n + 1), Weibull 1939; that 0 degC in the air is frost is our definition: on the ground it comes sooner
 */
export function firstFrosts(record: DailyRecord, latitude: number): FirstFrosts | null {
  const { lowest, firstDay } = record;
  if (!lowest) return null;
  const month = latitude < 0 ? MIDSUMMER.south : MIDSUMMER.north;
  const from = calendarDate(firstDay).year;
  const until = calendarDate(firstDay + lowest.length - 1).year;
  const years = Array.from({ length: until - from + 1 }, (_, place) => from + place);
  const found = years.flatMap((year) => {
    const first = dayNumber(year, month, 1) - firstDay;
    const winter = winterFrom(lowest, first, dayNumber(year + 1, month, 1) - firstDay - first);
    return winter === undefined ? [] : [winter];
  });
  if (found.length === 0) return null;
  const rank = dayAtRank(found, 0.1);
  return {
    winters: found.length,
    frozen: found.filter((day) => day !== null).length,
    sooner: found.filter((day) => day !== null && rank !== null && day < rank).length,
    oneInTen: rank === null ? null : monthDay(dayNumber(PLAIN_YEAR, month, 1) + rank),
  };
}

/** Days from midsummer to the first frost; null: none came; undefined: the record does not tell. */
function winterFrom(lowest: Float64Array, first: number, length: number): number | null | undefined {
  if (first < 0) return undefined;
  for (let day = 0; day < length; day++) {
    const cold = lowest[first + day];
    if (cold === undefined || Number.isNaN(cold)) return undefined;
    if (cold < FREEZING) return day;
  }
  return null;
}

function monthDay(date: number): string {
  const { month, day } = calendarDate(date);
  return [month, day].map((part) => String(part).padStart(2, "0")).join("-");
}
