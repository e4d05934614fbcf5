// Which way each line runs now and how much, from the heights of the water at its ends; tees included.

import { GRAVITY } from "../units/constants.ts";
import type { LinePart } from "./input.ts";
import type { PipeGroup } from "./pipe-groups.ts";
import type { Pipes } from "./pipes.ts";
import { levelOf, surfaceOf, type Tanks } from "./tanks.ts";

/** Water must stand this much over an opening to run into it: rounding, not hydraulics [m]. */
const FILM = 1e-9;
/** A float this near to its shut level is shut [m]. */
const FLOAT_FILM = 1e-5;
/** Halvings of the range in which a tee's head is sought, and rounds over tees that lead to each other. */
const HALVINGS = 60;
const ROUNDS = 40;

/**
 * Reads the heights of water and works out the flow of every line of a group.
 *
 * @param pipes the lines; their heads, flows and nodes' gains are written [-]
 * @source lineTable; continuity at a tee
 */
export function readFlows(pipes: Pipes, group: PipeGroup, tanks: Tanks): boolean {
  const { lines } = group;
  for (let k = 0; k < group.tanks.length; k++) {
    const place = group.tanks[k] as number;
    const level = levelOf(tanks, place);
    pipes.surface[place] = (tanks.parts[place] as { floor: number }).floor + level;
    pipes.area[place] = surfaceOf(tanks, place, level);
  }
  if (group.tees.length > 0) settleTees(pipes, group.tees);
  let moving = false;
  for (let k = 0; k < lines.length; k++) if (readFlow(pipes, lines[k] as number) !== 0) moving = true;
  if (group.tees.length > 0) closeTees(pipes, group.tees);
  if (moving) sumGains(pipes, group);
  return moving;
}

/** Head and flow of one line, written and returned [m3/s]. */
function readFlow(pipes: Pipes, i: number): number {
  const line = pipes.parts[i] as LinePart;
  const head = drivingHead(pipes, line, i);
  pipes.head[i] = head < 0 ? -head : head;
  if (head === 0) {
    pipes.flow[i] = 0;
    return 0;
  }
  const open = head > 0 ? openShare(pipes, line, i) : 1;
  pipes.open[i] = open;
  const table = pipes.tables[i];
  if (!table || open === 0) {
    pipes.flow[i] = 0;
    return 0;
  }
  const flow = head > 0 ? throttled(table.flowAt(head), line, head, open) : -table.flowAt(-head);
  pipes.flow[i] = flow;
  return flow;
}

/**
 * Flow through a half-shut float from that with the float open: the valve's share of the head grows as one over the
 * square of its opening. Exact where the hose's own loss is a square; else it moves the moment of shutting, not the amount.
 */
function throttled(flow: number, line: LinePart, head: number, open: number): number {
  if (open === 1 || line.opening === null) return flow;
  const valve = (flow * flow) / (2 * GRAVITY * line.opening * line.opening * head);
  return flow / Math.sqrt(1 - valve + valve / (open * open));
}

/** Head that drives a line forward [m]; below 0 backward; 0 where it stands still. */
function drivingHead(pipes: Pipes, line: LinePart, i: number): number {
  const { surface, firstTee } = pipes;
  const from = pipes.from[i] as number;
  const to = pipes.to[i] as number;
  const start = surface[from] as number;
  const lift = pipes.lift[i] as number;
  const mouth = line.endHeight + lift;
  const end = to < 0 ? mouth : (surface[to] as number) + lift;
  const endIsTee = to >= firstTee;
  const startIsTee = from >= firstTee;
  const against = endIsTee ? end : Math.max(end, mouth);
  if (start > against) return startIsTee || start > startOf(pipes, line, i) + FILM ? start - against : 0;
  if (line.checkValve || line.opening !== null || to < 0) return 0;
  if (!endIsTee && end <= mouth + FILM) return 0;
  const up = startIsTee ? start : Math.max(start, line.startHeight);
  return end > up ? up - end : 0;
}

/** Height under which a line takes nothing from its tank [m]. */
function startOf(pipes: Pipes, line: LinePart, i: number): number {
  return Math.max(line.startHeight, pipes.outletHeight[pipes.from[i] as number] as number);
}

