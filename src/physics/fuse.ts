// Which fuse a circuit wants, and which rules the one that is fitted breaks.

import { INCH } from "../units/constants.ts";
import { requireNotNegative, requirePositive } from "./domain-error.ts";

const OHM = "Ohm's law";

/** Fuse over a current that runs for hours [-]: NEC 210.20(A), quoted in a maker's bulletin (read second-hand). */
export const CONTINUOUS_MARGIN = 1.25;
/** Most that a fuse may be over the wire's ampacity, under 50 V [-]: 33 CFR 183.455(c) (read in a copy). */
export const REGULATION_EXCESS = 1.5;
/** A stall blows a fuse in seconds only at some multiple of its size [-]: ISO 8820-3 opening times (from memory). */
const STALL_MULTIPLE = 2;

/** Current that a panel's wire must bear over its shorted one [-]: NEC 690.8(A)(B), 1.25 for bright light by 1.25 for hours (read). */
export const PANEL_WIRE_MARGIN = 1.56;

/** What decides the size of a fuse. */
export type FuseDuty = {
  /** Current while the pump runs [A]. */
  readonly runningCurrent: number;
  /** Fuse that the pump's maker asks for; null when the maker says nothing [A]. */
  readonly makerFuse: number | null;
  /** Current that the thinnest wire behind the fuse may carry [A]. */
  readonly ampacity: number;
  /** Current with the rotor held fast, through that wire; null when not known [A]. */
  readonly stalledCurrent: number | null;
};

/** A fuse to fit, or why there is none. */
export type FuseChoice =
  | {
      readonly state: "fits";
      /** Size of the fuse [A]. */
      readonly size: number;
    }
  | { readonly state: "wire_too_thin" | "maker_below_running" | "no_such_size" | "stall_too_small" };

/**
 * Fuse for a pump: the maker's figure, else the next size from 1.25 times the running current up; never over what the
 * thinnest wire may carry, nor one that a stuck pump would not blow.
 *
 * @param duty currents, maker's fuse and ampacity, units at the type's fields
 * @param sizes that are sold [A]
 * @returns the size, or the reason why none fits
 * @throws DomainError for a current or an ampacity that is not above 0
 * @source NEC 210.20(A) for 1.25 (read second-hand); 33 CFR 183.455 (read in a copy) without its 150 % allowance
 */
export function fuseChoice(duty: FuseDuty, sizes: readonly number[]): FuseChoice {
  requirePositive("running current", duty.runningCurrent, OHM);
  requirePositive("ampacity", duty.ampacity, OHM);
  if (duty.makerFuse !== null && duty.makerFuse <= duty.runningCurrent) {
    return { state: "maker_below_running" };
  }
  const suited = suitedSizes(duty, sizes);
  if (suited.length === 0) return { state: "no_such_size" };
  const borne = suited.filter((one) => one <= duty.ampacity);
  if (borne.length === 0) return { state: "wire_too_thin" };
  const size = borne.find((one) => blowsWhenStuck(duty, one));
  return size === undefined ? { state: "stall_too_small" } : { state: "fits", size };
}

/** Whether the current of a stuck pump blows a fuse of that size in seconds; of one that is not known nothing is said. */
const blowsWhenStuck = ({ stalledCurrent }: FuseDuty, size: number): boolean =>
  stalledCurrent === null || stalledCurrent >= STALL_MULTIPLE * size;

/** Sizes that run and protect the pump, the best first: nearest under the maker's figure, else nearest over the margin. */
function suitedSizes(duty: FuseDuty, sizes: readonly number[]): readonly number[] {
  const rising = [...sizes].sort((one, other) => one - other);
  const { makerFuse, runningCurrent } = duty;
  if (makerFuse !== null) {
    return rising.filter((size) => size <= makerFuse && size > runningCurrent).reverse();
  }
  // Sizes and currents are short decimals: the margin times a current may miss a size by rounding.
  return rising.filter((size) => size >= CONTINUOUS_MARGIN * runningCurrent * (1 - 1e-12)).slice(0, 1);
}

