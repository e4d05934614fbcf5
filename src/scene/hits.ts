// Targets for a finger: as large as they ought to be where there is room, and never over a neighbour's thing.

import { DISC, type Paper } from "./paper.ts";
import type { Box } from "./place.ts";
import { around } from "./strokes.ts";

/** As large as a finger wants it [px]. */
export const TARGET = 44;

/** A box grown to a target around its middle, kept on the paper. */
function grown(box: Box, size: { readonly width: number; readonly height: number }): Box {
  const [width, height] = [Math.max(box.width, TARGET), Math.max(box.height, TARGET)];
  const x = Math.max(0, Math.min(box.x + (box.width - width) / 2, size.width - width));
  const y = Math.max(0, Math.min(box.y + (box.height - height) / 2, size.height - height));
  return { x, y, width, height };
}

/** Cut at the middles between its thing and those of its neighbours. */
function between(box: Box, own: Box, others: readonly Box[]): Box {
  let [left, right] = [box.x, box.x + box.width];
  for (const other of others) {
    const isBeside = other.y < box.y + box.height && other.y + other.height > box.y;
    if (!isBeside) continue;
    if (other.x >= own.x + own.width) right = Math.min(right, (own.x + own.width + other.x) / 2);
    else if (other.x + other.width <= own.x) left = Math.max(left, (other.x + other.width + own.x) / 2);
  }
  return { ...box, x: left, width: Math.max(own.width, right - left) };
}

/** What answers to a touch, by part. */
export function hitsOf(
  paper: Paper,
  size: { readonly width: number; readonly height: number },
): ReadonlyMap<string, readonly Box[]> {
  const things = [...paper.hits].map(([id, boxes]) => {
    const mark = paper.marks.get(id);
    const disc = mark ? [{ x: mark.x - DISC, y: mark.y - DISC, width: 2 * DISC, height: 2 * DISC }] : [];
    return { id, box: around(boxes), disc };
  });
  return new Map(
    things.map(({ id, box, disc }) => {
      const others = things.flatMap((other) => (other.id === id ? [] : [other.box]));
      return [id, [between(grown(box, size), box, others), ...disc]];
    }),
  );
}
