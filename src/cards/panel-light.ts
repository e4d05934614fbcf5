// What the light of each month makes of a panel, and what a pump straight on it gives at the hour of watering.

import { directRun } from "../physics/direct-drive.ts";
import { type ChargingPanel, curveInAir } from "../physics/panel-charging.ts";
import type { PanelCurve } from "../physics/panel-curve.ts";
import type { Lifting } from "../physics/pump-run.ts";
import { dayOnTilted, type SunStep } from "../physics/tilted-sun.ts";
import { DAY } from "../units/constants.ts";
import type { MonthlySky } from "./monthly-sky.ts";

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
export function dayOn(standing: Standing, month: number, global: number): readonly SunStep[] {
  const { latitude, tilt, azimuth, albedo } = standing;
  const day = MEAN_DAYS[month] as number;
  return dayOnTilted({ latitude, day, global, plane: { tilt, azimuth }, albedo }, STEPS, "day");
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
  /** The light and air of the month of the season with least light at that hour, on a dry day [W/m2], [K]. */
  readonly watering: number;
  readonly air: number;
};

/** Curve of the panel in a light and an air. */
export function curveIn(supply: PanelSupply, irradiance: number, air: number): PanelCurve {
  return curveInAir(supply.panel, irradiance, air);
}

/** Share of the full flow at the hour of watering, on dry and wet days of each month. */
export function watersOf(
  supply: PanelSupply,
  lifting: Lifting,
  full: number,
): { readonly dry: readonly number[]; readonly wet: readonly number[] } {
  const shares = (lights: readonly number[]) =>
    lights.map((light, month) => {
      const run = directRun(
        lifting,
        supply.wireResistance,
        curveIn(supply, light, supply.airs[month] as number),
      );
      return full > 0 ? run.flow / full : 0;
    });
  return { dry: shares(supply.dry), wet: shares(supply.wet) };
}

/** Light of every month at an hour, on dry and wet days, from the sky over the panel. */
export function lightsAt(
  standing: Standing,
  sky: MonthlySky,
  hour: number,
): { readonly dry: readonly number[]; readonly wet: readonly number[] } {
  const at = (globals: readonly number[]) =>
    globals.map((global, month) => lightAt(dayOn(standing, month, global), hour % DAY));
  return { dry: at(sky.dry), wet: at(sky.wet) };
}