/** A rule that a fitted fuse breaks. */
export type FuseFault =
  | "no_fuse"
  | "under_running_current"
  | "little_margin"
  | "over_maker"
  | "over_ampacity"
  | "over_regulation"
  | "stall_does_not_blow";

/** What is really fitted. */
export type FittedFuse = FuseDuty & {
  /** Size that is fitted; null when there is none [A]. */
  readonly fuse: number | null;
};

/**
 * Rules that a fitted fuse breaks, the gravest first; none for a right one.
 *
 * @param fitted fuse, currents, maker's fuse and ampacity, units at the type's fields
 * @returns the broken rules
 * @throws DomainError for a current or an ampacity that is not above 0
 * @source 33 CFR 183.455(b)(c) (read in a copy); ABYC E-11 for motors (read second-hand); NEC 210.20(A) for 1.25
 */
export function fuseFaults(fitted: FittedFuse): readonly FuseFault[] {
  requirePositive("running current", fitted.runningCurrent, OHM);
  requirePositive("ampacity", fitted.ampacity, OHM);
  const { fuse } = fitted;
  if (fuse === null) return ["no_fuse"];
  requirePositive("fuse", fuse, OHM);
  const faults: FuseFault[] = [];
  if (fuse > REGULATION_EXCESS * fitted.ampacity) faults.push("over_regulation");
  if (fuse > fitted.ampacity) faults.push("over_ampacity");
  if (fitted.makerFuse !== null && fuse > fitted.makerFuse) faults.push("over_maker");
  if (!blowsWhenStuck(fitted, fuse)) faults.push("stall_does_not_blow");
  if (fuse <= fitted.runningCurrent) faults.push("under_running_current");
  else if (fitted.makerFuse === null && fuse < CONTINUOUS_MARGIN * fitted.runningCurrent * (1 - 1e-12)) {
    faults.push("little_margin");
  }
  return faults;
}

/**
 * Current of a pump whose rotor is held fast, through its wire: Vs / (Vr / Is + R).
 *
 * @param stall.current with a held rotor at the rated voltage [A]
 * @param stall.ratedVoltage at the motor [V]
 * @param stall.sourceVoltage [V]
 * @param stall.wireResistance both ways [ohm]
 * @returns current [A]
 * @throws DomainError for a current or a voltage that is not above 0
 * @source Ohm's law: a held rotor is a plain resistance
 */
export function stalledCurrent(stall: {
  readonly current: number;
  readonly ratedVoltage: number;
  readonly sourceVoltage: number;
  readonly wireResistance: number;
}): number {
  requirePositive("stall current", stall.current, OHM);
  requirePositive("rated voltage", stall.ratedVoltage, OHM);
  requirePositive("source voltage", stall.sourceVoltage, OHM);
  requireNotNegative("wire resistance", stall.wireResistance, OHM);
  return stall.sourceVoltage / (stall.ratedVoltage / stall.current + stall.wireResistance);
}

/**
 * Farthest that a fuse may sit from the battery along the wire.
 *
 * @param sheathed whether the whole length up to the fuse lies in a sheath or an enclosure
 * @returns length [m]
 * @source 33 CFR 183.455(b) (read in a copy): 7 in, or 40 in when sheathed
 */
export function fuseDistanceLimit(sheathed: boolean): number {
  return (sheathed ? 40 : 7) * INCH;
}

/**
 * Current of a dead short: V / ΣR.
 *
 * @param voltage of the battery [V]
 * @param resistance of its cells, links and the wire [ohm]
 * @returns current [A]
 * @throws DomainError when one of them is not above 0
 * @source Ohm's law
 */
export function faultCurrent(voltage: number, resistance: number): number {
  requirePositive("voltage", voltage, OHM);
  requirePositive("resistance", resistance, OHM);
  return voltage / resistance;
}
