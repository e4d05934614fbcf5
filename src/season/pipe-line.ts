// One gravity line of a run and the tanks and tees at its ends, as they stand now.

import type { LineTable } from "../physics/line-table.ts";
import type { LinePart, TankPart } from "./input.ts";
import { type Float, floatOf, type PipeEnds, pipeEnds } from "./pipe-ends.ts";
import type { Tanks } from "./tanks.ts";

/** A tank or tee at the end of a line, as it stands now. */
export type PipeNode = {
  readonly isTee: boolean;
  /** Its place among the tanks, or among the tees. */
  readonly place: number;
  /** Height of its floor, or of the tee [m]. */
  readonly height: number;
  /** Height of its water [m] and its area [m2], and how fast it rises [m/s]; that of a tee is taken to stand still. */
  surface: number;
  area: number;
  rising: number;
  /** Water gained a second [m3/s], and lines that flow here. */
  gain: number;
  busy: number;
  /** Taken out in this step [m3]. */
  taken: number;
};

export type PipeLine = {
  readonly id: string;
  readonly from: PipeNode;
  /** Null: a free end. */
  readonly to: PipeNode | null;
  readonly ends: PipeEnds;
  readonly float: Float | null;
  readonly table: LineTable;
  /** Whether it ends at a tee on either side. */
  readonly joined: boolean;
  /** Driving head now [m], how that grows a second [m/s], and flow [m3/s] (below 0: backwards). */
  head: number;
  growth: number;
  flow: number;
  /** How its flow falls in this step (line-step.ts): by which power, and until which amounts have run [m3]. */
  power: number;
  limit: number;
  cap: number;
  /** Moved in this step, and forward on balance today [m3]. */
  step: number;
  moved: number;
  /** For how long after the watering it ran today: until then, where nothing more was drawn before dark [s]. */
  doneAt: number;
  /** What the tank that it fills had to rise until its float shuts, most of all when the lines began to run today [m]. */
  rise: number;
};

/** A tank or tee before the first day; `height` is that of its floor, or of the tee [m]. */
export const nodeOf = (isTee: boolean, place: number, height: number): PipeNode => ({
  isTee,
  place,
  height,
  surface: height,
  area: 0,
  rising: 0,
  gain: 0,
  busy: 0,
  taken: 0,
});

/** A line before the first day, between nodes that are there. */
export function lineOf(
  part: LinePart,
  nodes: ReadonlyMap<string, PipeNode>,
  tanks: Tanks,
  table: LineTable,
): PipeLine {
  const from = nodes.get(part.from) as PipeNode;
  const to = nodes.get(part.to ?? "") ?? null;
  const tankAt = (node: PipeNode | null): TankPart | null =>
    node && !node.isTee ? (tanks.parts[node.place] as TankPart) : null;
  return {
    id: part.id,
    from,
    to,
    ends: pipeEnds(part, tankAt(from), tankAt(to)),
    float: floatOf(part, tankAt(to)),
    table,
    joined: from.isTee || (to?.isTee ?? false),
    head: 0,
    growth: 0,
    flow: 0,
    power: 0,
    limit: Infinity,
    cap: Infinity,
    step: 0,
    moved: 0,
    doneAt: 0,
    rise: 0,
  };
}
