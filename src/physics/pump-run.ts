// One pump at work: curve, hose, lift, outlet, wire and source solved together as a single point.

import { GRAVITY } from "../units/constants.ts";
import { DomainError, requireNotNegative, requirePositive } from "./domain-error.ts";
import { type GravityLine, gravityFlow, gravityHead } from "./gravity-line.ts";
import { boreArea } from "./pipe-friction.ts";
import { type Pump, pumpCurrent, pumpHead } from "./pump-curve.ts";
import { bracketedRoot } from "./root.ts";

const SOURCE = "pump curve against system curve";
/** Lifts the upper end of a bracket clear of rounding. */
const CLEAR = 1 + 1e-9;
/** Voltage about standing still that is rounding, as a share of the rated one: the root of a head's rounding [-]. */
const STANDING = 1e-4;
/** Head that is rounding rather than a lack, as a share of the shut-off head [-]. */
const ROUNDING = 1e-9;

/** A pump with its hose and the height it lifts to. */
export type Lifting = {
  readonly pump: Pump;
  /** Hose with all fittings; `opening` is the watering head as a hole, null for none. */
  readonly line: GravityLine;
  /** From the water it draws on up to where the water leaves; below 0 when it runs downhill [m]. */
  readonly lift: number;
};

/** What feeds a pump. */
export type Supply = {
  /** Voltage at the source [V]. */
  readonly voltage: number;
  /** Wire both ways, with all else in the circuit but the pump [ohm]. */
  readonly resistance: number;
};

/** The point at which a pump runs. */
export type PumpRun = {
  /** Volume a time; 0 where it cannot lift [m3/s]. */
  readonly flow: number;
  /** Total head that the pump makes [m]. */
  readonly head: number;
  /** Voltage that arrives at the motor [V]. */
  readonly arrivingVoltage: number;
  /** Current of the whole circuit [A]. */
  readonly current: number;
};

/** Voltage and current with which a pump gives a flow. */
export type PumpDemand = {
  /** At the motor; below 0 where the water runs faster by itself [V]. */
  readonly voltage: number;
  /** [A] */
  readonly current: number;
};

/**
 * Voltage that must arrive for a flow, with the current it then draws: V = Vr √((lift + losses + a Q²) / H0).
 *
 * @param lifting pump, hose and lift, units at the type's fields
 * @param flow volume a time, 0 or more [m3/s]
 * @returns voltage and current, units at the type's fields
 * @throws DomainError for a negative flow or a flow through a shut outlet
 * @source pumpHead solved for voltage; Darcy-Weisbach with Churchill for the hose
 */
export function pumpDemand({ pump, line, lift }: Lifting, flow: number): PumpDemand {
  const square = (lift + gravityHead(line, flow) + pump.fall * flow * flow) / pump.shutoffHead;
  if (square <= 0) return { voltage: -pump.ratedVoltage * Math.sqrt(-square), current: 0 };
  const voltage = pump.ratedVoltage * Math.sqrt(square);
  return { voltage, current: pumpCurrent(pump, flow, voltage) };
}

/**
 * The one point at which curve, hose, lift, outlet, wire and source agree.
 *
 * @param lifting pump, hose and lift, units at the type's fields
 * @param supply voltage of the source and resistance of the wire, units at the type's fields
 * @returns flow, head, arriving voltage and current, units at the type's fields
 * @throws DomainError for a voltage that is not above 0 or a negative resistance
 * @validity a source of steady voltage; for a panel see directRun
 * @source pump curve equals lift plus losses; source voltage equals the pump's plus the wire's
 */
