// Resistance of copper wire by gauge, area, temperature and stranding, and the voltage it costs on the way.

import { INCH, MILLIMETRE, ZERO_CELSIUS } from "../units/constants.ts";
import { DomainError, requireNotNegative, requirePositive, requireWithin } from "./domain-error.ts";

const ASTM = "ASTM B258-02";
const IACS = "IEC 60028 (1925), International Annealed Copper Standard";
const OHM = "Ohm's law";

const REFERENCE = ZERO_CELSIUS + 20;
/** Square metres of a square millimetre [m2]. */
const SQUARE_MILLIMETRE = MILLIMETRE * MILLIMETRE;

/** Resistivity of annealed copper at 20 °C [ohm m]: IEC 60028 (1925), 0.017241 ohm mm2/m (read in a note). */
export const COPPER_RESISTIVITY = 0.017241 * SQUARE_MILLIMETRE;
/** Share by which a kelvin raises copper's resistance, from 20 °C [1/K]: IACS (read second-hand). */
export const COPPER_COEFFICIENT = 0.00393;
/**
 * Resistance of a stranded conductor over a solid one of the same area [-]: the strands run in a spiral. Computed from
 * NEC chapter 9 table 8, where it is 1.018 to 1.024.
 */
export const STRANDING = 1.02;

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
 * Diameter of a solid wire by its American gauge: 0.005 in × 92^((36 - n) / 39).
 *
 * @param gauge number n; 0, -1, -2 and -3 stand for 1/0, 2/0, 3/0 and 4/0 [-]
 * @returns diameter [m]
 * @throws DomainError for a gauge outside -3..40
 * @source ASTM B258-02 as summarised at liquisearch.com (read second-hand)
 */
export function gaugeDiameter(gauge: number): number {
  requireWithin("gauge", gauge, [-3, 40], ASTM);
  return 0.005 * INCH * 92 ** ((36 - gauge) / 39);
}

/**
 * Area of a conductor by its American gauge.
 *
 * @param gauge number; 0, -1, -2 and -3 stand for 1/0, 2/0, 3/0 and 4/0 [-]
 * @returns area [m2]
 * @throws DomainError for a gauge outside -3..40
 * @source ASTM B258-02, as in gaugeDiameter
 */
export function gaugeArea(gauge: number): number {
  return (Math.PI / 4) * gaugeDiameter(gauge) ** 2;
}

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
 * Resistance of a copper conductor a length, from its area: ρ / A × stranding × temperature.
 *
 * @param area of the conductor [m2]
 * @param temperature of the conductor [K]
 * @param stranding 1 for solid wire, 1.02 for stranded [-]
 * @returns resistance a length [ohm/m]
 * @throws DomainError for an area of 0, a stranding under 1 or over 1.1, or a temperature outside -50..200 °C
 * @source IEC 60028 (1925) resistivity; stranding computed from NEC chapter 9 table 8
 */
export function copperResistance(area: number, temperature: number, stranding: number = STRANDING): number {
  requirePositive("area of the conductor", area, IACS);
  requireWithin("stranding", stranding, [1, 1.1], IACS);
  return (COPPER_RESISTIVITY / area) * stranding * copperTemperatureRatio(temperature);
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

/**
 * Area of conductor for a wanted drop: ρ I L / ΔV, L there and back.
 *
 * @param duty.current of the load [A]
 * @param duty.roundTrip length of wire there and back [m]
 * @param duty.drop that may be lost [V]
 * @param duty.resistivity of the conductor as it is reckoned with [ohm m]
 * @returns area [m2]
 * @throws DomainError when one of them is not above 0
 * @source Ohm's law; ABYC E-11 in the form CM = K I L / E (read in a quotation)
 */
export function areaForDrop(duty: {
  readonly current: number;
  readonly roundTrip: number;
  readonly drop: number;
  readonly resistivity: number;
}): number {
  requirePositive("current", duty.current, OHM);
  requirePositive("round trip", duty.roundTrip, OHM);
  requirePositive("wanted drop", duty.drop, OHM);
  requirePositive("resistivity", duty.resistivity, OHM);
  return (duty.resistivity * duty.current * duty.roundTrip) / duty.drop;
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

/**
 * Share of its current that a conductor may carry where several lie together in one bundle.
 *
 * @param carrying conductors in the bundle that carry current, a whole number [-]
 * @returns share [-]
 * @throws DomainError for fewer than 1 or more than 24
 * @source table after UL 1426 and ABYC E-11 at cableyutai.com.tw (read): 3 × 0.70, 4-6 × 0.60, 7-24 × 0.50
 */
export function bundleShare(carrying: number): number {
  requireWithin("conductors in the bundle", carrying, [1, 24], "UL 1426 and ABYC E-11");
  if (carrying <= 2) return 1;
  if (carrying <= 3) return 0.7;
  return carrying <= 6 ? 0.6 : 0.5;
}
