// How high everything reaches over its ground, so that the scale of heights leaves room for it.

import { EAVE_OVER, LEAST_EAVE, MOST_RISE } from "./draw-tanks.ts";
import { ARC, PANEL, POLE, panelTiers } from "./draw-yard.ts";
import type { DrawnTank, Place } from "./place.ts";
import { groundHeights, type Reach, routeHeights } from "./uprights.ts";

/** Room for the words over a tank: a line on a phone, two on a desk [px]. */
const WORDS = { small: 22, full: 44 };
const LINE = 16;
const BATTERY = 28;
const DISC_OVER = 24;
const THING = 40;

/** What stands in the yard, over its ground [px]. */
function yardOver(place: Place, small: boolean): number {
  const size = small ? "small" : "full";
  const panels = (battery: string | null): number =>
    place.panels.filter(({ charges }) => charges === battery).length;
  const most = Math.max(0, ...place.batteries.map(({ id }) => panels(id)));
  // As if they stood one over the other, which on narrow paper they do.
  const tiers = panelTiers(most, 0);
  const power = place.panels.length > 0 ? BATTERY + POLE[size] + PANEL + (tiers - 1) * (PANEL + 14) : BATTERY;
  return Math.max(
    place.batteries.length + place.panels.length > 0 ? power : 0,
    place.beds.length > 0 ? ARC + 6 : 0,
    place.beds.some(({ trouble }) => trouble !== null) ? ARC + DISC_OVER : 0,
    place.carries.length + place.things.length > 0 ? THING : 0,
  );
}

function tankReaches(place: Place, tank: DrawnTank, small: boolean): readonly Reach[] {
  const size = small ? "small" : "full";
  const hasRoof = place.roofs.some(({ drainsTo }) => drainsTo === tank.id);
  const roof = EAVE_OVER + MOST_RISE[size] + 6;
  return [
    {
      height: tank.ground + tank.stand + tank.height,
      over: Math.max(WORDS[size], hasRoof ? roof + (small ? 0 : LINE) : 0),
    },
    { height: tank.ground, over: hasRoof ? LEAST_EAVE[size] + MOST_RISE[size] + 6 : 12 },
  ];
}

/** Everything that must fit on the paper, and the lowest ground [m]. */
export function reachesOf(
  place: Place,
  held: Place | null,
  small: boolean,
): { readonly reaches: readonly Reach[]; readonly lowest: number } {
  const size = small ? "small" : "full";
  const cells = [
    ...place.roofs.map(({ id }) => ({ kind: "roof" as const, id })),
    ...place.tanks.map(({ id }) => ({ kind: "tank" as const, id })),
    ...place.tees.map(({ id }) => ({ kind: "tee" as const, id })),
    { kind: "bed" as const, id: "" },
  ];
  const grounds = groundHeights(place, cells);
  const yard = grounds[grounds.length - 1] ?? 0;
  const ways = routeHeights(place);
  const was = (held?.tanks ?? []).filter(({ id }) => place.tanks.some((tank) => tank.id === id));
  return {
    reaches: [
      ...place.tanks.flatMap((tank) => tankReaches(place, tank, small)),
      ...was.map((tank) => ({ height: tank.ground + tank.stand + tank.height, over: 4 })),
      ...place.tees.map((tee) => ({ height: tee.height, over: WORDS[size] })),
      ...ways.map((height) => ({ height, over: DISC_OVER })),
      ...place.roofs.map((_, index) => ({
        height: grounds[index] ?? 0,
        over: LEAST_EAVE[size] + MOST_RISE[size] + 6,
      })),
      { height: yard, over: yardOver(place, small) },
    ],
    lowest: Math.min(yard, ...grounds, ...ways),
  };
}
