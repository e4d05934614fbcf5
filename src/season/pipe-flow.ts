// Which way each line runs now and how much, from the heights of the water at its ends; tees included.

import { flowAt, type LineTable } from "../physics/line-table.ts";
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
    pipes.surface[place] = (tanks.floor[place] as number) + level;
    pipes.area[place] = surfaceOf(tanks, place, level);
  }
  if (group.tees.length > 0) settleTees(pipes, group.tees);
  let moving = false;
  for (let k = 0; k < lines.length; k++) {
    const i = lines[k] as number;
    readFlow(pipes, i);
    if (pipes.flow[i] !== 0) moving = true;
  }
  if (group.tees.length > 0) closeTees(pipes, group.tees);
  if (!moving) return false;
  sumGains(pipes, group);
  readGrowth(pipes, group);
  return true;
}

/** Head and flow of one line. */
function readFlow(pipes: Pipes, i: number): void {
  const head = drivingHead(pipes, i);
  const table = pipes.tables[i] as LineTable;
  if (head > 0) {
    pipes.head[i] = head;
    const open = openShare(pipes, i);
    pipes.flow[i] = open === 0 ? 0 : throttled(pipes, i, flowAt(table, head), open);
  } else if (head < 0) {
    pipes.head[i] = -head;
    pipes.flow[i] = -flowAt(table, -head);
  } else {
    pipes.head[i] = 0;
    pipes.flow[i] = 0;
  }
}

/**
 * Flow through a half-shut float from that with the float open: the valve's share of the head grows as one over the
 * square of its opening. Exact where the hose's own loss is a square; else it moves the moment of shutting, not the amount.
 */
function throttled(pipes: Pipes, i: number, flow: number, open: number): number {
  if (open === 1 || flow === 0) return flow;
  const valve = (flow * flow) / ((pipes.valve[i] as number) * (pipes.head[i] as number));
  return flow / Math.sqrt(1 - valve + valve / (open * open));
}

/** Head that drives a line forward [m]; below 0 backward; 0 where it stands still. */
function drivingHead(pipes: Pipes, i: number): number {
  const { surface, firstTee } = pipes;
  const from = pipes.from[i] as number;
  const to = pipes.to[i] as number;
  const start = surface[from] as number;
  const mouth = pipes.mouth[i] as number;
  const end = to < 0 ? mouth : (surface[to] as number) + (pipes.lift[i] as number);
  const endIsTee = to >= firstTee;
  const startIsTee = from >= firstTee;
  const against = endIsTee ? end : Math.max(end, mouth);
  if (start > against)
    return startIsTee || start > (pipes.takesOver[i] as number) + FILM ? start - against : 0;
  if (pipes.isOneWay[i] === 1) return 0;
  if (!endIsTee && end <= mouth + FILM) return 0;
  const up = startIsTee ? start : Math.max(start, pipes.startHeight[i] as number);
  return end > up ? up - end : 0;
}

/** Share by which a float valve is open at its target's level: in proportion over its band. */
function openShare(pipes: Pipes, i: number): number {
  if (pipes.hasFloat[i] === 0) return 1;
  const gap = gapOf(pipes, i);
  if (gap <= FLOAT_FILM) return 0;
  const band = pipes.band[i] as number;
  return gap < band ? gap / band : 1;
}

/**
 * How far the water at a line's end stands below the level at which its float is shut.
 *
 * @param i place of a line with a float [-]
 * @returns gap; 0 or less when shut [m]
 */
export function gapOf(pipes: Pipes, i: number): number {
  return (pipes.shutHeight[i] as number) - (pipes.surface[pipes.to[i] as number] as number);
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

/** How fast the water of each tank rises, and each flowing line's head grows, all lines flowing as they do now. */
function readGrowth(pipes: Pipes, group: PipeGroup): void {
  const { gain, area, rising } = pipes;
  for (let k = 0; k < group.tanks.length; k++) {
    const place = group.tanks[k] as number;
    rising[place] = (gain[place] as number) / (area[place] as number);
  }
  for (let k = 0; k < group.lines.length; k++) {
    const i = group.lines[k] as number;
    if (pipes.flow[i] !== 0) readHeadGrowth(pipes, i);
  }
}

/** A tee stores nothing: its water is taken to stand still. */
function readHeadGrowth(pipes: Pipes, i: number): void {
  const { surface, rising, growth } = pipes;
  const forward = (pipes.flow[i] as number) > 0;
  const from = pipes.from[i] as number;
  const to = pipes.to[i] as number;
  const lower = forward ? to : from;
  const edge = (forward ? pipes.endHeight[i] : pipes.startHeight[i]) as number;
  growth[i] = rising[forward ? from : to] as number;
  if (lower >= 0 && (surface[lower] as number) > edge)
    growth[i] = (growth[i] as number) - (rising[lower] as number);
}

/** Net flow into a tee when its water would stand at a height [m3/s]; the higher, the less. */
function surplusAt(pipes: Pipes, tee: number, height: number): number {
  const node = pipes.firstTee + tee;
  pipes.surface[node] = height;
  let sum = 0;
  for (const i of pipes.atTee[tee] ?? []) {
    readFlow(pipes, i);
    const flow = pipes.flow[i] as number;
    sum += pipes.to[i] === node ? flow : -flow;
  }
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
    const mouth = pipes.endHeight[i] as number;
    const end = other < 0 ? mouth : (pipes.surface[other] as number);
    low = Math.min(low, end, mouth);
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
