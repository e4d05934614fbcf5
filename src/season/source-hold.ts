// No line takes more than its tank holds above the line's opening, nor all lines together more than is there.

import type { PipeGroup } from "./pipe-groups.ts";
import type { PipeLine, PipeNode } from "./pipe-line.ts";
import type { Tanks } from "./tanks.ts";

/** Scales a step's amounts by what their sources hold; lines that meet at a tee keep their proportions. */
export function holdToSources(group: PipeGroup, tanks: Tanks): void {
  const { lines } = group;
  for (let k = 0; k < group.tanks.length; k++) (group.tanks[k] as PipeNode).taken = 0;
  let joint = 1;
  for (let k = 0; k < lines.length; k++) {
    const line = lines[k] as PipeLine;
    const size = Math.abs(line.step);
    const source = sourceOf(line);
    if (size === 0 || source.isTee) continue;
    const held = heldFor(line, source, tanks);
    if (line.joined) joint = Math.min(joint, held / size);
    else if (size > held) line.step = Math.sign(line.step) * held;
    source.taken += Math.min(size, held);
  }
  if (joint < 1) scaleJoined(lines, joint);
  shareOut(lines, tanks);
}

/** Where several lines together want more than is there, each gets its share of it. */
function shareOut(lines: readonly PipeLine[], tanks: Tanks): void {
  for (let k = 0; k < lines.length; k++) {
    const line = lines[k] as PipeLine;
    const source = sourceOf(line);
    if (line.step === 0 || source.isTee) continue;
    const held = heldFor(line, source, tanks);
    if (source.taken <= held) continue;
    if (line.joined) scaleJoined(lines, held / source.taken);
    else line.step = (line.step * held) / source.taken;
  }
}

const sourceOf = ({ step, from, to }: PipeLine): PipeNode => (step >= 0 ? from : (to as PipeNode));

/** Water in a line's source above the line's opening there [m3]. */
function heldFor({ step, ends }: PipeLine, source: PipeNode, tanks: Tanks): number {
  return Math.max(0, (tanks.volume[source.place] as number) - (step >= 0 ? ends.under : ends.underBack));
}

function scaleJoined(lines: readonly PipeLine[], share: number): void {
  for (const line of lines) if (line.joined) line.step *= share;
}
