// Gutters and downspouts against a storm.

import { toSi } from "../units/unit.ts";
import { requireNotNegative, requirePositive } from "./domain-error.ts";

const WYLY_EATON = "Wyly and Eaton, NBS Monograph 31 (1961)";
const STORM = "rain rate times area";

/** Share of a stack's section that water clinging to its wall takes when it is as full as codes allow [-]. */
const STACK_SHARE = 7 / 24;
/** Of the relation as published, for gallons a minute and inches, carried over to SI [m3/s per m^(8/3)]. */
const STACK_FACTOR = toSi(27.8, "gal/min") / toSi(1, "in") ** (8 / 3);

/**
 * Flow that a storm brings to a roof's downspouts: area times rain rate, nothing lost.
 *
 * @param footprint plan area [m2]
 * @param rainRate of the design storm [m/s]
 * @returns flow [m3/s]
 * @throws DomainError for a negative number
 * @source definition; 1 in/h on 96.25 ft2 is 1 gpm
 */
export function stormFlow(footprint: number, rainRate: number): number {
  requireNotNegative("footprint", footprint, STORM);
  requireNotNegative("rain rate", rainRate, STORM);
  return footprint * rainRate;
}

/**
 * Flow that a round downspout carries 7/24 full: 27.8 r^(5/3) d^(8/3), in gallons a minute and inches.
 *
 * @param bore inside diameter [m]
 * @returns flow [m3/s]
 * @throws DomainError for a bore of 0
 * @validity vertical stacks of 2 to 8 in; gives National Standard Plumbing Code 2006 Table 13.6.1 (read) to its rounding
 * @source Wyly and Eaton, NBS Monograph 31, 1961 (from memory), checked against that table
 */
export function downspoutCapacity(bore: number): number {
  requirePositive("bore", bore, WYLY_EATON);
  return STACK_FACTOR * STACK_SHARE ** (5 / 3) * bore ** (8 / 3);
}

/**
 * Area of roof that a downspout drains in a storm: capacity over rain rate.
 *
 * @param bore inside diameter [m]
 * @param rainRate of the design storm [m/s]
 * @returns plan area [m2]
 * @throws DomainError when either is not above 0
 * @source downspoutCapacity; National Standard Plumbing Code 2006 Table 13.6.1 has the same products (read)
 */
export function drainedArea(bore: number, rainRate: number): number {
  requirePositive("rain rate", rainRate, STORM);
  return downspoutCapacity(bore) / rainRate;
}

/**
 * Area by which wind-driven rain loads a gutter: length x (plan width + half the rise).
 *
 * @param length of the gutter [m]
 * @param width of the roof behind it, seen from above [m]
 * @param rise from gutter to ridge [m]
 * @returns area [m2]
 * @throws DomainError for a negative number
 * @validity for sizing gutters only, never for volume
 * @source EN 12056-3, as in a maker's guide (read second-hand)
 */
export function gutterLoadArea(length: number, width: number, rise: number): number {
  requireNotNegative("length", length, STORM);
  requireNotNegative("width", width, STORM);
  requireNotNegative("rise", rise, STORM);
  return length * (width + rise / 2);
}
