// A line's flow against head, worked out once, so that a daily balance over decades never solves a pipe.

import { type GravityLine, gravityFlow, gravityHead, laminarLine } from "./gravity-line.ts";

/** Flow of one line, its valve open, looked up. */
export type LineTable = {
  /**
   * Flow under a head [m] to flow [m3/s].
   * Exact up to Reynolds 1000 and beyond the table; else within 5e-5 of itself. None for a head of 0 or less.
   */
  readonly flowAt: (head: number) => number;
  /** Power of the flow in the head over the tenth below a head above 0 [m]: 1 creeping, about 0.55 turbulent [-]. */
  readonly powerAt: (head: number) => number;
};

/** Flow at which the laminar form is still exact to the last figures. */
const LAMINAR_REYNOLDS = 1000;
/** Step of the natural logarithm of flow, and Reynolds numbers between which the loss rises so steeply that it is halved. */
const STEP = 0.01;
const STEEP = [1800, 3000] as const;
/** Share of a head down to which its power is read. */
const TENTH_LESS = 0.9;

/** Heads and flows, both rising; for each step of the logarithm of head the last point that is not above it. */
type Curve = {
  readonly heads: Float64Array;
  readonly flows: Float64Array;
  readonly first: number;
  readonly places: Int32Array;
};

/**
 * A line's flow against head as a table with a direct look-up.
 *
 * @param line the line, units at the type's fields
 * @param maxHead highest head that is looked up; beyond it the line is solved [m]
 * @returns the look-up
 * @throws DomainError when nothing at all holds the flow back
 * @validity within 5e-5 of gravityFlow
 * @source gravityHead, tabulated over equal steps of the logarithm of flow and read the other way round: it only rises
 */
export function lineTable(line: GravityLine, maxHead: number): LineTable {
  if (line.opening === 0) return { flowAt: () => 0, powerAt: () => 1 };
  const creeping = laminarLine(line);
  const curve = curveOf(line, maxHead);
  const { heads, flows } = curve;
  const start = heads[0] as number;
  const last = heads[heads.length - 1] as number;
  const flowAt = (head: number) => {
    if (head <= 0) return 0;
    if (head <= start) return creeping(head);
    if (head >= last) return gravityFlow(line, head);
    return between(curve, flows, head);
  };
  const powers = heads.map((head) => powerOf(flowAt, head));
  return {
    flowAt,
    powerAt: (head) => (head <= start || head >= last ? powerOf(flowAt, head) : between(curve, powers, head)),
  };
}

function powerOf(flowAt: (head: number) => number, head: number): number {
  return Math.log(flowAt(head * TENTH_LESS) / flowAt(head)) / Math.log(TENTH_LESS);
}

/** A row's value at a head within the table, straight between its points. */
function between({ heads, first, places }: Curve, row: Float64Array, head: number): number {
  let place = places[Math.max(0, Math.floor((Math.log(head) - first) / STEP))] as number;
  while ((heads[place + 1] as number) < head) place++;
  const lower = heads[place] as number;
  const value = row[place] as number;
  const share = (head - lower) / ((heads[place + 1] as number) - lower);
  return value + ((row[place + 1] as number) - value) * share;
}

function curveOf(line: GravityLine, maxHead: number): Curve {
  const perReynolds = (Math.PI * line.bore * line.viscosity) / 4;
  const [heads, flows]: [number[], number[]] = [[], []];
  let head = 0;
  for (let reynolds = LAMINAR_REYNOLDS; heads.length < 2 || head < maxHead; ) {
    const flow = reynolds * perReynolds;
    head = gravityHead(line, flow);
    flows.push(flow);
    heads.push(head);
    reynolds *= Math.exp(reynolds > STEEP[0] && reynolds < STEEP[1] ? STEP / 2 : STEP);
  }
  const rising = Float64Array.from(heads);
  return { heads: rising, flows: Float64Array.from(flows), ...placesOf(rising) };
}

function placesOf(heads: Float64Array): Pick<Curve, "first" | "places"> {
  const first = Math.log(heads[0] as number);
  const count = Math.ceil((Math.log(heads[heads.length - 1] as number) - first) / STEP) + 1;
  let place = 0;
  const places = Int32Array.from({ length: count }, (_, step) => {
    // A hair less than the step's head, so that no rounding of the logarithm skips a point.
    const head = Math.exp(first + step * STEP) * (1 - 1e-9);
    while (place < heads.length - 2 && (heads[place + 1] as number) <= head) place++;
    return place;
  });
  return { first, places };
}
