// What a roof works out over the record: its catch in a year, and the frosts that find it connected.

import { all, outcomes, valueOr } from "../../graph/outcomes.ts";
import { numberOf, recordOf, wordOrNull } from "../../graph/readers.ts";
import type { Model, ModelInput, Outputs } from "../../graph/types.ts";
import type { DailyRecord } from "../../rainfall/record.ts";
import { roofCatch } from "../../season/roof-catch.ts";
import { dayOfSeason, wholeYears } from "../../season/spans.ts";
import { toSi } from "../../units/unit.ts";
import { NO_YEAR, ONE_YEAR } from "../none-said.ts";

const FREEZING = toSi(0, "degC");

/** The part of a roof whose water passes all the filters on it. */
export const sieving: Model = {
  name: "sieving",
  takes: ["footprint", "filters_pass"],
  outputs: ["catching_area"],
  run: (input) => {
    const shares = input.values["filters_pass"];
    const passed = (Array.isArray(shares) ? shares : []).reduce(
      (share: number, each) => (typeof each === "number" ? share * each : share),
      1,
    );
    return outcomes({ catching_area: numberOf(input, "footprint") * passed });
  },
};

export const yearly: Model = {
  name: "yearly_catch",
  takes: [
    "catching_area",
    "coefficient_in_use",
    "losses",
    "wetting_loss",
    "first_flush",
    "catch_from",
    "catch_until",
    "weather.record_in_use",
    "weather.rain_scale",
  ],
  optional: ["catch_from", "catch_until"],
  record: "weather.record_in_use",
  outputs: ["mean_yearly_catch", "driest_year_catch"],
  run: (input) => {
    const inCoefficient = input.values["losses"] === "in_coefficient";
    const caught = roofCatch(
      {
        footprint: numberOf(input, "catching_area"),
        runoffCoefficient: numberOf(input, "coefficient_in_use"),
        wettingLoss: inCoefficient ? 0 : numberOf(input, "wetting_loss"),
        firstFlush: inCoefficient ? 0 : numberOf(input, "first_flush"),
        catchFrom: wordOrNull(input, "catch_from"),
        catchUntil: wordOrNull(input, "catch_until"),
      },
      recordOf(input),
      numberOf(input, "weather.rain_scale"),
    );
    const { meanYearly, driestYear } = caught;
    return {
      mean_yearly_catch: valueOr(meanYearly, NO_YEAR),
      driest_year_catch: valueOr(driestYear, meanYearly === null ? NO_YEAR : ONE_YEAR),
    };
  },
};

const FROSTS = ["frost_days", "frost_days_off"] as const;

function frostDays(input: ModelInput, record: DailyRecord): Outputs {
  const { lowest, firstDay } = record;
  if (!lowest) return all(FROSTS, { none: "the record has no temperatures" });
  const years = wholeYears(firstDay, lowest.length);
  if (years.length === 0) return all(FROSTS, { none: NO_YEAR });
  const dates = {
    start: wordOrNull(input, "catch_from") ?? "01-01",
    end: wordOrNull(input, "catch_until") ?? "12-31",
  };
  const connected = dayOfSeason(dates, firstDay, lowest.length);
  const frosts = { on: 0, off: 0 };
  for (const { first, last } of years) {
    for (let day = first; day <= last; day++) {
      if ((lowest[day] as number) < FREEZING) frosts[connected[day] ? "on" : "off"]++;
    }
  }
  return outcomes({ frost_days: frosts.on / years.length, frost_days_off: frosts.off / years.length });
}

export const winter: Model = {
  name: "winter",
  takes: ["catch_from", "catch_until", "weather.record_in_use"],
  optional: ["catch_from", "catch_until"],
  record: "weather.record_in_use",
  outputs: FROSTS,
  run: (input) => frostDays(input, recordOf(input)),
};
