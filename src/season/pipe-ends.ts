// What never changes of a line of a run: the heights of its ends, what it cannot take, and the float that shuts it.

import { volumeAt } from "../physics/vessel.ts";
import { GRAVITY } from "../units/constants.ts";
import type { LinePart, TankPart } from "./input.ts";

export type PipeEnds = {
  /** Heights of its start and end [m], and that over which water in its tank runs into it. */
  readonly start: number;
  readonly end: number;
  readonly takesOver: number;
  /** How much higher the water at its end counts than it stands, as a measured drop told [m]; and so its end. */
  readonly lift: number;
  readonly mouth: number;
  /** Nothing ever runs back: a check valve, a float, a free end. */
  readonly isOneWay: boolean;
  /** Water in the tank at its start, or its end, that it can never take [m3]. */
  readonly under: number;
  readonly underBack: number;
};

/** A float in the tank at a line's end. */
export type Float = {
  /** Height of the water at which it is shut, and rise over which it closes before that [m]. */
  readonly shutHeight: number;
  readonly band: number;
  /** Twice gravity times the square of its opening: flow squared over this is the head lost there [m5/s2]. */
  readonly opening: number;
};

/** A float this near to a level is there [m]: its shut level, or that from which it closes. */
const FILM = 1e-5;

export const isShut = ({ shutHeight }: Float, surface: number): boolean => shutHeight - surface <= FILM;

/** Whether a float stands within its band; on the edge too, where a step that ends there leaves it, by a last bit over or under. */
export const isClosing = ({ shutHeight, band }: Float, surface: number): boolean =>
  band > 0 && shutHeight - surface <= band + FILM;

/**
 * The ends of a line.
 *
 * @param from the tank at its start; null: a tee
 * @param to the tank at its end; null: a tee or a free end
 */
export function pipeEnds(line: LinePart, from: TankPart | null, to: TankPart | null): PipeEnds {
  const lift = liftOf(line);
  return {
    start: line.startHeight,
    end: line.endHeight,
    takesOver: from ? Math.max(line.startHeight, from.floor + from.outlet) : line.startHeight,
    lift,
    mouth: line.endHeight + lift,
    isOneWay: line.checkValve || line.opening !== null || line.to === null,
    under: from ? underOf(from, line.startHeight, from.outlet) : 0,
    underBack: to ? underOf(to, line.endHeight, 0) : 0,
  };
}

/** The float at a line's end; null where none is in a tank there. */
export function floatOf({ opening, shutLevel, valveBand }: LinePart, to: TankPart | null): Float | null {
  if (!to || opening === null || shutLevel === null) return null;
  return { shutHeight: to.floor + shutLevel, band: valveBand, opening: 2 * GRAVITY * opening * opening };
}

export const liftOf = ({ lift }: LinePart): number => lift ?? 0;

/** Water under the height at which a line opens into a tank [m3]. */
function underOf({ vessel, floor }: TankPart, height: number, outlet: number): number {
  const depth = Math.max(0, height - floor, outlet);
  return volumeAt(vessel, Math.min(depth, vessel.height));
}
