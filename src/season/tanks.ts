// The tanks of a run as arrays by place, with the way their overflow goes.

import { levelAt, surfaceAt, volumeAt } from "../physics/vessel.ts";
import { DAY } from "../units/constants.ts";
import type { LeftOut, TankPart } from "./input.ts";

export type Tanks = {
  readonly parts: readonly TankPart[];
  readonly placeOf: ReadonlyMap<string, number>;
  readonly capacity: Float64Array;
  /** Of each its floor [m], inside height [m] and, where one cross-section goes all the way up, that, else 0 [m2]. */
  readonly floor: Float64Array;
  readonly height: Float64Array;
  readonly section: Float64Array;
  /** Water under the outlet [m3]. */
  readonly dead: Float64Array;
  readonly openArea: Float64Array;
  /** Of it, what water dries away from [m2]. */
  readonly dryingArea: Float64Array;
  /** [m3] a day. */
  readonly leak: Float64Array;
  /** Place of the tank it overflows to; -1: the ground. */
  readonly overflowsTo: Int32Array;
  /** Places, upstream before downstream. */
  readonly overflowOrder: Int32Array;
  /** Water in each now [m3]. */
  readonly volume: Float64Array;
  /** Drawn straight from it today [m3]. */
  readonly drawn: Float64Array;
  /** Rained on its open water today [m3]. */
  readonly rained: Float64Array;
  /** Overflow on its way to it [m3]. */
  readonly arriving: Float64Array;
  /** Lost to the ground today, and passed on to the next tank today [m3]. */
  readonly spilled: Float64Array;
  readonly passedOn: Float64Array;
};

/**
 * Tanks ready to run, filled by their start share.
 *
 * @param leftOut gets an overflow that runs in a circle; its water is lost to the ground there
 */
export function readyTanks(parts: readonly TankPart[], leftOut: LeftOut[]): Tanks {
  const placeOf = new Map(parts.map((part, place) => [part.id, place]));
  const numbers = (of: (part: TankPart) => number) => Float64Array.from(parts, of);
  const overflowsTo = Int32Array.from(parts, (part) => placeOf.get(part.overflowsTo ?? "") ?? -1);
  return {
    parts,
    placeOf,
    capacity: numbers(({ vessel }) => vessel.volume),
    floor: numbers(({ floor }) => floor),
    height: numbers(({ vessel }) => vessel.height),
    section: numbers(({ vessel }) => (vessel.form === "upright" ? vessel.volume / vessel.height : 0)),
    dead: numbers(({ vessel, outlet }) => volumeAt(vessel, Math.min(Math.max(0, outlet), vessel.height))),
    openArea: numbers(({ openArea }) => openArea),
    dryingArea: numbers(({ openArea, dries }) => (dries === false ? 0 : openArea)),
    leak: numbers(({ leak }) => leak * DAY),
    overflowsTo,
    overflowOrder: overflowOrder(parts, overflowsTo, leftOut),
    volume: numbers(({ vessel, startShare }) => vessel.volume * startShare),
    drawn: new Float64Array(parts.length),
    rained: new Float64Array(parts.length),
    arriving: new Float64Array(parts.length),
    spilled: new Float64Array(parts.length),
    passedOn: new Float64Array(parts.length),
  };
}

/** Upstream first; an overflow that would close a circle is cut, and told. */
function overflowOrder(parts: readonly TankPart[], overflowsTo: Int32Array, leftOut: LeftOut[]): Int32Array {
  for (let place = 0; place < parts.length; place++) {
    let next = overflowsTo[place] as number;
    for (let hops = 0; next >= 0 && hops < parts.length; hops++) {
      if (next === place) {
        overflowsTo[place] = -1;
        const reason =
          "its overflow comes round to itself in a circle, so what it spills is lost to the ground";
        leftOut.push({ id: (parts[place] as TankPart).id, reason });
        break;
      }
      next = overflowsTo[next] as number;
    }
  }
  const depthOf = (place: number): number => {
    const next = overflowsTo[place] as number;
    return next < 0 ? 0 : depthOf(next) + 1;
  };
  // The farther from the ground, the earlier.
  return Int32Array.from(parts.keys()).sort((a, b) => depthOf(b) - depthOf(a) || a - b);
}

/**
 * Depth of water in a tank now.
 *
 * @returns depth above its floor; brim-full while more is passing through [m]
 * @source levelAt
 */
export function levelOf(tanks: Tanks, place: number): number {
  const volume = tanks.volume[place] as number;
  const capacity = tanks.capacity[place] as number;
  const height = tanks.height[place] as number;
  if (volume >= capacity) return height;
  if ((tanks.section[place] as number) > 0) return (height * volume) / capacity;
  return levelAt((tanks.parts[place] as TankPart).vessel, Math.max(0, volume));
}

/**
 * Area of the water in a tank now; that of a lying tank nearly full or empty is taken a little inside its ends.
 *
 * @param level depth above its floor [m]
 * @returns area [m2]
 * @source surfaceAt
 */
export function surfaceOf(tanks: Tanks, place: number, level: number): number {
  const section = tanks.section[place] as number;
  if (section > 0) return section;
  const { vessel } = tanks.parts[place] as TankPart;
  const inside = vessel.height / 100;
  return surfaceAt(vessel, Math.min(vessel.height - inside, Math.max(inside, level)));
}

/**
 * Takes overflow in and sends what finds no room on its way, upstream first.
 *
 * @param tanks the tanks; `arriving` is used up
 * @param keepsFree gives the room that must stay free in a tank [m3]
 */
export function settleOverflow(tanks: Tanks, keepsFree: Float64Array | null): void {
  const { volume, capacity, arriving, overflowsTo, overflowOrder: order } = tanks;
  for (let step = 0; step < order.length; step++) {
    const place = order[step] as number;
    const most = (capacity[place] as number) - (keepsFree ? (keepsFree[place] as number) : 0);
    const before = volume[place] as number;
    const all = before + (arriving[place] as number);
    if (all <= most) {
      volume[place] = all;
    } else {
      // A tank that already stands above the line keeps what it has up to its brim.
      const kept = Math.max(most, Math.min(before, capacity[place] as number));
      volume[place] = kept;
      const excess = all - kept;
      const next = overflowsTo[place] as number;
      if (next < 0) {
        tanks.spilled[place] = (tanks.spilled[place] as number) + excess;
      } else {
        arriving[next] = (arriving[next] as number) + excess;
        tanks.passedOn[place] = (tanks.passedOn[place] as number) + excess;
      }
    }
    arriving[place] = 0;
  }
}
