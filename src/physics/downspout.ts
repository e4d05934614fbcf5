// Gutters and downspouts against a storm.

import { toSi } from "../units/unit.ts";
import { requirePositive } from "./domain-error.ts";

const WYLY_EATON = "Wyly and Eaton, NBS Monograph 31 (1961)";

/** Share of a stack's section that water clinging to its wall takes when it is as full as codes allow [-]. */
const STACK_SHARE = 7 / 24;
/** Of the relation as published, for gallons a minute and inches, carried over to SI [m3/s per m^(8/3)]. */
const STACK_FACTOR = toSi(27.8, "gal/min") / toSi(1, "in") ** (8 / 3);

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
