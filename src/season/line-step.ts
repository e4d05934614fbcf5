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
export type Decline = {
  /** Water after which it would stand still [m3]; Infinity where its head does not fall. */
  readonly limit: number;
  /** p: about 1/2 for a turbulent line, 1 for a laminar one or a closing valve [-]. */
  readonly power: number;
  /** Growth of the head a second over the head [1/s]. */
  readonly growth: number;
  /** Water after which a valve snaps shut [m3]; Infinity without such a valve. */
  readonly cap: number;
};

/**
 * Growth of a line's driving head a second, all lines flowing as they do now.
 *
 * @returns growth, below 0 where it falls [m/s]
 * @source continuity of both tanks
 */
export function headGrowth(pipes: Pipes, i: number): number {
  const forward = (pipes.flow[i] as number) > 0;
  const line = pipes.parts[i] as LinePart;
  const from = pipes.from[i] as number;
  const to = pipes.to[i] as number;
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
 * How a flowing line's flow falls.
 *
 * @param time of the step: where little of the head goes in it, how the flow falls is no matter [s]
 * @source two tanks through a line: dh/dt = -Q (1/A1 + 1/A2); a valve that closes in proportion to its gap
 */
export function declineOf(pipes: Pipes, i: number, time: number): Decline {
  const flow = Math.abs(pipes.flow[i] as number);
  const head = pipes.head[i] as number;
  const rate = headGrowth(pipes, i);
  const growth = rate / head;
  const change = Math.abs(growth) * time;
  const power = change < LITTLE ? TURBULENT : exponentOf(pipes, i, head);
  const limit = rate < 0 ? (flow * head) / -rate : Infinity;
  const line = pipes.parts[i] as LinePart;
  if (!hasFloat(pipes, i)) return { limit, power, growth, cap: Infinity };
  const to = pipes.to[i] as number;
  const rising = rise(pipes, to);
  const gap = gapOf(pipes, line, to);
  if (rising <= 0 || (line.valveBand > 0 && gap >= line.valveBand))
    return { limit, power, growth, cap: Infinity };
  if (line.valveBand === 0) return { limit, power, growth, cap: (flow * gap) / rising };
  const falling = growth < 0 ? -growth * power : 0;
  return { limit: flow / (falling + rising / gap), power: 1, growth, cap: Infinity };
}

/** Whether a float at a line's end shuts it, in a tank. */
export function hasFloat(pipes: Pipes, i: number): boolean {
  const { opening, shutLevel } = pipes.parts[i] as LinePart;
  const to = pipes.to[i] as number;
  return opening !== null && shutLevel !== null && to >= 0 && to < pipes.firstTee;
}

/** Power of a line's flow in its head, over a tenth of it, its valve open. */
function exponentOf(pipes: Pipes, i: number, head: number): number {
  const table = pipes.tables[i];
  if (!table) return TURBULENT;
  return Math.min(1, Math.max(0.4, table.powerAt(head)));
}

/**
 * Water that a flow moves in a time while it falls.
 *
 * @param decline how it falls
 * @param flow now [m3/s]
 * @param time of the step [s]
 * @returns volume [m3]
 * @source dm/dt = Q0 (1 - m/M)^p, integrated
 */
export function movedIn(decline: Decline, flow: number, time: number): number {
  return Math.min(decline.cap, unboundedIn(decline, flow, time));
}

function unboundedIn({ limit, power, growth }: Decline, flow: number, time: number): number {
  if (limit === Infinity) return flow * time * (1 + (power * growth * time) / 2);
  const spent = (flow * time) / limit;
  if (power > 1 - 1e-6) return limit * -Math.expm1(-spent);
  // The first two terms of what follows: the third is under a millionth here.
  if (spent < LITTLE) return flow * time * (1 - (power * spent) / 2);
  const left = 1 - (1 - power) * spent;
  return left <= 0 ? limit : limit * (1 - left ** (1 / (1 - power)));
}

/** Time in which a flow moves an amount [s]: the inverse of movedIn. */
function timeFor({ limit, power }: Decline, flow: number, amount: number): number {
  if (limit === Infinity) return amount / flow;
  const left = Math.max(0, 1 - amount / limit);
  if (power > 1 - 1e-6) return (-Math.log(left) * limit) / flow;
  return ((1 - left ** (1 - power)) * limit) / (flow * (1 - power));
}

/**
 * Time in a step until a line is done: it stands still, its valve snaps shut, or a closing one has a fiftieth left.
 *
 * @param decline how its flow falls
 * @param step amount that it moves in the step [m3] and time of the step [s]
 * @returns time, or the whole step where it is not done in it [s]
 * @source the inverse of movedIn
 */
export function doneIn(
  pipes: Pipes,
  i: number,
  decline: Decline,
  { amount, time }: { readonly amount: number; readonly time: number },
): number {
  const flow = Math.abs(pipes.flow[i] as number);
  if (amount === decline.cap || amount === decline.limit)
    return Math.min(time, timeFor(decline, flow, amount));
  const line = pipes.parts[i] as LinePart;
  if (!hasFloat(pipes, i) || line.valveBand === 0 || (pipes.flow[i] as number) < 0) return time;
  const gap = gapOf(pipes, line, pipes.to[i] as number);
  const share = (SHUT * line.valveBand) / gap;
  if (share >= 1) return 0;
  return gap < line.valveBand ? Math.min(time, timeFor(decline, flow, decline.limit * (1 - share))) : time;
}
