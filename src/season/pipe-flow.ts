// Which way each line runs now and how much, from the heights of the water at its ends; tees included.

import { flowAt } from "../physics/line-table.ts";
import { type Float, isClosing, isShut } from "./pipe-ends.ts";
import type { PipeGroup } from "./pipe-groups.ts";
import type { PipeLine, PipeNode } from "./pipe-line.ts";
import type { Pipes } from "./pipes.ts";
import { levelOf, surfaceOf, type Tanks } from "./tanks.ts";

/** Water must stand this much over an opening to run into it: rounding, not hydraulics [m]. */
const FILM = 1e-9;
/** Halvings of the range in which a tee's head is sought, and rounds over tees that lead to each other. */
const HALVINGS = 60;
const ROUNDS = 40;

/**
 * Reads the heights of water and works out the flow of every line of a group.
 *
 * @param group its lines and nodes are written to
 * @returns whether anything flows
 * @source lineTable; continuity at a tee
 */
export function readFlows(pipes: Pipes, group: PipeGroup, tanks: Tanks): boolean {
  const { lines, tees } = group;
  for (let k = 0; k < group.tanks.length; k++) readLevel(group.tanks[k] as PipeNode, tanks);
  if (tees.length > 0) {
    readStanding(pipes, tees);
    settleTees(pipes, tees);
  }
  let moving = false;
  for (let k = 0; k < lines.length; k++) {
    const line = lines[k] as PipeLine;
    readFlow(line);
    if (line.flow !== 0) moving = true;
  }
  if (tees.length > 0) closeTees(pipes, tees);
  if (moving) readGrowth(group);
  return moving;
}

function readLevel(tank: PipeNode, tanks: Tanks): void {
  const level = levelOf(tanks, tank.place);
  tank.surface = tank.height + level;
  tank.area = surfaceOf(tanks, tank.place, level);
}

/** Head and flow of one line. */
function readFlow(line: PipeLine): void {
  const { float, to } = line;
  const head = float && to && isShut(float, to.surface) ? 0 : drivingHead(line);
  line.head = Math.abs(head);
  if (head > 0) readForward(line, head);
  else line.flow = head < 0 ? -flowAt(line.table, -head) : 0;
}

function readForward(line: PipeLine, head: number): void {
  const { float, to } = line;
  const flow = flowAt(line.table, head);
  line.flow = flow;
  if (!float || !to || !isClosing(float, to.surface)) return;
  const gap = float.shutHeight - to.surface;
  line.flow = throttled(float, flow, head, Math.min(1, gap / float.band));
}

/** What a line would bring now with its float open [m3/s]; 0 where its heads are not those of tanks. */
export function openFlow(line: PipeLine, tanks: Tanks): number {
  const { from, to } = line;
  if (from.isTee || to?.isTee) return 0;
  readLevel(from, tanks);
  if (to) readLevel(to, tanks);
  return flowAt(line.table, Math.max(0, drivingHead(line)));
}

/**
 * Flow through a half-shut float, open in proportion to its gap over its band, from that with the float open: the valve's
 * share of the head grows as one over the square of its opening. Exact where the hose's own loss is a square; else it moves
 * the moment of shutting, not the amount.
 */
function throttled({ opening }: Float, flow: number, head: number, open: number): number {
  if (flow === 0) return 0;
  const valve = (flow * flow) / (opening * head);
  return flow / Math.sqrt(1 - valve + valve / (open * open));
}

/** Head that drives a line forward [m]; below 0 backward; 0 where it stands still. */
function drivingHead({ from, to, ends }: PipeLine): number {
  const start = from.surface;
  const end = to ? to.surface + ends.lift : ends.mouth;
  const endIsTee = to?.isTee === true;
  const against = endIsTee ? end : Math.max(end, ends.mouth);
  if (start > against)
    return (from.isTee ? from.standing : start) > ends.takesOver + FILM ? start - against : 0;
  if (ends.isOneWay || (to?.isTee ? to.standing <= to.height + FILM : end <= ends.mouth + FILM)) return 0;
  const up = from.isTee ? start : Math.max(start, ends.start);
  return end > up ? up - end : 0;
}

/** What each node gains, how fast its water rises, and how each flowing line's head grows. */
function readGrowth({ lines, tanks, tees }: PipeGroup): void {
  for (let k = 0; k < tanks.length; k++) clear(tanks[k] as PipeNode);
  for (let k = 0; k < tees.length; k++) clear(tees[k] as PipeNode);
  for (let k = 0; k < lines.length; k++) addGains(lines[k] as PipeLine);
  for (let k = 0; k < tanks.length; k++) {
    const tank = tanks[k] as PipeNode;
    tank.rising = tank.gain / tank.area;
  }
  for (let k = 0; k < lines.length; k++) readHeadGrowth(lines[k] as PipeLine);
}

