// The hose whose route is drawn as the ground between two neighbouring columns: the one that joins them, or the hump of one
// that starts at the left column and leads further on.

import type { Cell } from "./columns.ts";
import type { Ground } from "./ground.ts";
import type { DrawnLine, Place } from "./place.ts";
import { humpOf, routeBetween } from "./route.ts";

type GapRoute = { readonly points: DrawnLine["route"]; readonly length: number };

/** How much of the gap a hump takes of which only the near side is drawn. */
const NEAR_SIDE = 0.6;

/** As much of a route as rises to its hump; the rest lies beyond the next column. */
function upToHump(line: DrawnLine): GapRoute | null {
  const hump = humpOf(line);
  if (!hump) return null;
  const points = routeBetween(line).points.filter(([distance]) => distance <= hump[0]);
  return { points, length: hump[0] / NEAR_SIDE };
}

/** The route drawn right of a column, or null where the ground only slopes there. */
export function gapRoute(place: Place, cells: readonly Cell[], index: number): GapRoute | null {
  const [cell, next] = [cells[index], cells[index + 1]];
  if (!cell || !next) return null;
  const between = place.lines.filter(
    ({ from, to }) => (from === cell.id && to === next.id) || (from === next.id && to === cell.id),
  );
  const joining = between.find(({ from }) => from === cell.id);
  if (joining) return routeBetween(joining);
  // A hose from the lower column up here would seem to lie over the other's hump.
  if (between.length > 0) return null;
  for (const line of place.lines) {
    const rising = line.from === cell.id ? upToHump(line) : null;
    if (rising) return rising;
  }
  return null;
}

/** Corners of the ground along a route between two places on paper; null where no points are known. */
export function routedGround(
  route: GapRoute | null,
  from: readonly [number, number],
  to: readonly [number, number],
  y: (height: number) => number,
): Ground | null {
  if (!route || route.points.length === 0) return null;
  const inside = route.points.map(([distance, height]) => {
    const x = from[0] + ((to[0] - from[0]) * distance) / route.length;
    return [x, y(height)] as const;
  });
  return [from, ...inside, to];
}
