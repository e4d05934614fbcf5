// A pump's point against its lift, worked out once, so that a daily balance over decades never solves it again.

import { requirePositive } from "./domain-error.ts";
import { greatestLift, type Lifting, type PumpRun, pumpRun, type Supply } from "./pump-run.ts";

/** Lift to spare below which a point is solved, not looked up [m]. */
const LEAST_SPARE = 1e-4;
/** Step of the natural logarithm of the lift to spare; straight lines over it are within 1e-4. */
const STEP = 0.02;

/**
 * A pump's point against its lift as a table with a direct look-up, in equal steps of the logarithm of the lift to
 * spare: the greatest lift less the lift.
 *
 * @param lifting pump and hose, units at the type's fields
 * @param supply voltage of the source and resistance of the wire, units at the type's fields
 * @param lowestLift least lift that is looked up, below 0 downhill; beyond it the point is solved [m]
 * @returns the look-up: the pump's point under a lift [m]
 * @throws DomainError for a voltage that is not above 0, or a lowest lift that the pump cannot reach
 * @validity within 1e-4 of pumpRun; solved, not looked up, with under 0.1 mm to spare
 * @source pumpRun, tabulated
 */
export function pumpTable(
  lifting: Omit<Lifting, "lift">,
  supply: Supply,
  lowestLift: number,
): (lift: number) => PumpRun {
  const greatest = greatestLift(lifting.pump, supply);
  requirePositive("lift to spare", greatest - lowestLift, "pump curve");
  const solved = (lift: number) => pumpRun({ ...lifting, lift }, supply);
  const first = Math.log(LEAST_SPARE);
  const count = Math.max(2, Math.ceil((Math.log(greatest - lowestLift) - first) / STEP) + 2);
  const runs = Array.from({ length: count }, (_, index) => solved(greatest - Math.exp(first + index * STEP)));
  return (lift) => {
    const place = (Math.log(greatest - lift) - first) / STEP;
    // Not a number where the lift is beyond the greatest.
    if (!(place >= 0 && place < count - 1)) return solved(lift);
    const index = Math.floor(place);
    return between(runs[index] as PumpRun, runs[index + 1] as PumpRun, place - index);
  };
}

function between(low: PumpRun, high: PumpRun, share: number): PumpRun {
  const mix = (one: number, other: number) => one + (other - one) * share;
  return {
    flow: mix(low.flow, high.flow),
    head: mix(low.head, high.head),
    arrivingVoltage: mix(low.arrivingVoltage, high.arrivingVoltage),
    current: mix(low.current, high.current),
  };
}
