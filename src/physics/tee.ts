// Lines that meet at a point without storage: the head there, and what each carries.

import { DomainError } from "./domain-error.ts";
import { type GravityLine, gravityFlow } from "./gravity-line.ts";
import { bracketedRoot } from "./root.ts";

/** A line that ends at a tee. */
export type TeeBranch = {
  readonly line: GravityLine;
  /** Height of the water, or of the free end, at the line's other end [m]. */
  readonly end: number;
  /** Whether water may run from that end to the tee (never from a valved or free end). */
  readonly inward: boolean;
  /** Whether water may run from the tee to that end (never against a check valve). */
  readonly outward: boolean;
};

/** What happens at a tee. */
export type TeeFlows = {
  /** Height to which water would stand over the tee [m]. */
  readonly head: number;
  /** Flow of each line, in the order given: above 0 into the tee, below 0 out of it [m3/s]. */
  readonly flows: readonly number[];
};

/**
 * Head at which as much water reaches a tee as leaves it, and the flow of each line.
 *
 * @param branches the lines with their far ends, units at the type's fields
 * @returns head [m] and flows [m3/s]
 * @throws DomainError without a line
 * @source continuity at a junction, as in the three-reservoir problem of any hydraulics text
 */
export function teeFlows(branches: readonly TeeBranch[]): TeeFlows {
  const ends = branches.map(({ end }) => end);
  if (ends.length === 0) throw new DomainError("lines at a tee", 0, "1 or more", "continuity");
  const flowsAt = (head: number) => branches.map((branch) => branchFlow(branch, head));
  const [lowest, highest] = [Math.min(...ends), Math.max(...ends)];
  // Heads are sought from the lowest end up, so that the datum's place costs no figures.
  const surplus = (rise: number) => flowsAt(lowest + rise).reduce((sum, flow) => sum + flow, 0);
  const head = balancedHead(surplus, lowest, highest);
  return { head, flows: flowsAt(head) };
}

/** Between the ends' heights; where nothing can leave, or nothing arrive, it stands at one of them. */
function balancedHead(surplus: (rise: number) => number, lowest: number, highest: number): number {
  if (surplus(0) <= 0) return lowest;
  if (surplus(highest - lowest) >= 0) return highest;
  return lowest + bracketedRoot(surplus, 0, highest - lowest);
}

function branchFlow({ line, end, inward, outward }: TeeBranch, head: number): number {
  const fall = end - head;
  if (fall > 0) return inward ? gravityFlow(line, fall) : 0;
  return outward ? -gravityFlow(line, -fall) : 0;
}
