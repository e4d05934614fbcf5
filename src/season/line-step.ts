// How much one line moves in a step: its flow falls as the head falls and as its float valve closes, in closed form.

import type { LinePart } from "./input.ts";
import { gapOf } from "./pipe-flow.ts";
import type { Pipes } from "./pipes.ts";

/** Below this change of the head in a step its exponent moves the amount by less than 0.1 % [-]. */
const LITTLE = 0.004;
const TURBULENT = 0.55;
/** Share of the rise over its valve's band at which a float counts as shut: common practice, no source. */
const SHUT = 0.02;

/** How a line's flow falls with the water it moves: Q = Q0 (1 - m/M)^p. */
type Decline = {
  /** Water after which it would stand still [m3]; Infinity where its head does not fall. */
  limit: number;
  /** p: about 1/2 for a turbulent line, 1 for a laminar one or a closing valve [-]. */
  power: number;
  /** Growth of the head a second over the head [1/s]. */
  growth: number;
  /** Water after which a valve snaps shut [m3]; Infinity without such a valve. */
  cap: number;
};

/** One record that every line is read into in turn, so that no step makes an object. */
const decline: Decline = { limit: 0, power: 0, growth: 0, cap: 0 };

/**
 * Growth of a line's driving head a second, all lines flowing as they do now.
 *
 * @param pipes the lines, flows read [-]
 * @param i which of them [-]
 * @returns growth, below 0 where it falls [m/s]
 * @source continuity of both tanks
 */
export function headGrowth(pipes: Pipes, i: number): number {
  const forward = (pipes.flow[i] as number) > 0;
  const line = pipes.parts[i] as LinePart;
  const [from, to] = [pipes.from[i] as number, pipes.to[i] as number];
  const upper = forward ? from : to;
  const lower = forward ? to : from;
  let growth = rise(pipes, upper);
  const edge = forward ? line.endHeight : line.startHeight;
  if (lower >= 0 && (pipes.surface[lower] as number) > edge) growth -= rise(pipes, lower);
  return growth;
}

function rise(pipes: Pipes, node: number): number {
  return node >= pipes.firstTee ? 0 : (pipes.gain[node] as number) / (pipes.area[node] as number);
}

/**
 * Reads how a flowing line's flow falls into `decline`.
 *
 * @param pipes the lines, flows read [-]
 * @param i a line that flows [-]
 * @param time of the step: where little of the head goes in it, how the flow falls is no matter [s]
 * @source two tanks through a line: dh/dt = -Q (1/A1 + 1/A2); a valve that closes in proportion to its gap
 */
export function readDecline(pipes: Pipes, i: number, time: number): void {
  const flow = Math.abs(pipes.flow[i] as number);
  const head = pipes.head[i] as number;
  const growth = headGrowth(pipes, i);
  decline.growth = growth / head;
  const change = Math.abs(decline.growth) * time;
  decline.power = change < LITTLE ? TURBULENT : exponentOf(pipes, i, head);
  decline.limit = growth < 0 ? (flow * head) / -growth : Infinity;
  decline.cap = Infinity;
  const line = pipes.parts[i] as LinePart;
  const to = pipes.to[i] as number;
  if (line.opening === null || line.shutLevel === null || to < 0 || to >= pipes.firstTee) return;
  const rising = rise(pipes, to);
  if (rising <= 0) return;
  const gap = gapOf(pipes, line, to);
  if (line.valveBand === 0) {
    decline.cap = (flow * gap) / rising;
  } else if (gap < line.valveBand) {
    const falling = decline.growth < 0 ? -decline.growth * decline.power : 0;
    decline.limit = flow / (falling + rising / gap);
    decline.power = 1;
  }
}

/** Power of a line's flow in its head, over a tenth of it, its valve open. */
function exponentOf(pipes: Pipes, i: number, head: number): number {
  const table = pipes.tables[i];
  if (!table) return TURBULENT;
  return Math.min(1, Math.max(0.4, table.powerAt(head)));
}

/**
 * Water that a flow moves in a time while it falls as `decline` says.
 *
 * @param flow now [m3/s]
 * @param time of the step [s]
 * @returns volume [m3]
 * @source dm/dt = Q0 (1 - m/M)^p, integrated
 */
export function movedIn(flow: number, time: number): number {
  return Math.min(decline.cap, unboundedIn(flow, time));
}

function unboundedIn(flow: number, time: number): number {
  const { limit, power, growth } = decline;
  if (limit === Infinity) return flow * time * (1 + (power * growth * time) / 2);
  const spent = (flow * time) / limit;
  if (power > 1 - 1e-6) return limit * -Math.expm1(-spent);
  // The first two terms of what follows: the third is under a millionth here.
  if (spent < LITTLE) return flow * time * (1 - (power * spent) / 2);
  const left = 1 - (1 - power) * spent;
  return left <= 0 ? limit : limit * (1 - left ** (1 / (1 - power)));
}

/** Time in which a flow moves an amount [s]: the inverse of movedIn. */
function timeFor(flow: number, amount: number): number {
  const { limit, power } = decline;
  if (limit === Infinity) return amount / flow;
  const left = Math.max(0, 1 - amount / limit);
  if (power > 1 - 1e-6) return (-Math.log(left) * limit) / flow;
  return ((1 - left ** (1 - power)) * limit) / (flow * (1 - power));
}

/**
 * Time in a step until a line is done: it stands still, its valve snaps shut, or a closing one has a fiftieth left.
 *
 * @param pipes the lines, flows read [-]
 * @param i which of them, `decline` being read for it [-]
 * @param amount that it moves in the step [m3]
 * @param time of the step [s]
 * @returns time, or the whole step where it is not done in it [s]
 * @source the inverse of movedIn
 */
export function doneIn(pipes: Pipes, i: number, amount: number, time: number): number {
  const flow = Math.abs(pipes.flow[i] as number);
  if (amount === decline.cap || amount === decline.limit) return Math.min(time, timeFor(flow, amount));
  const line = pipes.parts[i] as LinePart;
  const to = pipes.to[i] as number;
  const valved = line.opening !== null && line.shutLevel !== null && to >= 0 && to < pipes.firstTee;
  if (!valved || line.valveBand === 0 || (pipes.flow[i] as number) < 0) return time;
  const gap = gapOf(pipes, line, to);
  const share = (SHUT * line.valveBand) / gap;
  if (share >= 1) return 0;
  return gap < line.valveBand ? Math.min(time, timeFor(flow, decline.limit * (1 - share))) : time;
}
