// Where a continuous function crosses zero, between two points where its sign differs.

import { DomainError } from "./domain-error.ts";

const SOURCE = "definition of a bracket";
const MOST_STEPS = 200;

/**
 * The point at which a function crosses zero inside a bracket.
 * Inverse quadratic steps where they are safe, else halving: it cannot leave the bracket and cannot stall.
 *
 * @param residual the function; its sign must differ at both ends
 * @param low one end of the bracket [any unit]
 * @param high the other end [any unit]
 * @param relative width of the last bracket, relative to the root [-]
 * @returns the root, in the bracket's unit [any unit]
 * @throws DomainError when the sign is the same at both ends
 * @source T. R. Chandrupatla, Advances in Engineering Software 28 (1997) 145-149 (from memory)
 */
export function bracketedRoot(
  residual: (at: number) => number,
  low: number,
  high: number,
  relative = 1e-13,
): number {
  let [older, newer, last] = [low, high, low];
  let [atOlder, atNewer] = [residual(low), residual(high)];
  if (atOlder === 0) return low;
  if (atNewer === 0) return high;
  if (atOlder > 0 === atNewer > 0) throw new DomainError("bracket", atNewer, "of two signs", SOURCE);
  let atLast = atOlder;
  let share = 0.5;
  for (let step = 0; step < MOST_STEPS; step++) {
    const at = older + share * (newer - older);
    const value = residual(at);
    if (value > 0 === atOlder > 0) {
      [last, atLast] = [older, atOlder];
    } else {
      [last, newer, atLast, atNewer] = [newer, older, atNewer, atOlder];
    }
    [older, atOlder] = [at, value];
    const best = Math.abs(atOlder) < Math.abs(atNewer) ? older : newer;
    const tolerance = relative * Math.abs(best) + Number.MIN_VALUE;
    const width = Math.abs(newer - older);
    if (value === 0 || width <= 2 * tolerance) return best;
    share = nextShare([older, newer, last], [atOlder, atNewer, atLast], tolerance / width);
  }
  return Math.abs(atOlder) < Math.abs(atNewer) ? older : newer;
}

type Three = readonly [number, number, number];

/** Share of the bracket for the next point: inverse quadratic where three points agree to be monotone. */
function nextShare([a, b, c]: Three, [fa, fb, fc]: Three, least: number): number {
  const xi = (a - b) / (c - b);
  const phi = (fa - fb) / (fc - fb);
  if (!(phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi)) return 0.5;
  const share =
    (fa / (fb - fa)) * (fc / (fb - fc)) + ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb));
  return Math.min(1 - least, Math.max(least, share));
}
