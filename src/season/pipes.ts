// The gravity lines of a run, each with its flow tabulated once, and the tanks and tees at their ends.

import { type LineTable, lineTable } from "../physics/line-table.ts";
import type { LeftOut, LinePart, TeePart } from "./input.ts";
import { contentKey, keeper } from "./kept.ts";
import { liftOf } from "./pipe-ends.ts";
import { groupsOf, type PipeGroup } from "./pipe-groups.ts";
import { lineOf, nodeOf, type PipeLine, type PipeNode } from "./pipe-line.ts";
import type { Tanks } from "./tanks.ts";

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
 * @param leftOut gets what cannot take part
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
