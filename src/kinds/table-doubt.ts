// How doubtful a number of a reference table is: its own low and high, or those of a line of the table's doubts.

export type TableEntry = Readonly<Record<string, unknown>>;

type Pair = readonly [low: number, high: number];

/** A line of a table's doubts. One of the last four: factors, differences in the number's unit, a low and a high, or why it is exact. */
export type DoubtLine = {
  readonly of: readonly string[];
  readonly source?: string;
  readonly status?: string;
  readonly times?: Pair;
  readonly more?: Pair;
  readonly between?: Pair;
  readonly exact?: string;
};

/**
 * A reference table, or the parts of it that are wanted: a whole one would come to the page with all its notes. A test
 * holds its lines of doubts to the shape.
 */
export type DoubtfulTable = { readonly doubts?: readonly object[]; readonly [part: string]: unknown };

/** A pair of numbers under `value` is a low and a high by itself. */
export const isPair = ({ value }: TableEntry): boolean => Array.isArray(value) && value.length === 2;

/** Whether a line's pattern is about the number at that way: `*` is any one word, `**` any words. */
export function isAbout(way: string, pattern: string): boolean {
  const text = pattern
    .replaceAll(/[.+?^${}()|[\]\\]/g, "\\$&")
    .replaceAll("**", "\0")
    .replaceAll("*", "[^.]*(?:\\.\\d[^.]*)?")
    .replaceAll("\0", ".*");
  return new RegExp(`^${text}$`).test(way);
}

export const doubtLine = (table: DoubtfulTable, way: string): DoubtLine | undefined =>
  (table.doubts as readonly DoubtLine[] | undefined)?.find(({ of }) =>
    of.some((pattern) => isAbout(way, pattern)),
  );

/**
 * Low and high of one number of a table, in its unit, or why it is exact; null where the table does not say.
 *
 * @param way words that lead to the entry, joined by points
 */
export function tableBounds(
  table: DoubtfulTable,
  way: string,
  entry: TableEntry,
  value: number,
): Pair | string | null {
  if (Array.isArray(entry["range"])) return entry["range"] as unknown as Pair;
  if (isPair(entry)) return entry["value"] as Pair;
  const line = doubtLine(table, way);
  if (line?.times) return [value * line.times[0], value * line.times[1]];
  if (line?.more) return [value + line.more[0], value + line.more[1]];
  return line?.between ?? line?.exact ?? null;
}

/** Between which ends a number of a table may lie; `key` is the same for whoever takes it from there. */
export type Spread = {
  readonly key: string;
  readonly low: number;
  readonly high: number;
  readonly unit: string;
};

function at(node: unknown, word: string): unknown {
  if (Array.isArray(node)) return node.find((each) => (each as TableEntry)["word"] === word);
  return typeof node === "object" && node !== null ? (node as TableEntry)[word] : undefined;
}

/** The spread of the number that stands at a way of a table; null where none stands there or it is exact. */
export function tableSpread(name: string, table: DoubtfulTable, way: string): Spread | null {
  const entry = way.split(".").reduce<unknown>(at, table) as TableEntry | undefined;
  const value = entry?.["value"];
  if (!entry || typeof value !== "number") return null;
  const bounds = tableBounds(table, way, entry, value);
  if (bounds === null || typeof bounds === "string") return null;
  const unit = typeof entry["unit"] === "string" ? entry["unit"] : "1";
  return { key: `${name}.${way}`, low: bounds[0], high: bounds[1], unit };
}
