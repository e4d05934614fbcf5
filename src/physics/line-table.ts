// A line's flow against head, worked out once, so that a daily balance over decades never solves a pipe.

import { type GravityLine, gravityFlow, gravityHead, laminarLine } from "./gravity-line.ts";

/** Flow at which the laminar form is still exact to the last figures. */
const LAMINAR_REYNOLDS = 1000;
/** Step of the natural logarithm of flow, and Reynolds numbers between which the loss rises so steeply that it is halved. */
const STEP = 0.01;
const STEEP = [1800, 3000] as const;
/** Share of a head down to which its power is read. */
const TENTH_LESS = 0.9;

/** Flow of one line, its valve open, and power of that flow in the head, each by rising heads. */
export type LineTable = {
  readonly line: GravityLine;
  /** Rising [m]. */
  readonly heads: Float64Array;
  /** Rising with them [m3/s]. */
  readonly flows: Float64Array;
  /** Of the flow in the head, at each point [-]. */
  readonly powers: Float64Array;
  /** Step of leading bits of the first head [-]. */
  readonly first: number;
  /** For each such step from the first on, the last point that is not above it [-]. */
  readonly places: Int32Array;
  /** Flow under a head below the first [m] to [m3/s]. */
  readonly creeping: (head: number) => number;
};

/**
 * A line's flow against head as a table with a direct look-up.
 *
 * @param line the line, units at the type's fields
 * @param maxHead highest head that is looked up; beyond it the line is solved [m]
 * @returns the table
 * @throws DomainError when nothing at all holds the flow back
 * @validity within 5e-5 of gravityFlow
 * @source gravityHead, tabulated over equal steps of the logarithm of flow and read the other way round: it only rises
 */
export function lineTable(line: GravityLine, maxHead: number): LineTable {
  if (line.opening === 0) return shutTable(line);
  const { heads, flows } = curveOf(line, maxHead);
  const table: LineTable = {
    line,
    heads,
    flows,
    powers: new Float64Array(heads.length),
    ...placesOf(heads),
    creeping: laminarLine(line),
  };
  for (let place = 0; place < heads.length; place++)
    table.powers[place] = powerOf(table, heads[place] as number);
  return table;
}

/** Nothing runs through a shut valve, whatever the head. */
function shutTable(line: GravityLine): LineTable {
  const nothing = Float64Array.of(0);
  return {
    line,
    heads: Float64Array.of(Infinity),
    flows: nothing,
    powers: nothing,
    first: 0,
    places: Int32Array.of(0),
    creeping: () => 0,
  };
}

/**
 * Flow of a line under a head, its valve open.
 *
 * @param head from the water at its start to that at its end [m]
 * @returns flow; none for a head of 0 or less [m3/s]
 * @validity exact up to Reynolds 1000 and beyond the table; else within 5e-5 of itself
 * @source lineTable
 */
export function flowAt(table: LineTable, head: number): number {
  const { heads } = table;
  if (head <= 0) return 0;
  if (head <= (heads[0] as number)) return table.creeping(head);
  if (head >= (heads[heads.length - 1] as number)) return gravityFlow(table.line, head);
  return between(table, table.flows, head);
}

/**
 * Power of a line's flow in the head over the tenth below a head: 1 creeping, about 0.55 turbulent.
 *
 * @param head above 0 [m]
 * @returns power; 1 where nothing runs [-]
 * @source lineTable
 */
export function powerAt(table: LineTable, head: number): number {
  const { heads } = table;
  if (heads[0] === Infinity) return 1;
  if (head <= (heads[0] as number) || head >= (heads[heads.length - 1] as number))
    return powerOf(table, head);
  return between(table, table.powers, head);
}

function powerOf(table: LineTable, head: number): number {
  return Math.log(flowAt(table, head * TENTH_LESS) / flowAt(table, head)) / Math.log(TENTH_LESS);
}

/** A row's value at a head within the table, straight between its points. */
function between({ heads, first, places }: LineTable, row: Float64Array, head: number): number {
  let place = places[Math.max(0, leadingBits(head) - first)] as number;
  while ((heads[place + 1] as number) < head) place++;
  const lower = heads[place] as number;
  const value = row[place] as number;
  const share = (head - lower) / ((heads[place + 1] as number) - lower);
  return value + ((row[place + 1] as number) - value) * share;
}

const NUMBER = new Float64Array(1);
const WORDS = new Int32Array(NUMBER.buffer);
/** Which of a number's two words has its leading bits on this machine. */
const LEADING = new Uint8Array(Int32Array.of(1).buffer)[0] === 1 ? 1 : 0;
/** Bits of that word that are dropped: 128 steps to each doubling are left, finer than the table's. */
const DROPPED = 13;

/** A step for each number above 0 that rises with it, of nearly the same share everywhere: a logarithm for nothing. */
function leadingBits(value: number): number {
  NUMBER[0] = value;
  return (WORDS[LEADING] as number) >> DROPPED;
}

/** The least number of a step of leading bits. */
function leastOf(step: number): number {
  WORDS[1 - LEADING] = 0;
  WORDS[LEADING] = step << DROPPED;
  return NUMBER[0] as number;
}

function curveOf(line: GravityLine, maxHead: number): Pick<LineTable, "heads" | "flows"> {
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
  return { heads: Float64Array.from(heads), flows: Float64Array.from(flows) };
}

function placesOf(heads: Float64Array): Pick<LineTable, "first" | "places"> {
  const first = leadingBits(heads[0] as number);
  const places = new Int32Array(leadingBits(heads[heads.length - 1] as number) - first + 1);
  let place = 0;
  for (let step = 0; step < places.length; step++) {
    const head = leastOf(first + step);
    while (place < heads.length - 2 && (heads[place + 1] as number) <= head) place++;
    places[step] = place;
  }
  return { first, places };
}
