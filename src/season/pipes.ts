// The gravity lines of a run, each with its flow tabulated once, and the tanks and tees at their ends.

import { type LineTable, lineTable } from "../physics/line-table.ts";
import type { LeftOut, LinePart, TankPart, TeePart } from "./input.ts";
import { contentKey, keeper } from "./kept.ts";
import { type Float, floatOf, liftOf, type PipeEnds, pipeEnds } from "./pipe-ends.ts";
import { groupsOf, type PipeGroup } from "./pipe-groups.ts";
import type { Tanks } from "./tanks.ts";

/** A tank or tee at the end of a line, as it stands now. */
export type PipeNode = {
  readonly isTee: boolean;
  /** Its place among the tanks, or among the tees. */
  readonly place: number;
  /** Height of its floor, or of the tee [m]. */
  readonly height: number;
  /** Height of its water [m] and its area [m2], and how fast it rises [m/s]; that of a tee is taken to stand still. */
  surface: number;
  area: number;
  rising: number;
  /** Water gained a second [m3/s], and lines that flow here. */
  gain: number;
  busy: number;
  /** Taken out in this step [m3]. */
  taken: number;
};

export type PipeLine = {
  readonly id: string;
  readonly from: PipeNode;
  /** Null: a free end. */
  readonly to: PipeNode | null;
  readonly ends: PipeEnds;
  readonly float: Float | null;
  readonly table: LineTable;
  /** Whether it ends at a tee on either side. */
  readonly joined: boolean;
  /** Driving head now [m], how that grows a second [m/s], and flow [m3/s] (below 0: backwards). */
  head: number;
  growth: number;
  flow: number;
  /** How its flow falls in this step (line-step.ts): by which power, and until which amounts have run [m3]. */
  power: number;
  limit: number;
  cap: number;
  /** Moved in this step, and forward on balance today [m3]. */
  step: number;
  moved: number;
  /** Time after the watering at which it was done today [s]. */
  doneAt: number;
};

export type Pipes = {
  /** In the input's order. */
  readonly lines: readonly PipeLine[];
  /** Lines that hang together; each group runs by itself. */
  readonly groups: readonly PipeGroup[];
  /** Lines of each tee, by its place. */
  readonly atTee: readonly (readonly PipeLine[])[];
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
  const joints = tees.map(({ height }, place) => nodeOf(true, place, height));
  const nodes = new Map<string, PipeNode>();
  for (const [place, { id, floor }] of tanks.parts.entries()) nodes.set(id, nodeOf(false, place, floor));
  for (const [place, { id }] of tees.entries()) nodes.set(id, joints[place] as PipeNode);
  const parts = lines.filter((line) => isRunning(line, nodes, leftOut));
  const most = highest(tanks) - lowest(tanks, parts) + largestLift(parts);
  const maxHead = 2 ** Math.ceil(Math.log2(Math.max(1, most)));
  const ready = parts.map((line) => lineOf(line, nodes, tanks, tableOf(line, maxHead)));
  return {
    lines: ready,
    groups: groupsOf(ready),
    atTee: joints.map((tee) => ready.filter(({ from, to }) => from === tee || to === tee)),
  };
}

const nodeOf = (isTee: boolean, place: number, height: number): PipeNode => ({
  isTee,
  place,
  height,
  surface: height,
  area: 0,
  rising: 0,
  gain: 0,
  busy: 0,
  taken: 0,
});

function lineOf(
  part: LinePart,
  nodes: ReadonlyMap<string, PipeNode>,
  tanks: Tanks,
  table: LineTable,
): PipeLine {
  const from = nodes.get(part.from) as PipeNode;
  const to = nodes.get(part.to ?? "") ?? null;
  const tankAt = (node: PipeNode | null): TankPart | null =>
    node && !node.isTee ? (tanks.parts[node.place] as TankPart) : null;
  return {
    id: part.id,
    from,
    to,
    ends: pipeEnds(part, tankAt(from), tankAt(to)),
    float: floatOf(part, tankAt(to)),
    table,
    joined: from.isTee || (to?.isTee ?? false),
    head: 0,
    growth: 0,
    flow: 0,
    power: 0,
    limit: Infinity,
    cap: Infinity,
    step: 0,
    moved: 0,
    doneAt: 0,
  };
}

const TABLES = keeper<LineTable>(128);
/** Tables depend on their lines alone, and belong to no record. */
const EVERYWHERE = {};

/** A line's table, kept from run to run under its values; up to a power of two of the head, to be of use longer. */
function tableOf(
  { length, bore, roughness, fittingsK, opening, viscosity }: LinePart,
  maxHead: number,
): LineTable {
  const line = { length, bore, roughness, fittingsK, opening, viscosity };
  return TABLES(EVERYWHERE, contentKey([line, maxHead]), () => lineTable(line, maxHead));
}

function isRunning(line: LinePart, nodes: ReadonlyMap<string, PipeNode>, leftOut: LeftOut[]): boolean {
  const gone = !nodes.has(line.from) || (line.to !== null && !nodes.has(line.to));
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
