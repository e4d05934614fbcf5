// No line takes more than its tank holds above the line's opening, nor all lines together more than is there.

import type { PipeGroup } from "./pipe-groups.ts";
import type { Pipes } from "./pipes.ts";
import type { Tanks } from "./tanks.ts";

/**
 * Scales a step's amounts by what their sources hold; lines that meet at a tee keep their proportions.
 *
 * @param pipes the lines; `step` is scaled [-]
 */
export function holdToSources(pipes: Pipes, group: PipeGroup, tanks: Tanks): void {
  const { step, taken } = pipes;
  for (let k = 0; k < group.tanks.length; k++) taken[group.tanks[k] as number] = 0;
  let joint = 1;
  for (let k = 0; k < group.lines.length; k++) {
    const i = group.lines[k] as number;
    const size = Math.abs(step[i] as number);
    const node = sourceOf(pipes, i);
    if (size === 0 || node >= pipes.firstTee) continue;
    const held = heldFor(pipes, tanks, i, node);
    if (pipes.joined[i]) joint = Math.min(joint, held / size);
    else if (size > held) step[i] = Math.sign(step[i] as number) * held;
    taken[node] = (taken[node] as number) + Math.min(size, held);
  }
  if (joint < 1) scaleJoined(pipes, group, joint);
  shareOut(pipes, group, tanks);
}

/** Where several lines together want more than is there, each gets its share of it. */
function shareOut(pipes: Pipes, group: PipeGroup, tanks: Tanks): void {
  const { step, taken } = pipes;
  for (let k = 0; k < group.lines.length; k++) {
    const i = group.lines[k] as number;
    const node = sourceOf(pipes, i);
    if (step[i] === 0 || node >= pipes.firstTee) continue;
    const held = heldFor(pipes, tanks, i, node);
    const wanted = taken[node] as number;
    if (wanted <= held) continue;
    if (pipes.joined[i]) scaleJoined(pipes, group, held / wanted);
    else step[i] = ((step[i] as number) * held) / wanted;
  }
}

function sourceOf(pipes: Pipes, i: number): number {
  return ((pipes.step[i] as number) >= 0 ? pipes.from[i] : pipes.to[i]) as number;
}

/** Water in a line's source above the line's opening there [m3]. */
function heldFor(pipes: Pipes, tanks: Tanks, i: number, node: number): number {
  const under = (pipes.step[i] as number) >= 0 ? pipes.under : pipes.underBack;
  return Math.max(0, (tanks.volume[node] as number) - (under[i] as number));
}

function scaleJoined(pipes: Pipes, group: PipeGroup, share: number): void {
  for (let k = 0; k < group.lines.length; k++) {
    const i = group.lines[k] as number;
    if (pipes.joined[i]) pipes.step[i] = (pipes.step[i] as number) * share;
  }
}
