// The one scale of heights of the whole place, and where on paper its datum lies: as large as the zone allows.

import type { Cell } from "./columns.ts";
import type { Place } from "./place.ts";
import { humpOf, routeBetween } from "./route.ts";

/** A height [m] with so many px over it that must stay on the paper. */
export type Reach = { readonly height: number; readonly over: number };

export type Upright = {
  /** [px/m] */
  readonly scale: number;
  /** y of the datum [px]. */
  readonly base: number;
};

/** Heights closer together than this are not drawn any further apart [m]. */
const LEAST_RANGE = 0.5;
/** A metre takes at most so many px, and at most this share of the zone. */
const LARGEST_SCALE = 400;
const LARGEST_SHARE = 0.3;
/** Of what is left over, so much is sky: words find their room in either, and bare soil is the duller. */
const SKY = 0.6;

/** Ground under each column [m above the datum]; the yard lies where its water is drawn. */
export function groundHeights(place: Place, cells: readonly Pick<Cell, "kind" | "id">[]): readonly number[] {
  const known = new Map<string, number>([
    ...place.tanks.map((tank) => [tank.id, tank.ground] as const),
    ...place.tees.map((tee) => [tee.id, tee.height] as const),
  ]);
  const here = cells.filter((cell) => known.has(cell.id));
  const drawn = [...place.deliveries, ...place.carries].flatMap(({ from }) => known.get(from ?? "") ?? []);
  const yard = drawn[0] ?? known.get(here[here.length - 1]?.id ?? "") ?? 0;
  const first = known.get(here[0]?.id ?? "") ?? 0;
  return cells.map((cell) => {
    if (cell.kind === "roof") {
      const roof = place.roofs.find((candidate) => candidate.id === cell.id);
      return known.get(roof?.drainsTo ?? "") ?? first;
    }
    return known.get(cell.id) ?? yard;
  });
}

/** Every height that a hose's way shows as ground: between its ends, or as far as its hump. */
export const routeHeights = (place: Place): readonly number[] =>
  place.lines.flatMap((line) => {
    const joined = place.tanks.some(({ id }) => id === line.from);
    if (!joined) return [];
    const hump = humpOf(line);
    return [...routeBetween(line).points.map(([, height]) => height), ...(hump ? [hump[1]] : [])];
  });

/**
 * The scale and the datum's place.
 *
 * @param reaches what must fit, from the ground up
 * @param lowest ground [m]
 * @param height of the zone [px]
 * @param soil under the lowest ground, at least [px]
 * @param kept what was in use, kept as long as everything fits
 */
export function uprightFor(
  reaches: readonly Reach[],
  lowest: number,
  height: number,
  soil: number,
  kept: Upright | null,
): Upright {
  const room = height - soil;
  const fit = Math.min(
    LARGEST_SCALE,
    LARGEST_SHARE * height,
    ...reaches.map((one) => Math.max(1, room - one.over) / Math.max(LEAST_RANGE, one.height - lowest)),
  );
  const scale = Math.min(kept?.scale ?? fit, fit);
  const top = Math.max(0, ...reaches.map((one) => (one.height - lowest) * scale + one.over));
  const spare = Math.max(0, room - top);
  const base = top + spare * SKY + lowest * scale;
  if (!kept || kept.scale !== scale) return { scale, base };
  const foot = kept.base - lowest * scale;
  return foot >= top && foot <= room ? kept : { scale, base };
}
