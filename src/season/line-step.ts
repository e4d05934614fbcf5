// How much one line moves in a step: its flow falls as the head falls and as its float valve closes, in closed form.

import { powerAt } from "../physics/line-table.ts";
import { DONE_SHARE } from "../physics/refill.ts";
import { type Float, isClosing } from "./pipe-ends.ts";
import type { PipeLine, PipeNode } from "./pipe-line.ts";

/** Below this change of the head in a step its exponent moves the amount by less than 0.1 % [-]. */
const LITTLE = 0.004;
const TURBULENT = 0.55;
/** Powers as near to 1 fall like an exponential. */
const STRAIGHT = 1 - 1e-6;
/** Share of a tank's rise, or of its valve's band where it hardly rises, that is left when a float counts as shut. */
const SHUT = 1 - DONE_SHARE;

/**
 * How a flowing line's flow falls with the water m that it moves, written to its `power`, `limit` and `cap`:
 * Q = Q0 (1 - m/M)^p. p is about 1/2 for a turbulent line, 1 for a laminar one or a closing valve; M is the limit, Infinity
 * where the head does not fall; after the cap a valve snaps shut, Infinity without such a valve.
 *
 * @param time of the step: where little of the head goes in it, how the flow falls is no matter [s]
 * @source two tanks through a line: dh/dt = -Q (1/A1 + 1/A2); a valve that closes in proportion to its gap
 */
export function readDecline(line: PipeLine, time: number): void {
  const { head, growth, float, to } = line;
  const flow = Math.abs(line.flow);
  line.power = Math.abs(growth / head) * time < LITTLE ? TURBULENT : exponentOf(line);
  line.limit = growth < 0 ? (flow * head) / -growth : Infinity;
  line.cap = Infinity;
  if (float && to) closeFloat(line, float, to);
}

/** A float that rises shuts its line: at once where it has no band, in proportion to its gap within one. */
function closeFloat(line: PipeLine, float: Float, { rising, surface }: PipeNode): void {
  if (rising <= 0) return;
  const gap = float.shutHeight - surface;
  const flow = Math.abs(line.flow);
  if (float.band === 0) {
    line.cap = (flow * gap) / rising;
    return;
  }
  if (!isClosing(float, surface)) return;
  const growth = line.growth / line.head;
  const falling = growth < 0 ? -growth * line.power : 0;
  line.limit = flow / (falling + rising / gap);
  line.power = 1;
}

/** Power of a line's flow in its head, over a tenth of it, its valve open. */
function exponentOf({ table, head }: PipeLine): number {
  return Math.min(1, Math.max(0.4, powerAt(table, head)));
}

/**
 * Water that a line moves in a time while its flow falls.
 *
 * @param line its decline read
 * @param time of the step [s]
 * @returns volume [m3]
 * @source dm/dt = Q0 (1 - m/M)^p, integrated
 */
export function movedIn(line: PipeLine, time: number): number {
  const { limit, power, cap } = line;
  const flow = Math.abs(line.flow);
  if (limit === Infinity) {
    const growth = line.growth / line.head;
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
function timeFor({ flow, limit, power }: PipeLine, amount: number): number {
  const size = Math.abs(flow);
  if (limit === Infinity) return amount / size;
  const left = Math.max(0, 1 - amount / limit);
  if (power > STRAIGHT) return (-Math.log(left) * limit) / size;
  return ((1 - left ** (1 - power)) * limit) / (size * (1 - power));
}

/**
 * Time in a step until a line is done: it stands still, its valve snaps shut, or a closing one has a fiftieth of the tank's
 * rise left, as on the line's card.
 *
 * @param line its decline read
 * @param amount that it moves in the step [m3]
 * @param time of the step [s]
 * @returns time, or the whole step where it is not done in it [s]
 * @source the inverse of movedIn
 */
export function doneIn(line: PipeLine, amount: number, time: number): number {
  const { limit, cap, float, to, flow } = line;
  if (amount === cap || amount === limit) return Math.min(time, timeFor(line, amount));
  if (!float || !to || float.band === 0 || flow < 0) return time;
  const gap = float.shutHeight - to.surface;
  const share = Math.min(float.band, SHUT * Math.max(float.band, line.rise)) / gap;
  if (share >= 1) return 0;
  return isClosing(float, to.surface) ? Math.min(time, timeFor(line, limit * (1 - share))) : time;
}
