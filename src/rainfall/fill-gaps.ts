// Missing days filled by the user's word and never otherwise; the record says what was filled, and how.
import { calendarDate } from "../units/calendar.ts";
import { fitNormals } from "./fit-normals.ts";
import type { Run } from "./import-result.ts";
import { recordFromNormals } from "./made-up.ts";
import type { DailyRecord } from "./record.ts";
import { makeRecord } from "./record-key.ts";

export type GapFilling =
  | { readonly kind: "missing" }
  | { readonly kind: "zero" }
  | { readonly kind: "month_mean" }
  /** Made-up weather that is fitted to the record itself. */
  | { readonly kind: "made_up" }
  | { readonly kind: "record"; readonly other: DailyRecord };

export type FilledRecord = {
  readonly record: DailyRecord;
  /** Missing days, of rain where rain is among what is filled, that were filled, and that stay. */
  readonly filled: number;
  readonly left: number;
  readonly note: string;
};

type Column = "rain" | "highest" | "lowest" | "wind" | "vapour" | "sun";

const COLUMNS: readonly Column[] = ["rain", "highest", "lowest", "wind", "vapour", "sun"];

/** What can be filled by itself: the rain, or what drying is worked out from. */
export const FILLED = { rain: ["rain"], drying: ["highest", "lowest", "wind", "vapour", "sun"] } as const;

/** Mean of the days of each calendar month that have a reading; NaN for a month without any. */
function monthMeans(values: Float64Array, firstDay: number): readonly number[] {
  const sums = Array.from({ length: 12 }, () => ({ sum: 0, count: 0 }));
  values.forEach((value, at) => {
    const month = sums[calendarDate(firstDay + at).month - 1];
    if (!month || Number.isNaN(value)) return;
    month.sum += value;
    month.count++;
  });
  return sums.map(({ sum, count }) => (count ? sum / count : Number.NaN));
}

type Filler = (column: Column, values: Float64Array, at: number) => number;

/** Seed of the weather that fills gaps: any will do, and the same record is always filled alike. */
const SEED = 1;

/** Weather made up from what the record's own months tell, over its days. */
function madeUpLike(record: DailyRecord): DailyRecord {
  const firstYear = calendarDate(record.firstDay).year;
  const years = calendarDate(record.firstDay + record.rain.length - 1).year - firstYear + 1;
  return recordFromNormals({ ...fitNormals(record), firstYear, years, seed: SEED });
}

function fillerOf(record: DailyRecord, how: GapFilling): Filler {
  if (how.kind === "made_up") return fillerOf(record, { kind: "record", other: madeUpLike(record) });
  if (how.kind === "zero") return (column) => (column === "rain" ? 0 : Number.NaN);
  if (how.kind === "record") {
    const { other } = how;
    return (column, _values, at) => other[column]?.[record.firstDay + at - other.firstDay] ?? Number.NaN;
  }
  if (how.kind === "missing") return () => Number.NaN;
  const means = new Map<Column, readonly number[]>();
  return (column, values, at) => {
    const known = means.get(column) ?? monthMeans(values, record.firstDay);
    means.set(column, known);
    return known[calendarDate(record.firstDay + at).month - 1] ?? Number.NaN;
  };
}

function wordsOf(how: GapFilling, isRain: boolean): string {
  if (how.kind === "zero") return "taken as days without rain";
  if (how.kind === "made_up") return "made up after the record's own months";
  if (how.kind === "month_mean")
    return `given the mean of their month${isRain ? ", which is drizzle no month has" : ""}`;
  return how.kind === "record" ? `taken from "${how.other.title}"` : "left missing";
}

function isIn(spans: readonly Run[] | null, day: number): boolean {
  return spans === null || spans.some((span) => day >= span.first && day <= span.last);
}

/**
 * A record with its missing days filled in one way; readings that are there stay.
 * @param record the record with gaps
 * @param how what stands in for a missing day; zero fills rain alone
 * @param spans only these runs of days; all gaps if null
 * @param which only these columns; the days of the first of them are counted
 */
export function fillGaps(
  record: DailyRecord,
  how: GapFilling,
  spans: readonly Run[] | null = null,
  which: readonly Column[] = COLUMNS,
): FilledRecord {
  const filler = fillerOf(record, how);
  const columns: Partial<Record<Column, Float64Array>> = {};
  let [filled, left] = [0, 0];
  for (const column of COLUMNS) {
    const values = record[column];
    if (!values) continue;
    columns[column] = values.map((value, at) => {
      if (!Number.isNaN(value) || !which.includes(column)) return value;
      const standIn = isIn(spans, record.firstDay + at) ? filler(column, values, at) : Number.NaN;
      if (column === which[0]) Number.isNaN(standIn) ? left++ : filled++;
      return standIn;
    });
  }
  const isRain = which[0] === "rain";
  const days = filled === 1 ? "day" : "days";
  const note = `${filled} ${isRain ? `missing ${days}` : `${days} without warmth`} ${wordsOf(how, isRain)}`;
  const madeUp =
    record.madeUp || (filled > 0 && (how.kind === "made_up" || (how.kind === "record" && how.other.madeUp)));
  const source = filled ? `${record.source}; ${note}` : record.source;
  const { title, firstDay, rain } = record;
  return { record: makeRecord({ title, firstDay, rain, ...columns, madeUp, source }), filled, left, note };
}