export function pumpRun(lifting: Lifting, supply: Supply): PumpRun {
  requirePositive("source voltage", supply.voltage, SOURCE);
  requireNotNegative("wire resistance", supply.resistance, SOURCE);
  const { pump, line, lift } = lifting;
  if (!Number.isFinite(lift)) throw new DomainError("lift", lift, "finite", SOURCE);
  const shortBy = (flow: number) => {
    const { voltage, current } = pumpDemand(lifting, flow);
    return voltage + current * supply.resistance - supply.voltage;
  };
  if (line.opening === 0 || shortBy(0) >= 0) return turningOnly(pump, supply);
  // With neither losses nor wire: no more than this can flow.
  const speed = supply.voltage / pump.ratedVoltage;
  const most = CLEAR * Math.sqrt((pump.shutoffHead * speed * speed - lift) / pump.fall);
  const flow = bracketedRoot(shortBy, 0, most);
  return runAtFlow(lifting, flow);
}

/**
 * The point of a pump whose flow is known.
 *
 * @param lifting pump, hose and lift, units at the type's fields
 * @param flow above 0 [m3/s]
 * @returns flow, head, arriving voltage and current, units at the type's fields
 * @throws DomainError for a negative flow, or one below what runs through it by itself
 * @source as in pumpDemand
 */
export function runAtFlow(lifting: Lifting, flow: number): PumpRun {
  const { voltage, current } = pumpDemand(lifting, flow);
  if (voltage < -STANDING * lifting.pump.ratedVoltage) {
    throw new DomainError("flow of the pump", flow, "no less than what runs by itself", SOURCE);
  }
  const head = lifting.lift + gravityHead(lifting.line, flow);
  return { flow, head, arrivingVoltage: Math.max(0, voltage), current };
}

/** A pump that turns and moves no water: V + R I0 (V/Vr)² = Vs. */
function turningOnly(pump: Pump, supply: Supply): PumpRun {
  const share = (supply.resistance * pump.noFlowCurrent) / pump.ratedVoltage ** 2;
  const voltage = (2 * supply.voltage) / (1 + Math.sqrt(1 + 4 * share * supply.voltage));
  return {
    flow: 0,
    head: pumpHead(pump, 0, voltage),
    arrivingVoltage: voltage,
    current: pumpCurrent(pump, 0, voltage),
  };
}

/**
 * Highest lift against which a pump still moves water at all: its head at no flow, at the voltage that then arrives.
 *
 * @param pump curve and currents, units at the type's fields
 * @param supply voltage of the source and resistance of the wire, units at the type's fields
 * @returns lift [m]
 * @throws DomainError for a voltage that is not above 0 or a negative resistance
 * @source pumpHead at no flow
 */
export function greatestLift(pump: Pump, supply: Supply): number {
  requirePositive("source voltage", supply.voltage, SOURCE);
  requireNotNegative("wire resistance", supply.resistance, SOURCE);
  return turningOnly(pump, supply).head;
}

/**
 * Flow that runs on by itself when the pump stands still, where the water lies above the outlet.
 *
 * @param lifting pump, hose and lift, units at the type's fields
 * @returns flow; 0 where the outlet is higher than the water [m3/s]
 * @throws DomainError when nothing at all holds the flow back
 * @validity a pump that lets water through; its own resistance is that of its curve
 * @source gravityFlow, with the fall of the pump's curve as one more loss
 */
export function flowByItself({ pump, line, lift }: Lifting): number {
  const pumpK = 2 * GRAVITY * pump.fall * boreArea(line.bore) ** 2;
  return gravityFlow({ ...line, fittingsK: line.fittingsK + pumpK }, -lift);
}

/**
 * Head that a pump makes at a flow, at the voltage that then arrives: V + R I(Q, V) = Vs.
 *
 * @param pump curve and currents, units at the type's fields
 * @param supply voltage of the source and resistance of the wire, units at the type's fields
 * @param flow volume a time, 0 or more [m3/s]
 * @returns head; below 0 where more is asked than it can give [m]
 * @throws DomainError for a voltage that is not above 0, a negative resistance or a negative flow
 * @source pumpHead; source voltage equals the pump's plus the wire's
 */
