// Where air stays in a gravity line, and what the line's route does to its water.

import { GRAVITY } from "../units/constants.ts";
import { requirePositive, requireWithin } from "./domain-error.ts";
import { boreArea } from "./pipe-friction.ts";

const SANKS = "Sanks, Pumping Station Design";

/**
 * Speed of water that carries air down a falling pipe: √(g D) (0.825 + 0.25 √sin θ).
 *
 * @param bore inside diameter [m]
 * @param downSlope angle by which the pipe falls, 0..π/2 [rad]
 * @returns speed [m/s]
 * @throws DomainError outside those ranges
 * @validity found on bores over 50 mm; in a hose only a guide
 * @source Sanks, Pumping Station Design (read second-hand, quoted in a trade discussion)
 */
export function purgeVelocity(bore: number, downSlope: number): number {
  requirePositive("bore", bore, SANKS);
  requireWithin("slope", downSlope, [0, Math.PI / 2], SANKS);
  return Math.sqrt(GRAVITY * bore) * (0.825 + 0.25 * Math.sqrt(Math.sin(downSlope)));
}

/**
 * Flow from which a line clears its own air: purge speed times the bore's area.
 *
 * @param bore inside diameter [m]
 * @param downSlope angle by which the pipe falls behind the high point, 0..π/2 [rad]
 * @returns flow [m3/s]
 * @throws DomainError outside those ranges
 * @validity as purgeVelocity
 * @source Sanks, Pumping Station Design (read second-hand, quoted in a trade discussion)
 */
export function purgeFlow(bore: number, downSlope: number): number {
  return purgeVelocity(bore, downSlope) * boreArea(bore);
}

/** A point of a line's route. */
export type RoutePoint = {
  /** Along the line from its start [m]. */
  readonly distance: number;
  /** Of the hose above the datum [m]. */
  readonly height: number;
};

/** What the grade line is drawn from: levels, losses and the route. */
export type GradeLine = {
  /** From start to end, distances rising. */
  readonly route: readonly RoutePoint[];
  /** Height of the water at the line's start above the datum [m]. */
  readonly sourceHeight: number;
  /** Height at which the pressure is spent at the far end, before its valve: water's surface or free end [m]. */
  readonly endHeight: number;
  /** Head that the valve at the end uses up [m]. */
  readonly valveHead: number;
  /** Head that the entry uses up, with the speed's own head [m]. */
  readonly entryHead: number;
  /** Highest crest over the source that a siphon can pull [m]. */
  readonly siphonLimit: number;
  /** Of the flow [m3/s]. */
  readonly flow: number;
  /** Inside diameter [m]. */
  readonly bore: number;
};

/** One thing about a route that its owner must know. */
export type RouteTrouble = {
  /**
   * `siphon_too_high`: no water can pass. `siphon`: over the source's water, must be primed and pulls air in.
   * `under_pressure`: above the grade line, so that air comes out and stays. `air_pocket`: a high point that the flow
   * is too slow to clear.
   */
  readonly kind: "siphon_too_high" | "siphon" | "under_pressure" | "air_pocket";
  /** Where, along the line [m]. */
  readonly distance: number;
  /** Of the hose there [m]. */
  readonly height: number;
  /** By how much it stands over the source's water, over the grade line, or over the low point before it [m]. */
  readonly by: number;
};

/**
 * Height to which water would stand in a stub pipe along a line: the source's water less what is lost so far.
 *
 * @param line levels, losses and route, units at the type's fields
 * @returns the grade line's points, one for each route point [m]
 * @throws DomainError for a route of no length
 * @source definition of the hydraulic grade line; friction spread evenly along one bore
 */
export function gradeLine(line: GradeLine): readonly RoutePoint[] {
  const last = line.route[line.route.length - 1]?.distance ?? 0;
  requirePositive("route length", last, "definition of the hydraulic grade line");
  const start = line.sourceHeight - line.entryHead;
  const end = line.endHeight + line.valveHead;
  return line.route.map(({ distance }) => ({ distance, height: start + ((end - start) * distance) / last }));
}

/**
 * What the high points of a route do: siphons, stretches above the grade line, pockets of air that stay.
 *
 * @param line levels, losses and route, units at the type's fields
 * @returns one trouble a high point at the most, the gravest, in the order of the route [m]
 * @throws DomainError for a route of no length
 * @source grade line: definition; siphon limit: hydrostatics; purge: Sanks, Pumping Station Design (second-hand)
 */
export function routeTroubles(line: GradeLine): readonly RouteTrouble[] {
  const grade = gradeLine(line);
  return highPoints(line.route).flatMap((index): RouteTrouble[] => {
    const point = line.route[index];
    const pressure = grade[index];
    if (!point || !pressure) return [];
    const overSource = point.height - line.sourceHeight;
    const overGrade = point.height - pressure.height;
    if (overSource > line.siphonLimit) return [{ kind: "siphon_too_high", ...point, by: overSource }];
    if (overSource > 0) return [{ kind: "siphon", ...point, by: overSource }];
    if (overGrade > 0) return [{ kind: "under_pressure", ...point, by: overGrade }];
    const rise = point.height - lowestBefore(line.route, index);
    if (rise > 0 && line.flow < purgeFlow(line.bore, slopeAfter(line.route, index))) {
      return [{ kind: "air_pocket", ...point, by: rise }];
    }
    return [];
  });
}

/** A high point of a route. */
export type Hump = RoutePoint & {
  /** Over the lowest point before it, since the last higher one or the start [m]. */
  readonly rise: number;
};

/**
 * High points of a route: where the hose climbs and then falls; a flat top counts once, at its end.
 *
 * @param route from start to end, distances rising [m]
 * @returns the high points in the order of the route, with the rise before each [m]
 * @source definition
 */
export function humpsOf(route: readonly RoutePoint[]): readonly Hump[] {
  return highPoints(route).flatMap((index) => {
    const point = route[index];
    return point ? [{ ...point, rise: point.height - lowestBefore(route, index) }] : [];
  });
}

/** Points that the hose climbs to and leaves downward (a flat top counts once, at its end). */
function highPoints(route: readonly RoutePoint[]): readonly number[] {
  return route.flatMap((point, index) => {
    const next = route[index + 1];
    if (index === 0 || !next || next.height >= point.height) return [];
    let before = index - 1;
    while (before > 0 && route[before]?.height === point.height) before--;
    return (route[before]?.height ?? point.height) < point.height ? [index] : [];
  });
}

/** Lowest height between the last higher point, or the start, and a high point [m]. */
function lowestBefore(route: readonly RoutePoint[], index: number): number {
  const top = route[index]?.height ?? 0;
  let lowest = top;
  for (let before = index - 1; before >= 0; before--) {
    const height = route[before]?.height ?? top;
    if (height > top) break;
    lowest = Math.min(lowest, height);
  }
  return lowest;
}

/** Angle at which the hose falls behind a high point [rad]. */
function slopeAfter(route: readonly RoutePoint[], index: number): number {
  const [here, next] = [route[index], route[index + 1]];
  if (!here || !next) return 0;
  const fall = here.height - next.height;
  const along = next.distance - here.distance;
  return along > fall ? Math.asin(fall / along) : Math.PI / 2;
}
