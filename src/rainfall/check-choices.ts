// What the user says of a file, looked at before it is believed: it comes from fields that are typed into.

import * as z from "zod/mini";
import { parseIsoDate } from "../units/calendar.ts";
import { type Choices, type GaugeChoices, Refusal } from "./import-result.ts";

// The checker would otherwise probe for compiling code at run time, which the page's policy forbids and reports.
z.config({ jitless: true });

const LONGEST_NAME = 200;
const MOST_CODES = 20;
const FIRST_YEAR = 1600;
const LAST_YEAR = 2200;
const MOST_SHIFT = 1;

const name = z.string().check(z.minLength(1), z.maxLength(LONGEST_NAME));
const order = z.enum(["dmy", "mdy"]);
const unit = z.enum(["mm", "in", "cm", "tenth_mm", "hundredth_in"]);

const choicesShape = z.object({
  unit: z.exactOptional(unit),
  date_order: z.exactOptional(order),
  date_column: z.exactOptional(name),
  rain_column: z.exactOptional(name),
  highest_column: z.exactOptional(name),
  lowest_column: z.exactOptional(name),
  temperature_unit: z.exactOptional(z.enum(["C", "F", "tenth_C"])),
  station: z.exactOptional(name),
  first_day: z.exactOptional(z.string().check(z.refine((text) => parseIsoDate(text) !== null))),
  duplicates: z.exactOptional(z.enum(["keep_last", "keep_first", "sum"])),
  multi_day: z.exactOptional(z.enum(["spread", "last_day"])),
  within_day: z.exactOptional(z.enum(["day", "sum", "running_total", "counter"])),
  absent: z.exactOptional(z.enum(["dry", "missing"])),
  day_shift: z.exactOptional(z.int().check(z.minimum(-MOST_SHIFT), z.maximum(MOST_SHIFT))),
  flagged: z.exactOptional(z.enum(["keep", "drop"])),
  minus_one: z.exactOptional(z.enum(["trace", "missing"])),
  missing_codes: z.exactOptional(z.array(z.number()).check(z.maxLength(MOST_CODES))),
});

const gaugeShape = z.object({
  unit: z.exactOptional(unit),
  year: z.exactOptional(z.int().check(z.minimum(FIRST_YEAR), z.maximum(LAST_YEAR))),
  date_order: z.exactOptional(order),
  between: z.exactOptional(z.enum(["zero", "missing"])),
  title: z.exactOptional(name),
});

const WORDS: Readonly<Record<string, string>> = {
  first_day: "The first day is written year, month, day, such as 2024-03-12.",
  year: `The year is a whole number from ${FIRST_YEAR} to ${LAST_YEAR}.`,
  day_shift: "A reading belongs to its own day, the day before or the day after.",
  missing_codes: `At most ${MOST_CODES} numbers can stand for a missing value.`,
};

function checked<T>(
  read:
    | { success: true; data: T }
    | { success: false; error: { issues: readonly { path: PropertyKey[] }[] } },
): T {
  if (read.success) return read.data;
  const at = String(read.error.issues[0]?.path[0] ?? "");
  throw new Refusal(WORDS[at] ?? `What was chosen for "${at}" is none of the answers.`, null);
}

/**
 * Choices for a file, as they may be believed.
 *
 * @throws Refusal with a sentence about the first one that is no answer
 */
export const checkedChoices = (choices: Choices): Choices => checked(choicesShape.safeParse(choices));

/**
 * Choices for readings of one's own gauge.
 *
 * @throws Refusal with a sentence about the first one that is no answer
 */
export const checkedGaugeChoices = (choices: GaugeChoices): GaugeChoices =>
  checked(gaugeShape.safeParse(choices));