export function headUnder(pump: Pump, supply: Supply, flow: number): number {
  requirePositive("source voltage", supply.voltage, SOURCE);
  requireNotNegative("wire resistance", supply.resistance, SOURCE);
  const arriving = bracketedRoot(
    (voltage) => voltage + supply.resistance * pumpCurrent(pump, flow, voltage) - supply.voltage,
    0,
    supply.voltage * CLEAR,
  );
  return pumpHead(pump, flow, arriving);
}

/**
 * Loss coefficient of a watering head, on the speed in the hose, from a bucket filled through it.
 *
 * @param lifting pump, hose without the watering head, and lift, units at the type's fields
 * @param supply voltage of the source and resistance of the wire, units at the type's fields
 * @param flow volume of the bucket over the time to fill it, above 0 [m3/s]
 * @returns loss coefficient [-]
 * @throws DomainError when the pump could not give that flow even without the watering head
 * @source head that the pump makes at that flow, less lift and hose
 */
export function outletKFromBucket(lifting: Lifting, supply: Supply, flow: number): number {
  requirePositive("flow into the bucket", flow, SOURCE);
  const { pump, line, lift } = lifting;
  const left = headUnder(pump, supply, flow) - lift - gravityHead(line, flow);
  if (left < -ROUNDING * pump.shutoffHead) {
    throw new DomainError("flow into the bucket", flow, "no more than the pump gives without a head", SOURCE);
  }
  return (2 * GRAVITY * Math.max(0, left)) / (flow / boreArea(line.bore)) ** 2;
}

/** No pump turns so much slower or faster than its figures say: past that a reading is a slip [-]. Judgement, no source. */
const SHARES: readonly [number, number] = [1e-3, 1e3];

/**
 * A pump that turns at a share of the speed its figures are for: head at no flow with its square, open flow with it.
 *
 * @param pump curve and currents, units at the type's fields
 * @param share of that speed at the same voltage, above 0 [-]
 * @returns the pump, units at the type's fields
 * @throws DomainError for a share that is not above 0
 * @source affinity laws, as in pumpHead
 */
export function pumpAtShare(pump: Pump, share: number): Pump {
  requirePositive("share of its speed", share, SOURCE);
  return { ...pump, shutoffHead: pump.shutoffHead * share * share };
}

/**
 * Share of the speed its figures are for at which a pump gives what a bucket showed: the root of pumpRun in pumpAtShare.
 *
 * @param lifting pump, hose as it was timed, and lift, units at the type's fields
 * @param supply voltage of the source and resistance of the wire then, units at the type's fields
 * @param flow volume of the bucket over the time to fill it, above 0 [m3/s]
 * @returns share [-]
 * @throws DomainError for a flow that runs by itself, or that would want a share outside 0.001..1000
 * @validity one reading cannot tell a weak pump from a clogged hose
 * @source affinity laws and the curve of the pump against lift and hose, solved for the speed
 */
export function speedShareFromFlow(lifting: Lifting, supply: Supply, flow: number): number {
  requirePositive("flow into the bucket", flow, SOURCE);
  requirePositive("source voltage", supply.voltage, SOURCE);
  requireNotNegative("wire resistance", supply.resistance, SOURCE);
  const made = lifting.lift + gravityHead(lifting.line, flow) + lifting.pump.fall * flow * flow;
  if (!(made > 0))
    throw new DomainError("head made at that flow", made, "above 0: it runs by itself", SOURCE);
  const shortBy = (share: number) => {
    const { voltage, current } = pumpDemand({ ...lifting, pump: pumpAtShare(lifting.pump, share) }, flow);
    return voltage + current * supply.resistance - supply.voltage;
  };
  const [low, high] = SHARES;
  if (shortBy(low) <= 0 || shortBy(high) >= 0) {
    throw new DomainError("flow into the bucket", flow, "what such a pump can give", SOURCE);
  }
  return bracketedRoot(shortBy, low, high);
}
