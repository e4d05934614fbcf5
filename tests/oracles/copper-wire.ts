// Gauges, copper and the area a drop asks for: what the table of wires is held against.

import { copperTemperatureRatio } from "../../src/physics/copper-wire.ts";
import { requirePositive, requireWithin } from "../../src/physics/domain-error.ts";
import { INCH, MILLIMETRE } from "../../src/units/constants.ts";

const IACS = "IEC 60028 (1925), International Annealed Copper Standard";
const OHM = "Ohm's law";

/** Square metres of a square millimetre [m2]. */
const SQUARE_MILLIMETRE = MILLIMETRE * MILLIMETRE;

const ASTM = "ASTM B258-02";

/** Resistivity of annealed copper at 20 °C [ohm m]: IEC 60028 (1925), 0.017241 ohm mm2/m (read in a note). */
const COPPER_RESISTIVITY = 0.017241 * SQUARE_MILLIMETRE;
/**
 * Resistance of a stranded conductor over a solid one of the same area [-]: the strands run in a spiral. Computed from
 * NEC chapter 9 table 8, where it is 1.018 to 1.024.
 */
const STRANDING = 1.02;

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
