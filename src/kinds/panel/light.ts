// What the light of each month makes of a panel, and what a pump straight on it gives at the hour of watering.

import { directRun } from "../../physics/direct-drive.ts";
import { type ChargingPanel, curveInAir } from "../../physics/panel-charging.ts";
import type { PanelCurve } from "../../physics/panel-curve.ts";
import type { Lifting } from "../../physics/pump-run.ts";
import { dailyAboveAir } from "../../physics/sky-radiation.ts";
import { dayOnTilted, monthOnTilted, type SunStep } from "../../physics/tilted-sun.ts";
import type { SunOnPump } from "../../season/input.ts";
import { DAY, HOUR } from "../../units/constants.ts";
import type { MonthlySky } from "../weather/monthly-sky.ts";

/** The day of the year that stands for each month: Klein 1977, in Duffie and Beckman table 1.6.1 (from memory). */
export const MEAN_DAYS: readonly number[] = [17, 47, 75, 105, 135, 162, 198, 228, 258, 288, 318, 344];
/** Stretches of a day. */
const STEPS = 25;

/** Where and how a panel stands. */
export type Standing = {
  readonly latitude: number;
  readonly tilt: number;
  readonly azimuth: number;
  readonly albedo: number;
};

/** One day on the panel, or none where the sun does not rise. */
export function dayOn(standing: Standing, month: number, global: number, steps = STEPS): readonly SunStep[] {
  const { latitude, tilt, azimuth, albedo } = standing;
  const day = MEAN_DAYS[month] as number;
  return dayOnTilted({ latitude, day, global, plane: { tilt, azimuth }, albedo }, steps, "day");
}

/** Clearness of months for which the share of the sky's light is known: Erbs et al. 1982 [-]. */
const [DULLEST, CLEAREST] = [0.3, 0.8];

/**
 * The mean day of a month on the panel, clear and dull ones mixed: its hours add up to the month's mean by the monthly
 * method; where its clearness is outside that method's range, as one day.
 */
export function meanDayOn(standing: Standing, month: number, global: number): readonly SunStep[] {
  const { latitude, tilt, azimuth, albedo } = standing;
  const of = { latitude, day: MEAN_DAYS[month] as number, global, plane: { tilt, azimuth }, albedo };
  const above = dailyAboveAir(latitude, of.day);
  if (!(global >= DULLEST * above && global <= CLEAREST * above)) return dayOnTilted(of, STEPS, "day");
  const hours = dayOnTilted(of, STEPS, "month");
  const sum = hours.reduce((whole, { irradiance, length }) => whole + irradiance * length, 0);
  if (!(sum > 0)) return hours;
  const share = monthOnTilted(of) / sum;
  return hours.map((step) => ({ ...step, irradiance: step.irradiance * share }));
}

/** Light on the panel at an hour by the sun, straight between the middles of the stretches; dark outside them [W/m2]. */
export function lightAt(day: readonly SunStep[], hour: number): number {
  const after = day.findIndex(({ solarTime }) => solarTime >= hour);
  const [next, before] = [day[after], day[after - 1]];
  if (!next) return 0;
  if (!before) return hour > next.solarTime - next.length / 2 ? next.irradiance : 0;
  const share = (hour - before.solarTime) / (next.solarTime - before.solarTime);
  return before.irradiance + (next.irradiance - before.irradiance) * share;
}

/** What a pump needs to know of a panel that it hangs on alone. */
export type PanelSupply = {
  readonly panel: Omit<ChargingPanel, "controller" | "batteryVoltage">;
  readonly wireResistance: number;
  /** Light at the hour of watering on a dry and on a wet day of each month [W/m2], and the air by day [K]. */
  readonly dry: readonly number[];
  readonly wet: readonly number[];
  readonly airs: readonly number[];
  /** The light in the middle of each hour from the hour of watering to sunset, by month [W/m2]. */
  readonly dryHours: readonly (readonly number[])[];
  readonly wetHours: readonly (readonly number[])[];
  /** The light and air of the month of the season with least light at that hour, on a dry day [W/m2], [K]. */
  readonly watering: number;
  readonly air: number;
};

/** Curve of the panel in a light and an air. */
export function curveIn(supply: PanelSupply, irradiance: number, air: number): PanelCurve {
  return curveInAir(supply.panel, irradiance, air);
}

/**
 * How long the pump has run in full, in effect, by the end of each hour after the hour of watering [s], on dry and wet
 * days of each month. The share of full flow is taken as the same at every depth of its tank.
 */
export function sunOnPump(supply: PanelSupply, lifting: Lifting, full: number): SunOnPump {
  const share = (light: number, month: number) =>
    full > 0
      ? directRun(lifting, supply.wireResistance, curveIn(supply, light, supply.airs[month] as number)).flow /
        full
      : 0;
  const running = (lights: readonly number[], month: number) => {
    const sums = [0];
    for (const light of lights) sums.push((sums.at(-1) ?? 0) + HOUR * share(light, month));
    return sums;
  };
  return {
    dry: supply.dryHours.map(running),
    wet: supply.wetHours.map(running),
    bright: { dry: supply.dryHours.map(brightBy), wet: supply.wetHours.map(brightBy) },
  };
}

/** A tenth of full sun, in which a panel of ten times its pump's watts drives it fully: our definition [W/m2]. */
const BRIGHT = 100;

/** How much of the hours was bright, by the end of each [s]. */
function brightBy(lights: readonly number[]): readonly number[] {
  const sums = [0];
  for (const light of lights) sums.push((sums.at(-1) ?? 0) + (light >= BRIGHT ? HOUR : 0));
  return sums;
}

/** Light of every month at an hour and from it on, on dry and wet days, from the sky over the panel. */
export function lightsAt(
  standing: Standing,
  sky: MonthlySky,
  hour: number,
): Pick<PanelSupply, "dry" | "wet" | "dryHours" | "wetHours"> {
  const days = (globals: readonly number[]) => globals.map((global, month) => dayOn(standing, month, global));
  const [dry, wet] = [days(sky.dry), days(sky.wet)];
  return {
    dry: dry.map((day) => lightAt(day, hour % DAY)),
    wet: wet.map((day) => lightAt(day, hour % DAY)),
    dryHours: dry.map((day) => hoursFrom(day, hour % DAY)),
    wetHours: wet.map((day) => hoursFrom(day, hour % DAY)),
  };
}

function hoursFrom(day: readonly SunStep[], hour: number): readonly number[] {
  const last = day.at(-1);
  const sunset = last ? last.solarTime + last.length / 2 : 0;
  const count = Math.max(0, Math.ceil((sunset - hour) / HOUR));
  return Array.from({ length: count }, (_, step) => lightAt(day, hour + (step + 1 / 2) * HOUR));
}
