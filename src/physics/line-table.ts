// A line's flow against head, worked out once, so that a daily balance over decades never solves a pipe.

import { GRAVITY } from "../units/constants.ts";
import { type GravityLine, gravityFlow, gravityHead, laminarFlow } from "./gravity-line.ts";
import { bracketedRoot } from "./root.ts";

/** Flow of one line, looked up. */
export type LineTable = {
  /**
   * Flow under a head [m] with the valve open by a share, 1 when left out [-].
   * Exact up to Reynolds 1000 and beyond the table; else within 1e-4 of itself. None for a head of 0 or less.
   */
  readonly flowAt: (head: number, openShare?: number) => number;
};

/** Flow at which the laminar form is still exact to the last figures. */
const LAMINAR_REYNOLDS = 1000;
/** Step of the natural logarithm of head; a straight line over it is within 1e-4 even in the steep middle regime. */
const STEP = 0.01;

/**
 * A line's flow against head as a table with a direct look-up.
 *
 * @param line the line, units at the type's fields
 * @param maxHead highest head that is looked up; beyond it the line is solved [m]
 * @returns the look-up: head [m] and share of the valve's opening [-] to flow [m3/s]
 * @throws DomainError when nothing at all holds the flow back
 * @validity within 1e-4 of gravityFlow
 * @source gravityFlow, tabulated over equal steps of the logarithm of head
 */
export function lineTable(line: GravityLine, maxHead: number): LineTable {
  const pipe: GravityLine = { ...line, opening: null };
  const whole = curveOf(line, maxHead);
  // A hose of no length and no fittings is all valve: it has no curve of its own to combine with a half-shut valve.
  const bare = line.opening === null || (line.length === 0 && line.fittingsK === 0);
  const open = bare ? null : curveOf(pipe, maxHead);
  return {
    flowAt: (head, openShare = 1) => {
      if (head <= 0 || openShare <= 0 || line.opening === 0) return 0;
      if (openShare >= 1 || line.opening === null) return whole(head);
      const opening = line.opening * openShare;
      return open ? throttled(open, opening, head) : opening * Math.sqrt(2 * GRAVITY * head);
    },
  };
}

/**
 * Flow of a tabulated hose behind a valve: the head is shared so that both pass the same flow.
 * Were the hose's loss a square, the first guess were exact; each further step is a secant on what is left.
 */
function throttled(pipe: (head: number) => number, opening: number, head: number): number {
  const valve = 2 * GRAVITY * opening * opening;
  const most = pipe(head);
  let flow = most / Math.sqrt(1 + (most * most) / (valve * head));
  for (let step = 0; step < 4; step++) {
    const left = head - (flow * flow) / valve;
    if (left <= 0) {
      flow = Math.sqrt(valve * head) * (1 - 1e-9);
      continue;
    }
    const through = pipe(left);
    const error = flow - through;
    if (Math.abs(error) <= 1e-10 * flow) break;
    // Slope of the hose's flow against head lies between Q/2h and Q/h; its own chord gives it.
    const slope = (pipe(left * 1.001) - through) / (left * 0.001);
    flow -= error / (1 + (slope * 2 * flow) / valve);
  }
  return flow;
}

/** Flow against head of one line with its valve as it stands. */
function curveOf(line: GravityLine, maxHead: number): (head: number) => number {
  if (line.opening === 0) return () => 0;
  const start = gravityHead(line, (LAMINAR_REYNOLDS * Math.PI * line.bore * line.viscosity) / 4);
  const first = Math.log(start);
  const count = Math.max(2, Math.ceil((Math.log(maxHead) - first) / STEP) + 2);
  const heads = new Float64Array(count);
  const flows = new Float64Array(count);
  fillCurve(line, first, heads, flows);
  const last = heads[count - 1] ?? start;
  return (head) => {
    if (head <= 0) return 0;
    if (head <= start) return laminarFlow(line, head);
    if (head >= last) return gravityFlow(line, head);
    const index = Math.min(count - 2, Math.max(0, Math.floor((Math.log(head) - first) / STEP)));
    const lower = heads[index] as number;
    const flow = flows[index] as number;
    return (
      flow + (((flows[index + 1] as number) - flow) * (head - lower)) / ((heads[index + 1] as number) - lower)
    );
  };
}

/** Writes heads and flows; each flow is sought just above the one before, where the curve must be. */
function fillCurve(line: GravityLine, first: number, heads: Float64Array, flows: Float64Array): void {
  let flow = 0;
  for (let index = 0; index < heads.length; index++) {
    const head = Math.exp(first + index * STEP);
    if (index === 0) {
      flow = gravityFlow(line, head);
    } else {
      // Flow never grows faster than head, and never falls.
      flow = bracketedRoot((at) => gravityHead(line, at) - head, flow, flow * Math.exp(2 * STEP), 1e-12);
    }
    heads[index] = head;
    flows[index] = flow;
  }
}
