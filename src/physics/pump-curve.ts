// What head a small centrifugal pump makes against its flow and voltage, and what current it draws.

import { DomainError, requireNotNegative, requirePositive, requireWithin } from "./domain-error.ts";

const AFFINITY = "affinity laws of centrifugal pumps";
const FIT = "least squares of H = H0 - a Q²";

/**
 * Share of the open flow on a label that is believed until the pump is tested [-]. Five pumps gave 15 to 33 % less:
 * BoatUS Foundation Findings 14 (read).
 */
export const BELIEVED_LABEL_SHARE = 0.8;

/** Head against flow at one voltage: H = H0 - a Q². */
export type PumpCurve = {
  /** Voltage at the motor for which the curve holds [V]. */
  readonly ratedVoltage: number;
  /** Head at no flow [m]. */
  readonly shutoffHead: number;
  /** Head lost to each square of the flow [s2/m5]. */
  readonly fall: number;
};

/** A pump's curve with the current of its motor. */
export type Pump = PumpCurve & {
  /** Current at the rated voltage while it turns against a shut outlet; not the current of a stalled rotor [A]. */
  readonly noFlowCurrent: number;
  /** Current at the rated voltage at open flow [A]. */
  readonly openFlowCurrent: number;
  /** Current that only turns it against bearings and seal, at any speed; left out: none is told apart [A]. */
  readonly frictionCurrent?: number;
};

/**
 * Curve from what a label says: open flow and shut-off head; a = H0 / Q0².
 *
 * @param openFlow flow without any head [m3/s]
 * @param shutoffHead head without any flow [m]
 * @param ratedVoltage voltage at which both hold [V]
 * @returns the curve, units at the type's fields
 * @throws DomainError when one of them is not above 0
 * @source two-parameter curve, definition
 */
export function curveFromRatings(openFlow: number, shutoffHead: number, ratedVoltage: number): PumpCurve {
  requirePositive("open flow", openFlow, FIT);
  requirePositive("shut-off head", shutoffHead, FIT);
  requirePositive("rated voltage", ratedVoltage, FIT);
  return { ratedVoltage, shutoffHead, fall: shutoffHead / (openFlow * openFlow) };
}

/** One line of a data sheet. */
export type PumpPoint = {
  /** Volume a time [m3/s]. */
  readonly flow: number;
  /** Head made at that flow [m]. */
  readonly head: number;
};

/**
 * Curve that best fits the points of a data sheet: a straight line of head over the square of flow.
 *
 * @param points two or more, of different flows, units at the type's fields
 * @param ratedVoltage voltage at which they hold [V]
 * @returns the curve, units at the type's fields
 * @throws DomainError for fewer than two different flows, or points whose head does not fall with flow
 * @validity between and near the points
 * @source least squares; rating points of small electric pumps as ISO 8849:2021 asks for them (read in excerpts)
 */
export function curveFromPoints(points: readonly PumpPoint[], ratedVoltage: number): PumpCurve {
  requirePositive("rated voltage", ratedVoltage, FIT);
  for (const point of points) {
    requireNotNegative("flow", point.flow, FIT);
    requireNotNegative("head", point.head, FIT);
  }
  const squares = points.map(({ flow }) => flow * flow);
  const meanSquare = mean(squares);
  const meanHead = mean(points.map(({ head }) => head));
  const spread = sum(squares.map((square) => (square - meanSquare) ** 2));
  if (!(points.length >= 2 && spread > 0)) {
    throw new DomainError("points of the curve", points.length, "two or more, of different flows", FIT);
  }
  const together = sum(
    points.map(({ head }, index) => (head - meanHead) * ((squares[index] ?? 0) - meanSquare)),
  );
  const fall = -together / spread;
  if (!(fall > 0)) throw new DomainError("fall of the curve", fall, "above 0: head must fall with flow", FIT);
  return { ratedVoltage, shutoffHead: meanHead + fall * meanSquare, fall };
}

/**
 * Curve of which only a share of the flow is believed at every head: a / share².
 *
 * @param curve as the label has it, units at the type's fields
 * @param share of the labelled flow, above 0 to 1; 0.8 unless tested [-]
 * @returns the curve to reckon with, units at the type's fields
 * @throws DomainError for a share outside that range
 * @validity the tests were of open flow; the same shut-off head is kept
 * @source BoatUS Foundation Findings 14, University of Virginia tests (read): 15 to 33 % below the label
 */
export function believedCurve(curve: PumpCurve, share = BELIEVED_LABEL_SHARE): PumpCurve {
  requirePositive("believed share", share, "definition");
  requireWithin("believed share", share, [0, 1], "definition");
  return { ...curve, fall: curve.fall / (share * share) };
}

/**
 * Head that a pump makes at a flow and a voltage: H0 v² - a Q², v the voltage over the rated one.
 * Below 0 the water drives the pump.
 *
 * @param curve of the pump, units at the type's fields
 * @param flow volume a time, 0 or more [m3/s]
 * @param voltage at the motor, 0 or more [V]
 * @returns head [m]
 * @throws DomainError for a negative flow or voltage
 * @validity speed in proportion to voltage: permanent magnets, windings of little resistance
 * @source affinity laws, as in Crane TP-410 example 7.33 (read second-hand); speed follows voltage (from memory)
 */
export function pumpHead(curve: PumpCurve, flow: number, voltage: number): number {
  requireNotNegative("flow", flow, AFFINITY);
  requireNotNegative("voltage", voltage, AFFINITY);
  const speed = voltage / curve.ratedVoltage;
  return curve.shutoffHead * speed * speed - curve.fall * flow * flow;
}

/**
 * Flow of a pump without any head at a voltage: v √(H0 / a).
 *
 * @param curve of the pump, units at the type's fields
 * @param voltage at the motor, 0 or more [V]
 * @returns open flow [m3/s]
 * @throws DomainError for a negative voltage
 * @source affinity laws, as in pumpHead
 */
export function openFlow(curve: PumpCurve, voltage: number = curve.ratedVoltage): number {
  requireNotNegative("voltage", voltage, AFFINITY);
  return (voltage / curve.ratedVoltage) * Math.sqrt(curve.shutoffHead / curve.fall);
}

/**
 * Current that a pump draws: v² (I0 + (Io - I0) q), q its flow over its open flow at that voltage.
 * Where water is driven through it faster than its open flow, the current is that of open flow.
 *
 * @param pump curve and currents, units at the type's fields
 * @param flow volume a time, 0 or more [m3/s]
 * @param voltage at the motor, 0 or more [V]
 * @returns current [A]
 * @throws DomainError for a negative flow, voltage or current
 * @validity a turning rotor; torque of a centrifugal pump goes with the square of its speed
 * @source affinity laws: torque, and so current, with the square of speed; a straight line between the two ratings
 */
export function pumpCurrent(pump: Pump, flow: number, voltage: number): number {
  requireNotNegative("no-flow current", pump.noFlowCurrent, AFFINITY);
  requireNotNegative("open-flow current", pump.openFlowCurrent, AFFINITY);
  requireNotNegative("flow", flow, AFFINITY);
  const open = openFlow(pump, voltage);
  const share = flow >= open ? 1 : flow / open;
  const speed = voltage / pump.ratedVoltage;
  return speed * speed * (pump.noFlowCurrent + (pump.openFlowCurrent - pump.noFlowCurrent) * share);
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

function mean(values: readonly number[]): number {
  return sum(values) / values.length;
}
