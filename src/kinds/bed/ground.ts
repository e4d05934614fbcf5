// The ground a bed stands on: its planted area, the share that is watered, how deep roots can go, how fast it dries there.

import { outcomes } from "../../graph/outcomes.ts";
import { numberOf, numberOrNull, recordOf, wordOf } from "../../graph/readers.ts";
import type { Model, ModelInput, Outputs } from "../../graph/types.ts";
import { coveredPenmanMonteith } from "../../physics/covered-evapotranspiration.ts";
import { DomainError } from "../../physics/domain-error.ts";
import { penmanMonteith } from "../../physics/reference-evapotranspiration.ts";
import type { DailyRecord } from "../../rainfall/record.ts";
import { wholeSeasons } from "../../season/spans.ts";
import { dayOfYear } from "../../units/calendar.ts";

const inPots = (input: ModelInput): boolean => wordOf(input, "grown_in") === "pots";

/** Spots times plants over the bed, or the share given; a pot is watered whole. */
function shareOf(input: ModelInput, area: number): number {
  if (inPots(input)) return 1;
  const [plants, spot] = [numberOrNull(input, "plant_count"), numberOrNull(input, "spot_area")];
  if (plants === null || spot === null || area === 0) return numberOf(input, "wetted_share");
  return Math.min(1, (plants * spot) / area);
}

/** Canopies of plants that are watered one by one, full grown, over the bed; the whole bed where that is not said. */
function canopyOf(input: ModelInput, area: number): number {
  if (inPots(input)) return 1;
  const [plants, spread] = [numberOrNull(input, "plant_count"), numberOrNull(input, "plant_spread")];
  if (plants === null || spread === null || area === 0) return 1;
  return Math.min(1, (plants * spread) / area);
}

/**
 * Ground and root room. In pots the plants drink for the ground their leaves shade, from the little soil they have: the
 * same as roots in a bed of that ground, as deep as the pots' soil spread over it.
 */
export const ground: Model = {
  name: "ground",
  takes: [
    "grown_in",
    "area",
    "wetted_share",
    "plant_count",
    "spot_area",
    "plant_spread",
    "root_depth",
    "pot_count",
    "pot_volume",
    "pot_spread",
    "soil",
  ],
  optional: ["plant_count", "spot_area", "plant_spread"],
  outputs: ["planted_area", "watered_share", "canopy_share", "root_room", "soil_in_pots"],
  run: (input) => {
    const pots = inPots(input);
    const spread = numberOf(input, "pot_spread");
    const area = pots ? numberOf(input, "pot_count") * spread : numberOf(input, "area");
    const room = pots ? numberOf(input, "pot_volume") / spread : numberOf(input, "root_depth");
    return {
      ...outcomes({
        planted_area: area,
        watered_share: shareOf(input, area),
        canopy_share: canopyOf(input, area),
        root_room: room,
      }),
      soil_in_pots: pots
        ? { value: wordOf(input, "soil") === "potting_mix" ? "potting_mix" : "field" }
        : { none: "it grows in the ground" },
    };
  },
};

/** Wind under a closed cover and under one with its sides up [m/s]; the range of the physics' source. */
const WINDS: Readonly<Record<string, number>> = { closed: 0.5, sides_up: 1 };

type Place = {
  readonly latitude: number;
  readonly elevation: number;
  readonly cover: { readonly lightShare: number; readonly wind: number; readonly warmer: number };
};

/** Drying of one day outside and under the cover [m]; null without temperatures. */
function dayUnder(record: DailyRecord, day: number, place: Place): readonly [number, number] | null {
  const [highest, lowest] = [record.highest?.[day], record.lowest?.[day]];
  if (highest === undefined || lowest === undefined || !(lowest <= highest)) return null;
  const read = (series: Float64Array | null): number | null => {
    const value = series?.[day];
    return value === undefined || Number.isNaN(value) ? null : value;
  };
  const given = {
    highest,
    lowest,
    latitude: place.latitude,
    elevation: place.elevation,
    dayOfYear: dayOfYear(record.firstDay + day),
    wind: read(record.wind),
    vapour: read(record.vapour),
    sun: read(record.sun),
  };
  return [penmanMonteith(given), coveredPenmanMonteith(given, place.cover)];
}

function byLight(input: ModelInput): Outputs {
  const record = recordOf(input);
  const dates = { start: wordOf(input, "site.season_start"), end: wordOf(input, "site.season_end") };
  const place: Place = {
    latitude: numberOf(input, "site.latitude"),
    elevation: numberOf(input, "site.elevation"),
    cover: {
      lightShare: numberOf(input, "cover_light"),
      wind: WINDS[wordOf(input, "cover_sides")] ?? 1,
      warmer: 0,
    },
  };
  let [outside, inside] = [0, 0];
  for (const { first, last } of wholeSeasons(dates, record.firstDay, record.rain.length)) {
    for (let day = first; day <= last; day++) {
      const pair = dayUnder(record, day, place);
      outside += pair?.[0] ?? 0;
      inside += pair?.[1] ?? 0;
    }
  }
  if (outside > 0) return { drying_there: { value: inside / outside } };
  return { drying_there: { failed: "The record has no temperatures in the season: give a factor instead." } };
}

/** Drying under the cover over that under open sky: the factor given, or from the light it lets through. */
export const drying: Model = {
  name: "cover_drying",
  takes: [
    "cover",
    "cover_by",
    "cover_factor",
    "cover_light",
    "cover_sides",
    "weather.record_in_use",
    "site.latitude",
    "site.elevation",
    "site.season_start",
    "site.season_end",
  ],
  record: "weather.record_in_use",
  outputs: ["drying_there"],
  run: (input) => {
    if (wordOf(input, "cover") === "open" || wordOf(input, "cover_by") === "factor")
      return { drying_there: { value: numberOf(input, "cover_factor") } };
    try {
      return byLight(input);
    } catch (error) {
      if (error instanceof DomainError) return { drying_there: { failed: error.message } };
      throw error;
    }
  },
};