function clear(node: PipeNode): void {
  node.gain = 0;
  node.busy = 0;
}

function addGains({ flow, from, to }: PipeLine): void {
  if (flow === 0) return;
  from.gain -= flow;
  from.busy++;
  if (!to) return;
  to.gain += flow;
  to.busy++;
}

/** Growth of a line's driving head, all lines flowing as they do now: continuity of both tanks. */
function readHeadGrowth(line: PipeLine): void {
  const { flow, from, to, ends } = line;
  if (flow === 0) return;
  const upper = flow > 0 ? from : (to as PipeNode);
  const lower = flow > 0 ? to : from;
  const isUnderWater = lower !== null && lower.surface > (flow > 0 ? ends.end : ends.start);
  line.growth = isUnderWater ? upper.rising - lower.rising : upper.rising;
}

/**
 * Reads how high the water stands that may run to each tee. Flowing, a tee's own water may stand under the tee, drawn on by
 * the lines behind it; whether water comes over what it has to climb is told by the water before it.
 */
function readStanding({ atTee }: Pipes, tees: readonly PipeNode[]): void {
  for (let k = 0; k < tees.length; k++) (tees[k] as PipeNode).standing = -Infinity;
  // As many rounds as there are tees settle every chain.
  for (let round = 0; round < tees.length; round++) {
    for (let k = 0; k < tees.length; k++) {
      const tee = tees[k] as PipeNode;
      const lines = atTee[tee.place] ?? [];
      for (let j = 0; j < lines.length; j++)
        tee.standing = Math.max(tee.standing, broughtTo(tee, lines[j] as PipeLine));
    }
  }
}

/** Height of the water at a line's other end that may run to a tee [m]; -Infinity: none. */
function broughtTo(tee: PipeNode, { from, to, ends }: PipeLine): number {
  if (to === tee) {
    const above = from.isTee ? from.standing : from.surface;
    return above > ends.takesOver + FILM ? above : -Infinity;
  }
  if (ends.isOneWay || !to) return -Infinity;
  const above = to.isTee ? to.standing : to.surface + ends.lift;
  return above > (to.isTee ? to.height : ends.mouth) + FILM ? above : -Infinity;
}

/** Net flow into a tee when its water would stand at a height [m3/s]; the higher, the less. */
function surplusAt(tee: PipeNode, lines: readonly PipeLine[], height: number): number {
  tee.surface = height;
  let sum = 0;
  for (const line of lines) {
    readFlow(line);
    sum += line.to === tee ? line.flow : -line.flow;
  }
  return sum;
}

function settleTees({ atTee }: Pipes, tees: readonly PipeNode[]): void {
  for (const tee of tees) tee.surface = tee.height;
  const rounds = tees.length > 1 ? ROUNDS : 1;
  for (let round = 0; round < rounds; round++) {
    let shift = 0;
    for (const tee of tees) shift = Math.max(shift, settleTee(tee, atTee[tee.place] ?? []));
    if (shift < FILM) break;
  }
}

/** Seeks the height at which as much arrives as leaves; returns by how much it changed [m]. */
function settleTee(tee: PipeNode, lines: readonly PipeLine[]): number {
  const before = tee.surface;
  let low = Infinity;
  let high = -Infinity;
  for (const { from, to, ends } of lines) {
    const other = from === tee ? to : from;
    const end = other ? other.surface : ends.end;
    low = Math.min(low, end, ends.end);
    high = Math.max(high, end);
  }
  for (let halving = 0; halving < HALVINGS && high - low > 0; halving++) {
    const middle = (low + high) / 2;
    if (surplusAt(tee, lines, middle) > 0) low = middle;
    else high = middle;
  }
  tee.surface = low;
  return Math.abs(low - before);
}

/** What rounding leaves over at a tee goes to its largest line, so that no water is made or lost there. */
function closeTees({ atTee }: Pipes, tees: readonly PipeNode[]): void {
  for (const tee of tees) closeTee(tee, atTee[tee.place] ?? []);
}

function closeTee(tee: PipeNode, lines: readonly PipeLine[]): void {
  const inward = ({ to }: PipeLine) => (to === tee ? 1 : -1);
  let sum = 0;
  let largest: PipeLine | null = null;
  for (const line of lines) {
    sum += inward(line) * line.flow;
    if (!largest || Math.abs(line.flow) > Math.abs(largest.flow)) largest = line;
  }
  if (largest) largest.flow -= inward(largest) * sum;
}
