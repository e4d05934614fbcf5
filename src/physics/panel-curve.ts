// A panel's current against its voltage from the four numbers on its label, in any light and heat.

import { ZERO_CELSIUS } from "../units/constants.ts";
import { DomainError, requireNotNegative, requirePositive, requireWithin } from "./domain-error.ts";
import { bracketedRoot } from "./root.ts";

const SOURCE = "curve through the three points of a label";
/** Light in which panels are rated [W/m2]. */
export const RATED_IRRADIANCE = 1000;
/** Temperature of the cells at which panels are rated [K], 25 °C. */
export const RATED_CELL_TEMPERATURE = ZERO_CELSIUS + 25;

/** What a panel's label says. */
export type PanelLabel = {
  /** Voltage without load, Voc [V]. */
  readonly openVoltage: number;
  /** Voltage at the best point, Vmp [V]. */
  readonly bestVoltage: number;
  /** Short-circuit current, Isc [A]. */
  readonly shortCurrent: number;
  /** Current at the best point, Imp [A]. */
  readonly bestCurrent: number;
  /** Change of power with the cells' temperature, below 0 [1/K]. */
  readonly powerCoefficient: number;
};

/** Light and heat of a panel. */
export type PanelLight = {
  /** On the panel [W/m2]. */
  readonly irradiance: number;
  /** [K] */
  readonly cellTemperature: number;
};

/** A point of a curve. */
export type PanelPoint = {
  /** [V] */
  readonly voltage: number;
  /** [A] */
  readonly current: number;
};

/** A panel's curve in one light: I = short - dark (exp(V / width) - 1). */
export type PanelCurve = {
  /** Short-circuit current [A]. */
  readonly short: number;
  /** [A] */
  readonly dark: number;
  /** [V] */
  readonly width: number;
};

/**
 * Curve of a panel through the three points of its label, moved by light and heat: current with the light, voltage with
 * the heat, by the power's coefficient.
 *
 * @param label the four numbers, units at the type's fields
 * @param light irradiance and temperature of the cells, units at the type's fields
 * @param bank how much of it there is: panels side by side times their health [-]
 * @returns the curve, units at the type's fields
 * @throws DomainError for a label that no panel can have, or a temperature outside -40..100 °C
 * @validity whole panels without shade; its best power lies within 1 % of the label's
 * @source I = Isc - I0 (exp(V / w) - 1), w such that the label's three points lie on it (definition); power follows light
 * and heat as P0 G/1000 (1 + γ (Tc - 25 °C))
 */
export function panelCurve(label: PanelLabel, light: PanelLight, bank = 1): PanelCurve {
  requireNotNegative("irradiance", light.irradiance, SOURCE);
  requireWithin(
    "temperature of the cells",
    light.cellTemperature,
    [ZERO_CELSIUS - 40, ZERO_CELSIUS + 100],
    SOURCE,
  );
  requireNotNegative("panels times health", bank, SOURCE);
  requireWithin("power coefficient", label.powerCoefficient, [-0.01, 0], SOURCE);
  const width = labelWidth(label);
  const heat = 1 + label.powerCoefficient * (light.cellTemperature - RATED_CELL_TEMPERATURE);
  return {
    short: (bank * label.shortCurrent * light.irradiance) / RATED_IRRADIANCE,
    dark: (bank * label.shortCurrent) / Math.expm1(label.openVoltage / width),
    width: width * heat,
  };
}

/** Width of the knee for which the best point of the label lies on the curve. */
function labelWidth(label: PanelLabel): number {
  requirePositive("open voltage", label.openVoltage, SOURCE);
  requirePositive("short-circuit current", label.shortCurrent, SOURCE);
  requirePositive("voltage at the best point", label.bestVoltage, SOURCE);
  requirePositive("current at the best point", label.bestCurrent, SOURCE);
  const voltageShare = label.bestVoltage / label.openVoltage;
  const lost = 1 - label.bestCurrent / label.shortCurrent;
  requireWithin("share of the current lost at the best point", lost, [1e-3, 1], SOURCE);
  if (!(voltageShare <= 0.98 && voltageShare > lost * 1.001)) {
    throw new DomainError("best voltage over open voltage", voltageShare, `${lost} to 0.98`, SOURCE);
  }
  const lostAt = (share: number) => Math.expm1(voltageShare / share) / Math.expm1(1 / share);
  return label.openVoltage * bracketedRoot((share) => lostAt(share) - lost, 1 / 500, 1e4);
}

/**
 * Current of a panel at a voltage; below 0 above its open voltage.
 *
 * @param curve of the panel, units at the type's fields
 * @param voltage at its terminals, 0 or more [V]
 * @returns current [A]
 * @throws DomainError for a negative voltage
 * @source as in panelCurve
 */
export function panelCurrent(curve: PanelCurve, voltage: number): number {
  requireNotNegative("voltage of the panel", voltage, SOURCE);
  return curve.short - curve.dark * Math.expm1(voltage / curve.width);
}

/**
 * Voltage of a panel without load.
 *
 * @param curve of the panel, units at the type's fields
 * @returns voltage; 0 in the dark [V]
 * @source panelCurve solved for no current
 */
export function openCircuitVoltage(curve: PanelCurve): number {
  return curve.dark === 0 ? 0 : curve.width * Math.log1p(curve.short / curve.dark);
}

/**
 * The point at which a panel gives most power.
 *
 * @param curve of the panel, units at the type's fields
 * @returns voltage and current; both 0 in the dark, units at the type's fields
 * @source maximum of voltage times current along panelCurve
 */
export function bestPoint(curve: PanelCurve): PanelPoint {
  const open = openCircuitVoltage(curve);
  if (!(open > 0)) return { voltage: 0, current: 0 };
  const slope = (voltage: number) =>
    panelCurrent(curve, voltage) - (voltage * curve.dark * Math.exp(voltage / curve.width)) / curve.width;
  const voltage = bracketedRoot(slope, 0, open);
  return { voltage, current: panelCurrent(curve, voltage) };
}

/**
 * Health of a second-hand panel from its short-circuit current in known light: I / (Isc G/1000).
 *
 * @param measuredCurrent short-circuit current [A]
 * @param labelCurrent short-circuit current on the label [A]
 * @param irradiance on the panel at that moment [W/m2]
 * @returns share of the label [-]
 * @throws DomainError for a negative current, or a label or light that is not above 0
 * @validity clear sky near noon; a panel whose voltage has held
 * @source short-circuit current in proportion to light (definition of the rated light)
 */
export function panelHealth(measuredCurrent: number, labelCurrent: number, irradiance: number): number {
  requireNotNegative("measured short-circuit current", measuredCurrent, SOURCE);
  requirePositive("short-circuit current on the label", labelCurrent, SOURCE);
  requirePositive("irradiance", irradiance, SOURCE);
  return measuredCurrent / ((labelCurrent * irradiance) / RATED_IRRADIANCE);
}
