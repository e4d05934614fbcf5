// Which record is used, what it says of its years, and how fast things dry.

import panTable from "../../../shared/pans.json";
import { all, outcomes, valueOr } from "../../graph/outcomes.ts";
import { isReady, numberOf, recordOf, wordOf, wordOrNull } from "../../graph/readers.ts";
import type { Model, ModelInput, Outputs } from "../../graph/types.ts";
import type { DailyRecord } from "../../rainfall/record.ts";
import { recordSummary } from "../../rainfall/statistics.ts";
import { dailyEto } from "../../season/daily-eto.ts";
import type { EtoChoice } from "../../season/input.ts";
import { meanYearlyEto, peakDayEto } from "../../season/weather-years.ts";
import { isoDate } from "../../units/calendar.ts";
import { NO_YEAR, ONE_YEAR } from "../none-said.ts";

/** Normals of no real place: a mild, rather dry summer. Marked as made up wherever they are used. */
export const USUAL_RAIN = [70, 55, 60, 50, 55, 50, 35, 35, 50, 70, 80, 80];
export const USUAL_WET_DAYS = [13, 11, 12, 11, 11, 10, 7, 7, 9, 12, 14, 14];
export const USUAL_HIGHS = [6, 8, 11, 15, 19, 23, 26, 26, 22, 16, 10, 7];
export const USUAL_LOWS = [0, 0, 2, 5, 9, 12, 14, 14, 10, 6, 3, 1];

export const chooseRecord: Model = {
  name: "choose",
  takes: ["record", "normal_rain", "normal_wet_days", "normal_highs", "normal_lows", "years", "seed"],
  tolerant: true,
  outputs: ["record_in_use", "record_kind"],
  run: (input) => {
    const own = wordOrNull(input, "record");
    if (own) return outcomes({ record_in_use: own, record_kind: "a record of yours" });
    const names = ["normal_rain", "normal_wet_days", "normal_highs", "normal_lows", "years", "seed"];
    const missing = names.find((name) => !isReady(input.results[name]));
    if (missing)
      return all(["record_in_use", "record_kind"], {
        failed: "There is neither a rain record nor twelve monthly figures to make one up from.",
      });
    const [rain, wetDays, highs, lows, years, seed] = names.map((name) => input.values[name]);
    const key = `normals:${JSON.stringify({ rain, wetDays, highs, lows, years, seed })}`;
    return outcomes({ record_in_use: key, record_kind: "made up from monthly figures" });
  },
};

const YEAR_ROWS = [
  "days",
  "first_day",
  "last_day",
  "mean_yearly_rain",
  "whole_years",
  "driest_year",
  "driest_year_rain",
  "longest_dry_run",
  "dry_run_from",
  "missing_days",
] as const;

function yearsOf(record: DailyRecord, scale: number): Outputs {
  const summary = recordSummary(record, scale);
  const dry = summary.longestDryRun;
  const isOne = summary.wholeYears.length === 1;
  const years = outcomes(
    {
      days: summary.days,
      first_day: isoDate(record.firstDay),
      last_day: isoDate(record.firstDay + record.rain.length - 1),
      whole_years: summary.wholeYears.length,
      mean_yearly_rain: summary.meanYearlyRain,
      driest_year: isOne ? null : summary.driestYear,
      driest_year_rain: isOne ? null : summary.driestYearRain,
      longest_dry_run: dry ? dry.days : null,
      dry_run_from: dry ? isoDate(dry.first) : null,
      missing_days: summary.missingDays,
    },
    NO_YEAR,
  );
  return isOne ? { ...years, driest_year: { none: ONE_YEAR }, driest_year_rain: { none: ONE_YEAR } } : years;
}

export const recordYears: Model = {
  name: "years_of_record",
  takes: ["record_in_use", "rain_scale"],
  record: "record_in_use",
  outputs: YEAR_ROWS,
  run: (input) => yearsOf(recordOf(input), numberOf(input, "rain_scale")),
};

const ETO_ROWS = [
  "daily_eto",
  "eto_choice",
  "eto_method",
  "days_from_normals",
  "mean_yearly_eto",
  "peak_day_eto",
] as const;

/** What ran, in a grower's words; the trade's names stand with the source. */
const METHODS: Readonly<Record<EtoChoice["method"], string>> = {
  monthly: "your monthly figures",
  penman_monteith: "warmth with wind, damp or sun",
  hargreaves: "warmth alone",
};

const OF_NORMALS = "the monthly warm and cold figures below";

