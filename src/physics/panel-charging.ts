// What of a panel's light reaches a battery, by the controller between them.

import { cellTemperature } from "./cell-temperature.ts";
import { requirePositive, requireWithin } from "./domain-error.ts";
import { bestPoint, type PanelCurve, type PanelLabel, panelCurrent, panelCurve } from "./panel-curve.ts";
import type { SunStep } from "./tilted-sun.ts";

const SOURCE = "panel against battery";
/** Share of the best power that a tracking controller passes on [-]: judgement, no source. */
export const TRACKER_EFFICIENCY = 0.95;

/** `none` and `pwm` hold the panel at the battery's voltage, `mppt` at its own best point. */
export type Controller = "none" | "pwm" | "mppt";

/**
 * Power that a panel puts into a battery.
 *
 * @param curve of the panel in its light, units at the type's fields
 * @param controller between panel and battery
 * @param batteryVoltage while charging [V]
 * @returns power; 0 where the panel's open voltage is below the battery's [W]
 * @throws DomainError for a voltage that is not above 0
 * @source panelCurve; 12 V × 7 A = 84 W of a 120 W panel with PWM (read at wattuneed.com); tracker 0.95 (judgement)
 */
export function chargingPower(curve: PanelCurve, controller: Controller, batteryVoltage: number): number {
  requirePositive("battery voltage", batteryVoltage, SOURCE);
  if (controller === "mppt") {
    const best = bestPoint(curve);
    return TRACKER_EFFICIENCY * best.voltage * best.current;
  }
  // A diode, in the panel or the controller, keeps the battery from running back into the panel at night.
  return batteryVoltage * Math.max(0, panelCurrent(curve, batteryVoltage));
}

/** A panel that charges a battery through a day. */
export type ChargingPanel = {
  readonly label: PanelLabel;
  /** Panels side by side times their health [-]. */
  readonly bank: number;
  /** Temperature of the cells in 800 W/m2, air of 20 °C and wind of 1 m/s [K]. */
  readonly noct: number;
  /** Share lost to dirt, shade, wire and mismatch, 0..1 [-]. */
  readonly losses: number;
  readonly controller: Controller;
  /** Of the battery while charging [V]. */
  readonly batteryVoltage: number;
};

/**
 * Energy that a panel puts into a battery in a day.
 *
 * @param panel label, number, losses, controller and battery, units at the type's fields
 * @param day stretches of its sunshine, units at the type's fields
 * @param air temperature by day [K]
 * @returns energy before the battery's own losses [J]
 * @throws DomainError for losses outside 0..1 or a label that no panel can have
 * @source sum of chargingPower over the day
 */
export function dailyCharge(panel: ChargingPanel, day: readonly SunStep[], air: number): number {
  requireWithin("losses", panel.losses, [0, 1], SOURCE);
  return day.reduce((sum, { irradiance, length }) => {
    const curve = curveInAir(panel, irradiance, air);
    return sum + chargingPower(curve, panel.controller, panel.batteryVoltage) * length;
  }, 0);
}

/**
 * Curve of a panel in a light and an air, with its losses taken off the light.
 *
 * @param panel label, number, NOCT and losses, units at the type's fields
 * @param irradiance on the panel [W/m2]
 * @param air temperature [K]
 * @returns the curve, units at the type's fields
 * @throws DomainError for losses outside 0..1 or a label that no panel can have
 * @source cellTemperature and panelCurve
 */
export function curveInAir(
  panel: Pick<ChargingPanel, "label" | "bank" | "noct" | "losses">,
  irradiance: number,
  air: number,
): PanelCurve {
  requireWithin("losses", panel.losses, [0, 1], SOURCE);
  const cell = cellTemperature({ irradiance, air, noct: panel.noct });
  const light = { irradiance: irradiance * (1 - panel.losses), cellTemperature: cell };
  return panelCurve(panel.label, light, panel.bank);
}
