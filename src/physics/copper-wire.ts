// Resistance of copper wire by gauge, area, temperature and stranding, and the voltage it costs on the way.

import { ZERO_CELSIUS } from "../units/constants.ts";
import { DomainError, requireNotNegative, requirePositive, requireWithin } from "./domain-error.ts";

const IACS = "IEC 60028 (1925), International Annealed Copper Standard";
const OHM = "Ohm's law";

const REFERENCE = ZERO_CELSIUS + 20;

/** Share by which a kelvin raises copper's resistance, from 20 °C [1/K]: IACS (read second-hand). */
const COPPER_COEFFICIENT = 0.00393;

/** Copper wire of one size, with its resistance as tabulated. */
export type Wire = {
  /** Area of one conductor [m2]. */
  readonly area: number;
  /** Resistance of one conductor a length [ohm/m]. */
  readonly resistance: number;
  /** Temperature at which that resistance holds [K]. */
  readonly at: number;
};

/**
 * Copper's resistance at one temperature over that at another: (1 + α (T - 20 °C)) / (1 + α (T0 - 20 °C)).
 *
 * @param temperature of the conductor [K]
 * @param from temperature at which the resistance is known [K]
 * @returns ratio [-]
 * @throws DomainError outside -50..200 °C
 * @source temperature coefficient of IACS copper, 0.00393 1/K at 20 °C (read second-hand)
 */
export function copperTemperatureRatio(temperature: number, from: number = REFERENCE): number {
  const range: readonly [number, number] = [ZERO_CELSIUS - 50, ZERO_CELSIUS + 200];
  requireWithin("wire temperature", temperature, range, IACS);
  requireWithin("reference temperature", from, range, IACS);
  const relative = (at: number) => 1 + COPPER_COEFFICIENT * (at - REFERENCE);
  return relative(temperature) / relative(from);
}

/**
 * Resistance of a circuit of wire there and back: 2 L r at the wire's temperature.
 *
 * @param wire size and tabulated resistance, units at the type's fields
 * @param oneWayLength from the source to the load [m]
 * @param temperature of the conductor [K]
 * @returns resistance both ways [ohm]
 * @throws DomainError for a negative length, a resistance of 0, or a temperature outside -50..200 °C
 * @source Ohm's law; copperTemperatureRatio
 */
export function circuitResistance(wire: Wire, oneWayLength: number, temperature: number): number {
  requirePositive("resistance of the wire", wire.resistance, OHM);
  requireNotNegative("one-way length", oneWayLength, OHM);
  return 2 * oneWayLength * wire.resistance * copperTemperatureRatio(temperature, wire.at);
}

/** A load at the far end of a circuit. */
export type WireDuty = {
  /** Current of the load [A]. */
  readonly current: number;
  /** From the source to the load [m]. */
  readonly oneWayLength: number;
  /** Temperature of the conductor [K]. */
  readonly temperature: number;
  /** Voltage that may be lost on the way there and back [V]. */
  readonly drop: number;
};

/**
 * Thinnest wire whose drop, both ways, is no more than wanted.
 *
 * @param wires to choose from, units at the type's fields
 * @param duty current, length, temperature and drop, units at the type's fields
 * @returns the wire, or null when even the thickest loses more
 * @throws DomainError for a drop or a current that is not above 0
 * @source Ohm's law; circuitResistance
 */
export function thinnestForDrop<W extends Wire>(wires: readonly W[], duty: WireDuty): W | null {
  requirePositive("wanted drop", duty.drop, OHM);
  requirePositive("current", duty.current, OHM);
  const fit = wires.filter(
    (wire) => duty.current * circuitResistance(wire, duty.oneWayLength, duty.temperature) <= duty.drop,
  );
  return fit.reduce<W | null>((best, wire) => (best === null || wire.area < best.area ? wire : best), null);
}

/** Current that a wire may carry with one kind of insulation. */
export type AmpacityColumn = {
  /** Highest temperature that the insulation stands [K]. */
  readonly insulation: number;
  /** [A] */
  readonly current: number;
};

/** Currents that one gauge of wire may carry. */
export type AmpacityRow = {
  /** Area of the conductor [m2]. */
  readonly area: number;
  readonly currents: readonly AmpacityColumn[];
};

/**
 * Current that a wire may carry: that of the largest tabulated gauge not thicker than it, for its insulation, or for
 * the least insulation when that is not known.
 *
 * @param rows tabulated gauges, units at the type's fields
 * @param area of the wire's conductor [m2]
 * @param insulation temperature that its insulation stands; null when not known [K]
 * @returns current [A]
 * @throws DomainError for a wire thinner than the thinnest gauge, or insulation below the least tabulated
 * @validity under 50 V, in air of 30 °C, not bundled
 * @source 33 CFR 183.425 Table 5 (read in a copy); the cautious choice between its lines and columns
 */
export function ampacity(rows: readonly AmpacityRow[], area: number, insulation: number | null): number {
  const source = "33 CFR 183.425 Table 5";
  const notThicker = rows.filter((row) => row.area <= area * (1 + 1e-9));
  const row = notThicker.reduce<AmpacityRow | null>(
    (best, one) => (best === null || one.area > best.area ? one : best),
    null,
  );
  if (row === null) throw new DomainError("area of the conductor", area, "a tabulated gauge or more", source);
  const currents = [...row.currents].sort((one, other) => one.insulation - other.insulation);
  const stands =
    insulation === null
      ? currents.slice(0, 1)
      : currents.filter((one) => one.insulation <= insulation + 1e-9);
  const last = stands.at(-1);
  if (!last)
    throw new DomainError("heat of the insulation", insulation ?? 0, "a tabulated one or more", source);
  return last.current;
}
