// Everything onto the paper, in the order in which one thing leans on another: tanks, what stands beside them, the ways.

import type { Bench, Spot } from "./bench.ts";
import type { Cell, CellKind } from "./columns.ts";
import { drawLine, drawLooseLine, drawOverflow, drawPump, drawTap, type Grade, runOn } from "./draw-hoses.ts";
import { drawShed, drawTank, drawTee } from "./draw-tanks.ts";
import { drawBed, drawCan, drawPower, drawThing } from "./draw-yard.ts";
import type { Part } from "./place.ts";

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

const spotOf = (bench: Bench, id: string | null): Spot | null =>
  (id === null ? undefined : bench.spots.get(id)) ?? null;

function drawTakers(bench: Bench, cells: readonly Cell[]): void {
  const { place } = bench;
  for (const delivery of place.deliveries) {
    const spot = spotOf(bench, delivery.from);
    if (!spot || spot.vessels.length === 0) continue;
    const kin = place.deliveries.filter((other) => other.from === delivery.from);
    runOn(bench, cells, drawPump(bench, delivery, spot, kin.indexOf(delivery)));
  }
  for (const tap of place.draws) {
    const spot = spotOf(bench, tap.from);
    const kin = place.draws.filter((other) => other.from === tap.from);
    if (spot) drawTap(bench, tap, spot, kin.indexOf(tap));
  }
}

/** Draws the place; how high the water could stand in its lines is returned, for the day to draw. */
export function drawEverything(bench: Bench, cells: readonly Cell[]): readonly Grade[] {
  const { place } = bench;
  standThings(bench, cells);
  for (const tank of place.tanks) {
    const [from, to] = [spotOf(bench, tank.id), spotOf(bench, tank.overflowsTo)];
    if (from && to && from !== to) drawOverflow(bench, tank.id, from, to);
  }
  drawTakers(bench, cells);
  return place.lines.flatMap((line) => {
    const [from, to] = [spotOf(bench, line.from), spotOf(bench, line.to)];
    if (from && to && from !== to) return drawLine(bench, line, from, to) ?? [];
    const one = from ?? to;
    if (one) drawLooseLine(bench, line, one);
    return [];
  });
}