/** Share by which a float valve is open at its target's level: in proportion over its band. */
function openShare(pipes: Pipes, line: LinePart, i: number): number {
  if (line.opening === null || line.shutLevel === null) return 1;
  const to = pipes.to[i] as number;
  if (to < 0 || to >= pipes.firstTee) return 1;
  const gap = gapOf(pipes, line, to);
  if (gap <= FLOAT_FILM) return 0;
  return line.valveBand > 0 && gap < line.valveBand ? gap / line.valveBand : 1;
}

/**
 * How far the water at a line's end stands below the level at which its float is shut.
 *
 * @returns gap; 0 or less when shut [m]
 */
export function gapOf(pipes: Pipes, line: LinePart, to: number): number {
  return (pipes.floor[to] as number) + (line.shutLevel ?? Infinity) - (pipes.surface[to] as number);
}

function sumGains(pipes: Pipes, group: PipeGroup): void {
  const { gain, busy, flow, from, to } = pipes;
  clearNodes(pipes, group.tanks, 0);
  clearNodes(pipes, group.tees, pipes.firstTee);
  for (let k = 0; k < group.lines.length; k++) {
    const i = group.lines[k] as number;
    const rate = flow[i] as number;
    if (rate === 0) continue;
    const a = from[i] as number;
    const b = to[i] as number;
    gain[a] = (gain[a] as number) - rate;
    busy[a] = (busy[a] as number) + 1;
    if (b < 0) continue;
    gain[b] = (gain[b] as number) + rate;
    busy[b] = (busy[b] as number) + 1;
  }
}

function clearNodes({ gain, busy }: Pipes, nodes: Int32Array, first: number): void {
  for (let k = 0; k < nodes.length; k++) {
    gain[first + (nodes[k] as number)] = 0;
    busy[first + (nodes[k] as number)] = 0;
  }
}

/** Net flow into a tee when its water would stand at a height [m3/s]; the higher, the less. */
function surplusAt(pipes: Pipes, tee: number, height: number): number {
  const node = pipes.firstTee + tee;
  pipes.surface[node] = height;
  let sum = 0;
  for (const i of pipes.atTee[tee] ?? [])
    sum += pipes.to[i] === node ? readFlow(pipes, i) : -readFlow(pipes, i);
  return sum;
}

function settleTees(pipes: Pipes, tees: Int32Array): void {
  for (const tee of tees) pipes.surface[pipes.firstTee + tee] = pipes.teeHeight[tee] as number;
  const rounds = tees.length > 1 ? ROUNDS : 1;
  for (let round = 0; round < rounds; round++) {
    let shift = 0;
    for (const tee of tees) shift = Math.max(shift, settleTee(pipes, tee));
    if (shift < FILM) break;
  }
}

/** Seeks the height at which as much arrives as leaves; returns by how much it changed [m]. */
function settleTee(pipes: Pipes, tee: number): number {
  const before = pipes.surface[pipes.firstTee + tee] as number;
  let low = Infinity;
  let high = -Infinity;
  for (const i of pipes.atTee[tee] ?? []) {
    const other =
      pipes.from[i] === pipes.firstTee + tee ? (pipes.to[i] as number) : (pipes.from[i] as number);
    const line = pipes.parts[i] as LinePart;
    const end = other < 0 ? line.endHeight : (pipes.surface[other] as number);
    low = Math.min(low, end, line.endHeight);
    high = Math.max(high, end);
  }
  for (let halving = 0; halving < HALVINGS && high - low > 0; halving++) {
    const middle = (low + high) / 2;
    if (surplusAt(pipes, tee, middle) > 0) low = middle;
    else high = middle;
  }
  pipes.surface[pipes.firstTee + tee] = low;
  return Math.abs(low - before);
}

/** What rounding leaves over at a tee goes to its largest line, so that no water is made or lost there. */
function closeTees(pipes: Pipes, tees: Int32Array): void {
  for (const tee of tees) closeTee(pipes, pipes.firstTee + tee, pipes.atTee[tee] ?? []);
}

function closeTee(pipes: Pipes, node: number, lines: readonly number[]): void {
  const size = (i: number) => Math.abs(pipes.flow[i] as number);
  const inward = (i: number) => (pipes.to[i] === node ? 1 : -1);
  let sum = 0;
  let largest = -1;
  for (const i of lines) {
    sum += inward(i) * (pipes.flow[i] as number);
    if (largest < 0 || size(i) > size(largest)) largest = i;
  }
  if (largest >= 0) pipes.flow[largest] = (pipes.flow[largest] as number) - inward(largest) * sum;
}
