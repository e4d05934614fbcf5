// What the command line says of a rain file: the answers to what the page would ask.

import type { Choices } from "../rainfall/import-result.ts";
import { UsageError } from "./usage.ts";

export const RAIN_HELP = `  --rain RECORD.csv      use this daily rain record instead of the worksheet's weather
  --rain-unit mm|in      unit of its rain, where the file does not say
  --rain-column NAME     which of its columns is the rain
  --rain-station NAME    which of its stations
  --rain-dates dmy|mdy   whether day or month comes first in its dates
  --rain-rows day|within-day|running|counter
                         what a row says: its whole day, an amount within the day, the day's total so far, a counter
  --rain-fill dry|made-up
                         missing days had no rain, or are made up after the record's own months`;

export const RAIN_OPTIONS = {
  rain: { type: "string" },
  "rain-unit": { type: "string" },
  "rain-column": { type: "string" },
  "rain-station": { type: "string" },
  "rain-dates": { type: "string" },
  "rain-rows": { type: "string" },
  "rain-fill": { type: "string" },
} as const;

export type RainWanted = {
  readonly path: string;
  readonly choices: Choices;
  readonly fill: "dry" | "made-up" | null;
};

/** The word of the command line for each reading of the rows. */
export const ROW_WORDS = {
  day: "day",
  sum: "within-day",
  running_total: "running",
  counter: "counter",
} as const;

type Values = { readonly [Option in keyof typeof RAIN_OPTIONS]?: string | undefined };

function oneOf<Word extends string>(
  values: Values,
  option: keyof Values,
  words: readonly Word[],
): Word | null {
  const said = values[option];
  if (said === undefined) return null;
  const word = words.find((each) => each === said);
  if (!word) throw new UsageError(`--${option} is ${words.join(" or ")}, not "${said}".`);
  return word;
}

function rowsOf(values: Values): Choices["within_day"] {
  const said = oneOf(values, "rain-rows", Object.values(ROW_WORDS));
  return (Object.keys(ROW_WORDS) as (keyof typeof ROW_WORDS)[]).find((id) => ROW_WORDS[id] === said);
}

/** What is wanted of a rain file, or null where none is named. */
export function rainOf(values: Values): RainWanted | null {
  const extra = (Object.keys(RAIN_OPTIONS) as (keyof Values)[]).find(
    (option) => option !== "rain" && values[option] !== undefined,
  );
  if (values.rain === undefined) {
    if (extra) throw new UsageError(`--${extra} goes with --rain.`);
    return null;
  }
  const unit = oneOf(values, "rain-unit", ["mm", "in"]);
  const dates = oneOf(values, "rain-dates", ["dmy", "mdy"]);
  const rows = rowsOf(values);
  const fill = oneOf(values, "rain-fill", ["dry", "made-up"]);
  const { "rain-column": column, "rain-station": station } = values;
  return {
    path: values.rain,
    fill,
    choices: {
      ...(unit ? { unit } : {}),
      ...(dates ? { date_order: dates } : {}),
      ...(rows ? { within_day: rows } : {}),
      ...(column === undefined ? {} : { rain_column: column }),
      ...(station === undefined ? {} : { station }),
      ...(fill ? { absent: fill === "dry" ? "dry" : "missing" } : {}),
    },
  };
}
