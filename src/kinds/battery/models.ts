// What a used battery really gives: tested with a load and a clock, slowed by cold, drained faster by haste; and its charge.

import batteries from "../../../shared/batteries.json";
import { all, outcomes } from "../../graph/outcomes.ts";
import { numberOf, numberOrNull, wordOf } from "../../graph/readers.ts";
import type { Model, ModelInput, Outputs } from "../../graph/types.ts";
import {
  coldMultiplier,
  dischargedCharge,
  dischargeTime,
  healthFromTest,
  RATING_TIME,
} from "../../physics/battery.ts";
import { faultCurrent } from "../../physics/fuse.ts";
import { ZERO_CELSIUS } from "../../units/constants.ts";
import { type ChargeMonths, monthsOfSeason } from "../panel/models.ts";
import { si } from "../tabled.ts";
import type { MonthlySky } from "../weather/monthly-sky.ts";

function chemistryOf(input: ModelInput) {
  const row = batteries.chemistries.find(({ word }) => word === wordOf(input, "chemistry"));
  if (!row) throw new Error("There is no such battery.");
  return row;
}

/** A discharge of the whole labelled charge at a load's current. */
function dischargeAt(input: ModelInput, power: number) {
  return {
    capacity: numberOf(input, "rated_capacity"),
    ratingTime: RATING_TIME,
    current: power / numberOf(input, "nominal_voltage"),
    exponent: numberOf(input, "peukert"),
  };
}

/** A new battery may well hold more than its label says, but not more than this of it [-]. */
const MOST_HEALTH = 1.5;
const TOO_GOOD =
  "By that time it would hold more than one and a half times its label: check the lamp's watts and the amp-hours printed.";

const TEST = ["rated_capacity", "nominal_voltage", "peukert", "test_load"];

/** What cold leaves of a lead battery [-]; lithium keeps all. */
const leftInCold = (input: ModelInput, temperature: number): number =>
  chemistryOf(input).weak_in_cold ? 1 / coldMultiplier(temperature) : 1;

export const chilling: Model = {
  name: "chilling",
  takes: ["chemistry", "tested_temperature"],
  outputs: ["test_cold"],
  run: (input) => outcomes({ test_cold: leftInCold(input, numberOf(input, "tested_temperature")) }),
};

/** Its voltage while it charges, its dead short, and the current that it bears while charging. */
export const volting: Model = {
  name: "volting",
  takes: ["chemistry", "nominal_voltage", "inner_resistance", "rated_capacity"],
  outputs: ["charging_voltage", "short_current", "most_charging_current"],
  run: (input) => {
    const { charging_ratio, short_ratio, most_charging_rate } = chemistryOf(input);
    const nominal = numberOf(input, "nominal_voltage");
    return outcomes({
      charging_voltage: nominal * si(charging_ratio),
      short_current: faultCurrent(nominal * si(short_ratio), numberOf(input, "inner_resistance")),
      most_charging_current: numberOf(input, "rated_capacity") * si(most_charging_rate),
    });
  },
};

/** Health from the hours that a known load ran. */
export const testingBattery: Model = {
  name: "testing",
  takes: [...TEST, "test_cold", "health", "measured.test_time"],
  optional: ["measured.test_time"],
  outputs: ["health_in_use"],
  run: (input) => {
    const seen = numberOrNull(input, "measured.test_time");
    const health =
      seen === null
        ? numberOf(input, "health")
        : // A cold one gave less then; the cold of its work is taken off by itself.
          healthFromTest(seen, dischargeAt(input, numberOf(input, "test_load"))) /
          numberOf(input, "test_cold");
    if (health > MOST_HEALTH) return all(["health_in_use"], { failed: TOO_GOOD });
    return outcomes({ health_in_use: health });
  },
};