function methodFor(record: DailyRecord, wish: string): EtoChoice["method"] {
  if (wish !== "record") return "monthly";
  if (!record.highest || !record.lowest) return "hargreaves";
  return record.wind || record.vapour || record.sun ? "penman_monteith" : "hargreaves";
}

/** Twelve rates [m/s] of the user's, none where the record is asked; or what is missing. */
function monthlyRates(input: ModelInput): readonly number[] | null | string {
  const from = wordOf(input, "eto_from");
  if (from === "record") return null;
  const rates = input.values[from === "pan" ? "pan_readings" : "monthly_eto"];
  if (!Array.isArray(rates))
    return from === "pan"
      ? "Give the twelve monthly readings of the pan first."
      : "Give the twelve monthly figures first.";
  const factor = from === "pan" ? numberOf(input, "pan_coefficient") : 1;
  return rates.map((rate) => Number(rate) * factor);
}

/** The twelve warm and cold figures [K], where both are whole. */
function normalsOf(input: ModelInput): EtoChoice["normals"] {
  const [highest, lowest] = [input.values["normal_highs"], input.values["normal_lows"]];
  if (!(Array.isArray(highest) && Array.isArray(lowest))) return null;
  return { highest: highest.map(Number), lowest: lowest.map(Number) };
}

/** What ran, and on how many days the monthly figures stood in for what the record lacks. */
function saidOf(method: EtoChoice["method"], record: DailyRecord, fromNormals: number): string {
  if (fromNormals === 0) return METHODS[method];
  if (fromNormals === record.rain.length) return OF_NORMALS;
  return `${METHODS[method]}; on ${fromNormals} of ${record.rain.length} days ${OF_NORMALS}`;
}

function etoOf(input: ModelInput, record: DailyRecord): Outputs {
  const method = methodFor(record, wordOf(input, "eto_from"));
  const monthly = monthlyRates(input);
  if (typeof monthly === "string") return all(ETO_ROWS, { failed: monthly });
  const choice: EtoChoice = {
    method,
    latitude: numberOf(input, "site.latitude"),
    elevation: numberOf(input, "site.elevation"),
    months: method === "monthly" ? monthly : null,
    factor: numberOf(input, "eto_factor"),
    normals: method === "monthly" ? null : normalsOf(input),
  };
  const answer = dailyEto(record, choice);
  if ("failed" in answer) return all(ETO_ROWS, answer);
  const season = { start: wordOf(input, "site.season_start"), end: wordOf(input, "site.season_end") };
  const told = {
    daily_eto: answer.eto,
    eto_choice: choice,
    eto_method: wordOf(input, "eto_from") === "pan" ? "your pan" : saidOf(method, record, answer.fromNormals),
    days_from_normals: answer.fromNormals,
    peak_day_eto: peakDayEto(answer.eto, record.firstDay, season),
  };
  return {
    ...outcomes(told, "the record has no whole season"),
    mean_yearly_eto: valueOr(meanYearlyEto(answer.eto, record.firstDay), NO_YEAR),
  };
}

export const drying: Model = {
  name: "drying",
  takes: [
    "record_in_use",
    "eto_from",
    "monthly_eto",
    "pan_readings",
    "pan_coefficient",
    "eto_factor",
    "normal_highs",
    "normal_lows",
    "site.latitude",
    "site.elevation",
    "site.season_start",
    "site.season_end",
  ],
  optional: ["monthly_eto", "pan_readings", "normal_highs", "normal_lows"],
  record: "record_in_use",
  outputs: ETO_ROWS,
  run: (input) => etoOf(input, recordOf(input)),
};

const PANS: Readonly<Record<string, Readonly<Record<string, string | { readonly value: number }>>>> =
  panTable.pans;

/** The coefficient of the tables for where the pan stands and how damp the air is. */
export const pan: Model = {
  name: "pan",
  takes: ["pan_place", "pan_damp"],
  outputs: ["pan_usual"],
  run: (input) => {
    const listed = PANS[wordOf(input, "pan_place")]?.[wordOf(input, "pan_damp")];
    return typeof listed === "object"
      ? { pan_usual: { value: listed.value } }
      : { pan_usual: { failed: "No table has a pan that stands so." } };
  },
};

/** Labels of where a pan may stand. */
export const PAN_PLACES: Readonly<Record<string, string>> = Object.fromEntries(
  Object.entries(panTable.pans).map(([word, { label }]) => [word, label]),
);
