// A pump straight on a panel: its load line against the panel's curve, through the hours of a day.

import { requireNotNegative } from "./domain-error.ts";
import { openCircuitVoltage, type PanelCurve, panelCurrent } from "./panel-curve.ts";
import { type Pump, pumpCurrent, pumpHead } from "./pump-curve.ts";
import {
  flowByItself,
  type Lifting,
  type PumpDemand,
  type PumpRun,
  pumpDemand,
  pumpRun,
  runAtFlow,
} from "./pump-run.ts";
import { bracketedRoot } from "./root.ts";
import type { SunStep } from "./tilted-sun.ts";

const SOURCE = "load line against panel curve";
/**
 * Best voltage of a panel over the pump's rated voltage up to which they suit [-]. A panel sold for 12 V has 17 to 18 V
 * (from memory), at most 1.5; one of 60 cells has about 30 V. Common practice, no source.
 */
export const MOST_VOLTAGE_RATIO = 1.65;
/** Share of the full flow from which a pump counts as running fully [-]. Definition. */
const FULL = 0.95;

/**
 * Point of a pump straight on a panel: the one current that the panel gives and the pump draws, over the wire between.
 *
 * @param lifting pump, hose and lift, units at the type's fields
 * @param wireResistance both ways [ohm]
 * @param curve of the panel in its light, units at the type's fields
 * @returns flow, head, arriving voltage and current, units at the type's fields
 * @throws DomainError for a negative resistance
 * @validity a pump without a current booster that turns as soon as the panel overcomes its friction
 * @source panelCurve and pumpDemand, solved together
 */
export function directRun(lifting: Lifting, wireResistance: number, curve: PanelCurve): PumpRun {
  requireNotNegative("wire resistance", wireResistance, SOURCE);
  const { pump, line, lift } = lifting;
  const open = openCircuitVoltage(curve);
  if (!(open > 0 && curve.short > frictionOf(pump))) return standingStill(lifting);
  const tooMuch = (flow: number) => {
    const { voltage, current } = demandAlone(lifting, flow);
    const atPanel = voltage + current * wireResistance;
    // While the water runs faster by itself, the panel has all its current to spare.
    return current - panelCurrent(curve, Math.max(0, atPanel)) + Math.min(0, atPanel);
  };
  if (line.opening === 0 || tooMuch(0) >= 0) return turningOnly(pump, wireResistance, curve, open);
  const speed = open / pump.ratedVoltage;
  const most = Math.sqrt((pump.shutoffHead * speed * speed - lift) / pump.fall) * (1 + 1e-9);
  const flow = bracketedRoot(tooMuch, 0, most);
  return { ...runAtFlow(lifting, flow), current: demandAlone(lifting, flow).current };
}

/**
 * Current that only turns a pump; never more than it draws against a shut outlet.
 *
 * @param pump curve and currents, units at the type's fields
 * @returns current [A]
 * @source definition
 */
export function frictionOf({ frictionCurrent = 0, noFlowCurrent }: Pump): number {
  return Math.min(frictionCurrent, noFlowCurrent);
}

/**
 * Current that a pump draws of its own panel: friction at any speed, the rest with the square of the speed, so that at
 * the rated voltage it is that of pumpCurrent: I + If (1 - v²).
 *
 * @param pump curve and currents, units at the type's fields
 * @param flow volume a time, 0 or more [m3/s]
 * @param voltage at the motor, 0 or more [V]
 * @returns current [A]
 * @throws DomainError for a negative flow, voltage or current
 * @source a steady torque of friction beside one with the square of the speed; its size from memory
 */
function currentAlone(pump: Pump, flow: number, voltage: number): number {
  const speed = voltage / pump.ratedVoltage;
  return pumpCurrent(pump, flow, voltage) + frictionOf(pump) * (1 - speed * speed);
}

/** Voltage and current for a flow on a panel; while the water drives the rotor it draws nothing. */
function demandAlone(lifting: Lifting, flow: number): PumpDemand {
  const { voltage, current } = pumpDemand(lifting, flow);
  if (voltage < 0) return { voltage, current };
  return { voltage, current: currentAlone(lifting.pump, flow, voltage) };
}

/** A pump in the dark, or in too little light to turn it: water runs through it only downhill. */
function standingStill(lifting: Lifting): PumpRun {
  const flow = flowByItself(lifting);
  return { flow, head: pumpHead(lifting.pump, flow, 0), arrivingVoltage: 0, current: 0 };
}

/** A pump that turns on a panel and moves no water. */
function turningOnly(pump: Pump, wireResistance: number, curve: PanelCurve, open: number): PumpRun {
  const drawn = (voltage: number) => currentAlone(pump, 0, voltage);
  const arrivingVoltage = bracketedRoot(
    (voltage) => drawn(voltage) - panelCurrent(curve, voltage + wireResistance * drawn(voltage)),
    0,
    open * (1 + 1e-9),
  );
  return {
    flow: 0,
    head: pumpHead(pump, 0, arrivingVoltage),
    arrivingVoltage,
    current: drawn(arrivingVoltage),
  };
}

/** One stretch of a day with its pump. */
export type DirectStep = SunStep & {
  readonly run: PumpRun;
  /** Flow over the flow at the pump's rated voltage [-]. */
  readonly share: number;
};

/** A day of a pump straight on a panel. */
export type DirectDay = {
  readonly steps: readonly DirectStep[];
  /** In which any water comes [s]. */
  readonly pumpingTime: number;
  /** In which at least 95 % of the full flow comes [s]. */
  readonly fullTime: number;
  /** Volume of the day [m3]. */
  readonly volume: number;
  /** Highest voltage that arrives at the motor [V]. */
  readonly highestVoltage: number;
};

/**
 * A day of a pump straight on a panel, stretch by stretch. Full flow is that at the pump's rated voltage, through the
 * same hose and wire's end.
 *
 * @param lifting pump, hose and lift, units at the type's fields
 * @param wireResistance both ways [ohm]
 * @param day stretches of its sunshine, units at the type's fields
 * @param curveAt the panel's curve in a light [W/m2]
 * @returns stretches, times, volume and highest voltage, units at the type's fields
 * @throws DomainError for a negative resistance
 * @source directRun, summed
 */
export function directDay(
  lifting: Lifting,
  wireResistance: number,
  day: readonly SunStep[],
  curveAt: (irradiance: number) => PanelCurve,
): DirectDay {
  const full = pumpRun(lifting, { voltage: lifting.pump.ratedVoltage, resistance: 0 }).flow;
  const steps = day.map((step) => {
    const run = directRun(lifting, wireResistance, curveAt(step.irradiance));
    return { ...step, run, share: full > 0 ? run.flow / full : 0 };
  });
  const timeWhere = (fits: (step: DirectStep) => boolean) =>
    steps.reduce((sum, step) => (fits(step) ? sum + step.length : sum), 0);
  return {
    steps,
    pumpingTime: timeWhere(({ run }) => run.flow > 0),
    fullTime: timeWhere(({ share }) => share >= FULL),
    volume: steps.reduce((sum, { run, length }) => sum + run.flow * length, 0),
    highestVoltage: steps.reduce((most, { run }) => Math.max(most, run.arrivingVoltage), 0),
  };
}
