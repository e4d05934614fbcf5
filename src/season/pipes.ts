// The gravity lines of a run as arrays by place, each with its flow tabulated once; tanks and tees are their nodes.

import { type LineTable, lineTable } from "../physics/line-table.ts";
import { volumeAt } from "../physics/vessel.ts";
import type { LeftOut, LinePart, TankPart, TeePart } from "./input.ts";
import { contentKey, keeper } from "./kept.ts";
import { groupsOf, type PipeGroup } from "./pipe-groups.ts";
import type { Tanks } from "./tanks.ts";

export type Pipes = {
  readonly parts: readonly LinePart[];
  /** Nodes are tanks, then tees; -1 is a free end. */
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly tables: readonly LineTable[];
  /** How much higher the water at each line's end counts than it stands, as a measured drop told [m]. */
  readonly lift: Float64Array;
  /** Water in the tank at its start, or its end, that it can never take [m3]. */
  readonly under: Float64Array;
  readonly underBack: Float64Array;
  /** First node that is a tee. */
  readonly firstTee: number;
  /** Lines that hang together; each group runs by itself. */
  readonly groups: readonly PipeGroup[];
  /** Lines of each tee. */
  readonly atTee: readonly (readonly number[])[];
  /** Whether a line ends at a tee on either side. */
  readonly joined: Uint8Array;
  /** Heights of each node's floor and outlet, and of each tee [m]. */
  readonly floor: Float64Array;
  readonly outletHeight: Float64Array;
  readonly teeHeight: Float64Array;
  /** Height of the water at each node now [m], and area of it [m2]. */
  readonly surface: Float64Array;
  readonly area: Float64Array;
  /** Of each line now: driving head [m], flow [m3/s] (below 0: backwards), share its valve is open. */
  readonly head: Float64Array;
  readonly flow: Float64Array;
  readonly open: Float64Array;
  /** Water gained by each node a second [m3/s], and lines that flow at it. */
  readonly gain: Float64Array;
  readonly busy: Int32Array;
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
  const count = parts.length;
  const nodes = tanks.parts.length + tees.length;
  const firstTee = tanks.parts.length;
  const perLine = () => new Float64Array(count);
  const perNode = () => new Float64Array(nodes);
  const most = highest(tanks) - lowest(tanks, parts) + largestLift(parts);
  return {
    parts,
    from,
    to,
    tables: parts.map((line) => tableOf(line, Math.max(1, most))),
    lift: Float64Array.from(parts, liftOf),
    under: Float64Array.from(parts, (line, i) => underOf(tanks, from[i] as number, line.startHeight, true)),
    underBack: Float64Array.from(parts, (line, i) => underOf(tanks, to[i] as number, line.endHeight, false)),
    firstTee,
    groups: groupsOf(from, to, firstTee),
    atTee: tees.map((_, index) =>
      [...parts.keys()].filter((i) => from[i] === firstTee + index || to[i] === firstTee + index),
    ),
    joined: Uint8Array.from(parts, (_, i) =>
      (from[i] as number) >= firstTee || (to[i] as number) >= firstTee ? 1 : 0,
    ),
    ...heightsOf(tanks, tees),
    surface: perNode(),
    area: perNode(),
    head: perLine(),
    flow: perLine(),
    open: perLine(),
    gain: perNode(),
    busy: new Int32Array(nodes),
    step: perLine(),
    moved: perLine(),
    doneAt: perLine(),
    taken: perNode(),
  };
}

/** Heights of each node that never change. */
const heightsOf = (tanks: Tanks, tees: readonly TeePart[]) => ({
  floor: Float64Array.from(tanks.parts, ({ floor }) => floor),
  outletHeight: Float64Array.from(tanks.parts, ({ floor, outlet }) => floor + outlet),
  teeHeight: Float64Array.from(tees, ({ height }) => height),
});

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

/** Water under the height at which a line opens into a tank [m3]. */
function underOf(tanks: Tanks, place: number, height: number, outlet: boolean): number {
  const part = tanks.parts[place] as TankPart | undefined;
  if (!part) return 0;
  const depth = Math.max(0, height - part.floor, outlet ? part.outlet : 0);
  return volumeAt(part.vessel, Math.min(depth, part.vessel.height));
}

const liftOf = ({ lift }: LinePart): number => lift ?? 0;

const largestLift = (lines: readonly LinePart[]): number =>
  lines.reduce((most, line) => Math.max(most, Math.abs(liftOf(line))), 0);

function highest(tanks: Tanks): number {
  return tanks.parts.reduce((most, { floor, vessel }) => Math.max(most, floor + vessel.height), -Infinity);
}

function lowest(tanks: Tanks, lines: readonly LinePart[]): number {
  const floor = tanks.parts.reduce((least, part) => Math.min(least, part.floor), Infinity);
  return lines.reduce((least, line) => Math.min(least, line.endHeight, line.startHeight), floor);
}
