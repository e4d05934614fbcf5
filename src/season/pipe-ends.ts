// What never changes of each line of a run, by place: the heights of its ends, the float that shuts it, what it cannot take.

import { volumeAt } from "../physics/vessel.ts";
import { GRAVITY } from "../units/constants.ts";
import type { LinePart, TankPart } from "./input.ts";
import type { Tanks } from "./tanks.ts";

export type PipeEnds = {
  /** Height of each line's start and end [m], and that over which water in its tank runs into it. */
  readonly startHeight: Float64Array;
  readonly endHeight: Float64Array;
  readonly takesOver: Float64Array;
  /** How much higher the water at each line's end counts than it stands, as a measured drop told [m]; and its end. */
  readonly lift: Float64Array;
  readonly mouth: Float64Array;
  /** 1 where nothing ever runs back: a check valve, a float, a free end. */
  readonly isOneWay: Uint8Array;
  /** 1 where a float in a tank shuts it; the height at which it does, and the rise over which it closes before [m]. */
  readonly hasFloat: Uint8Array;
  readonly shutHeight: Float64Array;
  readonly band: Float64Array;
  /** Twice gravity times the square of its valve's opening: flow squared over this is the head lost there [m5/s2]. */
  readonly valve: Float64Array;
  /** Water in the tank at its start, or its end, that it can never take [m3]. */
  readonly under: Float64Array;
  readonly underBack: Float64Array;
};

/**
 * The ends of lines.
 *
 * @param from node at each line's start: tanks, then tees [-]
 * @param to node at its end, -1 for a free end [-]
 */
export function pipeEnds(
  parts: readonly LinePart[],
  from: Int32Array,
  to: Int32Array,
  tanks: Tanks,
): PipeEnds {
  const tankAt = (node: number | undefined): TankPart | null => tanks.parts[node ?? -1] ?? null;
  const numbers = (of: (line: LinePart, i: number) => number) => Float64Array.from(parts, of);
  const flags = (of: (line: LinePart, i: number) => boolean) =>
    Uint8Array.from(parts, (line, i) => (of(line, i) ? 1 : 0));
  return {
    startHeight: numbers(({ startHeight }) => startHeight),
    endHeight: numbers(({ endHeight }) => endHeight),
    takesOver: numbers(({ startHeight }, i) => {
      const tank = tankAt(from[i]);
      return tank ? Math.max(startHeight, tank.floor + tank.outlet) : startHeight;
    }),
    lift: numbers(liftOf),
    mouth: numbers((line) => line.endHeight + liftOf(line)),
    isOneWay: flags(({ checkValve, opening }, i) => checkValve || opening !== null || (to[i] as number) < 0),
    hasFloat: flags(
      ({ opening, shutLevel }, i) => opening !== null && shutLevel !== null && tankAt(to[i]) !== null,
    ),
    shutHeight: numbers(({ shutLevel }, i) => (tankAt(to[i])?.floor ?? 0) + (shutLevel ?? Infinity)),
    band: numbers(({ valveBand }) => valveBand),
    valve: numbers(({ opening }) => (opening === null ? 0 : 2 * GRAVITY * opening * opening)),
    under: numbers(({ startHeight }, i) => underOf(tankAt(from[i]), startHeight, true)),
    underBack: numbers(({ endHeight }, i) => underOf(tankAt(to[i]), endHeight, false)),
  };
}

export const liftOf = ({ lift }: LinePart): number => lift ?? 0;

/** Water under the height at which a line opens into a tank [m3]. */
function underOf(tank: TankPart | null, height: number, outlet: boolean): number {
  if (!tank) return 0;
  const depth = Math.max(0, height - tank.floor, outlet ? tank.outlet : 0);
  return volumeAt(tank.vessel, Math.min(depth, tank.vessel.height));
}
