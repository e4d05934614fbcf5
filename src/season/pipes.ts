// The gravity lines of a run as arrays by place, each with its flow tabulated once; tanks and tees are their nodes.

import { type LineTable, lineTable } from "../physics/line-table.ts";
import type { LeftOut, LinePart, TeePart } from "./input.ts";
import { contentKey, keeper } from "./kept.ts";
import { liftOf, type PipeEnds, pipeEnds } from "./pipe-ends.ts";
import { groupsOf, type PipeGroup } from "./pipe-groups.ts";
import type { Tanks } from "./tanks.ts";

export type Pipes = PipeEnds & {
  readonly parts: readonly LinePart[];
  /** Nodes are tanks, then tees; -1 is a free end. */
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly tables: readonly LineTable[];
  /** First node that is a tee, and heights of the tees [m]. */
  readonly firstTee: number;
  readonly teeHeight: Float64Array;
  /** Lines that hang together; each group runs by itself. */
  readonly groups: readonly PipeGroup[];
  /** Lines of each tee. */
  readonly atTee: readonly (readonly number[])[];
  /** Whether a line ends at a tee on either side. */
  readonly joined: Uint8Array;
  /** Of each node now: height of its water [m], its area [m2], what it gains a second [m3/s], and how fast it rises [m/s]. */
  readonly surface: Float64Array;
  readonly area: Float64Array;
  readonly gain: Float64Array;
  readonly rising: Float64Array;
  /** Lines that flow at each node. */
  readonly busy: Int32Array;
  /** Of each line now: driving head [m], how that grows a second [m/s], and flow [m3/s] (below 0: backwards). */
  readonly head: Float64Array;
  readonly growth: Float64Array;
  readonly flow: Float64Array;
  /** How its flow falls in this step (line-step.ts): by which power, and until which amounts have run [m3]. */
  readonly power: Float64Array;
  readonly limit: Float64Array;
  readonly cap: Float64Array;
  /** Moved by each line in this step, and forward on balance today [m3]. */
  readonly step: Float64Array;
  readonly moved: Float64Array;
  /** Time after the watering at which each line was done today [s]. */
  readonly doneAt: Float64Array;
  /** Taken out of each tank in this step [m3]. */
  readonly taken: Float64Array;
};

/**
 * Lines ready to run; one that is blocked is left out with its reason, one whose ends are gone too.
 *
 * @param tees sorted by id, heights [m]
 * @param leftOut gets what cannot take part [-]
 * @source lineTable
 */
export function readyPipes(
  lines: readonly LinePart[],
  tees: readonly TeePart[],
  tanks: Tanks,
  leftOut: LeftOut[],
): Pipes {
  const nodeOf = new Map(tanks.placeOf);
  for (const [index, tee] of tees.entries()) nodeOf.set(tee.id, tanks.parts.length + index);
  const parts = lines.filter((line) => isRunning(line, nodeOf, leftOut));
  const from = Int32Array.from(parts, (line) => nodeOf.get(line.from) ?? -1);
  const to = Int32Array.from(parts, (line) => nodeOf.get(line.to ?? "") ?? -1);
  const firstTee = tanks.parts.length;
  const most = highest(tanks) - lowest(tanks, parts) + largestLift(parts);
  return {
    ...pipeEnds(parts, from, to, tanks),
    parts,
    from,
    to,
    tables: parts.map((line) => tableOf(line, Math.max(1, most))),
    firstTee,
    teeHeight: Float64Array.from(tees, ({ height }) => height),
    groups: groupsOf(from, to, firstTee),
    atTee: tees.map((_, index) =>
      [...parts.keys()].filter((i) => from[i] === firstTee + index || to[i] === firstTee + index),
    ),
    joined: Uint8Array.from(parts, (_, i) =>
      (from[i] as number) >= firstTee || (to[i] as number) >= firstTee ? 1 : 0,
    ),
    ...atRest(parts.length, firstTee + tees.length),
  };
}

/** So many lines and nodes before their first day. */
function atRest(lines: number, nodes: number) {
  const perLine = () => new Float64Array(lines);
  const perNode = () => new Float64Array(nodes);
  return {
    surface: perNode(),
    area: perNode(),
    gain: perNode(),
    rising: perNode(),
    busy: new Int32Array(nodes),
    head: perLine(),
    growth: perLine(),
    flow: perLine(),
    power: perLine(),
    limit: perLine(),
    cap: perLine(),
    step: perLine(),
    moved: perLine(),
    doneAt: perLine(),
    taken: perNode(),
  };
}

const TABLES = keeper<LineTable>(128);
/** Tables depend on their lines alone, and belong to no record. */
const EVERYWHERE = {};

/** A line's table, kept from run to run under its values; up to the next power of two of the head, to be of use longer. */
function tableOf(
  { length, bore, roughness, fittingsK, opening, viscosity }: LinePart,
  most: number,
): LineTable {
  const line = { length, bore, roughness, fittingsK, opening, viscosity };
  const maxHead = 2 ** Math.ceil(Math.log2(most));
  return TABLES(EVERYWHERE, contentKey([line, maxHead]), () => lineTable(line, maxHead));
}

function isRunning(line: LinePart, nodeOf: ReadonlyMap<string, number>, leftOut: LeftOut[]): boolean {
  const gone = !nodeOf.has(line.from) || (line.to !== null && !nodeOf.has(line.to));
  const reason = line.blocked ?? (gone ? "one of its ends is not there" : null);
  if (reason !== null) leftOut.push({ id: line.id, reason });
  return reason === null;
}

const largestLift = (lines: readonly LinePart[]): number =>
  lines.reduce((most, line) => Math.max(most, Math.abs(liftOf(line))), 0);

function highest(tanks: Tanks): number {
  return tanks.parts.reduce((most, { floor, vessel }) => Math.max(most, floor + vessel.height), -Infinity);
}

function lowest(tanks: Tanks, lines: readonly LinePart[]): number {
  const floor = tanks.parts.reduce((least, part) => Math.min(least, part.floor), Infinity);
  return lines.reduce((least, line) => Math.min(least, line.endHeight, line.startHeight), floor);
}
