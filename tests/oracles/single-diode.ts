// The full curve of a solar cell or panel from the five numbers of its equivalent circuit.

import { requireNotNegative, requirePositive } from "../../src/physics/domain-error.ts";
import type { PanelPoint } from "../../src/physics/panel-curve.ts";
import { bracketedRoot } from "../../src/physics/root.ts";

const SOURCE = "single-diode equation";

/** Equivalent circuit: a source of current, a diode, and two resistances. */
export type SingleDiode = {
  /** Current that the light makes [A]. */
  readonly lightCurrent: number;
  /** Saturation current of the diode [A]. */
  readonly saturationCurrent: number;
  /** Resistance in series [ohm]. */
  readonly seriesResistance: number;
  /** Resistance across the cells [ohm]. */
  readonly shuntResistance: number;
  /** Diode factor × cells in series × thermal voltage [V]. */
  readonly thermalVoltage: number;
};

/** The three points that a label has. */
export type CurvePoints = {
  /** [A] */
  readonly shortCircuitCurrent: number;
  /** [V] */
  readonly openCircuitVoltage: number;
  readonly best: PanelPoint;
};

/**
 * Short-circuit current, open-circuit voltage and best point of a single-diode circuit:
 * I = IL - I0 (exp((V + I Rs) / nNsVth) - 1) - (V + I Rs) / Rsh, solved along the voltage across its diode.
 *
 * @param cell the five numbers, units at the type's fields
 * @returns the three points, units at the type's fields
 * @throws DomainError when a number is not above 0 (series resistance: below 0)
 * @source single-diode equation, as in any text on photovoltaics
 */
export function singleDiodePoints(cell: SingleDiode): CurvePoints {
  requirePositive("light current", cell.lightCurrent, SOURCE);
  requirePositive("saturation current", cell.saturationCurrent, SOURCE);
  requireNotNegative("series resistance", cell.seriesResistance, SOURCE);
  requirePositive("shunt resistance", cell.shuntResistance, SOURCE);
  requirePositive("thermal voltage", cell.thermalVoltage, SOURCE);
  const highest = cell.thermalVoltage * Math.log1p(cell.lightCurrent / cell.saturationCurrent);
  const open = bracketedRoot((inside) => currentBehind(cell, inside), 0, highest);
  const short = bracketedRoot((inside) => pointBehind(cell, inside).voltage, -1e-9 * highest, open);
  const best = bracketedRoot((inside) => powerSlope(cell, inside), short, open);
  return {
    shortCircuitCurrent: currentBehind(cell, short),
    openCircuitVoltage: open,
    best: pointBehind(cell, best),
  };
}

/** Current at a voltage across the diode. */
function currentBehind(cell: SingleDiode, inside: number): number {
  return (
    cell.lightCurrent -
    cell.saturationCurrent * Math.expm1(inside / cell.thermalVoltage) -
    inside / cell.shuntResistance
  );
}

function pointBehind(cell: SingleDiode, inside: number): PanelPoint {
  const current = currentBehind(cell, inside);
  return { current, voltage: inside - current * cell.seriesResistance };
}

/** Slope of power along the voltage across the diode: above 0 before the best point, below 0 after it. */
function powerSlope(cell: SingleDiode, inside: number): number {
  const { current, voltage } = pointBehind(cell, inside);
  const currentSlope =
    -(cell.saturationCurrent / cell.thermalVoltage) * Math.exp(inside / cell.thermalVoltage) -
    1 / cell.shuntResistance;
  return currentSlope * voltage + current * (1 - currentSlope * cell.seriesResistance);
}