export const lasting: Model = {
  name: "lasting",
  takes: [...TEST, "test_cold", "health_in_use"],
  outputs: ["test_time"],
  run: (input) => {
    const label = dischargeAt(input, numberOf(input, "test_load"));
    const held = label.capacity * numberOf(input, "health_in_use") * numberOf(input, "test_cold");
    return outcomes({ test_time: held > 0 ? dischargeTime({ ...label, capacity: held }) : 0 });
  },
};

/** The most that any one pump takes of it. */
export const loading: Model = {
  name: "loading",
  takes: ["largest_by_hose", "largest_by_pump"],
  outputs: ["largest_load"],
  run: (input) => {
    const powers = ["largest_by_hose", "largest_by_pump"].flatMap(
      (name) => input.values[name] as readonly number[],
    );
    return outcomes({ largest_load: powers.length > 0 ? Math.max(...powers) : null }, "no pump runs on it");
  },
};

/** What cold and haste leave of its charge. */
export const weakening: Model = {
  name: "weakening",
  takes: [
    "chemistry",
    "temperature",
    "rated_capacity",
    "nominal_voltage",
    "peukert",
    "health_in_use",
    "largest_load",
  ],
  optional: ["largest_load"],
  outputs: ["cold_share", "haste_share"],
  run: (input) => {
    const cold = leftInCold(input, numberOf(input, "temperature"));
    const load = numberOrNull(input, "largest_load") ?? 0;
    const label = dischargeAt(input, load);
    const held = label.capacity * numberOf(input, "health_in_use");
    const haste = load > 0 && held > 0 ? dischargedCharge({ ...label, capacity: held }) / held : 1;
    return outcomes({ cold_share: cold, haste_share: Math.min(1, haste) });
  },
};

const NONE = Array.from({ length: 12 }, () => 0);

/** Whether a panel charges it at all, where it stands or a day at a time. */
const onPanel = (input: ModelInput): boolean => !["none", "mains"].includes(wordOf(input, "charged"));

/** Air below which it is not charged outdoors; null where cold does not ruin it [K]. */
function coldestOf(input: ModelInput): { readonly air: number | null } {
  const { least_charging_temperature: least } = chemistryOf(input);
  return { air: least.value < 0 ? null : si(least) };
}

/** Months of the season in which a battery that may not be charged below freezing meets frost. */
function frosty(input: ModelInput, sky: MonthlySky | null, season: readonly number[]): readonly number[] {
  if (!sky || chemistryOf(input).least_charging_temperature.value < 0) return [];
  return season.filter((month) => (sky.low[month] ?? ZERO_CELSIUS) < ZERO_CELSIUS);
}

function chargeOf(input: ModelInput): Outputs {
  const panels = onPanel(input) ? (input.values["panels"] as readonly ChargeMonths[]) : [];
  const sum = (pick: (months: ChargeMonths) => readonly number[]) =>
    NONE.map((_, month) => panels.reduce((total, months) => total + (pick(months)[month] ?? 0), 0));
  const months: ChargeMonths = { dry: sum(({ dry }) => dry), wet: sum(({ wet }) => wet) };
  const sky = (input.values["weather.sky"] as MonthlySky | undefined) ?? null;
  const season = monthsOfSeason(wordOf(input, "site.season_start"), wordOf(input, "site.season_end"));
  const charging = wordOf(input, "charged") === "in_place" && panels.length > 0;
  const bare = wordOf(input, "charged") !== "mains" && season.every((month) => (months.dry[month] ?? 0) <= 0);
  return outcomes({
    charge_by_month: months,
    coldest_charge: coldestOf(input),
    frost_months: charging ? frosty(input, sky, season).length : 0,
    uncharged: bare ? 1 : 0,
  });
}

export const charging: Model = {
  name: "charging",
  takes: ["charged", "panels", "chemistry", "site.season_start", "site.season_end", "weather.sky"],
  optional: ["weather.sky"],
  outputs: ["charge_by_month", "coldest_charge", "frost_months", "uncharged"],
  run: chargeOf,
};
