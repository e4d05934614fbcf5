// One row of the drawing: its scale of heights, its ground, and everything that stands in it.

import { type Bench, labelOver, labelUnder, type Spot } from "./bench.ts";
import type { Cell, CellKind, Row } from "./cells.ts";
import {
  drawLine,
  drawLooseLine,
  drawOverflow,
  drawPump,
  drawTap,
  type Grade,
  type Outlet,
} from "./draw-hoses.ts";
import { drawRoofsOver, drawShed, drawTank, drawTee } from "./draw-tanks.ts";
import { drawBed, drawCan, drawPower, drawThing } from "./draw-yard.ts";
import { gapRoute, routedGround } from "./gap-route.ts";
import { type Ground, slope } from "./ground.ts";
import type { Paper } from "./paper.ts";
import type { Part, Place } from "./place.ts";
import type { Type } from "./text-block.ts";

/** Most px a metre, and how high the tanks of a row may reach on wide and narrow paper [px]. */
const LARGEST_SCALE = 84;
const REACH = { wide: 220, narrow: 170 };
/** Heights closer together than this are not drawn any further apart [m]. */
const LEAST_RANGE = 0.5;

export type DrawingBoard = {
  readonly place: Place;
  readonly paper: Paper;
  readonly width: number;
  readonly type: Type;
  readonly spots: Map<string, Spot>;
  /** Scale kept while a tank is dragged [px/m]. */
  readonly scale: number | null;
};

export type LaidRow = {
  readonly bench: Bench;
  readonly cells: readonly Cell[];
  readonly grades: readonly Grade[];
  readonly outlets: readonly Outlet[];
};

function heightsOf(place: Place, cells: readonly Cell[]): readonly number[] {
  const ids = new Set(cells.map((cell) => cell.id));
  return [
    ...place.tanks
      .filter((tank) => ids.has(tank.id))
      .flatMap((tank) => [tank.ground, tank.ground + tank.stand + tank.height]),
    ...place.tees.filter((tee) => ids.has(tee.id)).map((tee) => tee.height),
    ...cells.flatMap((_, index) => gapRoute(place, cells, index)?.points.map(([, height]) => height) ?? []),
  ];
}

/** How many px a metre takes so that the heights of these columns fit. */
export function scaleFor(place: Place, cells: readonly Cell[], wide: boolean): number {
  const heights = heightsOf(place, cells);
  const range = heights.length > 0 ? Math.max(...heights) - Math.min(...heights) : 0;
  return Math.min(LARGEST_SCALE, (wide ? REACH.wide : REACH.narrow) / Math.max(LEAST_RANGE, range));
}

/** Ground under a column [m above the datum]; the yard lies where its water is drawn. */
function groundHeights(place: Place, cells: readonly Cell[]): readonly number[] {
  const known = new Map<string, number>([
    ...place.tanks.map((tank) => [tank.id, tank.ground] as const),
    ...place.tees.map((tee) => [tee.id, tee.height] as const),
  ]);
  const here = cells.filter((cell) => known.has(cell.id));
  const drawn = [...place.deliveries, ...place.carries].flatMap((taker) =>
    here.some((cell) => cell.id === taker.from) ? [known.get(taker.from ?? "") ?? 0] : [],
  );
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

function groundOf(
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

function standCell(bench: Bench, cell: Cell): void {
  const { place } = bench;
  const find = <Each extends Part>(kind: CellKind, parts: readonly Each[]): Each | undefined =>
    cell.kind === kind ? parts.find((part) => part.id === cell.id) : undefined;
  const roof = find("roof", place.roofs);
  const carry = find("can", place.carries);
  const thing = find("thing", place.things);
  const bed = find("bed", place.beds);
  if (roof) drawShed(bench, cell, roof);
  if (carry) drawCan(bench, cell, carry);
  if (thing) drawThing(bench, cell, thing);
  if (bed) drawBed(bench, cell, bed);
  if (cell.kind === "power") drawPower(bench, cell);
}

/** Tanks and joints first: roofs shed into them. */
function standThings(bench: Bench, cells: readonly Cell[]): void {
  const { place } = bench;
  for (const cell of cells) {
    const tank = cell.kind === "tank" && place.tanks.find((one) => one.id === cell.id);
    const tee = cell.kind === "tee" && place.tees.find((one) => one.id === cell.id);
    if (tank) drawTank(bench, cell, tank);
    if (tee) drawTee(bench, cell, tee.id, tee.height);
  }
  for (const cell of cells) standCell(bench, cell);
}

/** Words over the tanks, and over those the roofs that have no column of their own. */
function labelTanks(bench: Bench, cells: readonly Cell[]): void {
  const { place } = bench;
  for (const cell of cells) {
    const part = [...place.tanks, ...place.tees].find((one) => one.id === cell.id);
    const spot = bench.spots.get(cell.id);
    if (!part || !spot) continue;
    const pumped = place.deliveries.some((delivery) => delivery.from === cell.id);
    const marked = bench.paper.marks.has(cell.id);
    const from = spot.body.y - (marked ? 16 : pumped || cell.roofs.length > 0 ? 14 : 8);
    const label = labelOver(bench, part, cell, from, cell.roofs.length > 0 ? 9 : 2);
    drawRoofsOver(bench, cell, label);
  }
}

function drawWater(bench: Bench): { readonly grades: readonly Grade[]; readonly outlets: readonly Outlet[] } {
  const { place, spots } = bench;
  const here = (id: string | null): Spot | null => {
    const spot = id === null ? undefined : spots.get(id);
    return spot?.row === bench.row ? spot : null;
  };
  for (const tank of place.tanks) {
    const [from, to] = [here(tank.id), here(tank.overflowsTo)];
    if (from && to && from !== to) drawOverflow(bench, tank.id, from, to);
  }
  const outlets = place.deliveries.flatMap((delivery) => {
    const spot = here(delivery.from);
    if (!spot || spot.vessels.length === 0) return [];
    const kin = place.deliveries.filter((other) => other.from === delivery.from);
    return [drawPump(bench, delivery, spot, kin.indexOf(delivery))];
  });
  const grades = place.lines.flatMap((line) => {
    const [from, to] = [here(line.from), here(line.to)];
    if (from && to && from !== to) return drawLine(bench, line, from, to) ?? [];
    const one = from ?? to;
    const whole = spots.has(line.from ?? "") && spots.has(line.to ?? "");
    if (one && !whole) drawLooseLine(bench, line, one);
    return [];
  });
  for (const draw of place.draws) {
    const spot = here(draw.from);
    if (!spot) continue;
    const kin = place.draws.filter((other) => other.from === draw.from);
    drawTap(bench, draw.id, spot, kin.indexOf(draw));
    labelUnder(bench, draw, spot.body.x + spot.body.width);
  }
  return { grades, outlets };
}

/** Lays one row with its datum at a y of the paper. */
export function layRow(board: DrawingBoard, row: Row, number: number, wide: boolean, base: number): LaidRow {
  const { place, paper, width, type, spots } = board;
  const scale = (row.water ? board.scale : null) ?? scaleFor(place, row.cells, wide);
  const ground = groundOf(place, row.cells, width, (height) => base - height * scale);
  const bench: Bench = { place, paper, width, type, scale, base, row: number, ground, spots };
  standThings(bench, row.cells);
  labelTanks(bench, row.cells);
  return { bench, cells: row.cells, ...drawWater(bench) };
}
