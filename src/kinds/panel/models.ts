// A panel's label in SI, its health, what it puts into a battery month by month, and how it drives a pump alone.

import panels from "../../../shared/panels.json";
import type { Figure } from "../../graph/figure.ts";
import { all, outcomes } from "../../graph/outcomes.ts";
import { numberOf, numberOrNull, wordOf, wordOrNull } from "../../graph/readers.ts";
import type { Model, ModelInput, Outputs } from "../../graph/types.ts";
import { clearNoonIrradiance } from "../../physics/clear-noon.ts";
import { type Controller, dailyCharge } from "../../physics/panel-charging.ts";
import { panelHealth } from "../../physics/panel-curve.ts";
import { dayInYear, dayOfYear, parseMonthDay } from "../../units/calendar.ts";
import { MONTH_NAMES } from "../../units/calendar-names.ts";
import { si } from "../tabled.ts";
import type { MonthlySky } from "../weather/monthly-sky.ts";
import { dayOn, lightsAt, meanDayOn, type PanelSupply, type Standing } from "./light.ts";

const ALBEDO = panels.albedo.value;
/** Any year that is no leap year, to count a month and day in. */
const YEAR = 2001;

export const standingOf = (input: ModelInput): Standing => ({
  latitude: numberOf(input, "site.latitude"),
  tilt: numberOf(input, "tilt"),
  azimuth: numberOf(input, "azimuth"),
  albedo: ALBEDO,
});

/** Months from 0 that the season touches, in its order. */
export function monthsOfSeason(start: string, end: string): readonly number[] {
  const [from, until] = [parseMonthDay(start)?.month ?? 1, parseMonthDay(end)?.month ?? 12];
  const count = ((until - from + 12) % 12) + 1;
  return Array.from({ length: count }, (_, step) => (from - 1 + step) % 12);
}

export const seasonOf = (input: ModelInput) =>
  monthsOfSeason(wordOf(input, "site.season_start"), wordOf(input, "site.season_end"));

/** A clear noon's light is known to a tenth or so, with cloud edges and snow more: past this of its label it is a slip [-]. */
const MOST_HEALTH = 1.25;
const TOO_GOOD =
  "By that noon it would give over one and a quarter of its label: check the current, the day, and the figures on its back.";

/** A second-hand panel's health: its short-circuit current at a clear noon over the label's in that light. */
export const testingPanel: Model = {
  name: "testing",
  takes: [
    "noon_current",
    "noon_day",
    "isc",
    "count",
    "health",
    "dirt",
    "noon_clean",
    "tilt",
    "azimuth",
    "site.latitude",
    "site.elevation",
  ],
  optional: ["noon_current", "noon_day"],
  outputs: ["health_in_use", "tested_health"],
  run: (input) => {
    const current = numberOrNull(input, "noon_current");
    const on = dayInYear(wordOrNull(input, "noon_day") ?? "", YEAR);
    if (current === null || on === null)
      return {
        health_in_use: { value: numberOf(input, "health") },
        tested_health: { none: "not tested at a clear noon" },
      };
    const standing = standingOf(input);
    const light = clearNoonIrradiance({
      ...standing,
      day: dayOfYear(on),
      plane: standing,
      elevation: numberOf(input, "site.elevation"),
    });
    if (!(light > 0))
      return all(["health_in_use", "tested_health"], {
        failed: "The sun does not reach it at noon on that day.",
      });
    // Dirt that lay on it then is among its losses already: once is enough.
    const clear = wordOf(input, "noon_clean") === "yes" ? 1 : 1 - numberOf(input, "dirt");
    const label = numberOf(input, "isc") * numberOf(input, "count") * clear;
    const health = panelHealth(current, label, light);
    if (health > MOST_HEALTH) return all(["health_in_use", "tested_health"], { failed: TOO_GOOD });
    return outcomes({ health_in_use: health, tested_health: health });
  },
};

/** Towards the noon sun outside the tropics: south of a northern place, north of a southern one. */
const TROPIC = 23.45;
/** Flatter than this it hardly matters where it faces. */
const FLAT = 10;

/** Whether it turns its back on the noon sun, and what it pushes into a battery at most. */
export const facing: Model = {
  name: "facing",
  takes: ["tilt", "azimuth", "site.latitude"],
  outputs: ["faces_away"],
  run: (input) => {
    const { latitude, tilt, azimuth } = standingOf(input);
    const degrees = (angle: number) => si({ value: angle, unit: "deg" });
    const isSlanted = tilt > degrees(FLAT) && Math.abs(latitude) > degrees(TROPIC);
    // Azimuth counts from north: its cosine is above 0 on the north side.
    return outcomes({ faces_away: isSlanted && Math.cos(azimuth) * Math.sign(latitude) > 0.01 ? 1 : 0 });
  },
};

const LABEL = ["voc", "vmp", "isc", "imp", "health_in_use", "count", "losses", "wire_resistance"];
export const PLACE = [
  "tilt",
  "azimuth",
  "site.latitude",
  "site.season_start",
  "site.season_end",
  "weather.sky",
];

