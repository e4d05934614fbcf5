// What a bed needs, worked out over the record with water never short; and the share of it that is wetted.

import type { Model, ModelInput, Outputs } from "../graph/types.ts";
import { bedDemand } from "../season/demand.ts";
import { bedPart, failedBy } from "./bed-part.ts";
import { all, numberOf, outcomes, recordOf, seriesOf, wordOf } from "./inputs.ts";

/** What the demand of a bed is worked out from; the plan of the season reads the same rows. */
export const BED_ROWS = [
  "area",
  "contents",
  "watered_share",
  "soil",
  "root_depth",
  "cover",
  "cover_factor",
  "mulch",
  "efficiency",
  "watered_by",
  "priority",
  "rule",
  "fixed_volume",
  "fixed_every",
] as const;

const NEEDS = [
  "peak_day_need",
  "season_need",
  "watering_volume",
  "watering_interval",
  "potential_use",
] as const;

function demandOf(input: ModelInput): Outputs {
  const part = bedPart("", input.results);
  if ("reason" in part) return all(NEEDS, failedBy(part));
  const season = { start: wordOf(input, "site.season_start"), end: wordOf(input, "site.season_end") };
  const demand = bedDemand(
    part,
    season,
    recordOf(input),
    seriesOf(input, "weather.daily_eto"),
    numberOf(input, "weather.rain_scale"),
  );
  if ("none" in demand) return all(NEEDS, demand);
  return outcomes({
    peak_day_need: demand.peakDayNeed,
    season_need: demand.seasonNeed,
    watering_volume: demand.wateringVolume,
    watering_interval: demand.wateringInterval,
    potential_use: demand.potential,
  });
}

/** Need of the bed, by its crops, soil and cover. */
export const demand: Model = {
  name: "demand",
  takes: [
    ...BED_ROWS,
    "weather.record_in_use",
    "weather.daily_eto",
    "weather.rain_scale",
    "site.season_start",
    "site.season_end",
  ],
  optional: ["watered_by"],
  record: "weather.record_in_use",
  outputs: NEEDS,
  run: demandOf,
};

/** Spots times plants over the bed, or the share given. */
export const wetting: Model = {
  name: "wetting",
  takes: ["wetted_share", "plant_count", "spot_area", "area"],
  optional: ["plant_count", "spot_area"],
  outputs: ["watered_share"],
  run: (input) => {
    const [plants, spot] = [input.values["plant_count"], input.values["spot_area"]];
    if (typeof plants !== "number" || typeof spot !== "number")
      return outcomes({ watered_share: numberOf(input, "wetted_share") });
    return outcomes({ watered_share: Math.min(1, (plants * spot) / numberOf(input, "area")) });
  },
};
