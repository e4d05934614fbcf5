// Which record is used, what it says of its years, and how fast things dry.

import type { Model, ModelInput, Outputs } from "../graph/types.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { recordSummary } from "../rainfall/statistics.ts";
import { dailyEto } from "../season/daily-eto.ts";
import type { EtoChoice } from "../season/plan.ts";
import { meanYearlyEto, peakDayEto } from "../season/weather-years.ts";
import { isoDate } from "../units/calendar.ts";
import { all, numberOf, outcomes, recordOf, wordOf, wordOrNull } from "./inputs.ts";

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
    const missing = names.find((name) => input.results[name]?.state !== "ready");
    if (missing)
      return all(["record_in_use", "record_kind"], {
        failed: "There is neither a rain record nor twelve normals to make one up from.",
      });
    const [rain, wetDays, highs, lows, years, seed] = names.map((name) => input.values[name]);
    const key = `normals:${JSON.stringify({ rain, wetDays, highs, lows, years, seed })}`;
    return outcomes({ record_in_use: key, record_kind: "made up from twelve normals" });
  },
};

const YEAR_ROWS = [
  "days",
  "first_day",
  "last_day",
  "mean_yearly_rain",
  "driest_year",
  "driest_year_rain",
  "longest_dry_run",
  "dry_run_from",
  "missing_days",
] as const;

function yearsOf(record: DailyRecord, scale: number): Outputs {
  const summary = recordSummary(record, scale);
  const dry = summary.longestDryRun;
  return outcomes(
    {
      days: summary.days,
      first_day: isoDate(record.firstDay),
      last_day: isoDate(record.firstDay + record.rain.length - 1),
      mean_yearly_rain: summary.meanYearlyRain,
      driest_year: summary.driestYear,
      driest_year_rain: summary.driestYearRain,
      longest_dry_run: dry ? dry.days : null,
      dry_run_from: dry ? isoDate(dry.first) : null,
      missing_days: summary.missingDays,
    },
    "the record has no whole calendar year",
  );
}

export const recordYears: Model = {
  name: "years_of_record",
  takes: ["record_in_use", "rain_scale"],
  record: "record_in_use",
  outputs: YEAR_ROWS,
  run: (input) => yearsOf(recordOf(input), numberOf(input, "rain_scale")),
};

const ETO_ROWS = ["daily_eto", "eto_choice", "eto_method", "mean_yearly_eto", "peak_day_eto"] as const;

const METHODS: Readonly<Record<EtoChoice["method"], string>> = {
  monthly: "your monthly figures",
  penman_monteith: "FAO Penman-Monteith",
  hargreaves: "Hargreaves, from temperatures alone",
};

function methodFor(record: DailyRecord, wish: string): EtoChoice["method"] | null {
  if (wish === "monthly") return "monthly";
  if (!record.highest || !record.lowest) return null;
  return record.wind || record.vapour || record.sun ? "penman_monteith" : "hargreaves";
}

function etoOf(input: ModelInput, record: DailyRecord): Outputs {
  const method = methodFor(record, wordOf(input, "eto_from"));
  if (!method) {
    return all(ETO_ROWS, {
      failed:
        "The record has no temperatures, so drying cannot be worked out: give monthly figures, or a record with temperatures.",
    });
  }
  const monthly = input.values["monthly_eto"];
  if (method === "monthly" && !Array.isArray(monthly))
    return all(ETO_ROWS, { failed: "Give the twelve monthly figures first." });
  const choice: EtoChoice = {
    method,
    latitude: numberOf(input, "site.latitude"),
    elevation: numberOf(input, "site.elevation"),
    months: method === "monthly" ? (monthly as number[]) : null,
    factor: numberOf(input, "eto_factor"),
    normals: null,
  };
  const answer = dailyEto(record, choice);
  if ("failed" in answer) return all(ETO_ROWS, answer);
  const season = { start: wordOf(input, "site.season_start"), end: wordOf(input, "site.season_end") };
  return outcomes(
    {
      daily_eto: answer.eto,
      eto_choice: choice,
      eto_method: METHODS[method],
      mean_yearly_eto: meanYearlyEto(answer.eto, record.firstDay),
      peak_day_eto: peakDayEto(answer.eto, record.firstDay, season),
    },
    "the record has no whole season",
  );
}

export const drying: Model = {
  name: "drying",
  takes: [
    "record_in_use",
    "eto_from",
    "monthly_eto",
    "eto_factor",
    "site.latitude",
    "site.elevation",
    "site.season_start",
    "site.season_end",
  ],
  optional: ["monthly_eto"],
  record: "record_in_use",
  outputs: ETO_ROWS,
  run: (input) => etoOf(input, recordOf(input)),
};