function supplyOf(input: ModelInput): PanelSupply {
  const sky = input.values["weather.sky"] as MonthlySky;
  const lights = lightsAt(standingOf(input), sky, numberOf(input, "site.water_at"));
  const season = seasonOf(input);
  const least = season.reduce(
    (worst, month) => ((lights.dry[month] ?? 0) < (lights.dry[worst] ?? 0) ? month : worst),
    season[0] ?? 0,
  );
  return {
    panel: {
      label: {
        openVoltage: numberOf(input, "voc"),
        bestVoltage: numberOf(input, "vmp"),
        shortCurrent: numberOf(input, "isc"),
        bestCurrent: numberOf(input, "imp"),
        powerCoefficient: si(panels.power_coefficient),
      },
      bank: numberOf(input, "count") * numberOf(input, "health_in_use"),
      noct: si(panels.noct),
      losses: numberOf(input, "losses"),
    },
    wireResistance: numberOf(input, "wire_resistance"),
    ...lights,
    airs: sky.air,
    watering: lights.dry[least] ?? 0,
    air: sky.air[least] ?? 0,
  };
}

/** Whether its controller lets it work at its own best voltage. */
export const tracking: Model = {
  name: "tracking",
  takes: ["controller"],
  outputs: ["tracks"],
  run: (input) => outcomes({ tracks: wordOf(input, "controller") === "mppt" ? 1 : 0 }),
};

/** All that a pump on it alone needs to know. */
export const supplying: Model = {
  name: "supplying",
  takes: [...LABEL, ...PLACE, "site.water_at"],
  outputs: ["supply"],
  run: (input) => outcomes({ supply: supplyOf(input) }),
};

/** What reaches a battery on a day of each month. */
export type ChargeMonths = { readonly dry: readonly number[]; readonly wet: readonly number[] };

/** Month by month, as the card tables it. */
function yearFigure(months: ChargeMonths, mean: readonly number[], worst: string): Figure {
  return {
    says: `What it puts in on a day, month by month; of your season ${worst} is the worst.`,
    columns: [
      { label: "Month", measure: "text" },
      { label: "Dry day", measure: "energy" },
      { label: "Wet day", measure: "energy" },
      { label: "Mean day", measure: "energy", bar: true },
    ],
    rows: MONTH_NAMES.map((name, month) => [
      name,
      months.dry[month] ?? null,
      months.wet[month] ?? null,
      mean[month] ?? null,
    ]),
  };
}

/** The mean of a month's dry and wet days. */
const mixedOf = (dry: number, wet: number, wetShare: number): number => dry + (wet - dry) * wetShare;

/** Dry and wet days in the proportion of two such days, with the month's own mean. */
function keptMean(
  dry: readonly number[],
  wet: readonly number[],
  mean: readonly number[],
  wetShare: readonly number[],
): ChargeMonths {
  const share = mean.map((whole, month) => {
    const mixed = mixedOf(dry[month] ?? 0, wet[month] ?? 0, wetShare[month] ?? 0);
    return mixed > 0 ? whole / mixed : 0;
  });
  return {
    dry: dry.map((day, month) => day * (share[month] ?? 0)),
    wet: wet.map((day, month) => day * (share[month] ?? 0)),
  };
}

function chargesOf(input: ModelInput): Outputs {
  const sky = input.values["weather.sky"] as MonthlySky;
  const standing = standingOf(input);
  const { panel } = input.values["supply"] as PanelSupply;
  const controller = wordOf(input, "controller") as Controller;
  const charging = {
    ...panel,
    controller,
    batteryVoltage: numberOrNull(input, "charges.charging_voltage") ?? si({ value: 13.6, unit: "V" }),
  };
  const over = (globals: readonly number[], dayOf: typeof dayOn) =>
    globals.map((global, month) =>
      dailyCharge(charging, dayOf(standing, month, global), sky.air[month] as number),
    );
  const mixed = sky.dry.map((dry, month) => mixedOf(dry, sky.wet[month] ?? 0, sky.wetShare[month] ?? 0));
  const mean = over(mixed, meanDayOn);
  const months = keptMean(over(sky.dry, dayOn), over(sky.wet, dayOn), mean, sky.wetShare);
  const season = seasonOf(input);
  const worst = season.reduce(
    (least, month) => ((mean[month] ?? 0) < (mean[least] ?? 0) ? month : least),
    season[0] ?? 0,
  );
  const worstMonth = MONTH_NAMES[worst] ?? "";
  return {
    ...outcomes({
      charge_months: months,
      monthly_energy: mean,
      daily_energy: mean[worst] ?? 0,
      worst_month: worstMonth,
    }),
    by_month:
      numberOrNull(input, "charges.charging_voltage") === null
        ? { none: "it charges no battery" }
        : { value: yearFigure(months, mean, worstMonth) },
  };
}

export const chargingModel: Model = {
  name: "charging",
  takes: ["supply", "controller", ...PLACE, "charges.charging_voltage"],
  optional: ["charges.charging_voltage"],
  outputs: ["charge_months", "monthly_energy", "daily_energy", "worst_month", "by_month"],
  run: chargesOf,
};
