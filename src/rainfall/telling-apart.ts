// Rows of one moment that a column of some name tells apart: two gauges in one file, or parts of a day.

/** Answer to the question of stations by which every row counts, whatever tells them apart. */
export const ALL_ROWS = "all";

/** Moments that may have two rows by a slip: one, or this share; common practice, no source. */
const OCCASIONAL = 0.05;
const MOST_NAMES = 100;
/** A name comes again, or it is a number of the row; common practice, no source. */
const LEAST_TIMES = 3;
const HALF_OF_DAY = /^[ap]\.?m\.?$/i;

type Row = readonly string[];

const momentOf = (row: Row, columns: readonly number[]): string =>
  columns.map((column) => row[column]?.trim() ?? "").join(" ");

/** Whether moments have more than one row, more often than by a slip. */
function recurs(rows: readonly Row[], moment: readonly number[]): boolean {
  const counts = new Map<string, number>();
  for (const row of rows) {
    const key = momentOf(row, moment);
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  const several = [...counts.values()].filter((count) => count > 1).length;
  return several > Math.max(1, counts.size * OCCASIONAL);
}

/** Whether the column has few names, each coming again, and no moment has one of them twice. */
function tells(rows: readonly Row[], moment: readonly number[], column: number): boolean {
  const names = new Map<string, number>();
  const seen = new Set<string>();
  for (const row of rows) {
    const name = row[column]?.trim() ?? "";
    const key = `${momentOf(row, moment)} ${name}`;
    if (name === "" || /^\d*[.,]\d+$/.test(name) || HALF_OF_DAY.test(name) || seen.has(key)) return false;
    seen.add(key);
    names.set(name, (names.get(name) ?? 0) + 1);
    if (names.size > MOST_NAMES) return false;
  }
  return names.size > 1 && [...names.values()].every((times) => times >= LEAST_TIMES);
}

/**
 * The column that tells the rows of one moment apart, or null where none does or moments do not recur.
 *
 * @param moment columns of date and time
 * @param used columns of another use
 */
export function tellingApart(
  rows: readonly Row[],
  moment: readonly number[],
  used: readonly number[],
): number | null {
  // The last row of a piece may be cut, and a footer has other cells: they tell nothing of the table.
  const full = rows.filter((row) => moment.every((column) => /\d/.test(row[column] ?? "")));
  if (moment.length === 0 || !recurs(full, moment)) return null;
  const width = Math.max(...full.slice(0, LEAST_TIMES).map((row) => row.length));
  for (let column = 0; column < width; column++)
    if (!used.includes(column) && tells(full, moment, column)) return column;
  return null;
}
