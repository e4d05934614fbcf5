// The one line of the ground: level under every column at that column's own height, sloping only between them.

import type { Cell } from "./columns.ts";
import { gapRoute, routedGround } from "./gap-route.ts";
import { type Ground, slope } from "./ground.ts";
import type { Place } from "./place.ts";
import { groundHeights } from "./uprights.ts";

export function groundOf(
  place: Place,
  cells: readonly Cell[],
  width: number,
  y: (height: number) => number,
): Ground {
  const heights = groundHeights(place, cells).map(y);
  const corners: (readonly [number, number])[] = [[0, heights[0] ?? 0]];
  for (const [index, cell] of cells.entries()) {
    const here = heights[index] ?? 0;
    const end = [cell.x + cell.width, here] as const;
    corners.push([cell.x, here], end);
    const next = cells[index + 1];
    if (!next) continue;
    const start = [next.x, heights[index + 1] ?? 0] as const;
    corners.push(...(routedGround(gapRoute(place, cells, index), end, start, y) ?? slope(end, start)));
  }
  corners.push([width, heights[heights.length - 1] ?? 0]);
  return corners;
}
