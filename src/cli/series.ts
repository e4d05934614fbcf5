// `--series`: the season's days as a table that anybody can add up, one line a day, one column a part and quantity.

import { writeFileSync } from "node:fs";
import type { DailyRecord } from "../rainfall/record.ts";
import { daySeries } from "../season/day-series.ts";
import type { SeasonInput } from "../season/input.ts";
import { supplyRecord, type Whole } from "../studies/work-out.ts";
import { isoDate } from "../units/calendar.ts";
import { FileError } from "./usage.ts";

/** The table's text: every number in full, so that sums come out to the last bit. */
function seriesText(input: SeasonInput, record: DailyRecord): string {
  const series = daySeries(input, record);
  if ("failed" in series) throw new FileError(`The days could not be worked out: ${series.failed}`);
  const { columns, firstDay } = series;
  const head = ["date", ...columns.map(({ part, name, unit }) => `${part}.${name} [${unit}]`)];
  const days = Array.from(record.rain, (_, day) => [
    isoDate(firstDay + day),
    ...columns.map(({ values }) => String(values[day] ?? 0)),
  ]);
  return [head, ...days].map((row) => `${row.join(",")}\n`).join("");
}

/** Writes the days of a worked-out worksheet. */
export function writeSeries(path: string, whole: Whole, given: readonly DailyRecord[]): void {
  const plan = whole.results.get("season.plan");
  const key = whole.results.get("weather.record_in_use");
  const records = new Map(given.map((record) => [record.key, record]));
  supplyRecord(whole.results, records);
  const record = key?.state === "ready" ? records.get(String(key.value)) : undefined;
  if (plan?.state !== "ready" || !record)
    throw new FileError("There are no days to write: the season could not be put together.");
  const text = seriesText(plan.value as SeasonInput, record);
  try {
    writeFileSync(path, text);
  } catch (error) {
    throw new FileError(
      `${path} could not be written: ${error instanceof Error ? error.message : String(error)}`,
    );
  }
}
