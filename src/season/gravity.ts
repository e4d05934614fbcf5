// Gravity from one watering to the next: all lines flow from the same levels, in steps that grow until nothing moves.

import { DAY, MINUTE } from "../units/constants.ts";
import { doneIn, movedIn, readDecline } from "./line-step.ts";
import { isClosing } from "./pipe-ends.ts";
import { readFlows } from "./pipe-flow.ts";
import type { PipeGroup } from "./pipe-groups.ts";
import type { PipeLine, PipeNode } from "./pipe-line.ts";
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

/**
 * Water that a step through a tee may always move [m3]. A wide line at a tee has next to none of the drop, and a share of
 * next to nothing would ask for steps of seconds through all the days that two tanks take to come level.
 */
const HALF_LITRE = 5e-4;

/**
 * Lines that bring no more than this stand still [m3/s]: a milliliter in a day. Judged by flow, not by what a step moved: one
 * that was cut short to end where a float begins to close moves next to nothing, while hours of filling are still to come.
 */
const STILL = 1e-6 / DAY;

/**
 * Lets every line run for a time; moves the water in `tanks` and adds to what each line moved.
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
  while (left > 0 && readFlows(pipes, group, tanks) && !isStill(group)) {
    if (left === time) noteRises(group);
    const step = Math.min(left, stepLimit(group, wanted, stepping));
    // From the end, so that the last step ends on the time itself: a line that still runs then is not done a last bit before.
    planStep(group, step, time - (left - step));
    holdToSources(group, tanks);
    lost += applyStep(group, tanks);
    left -= step;
    wanted = step * stepping.growth;
  }
  return lost;
}

function noteRises({ lines }: PipeGroup): void {
  for (let k = 0; k < lines.length; k++) {
    const line = lines[k] as PipeLine;
    // After dark they go on with what is left of the day's filling: that alone is no rise of its own.
    if (line.float && line.to) line.rise = Math.max(line.rise, line.float.shutHeight - line.to.surface);
  }
}

function isStill({ lines }: PipeGroup): boolean {
  for (let k = 0; k < lines.length; k++) if (Math.abs((lines[k] as PipeLine).flow) > STILL) return false;
  return true;
}

/** The longest step that no line's limits forbid [s]. */
function stepLimit({ lines }: PipeGroup, wanted: number, stepping: Stepping): number {
  let step = wanted;
  let stop = Infinity;
  let atTee = 0;
  for (let k = 0; k < lines.length; k++) {
    const line = lines[k] as PipeLine;
    if (line.flow === 0) continue;
    if (line.joined) atTee = Math.max(atTee, Math.abs(line.flow));
    const alone = !line.joined && !isShared(line);
    stop = Math.min(stop, untilBand(line, alone));
    step = Math.min(
      step,
      alone ? fallLimit(line, ALONE * stepping.change) : sharedLimit(line, stepping.change),
    );
  }
  const shortest = atTee > 0 ? Math.max(stepping.shortest, HALF_LITRE / atTee) : stepping.shortest;
  return Math.min(Math.max(step, shortest), Math.max(stop, INSTANT));
}

/** Time in which a line's head falls by a share [s]. */
function fallLimit({ growth, head }: PipeLine, change: number): number {
  return growth < 0 ? (change * head) / -growth : Infinity;
}

/** Whether another line flows at one of a line's ends: then its own closed form does not know all of its change. */
function isShared({ from, to }: PipeLine): boolean {
  return from.busy > 1 || (to !== null && to.busy > 1);
}

/** Time until a rising float begins to close its valve [s]; a line alone knows by itself when one snaps shut. */
function untilBand({ float, to }: PipeLine, alone: boolean): number {
  if (!float || !to || (alone && float.band === 0) || isClosing(float, to.surface)) return Infinity;
  const above = float.shutHeight - to.surface - float.band;
  return to.rising > 0 && above > 0 ? above / to.rising : Infinity;
}

/** Time in which a share of a line's head or gap changes, or its fuller tank answers to all its lines [s]. */
function sharedLimit(line: PipeLine, change: number): number {
  const { head, growth, from, to, float } = line;
  let limit = Math.min((change * head) / Math.abs(growth), settleLimit(line, from), settleLimit(line, to));
  // A closing valve knows its own end, but not when it shares a tee.
  if (line.joined && float && to) {
    const gap = float.shutHeight - to.surface;
    if (isClosing(float, to.surface)) limit = Math.min(limit, (2 * change * gap) / Math.abs(to.rising));
  }
  return Number.isNaN(limit) ? Infinity : limit;
}

/** Beyond this a small tank between lines would swing about its balance instead of settling [s]. */
function settleLimit({ head, flow }: PipeLine, node: PipeNode | null): number {
  if (!node || node.isTee || node.busy < 2) return Infinity;
  return (head * node.area) / Math.abs(flow) / 2;
}

function planStep({ lines }: PipeGroup, time: number, until: number): void {
  for (let k = 0; k < lines.length; k++) {
    const line = lines[k] as PipeLine;
    if (line.flow === 0) line.step = 0;
    else if (line.joined) {
      line.step = line.flow * time;
      line.doneAt = until;
    } else planAlone(line, time, until);
  }
}

/** A line between tanks falls by its own closed form. */
function planAlone(line: PipeLine, time: number, until: number): void {
  readDecline(line, time);
  const amount = movedIn(line, time);
  line.step = line.flow > 0 ? amount : -amount;
  const ran = doneIn(line, amount, time);
  if (ran > 0) line.doneAt = until - (time - ran);
}

/** Moves the step's water; returns what ran out of free ends [m3]. */
function applyStep({ lines }: PipeGroup, { volume }: Tanks): number {
  let lost = 0;
  for (let k = 0; k < lines.length; k++) {
    const line = lines[k] as PipeLine;
    const { step, from, to } = line;
    if (step === 0) continue;
    line.moved += step;
    if (!from.isTee) volume[from.place] = (volume[from.place] as number) - step;
    if (!to) lost += step;
    else if (!to.isTee) volume[to.place] = (volume[to.place] as number) + step;
  }
  return lost;
}
