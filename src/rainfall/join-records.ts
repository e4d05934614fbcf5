// Two records to one: where both have a day the preferred one's reading stands; days between them stay missing.
import type { DailyRecord } from "./record.ts";
import { makeRecord } from "./record-key.ts";

export type JoinedRecord = {
  readonly record: DailyRecord;
  /** Days on which both have rain, and on which they differ by more than a tenth of a millimetre. */
  readonly bothDays: number;
  readonly differingDays: number;
  /** Days between the two that neither covers. */
  readonly daysBetween: number;
};

type Column = "rain" | "highest" | "lowest" | "wind" | "vapour" | "sun";

const COLUMNS: readonly Column[] = ["highest", "lowest", "wind", "vapour", "sun"];
/** Two gauges that read alike to this agree [m]. */
const SAME_READING = 1e-4;
/** Longer than any record [days]; two dates so far apart are a misreading. */
const LONGEST_RECORD = 150_000;

function joinedColumn(
  column: Column,
  first: DailyRecord,
  second: DailyRecord,
  from: number,
  days: number,
): Float64Array {
  const values = new Float64Array(days).fill(Number.NaN);
  for (const record of [second, first]) {
    record[column]?.forEach((value, at) => {
      if (!Number.isNaN(value)) values[record.firstDay - from + at] = value;
    });
  }
  return values;
}

function overlap(first: DailyRecord, second: DailyRecord): { both: number; differing: number } {
  let [both, differing] = [0, 0];
  first.rain.forEach((value, at) => {
    const other = second.rain[first.firstDay + at - second.firstDay] ?? Number.NaN;
    if (Number.isNaN(value) || Number.isNaN(other)) return;
    both++;
    if (Math.abs(value - other) > SAME_READING) differing++;
  });
  return { both, differing };
}

/**
 * Joins two records.
 * @param preferred its readings stand where both have one
 * @param other fills the days that the preferred one lacks
 * @throws RangeError when the two lie so far apart that one of them is misdated
 */
export function joinRecords(preferred: DailyRecord, other: DailyRecord): JoinedRecord {
  const from = Math.min(preferred.firstDay, other.firstDay);
  const [endA, endB] = [preferred, other].map((record) => record.firstDay + record.rain.length);
  const end = Math.max(endA ?? from, endB ?? from);
  if (end - from > LONGEST_RECORD)
    throw new RangeError("The two records lie more than 400 years apart; one of them is misdated.");
  const columns: Partial<Record<Column, Float64Array>> = {};
  for (const column of COLUMNS) {
    if (preferred[column] || other[column])
      columns[column] = joinedColumn(column, preferred, other, from, end - from);
  }
  const { both, differing } = overlap(preferred, other);
  const later = Math.max(preferred.firstDay, other.firstDay);
  const record = makeRecord({
    title: `${preferred.title} and ${other.title}`,
    source: `${preferred.source}; days that it lacks from: ${other.source}`,
    madeUp: preferred.madeUp || other.madeUp,
    firstDay: from,
    rain: joinedColumn("rain", preferred, other, from, end - from),
    ...columns,
  });
  return {
    record,
    bothDays: both,
    differingDays: differing,
    daysBetween: Math.max(0, later - Math.min(endA ?? later, endB ?? later)),
  };
}
