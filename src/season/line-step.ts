// How much one line moves in a step: its flow falls as the head falls and as its float valve closes, in closed form.

import { type LineTable, powerAt } from "../physics/line-table.ts";
import { gapOf } from "./pipe-flow.ts";
import type { Pipes } from "./pipes.ts";

/** Below this change of the head in a step its exponent moves the amount by less than 0.1 % [-]. */
const LITTLE = 0.004;
const TURBULENT = 0.55;
/** Powers as near to 1 fall like an exponential. */
const STRAIGHT = 1 - 1e-6;
/** Share of the rise over its valve's band at which a float counts as shut: common practice, no source. */
const SHUT = 0.02;

/**
 * How a flowing line's flow falls with the water m that it moves, written to the line's `power`, `limit` and `cap`:
 * Q = Q0 (1 - m/M)^p. p is about 1/2 for a turbulent line, 1 for a laminar one or a closing valve; M is the limit, Infinity
 * where the head does not fall; after the cap a valve snaps shut, Infinity without such a valve.
 *
 * @param time of the step: where little of the head goes in it, how the flow falls is no matter [s]
 * @source two tanks through a line: dh/dt = -Q (1/A1 + 1/A2); a valve that closes in proportion to its gap
 */
export function readDecline(pipes: Pipes, i: number, time: number): void {
  const flow = Math.abs(pipes.flow[i] as number);
  const head = pipes.head[i] as number;
  const rate = pipes.growth[i] as number;
  const change = Math.abs(rate / head) * time;
  pipes.power[i] = change < LITTLE ? TURBULENT : exponentOf(pipes, i, head);
  pipes.limit[i] = rate < 0 ? (flow * head) / -rate : Infinity;
  pipes.cap[i] = Infinity;
  if (pipes.hasFloat[i] === 1) closeFloat(pipes, i, flow);
}

/** A float that rises shuts its line: at once where it has no band, in proportion to its gap within one. */
function closeFloat(pipes: Pipes, i: number, flow: number): void {
  const rising = pipes.rising[pipes.to[i] as number] as number;
  const band = pipes.band[i] as number;
  const gap = gapOf(pipes, i);
  if (rising <= 0 || (band > 0 && gap >= band)) return;
  if (band === 0) {
    pipes.cap[i] = (flow * gap) / rising;
    return;
  }
  const growth = (pipes.growth[i] as number) / (pipes.head[i] as number);
  const falling = growth < 0 ? -growth * (pipes.power[i] as number) : 0;
  pipes.limit[i] = flow / (falling + rising / gap);
  pipes.power[i] = 1;
}

/** Power of a line's flow in its head, over a tenth of it, its valve open. */
function exponentOf(pipes: Pipes, i: number, head: number): number {
  return Math.min(1, Math.max(0.4, powerAt(pipes.tables[i] as LineTable, head)));
}

/**
 * Water that a line moves in a time while its flow falls.
 *
 * @param i the line, its decline read [-]
 * @param time of the step [s]
 * @returns volume [m3]
 * @source dm/dt = Q0 (1 - m/M)^p, integrated
 */
export function movedIn(pipes: Pipes, i: number, time: number): number {
  const flow = Math.abs(pipes.flow[i] as number);
  const limit = pipes.limit[i] as number;
  const power = pipes.power[i] as number;
  const cap = pipes.cap[i] as number;
  if (limit === Infinity) {
    const growth = (pipes.growth[i] as number) / (pipes.head[i] as number);
    return Math.min(cap, flow * time * (1 + (power * growth * time) / 2));
  }
  const spent = (flow * time) / limit;
  if (power > STRAIGHT) return Math.min(cap, limit * -Math.expm1(-spent));
  // The first two terms of what follows: the third is under a millionth here.
  if (spent < LITTLE) return Math.min(cap, flow * time * (1 - (power * spent) / 2));
  const left = 1 - (1 - power) * spent;
  return Math.min(cap, left <= 0 ? limit : limit * (1 - left ** (1 / (1 - power))));
}

/** Time in which a line moves an amount [s]: the inverse of movedIn. */
function timeFor(pipes: Pipes, i: number, amount: number): number {
  const flow = Math.abs(pipes.flow[i] as number);
  const limit = pipes.limit[i] as number;
  const power = pipes.power[i] as number;
  if (limit === Infinity) return amount / flow;
  const left = Math.max(0, 1 - amount / limit);
  if (power > STRAIGHT) return (-Math.log(left) * limit) / flow;
  return ((1 - left ** (1 - power)) * limit) / (flow * (1 - power));
}

/**
 * Time in a step until a line is done: it stands still, its valve snaps shut, or a closing one has a fiftieth left.
 *
 * @param i the line, its decline read [-]
 * @param amount that it moves in the step [m3]
 * @param time of the step [s]
 * @returns time, or the whole step where it is not done in it [s]
 * @source the inverse of movedIn
 */
export function doneIn(pipes: Pipes, i: number, amount: number, time: number): number {
  const limit = pipes.limit[i] as number;
  if (amount === pipes.cap[i] || amount === limit) return Math.min(time, timeFor(pipes, i, amount));
  const band = pipes.band[i] as number;
  if (pipes.hasFloat[i] === 0 || band === 0 || (pipes.flow[i] as number) < 0) return time;
  const gap = gapOf(pipes, i);
  const share = (SHUT * band) / gap;
  if (share >= 1) return 0;
  return gap < band ? Math.min(time, timeFor(pipes, i, limit * (1 - share))) : time;
}
