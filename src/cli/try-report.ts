// `--try`: the range as it was typed to values to try, and the answers beside each.

import type { Worksheet } from "../document/worksheet.ts";
import type { CardKinds, Row } from "../graph/types.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { baseOf } from "../studies/ask.ts";
import {
  coarseThenFine,
  dateTrials,
  numberTrials,
  sheetToTry,
  type Trial,
  wordTrials,
} from "../studies/try.ts";
import { type TriedPoint, tryOne } from "../studies/try-one.ts";
import { MEASURES } from "../units/measures.ts";
import { scaleBetween } from "../units/scale.ts";
import { fromSi, toSi } from "../units/unit.ts";
import type { Tried } from "./arguments.ts";
import { changeTo, findRow } from "./set-value.ts";
import { UsageError } from "./usage.ts";

type TriedReport = { readonly name: string; readonly unit: string; readonly points: readonly TriedPoint[] };

function endsOf(range: string): readonly [string, string] | null {
  const [low, high, ...more] = range.split("..").map((end) => end.trim());
  return low && high && more.length === 0 ? [low, high] : null;
}

function isCount(row: Row): boolean {
  return row.row === "given" && MEASURES[row.measure].form === "count";
}

function trialsFor(worksheet: Worksheet, kinds: CardKinds, tried: Tried): readonly Trial[] {
  const { name, range, steps } = tried;
  const { row } = findRow(worksheet, kinds, name);
  if (row.row === "choice" || row.row === "link") {
    const words = range.split(",").map((word) => word.trim());
    const changes = words.map((word) => changeTo(worksheet, kinds, name, word));
    const [first] = changes;
    if (!first) throw new UsageError(`--try ${name} wants words, comma-separated.`);
    return wordTrials(first, words);
  }
  const ends = endsOf(range);
  if (!ends) throw new UsageError(`--try ${name} wants LOW..HIGH, not "${range}".`);
  const [low, high] = ends.map((end) => changeTo(worksheet, kinds, name, end));
  if (!low?.entry || !high?.entry) throw new UsageError(`--try ${name} wants two ends.`);
  if (row.row === "date") {
    const trials = dateTrials(low, ends, steps);
    if (!trials) throw new UsageError(`--try ${name} wants two dates of one form.`);
    return trials;
  }
  const { value, unit } = low.entry;
  const top = high.entry.value;
  if (typeof value !== "number" || typeof top !== "number")
    throw new UsageError(`--try takes a number, a choice or a date; ${name} is none.`);
  const inUnit = high.entry.unit === unit ? top : fromSi(toSi(top, high.entry.unit), unit);
  return numberTrials(low, scaleBetween(value, inUnit, unit, isCount(row)), steps);
}

/** Everything that was tried, in rising order. */
export function triedReport(
  worksheet: Worksheet,
  kinds: CardKinds,
  records: readonly DailyRecord[],
  tried: Tried,
): TriedReport {
  for (const id of tried.answers) findRow(worksheet, kinds, id);
  const trials = trialsFor(worksheet, kinds, tried);
  const { row } = findRow(worksheet, kinds, tried.name);
  const sheet = trials[0] ? sheetToTry(worksheet, kinds, row, trials[0]) : worksheet;
  const base = baseOf(sheet, kinds, records);
  const options = { units: worksheet.units, locale: "en-US", currency: worksheet.currency };
  const points: TriedPoint[] = [];
  for (const at of coarseThenFine(trials.length)) {
    points[at] = tryOne(base, trials[at] as Trial, tried.answers, options);
  }
  return { name: tried.name, unit: base.whole.graph.siUnitOf(tried.name), points };
}

/** What `--json` prints of it. */
export function triedJson({ name, unit, points }: TriedReport): unknown {
  return { name, unit, points: points.map(({ value, shown, answers }) => ({ value, shown, answers })) };
}

/** The same for reading: a line a value, in columns. */
export function triedText({ name, points }: TriedReport): string {
  const head = [name, ...Object.keys(points[0]?.answers ?? {})];
  const lines = [head, ...points.map(({ shown, said }) => [shown, ...Object.values(said)])];
  const widths = head.map((_, at) => Math.max(...lines.map((line) => (line[at] ?? "").length)));
  return `${lines
    .map((line) =>
      line
        .map((cell, at) => cell.padEnd(widths[at] ?? 0))
        .join("  ")
        .trimEnd(),
    )
    .join("\n")}\n`;
}
