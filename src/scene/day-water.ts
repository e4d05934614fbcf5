// The water of one day in the drawing: how much stands in each tank, its surface, and the grade lines that start there.

import { levelAt, volumeAt } from "../physics/vessel.ts";
import { MEASURES } from "../units/measures.ts";
import { roundedIn } from "../units/rounding.ts";
import { type ShowOptions, showNumber, unitFor, unitLabel } from "../units/show.ts";
import { fromSi } from "../units/unit.ts";
import { heightAt, type Spot } from "./bench.ts";
import type { Grade } from "./draw-hoses.ts";
import type { Layout } from "./layout.ts";
import { round } from "./paper.ts";
import type { Box, DrawnTank, Place } from "./place.ts";
import { segment } from "./strokes.ts";

/** Water in a tank: depth above its floor [m] and volume [m3]. */
export type Water = { readonly level: number; readonly volume: number };

/** Corner of a lying tank [px]. */
const CORNER = 9;
/** Below so many of its unit a tank's water is told with a decimal. */
const SMALL_TANK = 20;
const FIGURES = 3;

function byVolume(tank: DrawnTank, volume: number): Water | null {
  const { vessel } = tank;
  if (!vessel) return null;
  const held = Math.max(0, Math.min(volume, vessel.volume));
  return { level: levelAt(vessel, held), volume: held };
}

function byLevel(tank: DrawnTank, level: number): Water | null {
  const { vessel } = tank;
  if (!vessel) return null;
  const depth = Math.max(0, Math.min(level, vessel.height));
  return { level: depth, volume: volumeAt(vessel, depth) };
}

/**
 * Water in each tank by its id: of the day asked for; else what was dipped; else the share at the start.
 *
 * @param stored a tank's water on the day asked for [m3], null where it is not known
 */
export function waterOf(
  place: Place,
  stored: ((tank: string) => number | null) | null,
): ReadonlyMap<string, Water> {
  const waters = new Map<string, Water>();
  for (const tank of place.tanks) {
    const volume = stored?.(tank.id) ?? null;
    const water =
      volume !== null
        ? byVolume(tank, volume)
        : tank.dipped !== null
          ? byLevel(tank, tank.dipped)
          : byVolume(tank, tank.startShare * (tank.vessel?.volume ?? 0));
    if (water) waters.set(tank.id, water);
  }
  return waters;
}

/**
 * Water in each tank today: of one that was dipped, what its notes come to by now; else as `waterOf` has it.
 *
 * @param now water carried on to today by id [m3]; null: it is not worked out yet, and a dip counts as it is
 */
export function waterToday(
  place: Place,
  now: Readonly<Record<string, number>> | null,
): ReadonlyMap<string, Water> {
  const dipped = new Set(place.tanks.flatMap(({ id, dipped: level }) => (level === null ? [] : [id])));
  return waterOf(place, (id) => (dipped.has(id) ? (now?.[id] ?? null) : null));
}

/** How far in a rounded wall stands at so much below its top or above its foot [px]. */
const inset = (distance: number, radius: number): number =>
  distance >= radius ? 0 : radius - Math.sqrt(Math.max(0, radius ** 2 - (radius - distance) ** 2));

/** Water in one vessel from its surface down, with the round foot of a lying one. */
function waterArea(vessel: Box, top: number, radius: number, into: number): string {
  const [left, right, floor] = [vessel.x, vessel.x + vessel.width, vessel.y + vessel.height];
  const start = `M${round(left + into)},${round(top)}H${round(right - into)}`;
  if (radius === 0) return `${start}V${round(floor)}H${round(left)}Z`;
  const foot = Math.min(radius, floor - top);
  const arc = (up: number): string =>
    `a${round(radius)},${round(radius)} 0 0 1 ${round(-radius)},${round(up)}`;
  const low = round(floor - foot);
  // Too little to reach the straight walls: the foot alone, as wide as the surface.
  if (foot < radius) return `${start}L${round(right - radius)},${round(floor)}H${round(left + radius)}Z`;
  return `${start}L${round(right)},${low}${arc(foot)}H${round(left + radius)}${arc(-foot)}Z`;
}

/** The area of the water and its surface, on paper. */
export function waterShapes(
  spot: Spot,
  tank: DrawnTank,
  water: Water,
): { readonly area: string; readonly surface: string } {
  const top = heightAt(spot, spot.floor + water.level);
  const lying = tank.vessel?.form === "lying";
  const drawn = spot.vessels.map((vessel) => {
    const radius = lying ? Math.min(CORNER, vessel.width / 2, vessel.height / 2) : 0;
    const into = Math.max(inset(top - vessel.y, radius), inset(vessel.y + vessel.height - top, radius));
    return {
      area: waterArea(vessel, top, radius, into),
      surface: segment(vessel.x + into, top, vessel.x + vessel.width - into, top),
    };
  });
  return {
    area: drawn.map((one) => one.area).join(""),
    surface: drawn.map((one) => one.surface).join(""),
  };
}

/** The surface of some water in vessels that are drawn by their tank's height. */
export function surfaceOn(vessels: readonly Box[], tank: DrawnTank, water: Water): string {
  return vessels
    .map(({ x, y, width, height }) => {
      const top = y + height * (1 - water.level / Math.max(tank.height, 1e-6));
      return segment(x, top, x + width, top);
    })
    .join("");
}

/** Water in round steps, and what the tank holds to as many figures: what is not all of it never reads as all. */
function saidWater(value: number, most: number, unit: string): readonly [now: number, most: number] {
  const decimals = most < SMALL_TANK ? 10 : 1;
  const [now, all] = [value, most].map((of) => Math.round(of * decimals) / decimals) as [number, number];
  const whole = Number(most.toPrecision(FIGURES));
  if (now >= all) return [whole, whole];
  // In round steps what is there is rounded once, as in the lists: 544.6 is 540, and by way of 545 it would be 550.
  const once = roundedIn(value, unit, MEASURES.volume);
  const rounded = Number.isInteger(once) ? once : roundedIn(now, unit, MEASURES.volume);
  return [rounded < whole ? rounded : now, whole];
}

/** "345 of 550 gal", and "345 gal" where there is less room. */
export function waterWords(
  volume: number,
  whole: number,
  options: ShowOptions,
): { readonly long: string; readonly short: string } {
  const unit = unitFor("volume", options.units);
  const [now, most] = [fromSi(volume, unit), fromSi(whole, unit)];
  const [said, all] = saidWater(now, most, unit).map((value) => showNumber(value, 4, options.locale));
  const label = `\u00a0${unitLabel(unit)}`;
  return { long: `${said} of ${all}${label}`, short: `${said}${label}` };
}

/** How high the water in a line could stand: straight from the upper water's surface to the line's end. */
export function gradeLine(layout: Layout, grade: Grade, waters: ReadonlyMap<string, Water>): string {
  const spot = layout.spots.get(grade.tank);
  const water = waters.get(grade.tank);
  if (!spot || !water) return "";
  const y = heightAt(spot, spot.floor + water.level);
  return segment(grade.x, y, grade.end[0], grade.end[1]);
}
