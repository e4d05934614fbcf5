// The further columns of a record by day: warmth in kelvin, wind, vapour and sun as they were read.
import type { Choices, ImportReport } from "./import-result.ts";
import type { FormatReader, Intake } from "./intake.ts";
import { kelvinOf } from "./rain-units.ts";
import type { ExtraName, SeriesLog } from "./readings.ts";

/** Hotter than any air temperature measured in Celsius (56.7, from memory): above it the unit is Fahrenheit. */
const HOTTEST_CELSIUS = 57;
const HOTTEST_FAHRENHEIT = 140;

/** The highest value that some air could have in either unit. */
function highestOf(log: SeriesLog | undefined): number {
  let most = Number.NEGATIVE_INFINITY;
  if (!log) return most;
  for (let at = 0; at < log.count; at++) {
    const value = log.value[at] ?? most;
    if (value > most && value < HOTTEST_FAHRENHEIT) most = value;
  }
  return most;
}

/** The unit of warmth: chosen, told, or guessed by size. */
export function temperatureOf(
  format: FormatReader,
  intake: Intake,
  choices: Choices,
  unit: ImportReport["unit"],
): ImportReport["temperatureUnit"] {
  const logs = [intake.extras.get("highest"), intake.extras.get("lowest")];
  if (!logs.some((log) => log?.count)) return null;
  if (choices.temperature_unit) return { value: choices.temperature_unit, told: "choice" };
  const { value, told } = format.temperature;
  if (value && told) return { value, told };
  if (format.tenthsIfWhole && unit.value === "tenth_mm" && unit.told === "format")
    return { value: "tenth_C", told: "format" };
  return { value: Math.max(...logs.map(highestOf)) > HOTTEST_CELSIUS ? "F" : "C", told: "guess" };
}

/** A further column by day: the highest of the highs, the lowest of the lows, else the mean of a day's values. */
function extraByDay(
  name: ExtraName,
  log: SeriesLog,
  first: number,
  days: number,
  toSi: (value: number) => number,
) {
  const column = new Float64Array(days).fill(Number.NaN);
  const counts = new Map<number, number>();
  for (let at = 0; at < log.count; at++) {
    const index = (log.day[at] ?? 0) - first;
    if (index < 0 || index >= days) continue;
    const value = toSi(log.value[at] ?? Number.NaN);
    const before = column[index] ?? Number.NaN;
    if (Number.isNaN(before)) column[index] = value;
    else if (name === "highest") column[index] = Math.max(before, value);
    else if (name === "lowest") column[index] = Math.min(before, value);
    else {
      const count = (counts.get(index) ?? 1) + 1;
      counts.set(index, count);
      column[index] = before + (value - before) / count;
    }
  }
  return column;
}

/** A lowest above the highest of its day is no pair of readings: both are dropped, and counted. */
function dropCrossed(highest: Float64Array | undefined, lowest: Float64Array | undefined): number {
  if (!highest || !lowest) return 0;
  let crossed = 0;
  highest.forEach((high, at) => {
    if (!((lowest[at] ?? Number.NaN) > high)) return;
    highest[at] = Number.NaN;
    lowest[at] = Number.NaN;
    crossed++;
  });
  return crossed;
}

/** Bounds of the air where anything grows [K]; codes such as -99.9 and 999.9 lie outside. */
const COLDEST_AIR = 205;
const HOTTEST_AIR = 340;

function airOrMissing(kelvin: number): number {
  return kelvin > COLDEST_AIR && kelvin < HOTTEST_AIR ? kelvin : Number.NaN;
}

export type Extras = { columns: Partial<Record<ExtraName, Float64Array>>; crossed: number };

/** The further columns by day, and how many days had their warmth crossed. */
export function extrasOf(
  intake: Intake,
  firstDay: number,
  days: number,
  unit: ImportReport["temperatureUnit"],
): Extras {
  const columns: Partial<Record<ExtraName, Float64Array>> = {};
  for (const [name, log] of intake.extras) {
    if (log.count === 0) continue;
    const warmth = name === "highest" || name === "lowest";
    const toSi = warmth
      ? (value: number) => airOrMissing(kelvinOf(value, unit?.value ?? "C"))
      : (value: number) => (value < 0 ? Number.NaN : value);
    columns[name] = extraByDay(name, log, firstDay, days, toSi);
  }
  return { columns, crossed: dropCrossed(columns.highest, columns.lowest) };
}
