// Gravity from one watering to the next: all lines flow from the same levels, in steps that grow until nothing moves.

import { DAY, MINUTE } from "../units/constants.ts";
import { doneIn, movedIn, readDecline } from "./line-step.ts";
import { gapOf, readFlows } from "./pipe-flow.ts";
import type { PipeGroup } from "./pipe-groups.ts";
import type { Pipes } from "./pipes.ts";
import { holdToSources } from "./source-hold.ts";
import type { Tanks } from "./tanks.ts";

/** How steps are chosen; halved in tests to see what they move. */
export type Stepping = {
  /** The first step, and the shortest that any limit may ask for [s]. */
  readonly first: number;
  readonly shortest: number;
  /** Each step over the one before [-]. */
  readonly growth: number;
  /** Share of a head or a valve's gap that may change in a step where lines meet in a tank [-]. */
  readonly change: number;
};

export const STEPPING: Stepping = { first: 15 * MINUTE, shortest: 2, growth: 3, change: 0.15 };

/** Times `change` for a line alone between its tanks: its closed form knows how it falls, but not how its regime turns. */
const ALONE = 3;
/** No step is shorter: a valve this near to shut is shut [s]. */
const INSTANT = 1e-3;

/** Water that a step must move for the next one to be worth taking [m3]. */
const NOTHING = 1e-8;

/**
 * Lets every line run for a time; moves the water in `tanks` and adds to `pipes.moved`.
 *
 * @param time from the watering to the next; a day when left out [s]
 * @returns water that ran out of free ends [m3]
 * @validity conserves water exactly; amounts within 0.5 % of half the steps
 * @source see line-step.ts; all flows from the same levels, then scaled by what their source holds
 */
export function runGravity(pipes: Pipes, tanks: Tanks, time = DAY, stepping: Stepping = STEPPING): number {
  let lost = 0;
  const span = { time, stepping };
  for (let k = 0; k < pipes.groups.length; k++)
    lost += runGroup(pipes, pipes.groups[k] as PipeGroup, tanks, span);
  return lost;
}

type Span = { readonly time: number; readonly stepping: Stepping };

function runGroup(pipes: Pipes, group: PipeGroup, tanks: Tanks, { time, stepping }: Span): number {
  let left = time;
  let wanted = stepping.first;
  let lost = 0;
  while (left > 0 && readFlows(pipes, group, tanks)) {
    const step = Math.min(left, stepLimit(pipes, group, wanted, stepping));
    planStep(pipes, group, step, time - left);
    holdToSources(pipes, group, tanks);
    lost += applyStep(pipes, group, tanks);
    left -= step;
    if (isStill(pipes.step, group)) break;
    wanted = step * stepping.growth;
  }
  return lost;
}

function isStill(step: Float64Array, { lines }: PipeGroup): boolean {
  for (let k = 0; k < lines.length; k++)
    if (Math.abs(step[lines[k] as number] as number) >= NOTHING) return false;
  return true;
}

/** The longest step that no line's limits forbid [s]. */
function stepLimit(pipes: Pipes, group: PipeGroup, wanted: number, stepping: Stepping): number {
  let step = wanted;
  let stop = Infinity;
  for (let k = 0; k < group.lines.length; k++) {
    const i = group.lines[k] as number;
    if (pipes.flow[i] === 0) continue;
    const alone = !pipes.joined[i] && !isShared(pipes, i);
    stop = Math.min(stop, untilBand(pipes, i, alone));
    step = Math.min(
      step,
      alone ? fallLimit(pipes, i, ALONE * stepping.change) : sharedLimit(pipes, i, stepping.change),
    );
  }
  return Math.min(Math.max(step, stepping.shortest), Math.max(stop, INSTANT));
}

/** Time in which a line's head falls by a share [s]. */
function fallLimit(pipes: Pipes, i: number, change: number): number {
  const growth = pipes.growth[i] as number;
  return growth < 0 ? (change * (pipes.head[i] as number)) / -growth : Infinity;
}

/** Whether another line flows at one of a line's ends: then its own closed form does not know all of its change. */
function isShared(pipes: Pipes, i: number): boolean {
  const to = pipes.to[i] as number;
  return (pipes.busy[pipes.from[i] as number] as number) > 1 || (to >= 0 && (pipes.busy[to] as number) > 1);
}

/** Time until a rising float begins to close its valve [s]; a line alone knows by itself when one snaps shut. */
function untilBand(pipes: Pipes, i: number, alone: boolean): number {
  if (pipes.hasFloat[i] === 0) return Infinity;
  const band = pipes.band[i] as number;
  if (alone && band === 0) return Infinity;
  const rising = pipes.rising[pipes.to[i] as number] as number;
  const above = gapOf(pipes, i) - band;
  return rising > 0 && above > 0 ? above / rising : Infinity;
}

/** Time in which a share of a line's head or gap changes, or its fuller tank answers to all its lines [s]. */
function sharedLimit(pipes: Pipes, i: number, change: number): number {
  const head = pipes.head[i] as number;
  const to = pipes.to[i] as number;
  const changed = (change * head) / Math.abs(pipes.growth[i] as number);
  let limit = Math.min(changed, settleLimit(pipes, i, pipes.from[i] as number), settleLimit(pipes, i, to));
  // A closing valve knows its own end, but not when it shares a tee.
  if (pipes.joined[i] && pipes.hasFloat[i] === 1) {
    const rising = pipes.rising[to] as number;
    const gap = gapOf(pipes, i);
    if (gap < (pipes.band[i] as number)) limit = Math.min(limit, (2 * change * gap) / Math.abs(rising));
  }
  return Number.isNaN(limit) ? Infinity : limit;
}

/** Beyond this a small tank between lines would swing about its balance instead of settling [s]. */
function settleLimit(pipes: Pipes, i: number, node: number): number {
  if (node < 0 || node >= pipes.firstTee || (pipes.busy[node] as number) < 2) return Infinity;
  const head = pipes.head[i] as number;
  return (head * (pipes.area[node] as number)) / Math.abs(pipes.flow[i] as number) / 2;
}

function planStep(pipes: Pipes, group: PipeGroup, time: number, since: number): void {
  for (let k = 0; k < group.lines.length; k++) {
    const i = group.lines[k] as number;
    const flow = pipes.flow[i] as number;
    if (flow === 0) {
      pipes.step[i] = 0;
      continue;
    }
    if (pipes.joined[i]) {
      pipes.step[i] = flow * time;
      pipes.doneAt[i] = since + time;
      continue;
    }
    readDecline(pipes, i, time);
    const amount = movedIn(pipes, i, time);
    pipes.step[i] = flow > 0 ? amount : -amount;
    const ran = doneIn(pipes, i, amount, time);
    if (ran > 0) pipes.doneAt[i] = since + ran;
  }
}

/** Moves the step's water; returns what ran out of free ends [m3]. */
function applyStep(pipes: Pipes, group: PipeGroup, tanks: Tanks): number {
  const { volume } = tanks;
  let lost = 0;
  for (let k = 0; k < group.lines.length; k++) {
    const i = group.lines[k] as number;
    const amount = pipes.step[i] as number;
    if (amount === 0) continue;
    const a = pipes.from[i] as number;
    const b = pipes.to[i] as number;
    pipes.moved[i] = (pipes.moved[i] as number) + amount;
    if (a < pipes.firstTee) volume[a] = (volume[a] as number) - amount;
    if (b < 0) lost += amount;
    else if (b < pipes.firstTee) volume[b] = (volume[b] as number) + amount;
  }
  return lost;
}
