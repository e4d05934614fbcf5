// What a bed needs, worked out over the record with water never short.

import { all, failedBy, outcomes } from "../../graph/outcomes.ts";
import { numberOf, recordOf, wordOf } from "../../graph/readers.ts";
import type { Model, ModelInput, Outputs } from "../../graph/types.ts";
import { type AtOnce, atOnce } from "../../season/at-once.ts";
import { dailyEto } from "../../season/daily-eto.ts";
import { type BedDemand, bedDemand } from "../../season/demand.ts";
import type { EtoChoice } from "../../season/input.ts";
import { skyOf } from "../../season/sky.ts";
import { BED_ROWS } from "./rows.ts";
import { bedPart } from "./season-part.ts";
import { throughYear } from "./year.ts";

const NEEDS = [
  "peak_day_need",
  "easy_depth",
  "easy_volume",
  "watering_volume",
  "watering_interval",
  "asked_volume",
  "asked_interval",
  "through_year",
  "no_need_why",
] as const;

function demandOf(input: ModelInput): Outputs {
  const part = bedPart("", input.results);
  if ("reason" in part) return all(NEEDS, failedBy(part));
  const season = { start: wordOf(input, "site.season_start"), end: wordOf(input, "site.season_end") };
  const record = recordOf(input);
  const drying = dailyEto(record, input.values["weather.eto_choice"] as EtoChoice);
  if ("failed" in drying) return all(NEEDS, drying);
  const { eto } = drying;
  const scale = numberOf(input, "weather.rain_scale");
  const demand = bedDemand(part, season, record, eto, scale);
  if ("none" in demand) return { ...all(NEEDS, demand), no_need_why: { value: demand.none } };
  return {
    ...needsOf(demand, atOnce(part, season, skyOf(record, eto, scale), demand)),
    through_year: { value: throughYear(part, { firstDay: record.firstDay, eto }, demand) },
    no_need_why: { none: "it needs water" },
  };
}

const needsOf = (demand: BedDemand, asked: AtOnce): Outputs =>
  outcomes({
    peak_day_need: demand.peakDayNeed,
    easy_depth: demand.easyDepth,
    easy_volume: demand.easyVolume,
    watering_volume: demand.wateringVolume,
    watering_interval: demand.wateringInterval,
    asked_volume: asked.volume,
    asked_interval: asked.interval,
  });

/** Need of the bed, by its crops, soil and cover. */
export const demand: Model = {
  name: "demand",
  takes: [
    ...BED_ROWS,
    "weather.record_in_use",
    "weather.eto_choice",
    "weather.rain_scale",
    "site.season_start",
    "site.season_end",
  ],
  optional: ["watered_by", "let_go_from"],
  record: "weather.record_in_use",
  outputs: NEEDS,
  run: demandOf,
};
