// Power by the label's coefficient and the fill of a label: what curves and the table of panels are held against.

import { requireNotNegative, requirePositive } from "../../src/physics/domain-error.ts";
import {
  type PanelLabel,
  type PanelLight,
  RATED_CELL_TEMPERATURE,
  RATED_IRRADIANCE,
} from "../../src/physics/panel-curve.ts";

const SOURCE = "curve through the three points of a label";
/**
 * Power of a panel by its rating alone: P0 G/1000 (1 + γ (Tc - 25 °C)).
 *
 * @param ratedPower [W]
 * @param light irradiance and temperature of the cells, units at the type's fields
 * @param powerCoefficient change of power with heat, below 0 [1/K]
 * @returns power [W]
 * @throws DomainError for a negative power or irradiance
 * @source common power model of panels (from memory)
 */
export function ratedPanelPower(ratedPower: number, light: PanelLight, powerCoefficient: number): number {
  requireNotNegative("rated power", ratedPower, SOURCE);
  requireNotNegative("irradiance", light.irradiance, SOURCE);
  const heat = 1 + powerCoefficient * (light.cellTemperature - RATED_CELL_TEMPERATURE);
  return ratedPower * (light.irradiance / RATED_IRRADIANCE) * heat;
}

/**
 * Share of the ideal rectangle that a panel's best point fills: Vmp Imp / (Voc Isc).
 *
 * @param label the four numbers, units at the type's fields
 * @returns fill factor [-]
 * @throws DomainError when an open voltage or a short-circuit current is not above 0
 * @source definition (read at pveducation.org)
 */
export function fillFactor(label: Omit<PanelLabel, "powerCoefficient">): number {
  requirePositive("open voltage", label.openVoltage, SOURCE);
  requirePositive("short-circuit current", label.shortCurrent, SOURCE);
  return (label.bestVoltage * label.bestCurrent) / (label.openVoltage * label.shortCurrent);
}
