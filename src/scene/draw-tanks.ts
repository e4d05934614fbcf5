// Tanks on the ground or on their stands, the joints of lines, and the roofs that shed into them.

import { type Bench, type Spot, yOf } from "./bench.ts";
import type { Cell } from "./columns.ts";
import { groundAt } from "./ground.ts";
import { draw, putMark, round, takes } from "./paper.ts";
import type { Box, DrawnRoof, DrawnTank, Shape } from "./place.ts";
import { around, circle, rect, rounded, segment, tub } from "./strokes.ts";
import { breadthOf, LEAST_HEIGHT, vesselsDrawn } from "./tank-sizes.ts";

/** A roof is at least so high over the ground, and falls so much over its width [px]. */
export const LEAST_EAVE = { full: 58, small: 30 };
export const MOST_RISE = { full: 16, small: 10 };
const PITCH = 0.2;
/** From an eave down to the rim that it sheds into. */
export const EAVE_OVER = 13;
const CORNER = 9;

/** The vessels of a tank around the middle of a column, on a floor [px]. */
function vesselBoxes(bench: Bench, tank: DrawnTank, middle: number, floorY: number): readonly Box[] {
  const { each, gap, whole } = breadthOf(tank, bench.perArea, bench.squeeze);
  const height = Math.max(LEAST_HEIGHT, tank.height * bench.scale);
  return Array.from({ length: vesselsDrawn(tank) }, (_, index) => ({
    x: middle - whole / 2 + index * (each + gap),
    y: floorY - height,
    width: each,
    height,
  }));
}

function drawStand(bench: Bench, tank: DrawnTank, body: Box, floorY: number, groundY: number): void {
  if (groundY - floorY < 2) return;
  const stand = { x: body.x - 3, y: floorY, width: body.width + 6, height: groundY - floorY };
  draw(bench.paper, tank.id, "sheet", rect(stand));
  draw(bench.paper, tank.id, "ink", rect(stand));
  takes(bench.paper, tank.id, stand);
}

function outlineOf(tank: DrawnTank, vessel: Box): string {
  if (tank.open) return tub(vessel);
  return tank.vessel?.form === "lying" ? rounded(vessel, CORNER) : rect(vessel);
}

function drawVessels(bench: Bench, tank: DrawnTank, vessels: readonly Box[], floorY: number): void {
  const lying = tank.vessel?.form === "lying";
  for (const vessel of vessels) {
    draw(bench.paper, tank.id, "sheet", lying ? rounded(vessel, CORNER) : rect(vessel));
  }
  // The walls come over the water, which the day draws.
  for (const vessel of vessels) draw(bench.paper, tank.id, "wall", outlineOf(tank, vessel));
  for (const [index, vessel] of vessels.slice(1).entries()) {
    const before = vessels[index];
    if (before)
      draw(bench.paper, tank.id, "wall", segment(before.x + before.width, floorY - 5, vessel.x, floorY - 5));
  }
}

/** A tank in its column, with its words over it. */
export function drawTank(bench: Bench, cell: Cell, tank: DrawnTank): void {
  const floorY = yOf(bench, tank.ground + tank.stand);
  const groundY = yOf(bench, tank.ground);
  const vessels = vesselBoxes(bench, tank, cell.x + cell.width / 2, floorY);
  const body = around(vessels);
  drawStand(bench, tank, body, floorY, groundY);
  drawVessels(bench, tank, vessels, floorY);
  takes(bench.paper, tank.id, body);
  bench.spots.set(tank.id, {
    id: tank.id,
    body,
    vessels,
    floor: tank.ground + tank.stand,
    floorY,
    pxPerMetre: body.height / Math.max(tank.height, 1e-6),
  });
  const at = { middle: body.x + body.width / 2, left: body.x, right: body.x + body.width };
  bench.paper.anchors.set(tank.id, [
    { ...at, from: body.y - 6, side: "over" },
    { ...at, from: groundY + 6, side: "under" },
  ]);
  if (tank.trouble !== null) putMark(bench.paper, tank.id, body.x + body.width / 2, body.y);
}

/** A joint without storage. */
export function drawTee(bench: Bench, cell: Cell, id: string, height: number): void {
  const x = cell.x + cell.width / 2;
  const y = yOf(bench, height) - 4;
  const body = { x: x - 6, y: y - 6, width: 12, height: 12 };
  draw(bench.paper, id, "joint", circle(x, y, 5));
  takes(bench.paper, id, body);
  const spot: Spot = { id, body, vessels: [], floor: height, floorY: y, pxPerMetre: bench.scale };
  bench.spots.set(id, spot);
  bench.paper.anchors.set(id, [{ middle: x, from: y - 8, side: "over", left: x - 6, right: x + 6 }]);
}

/** Water from an eave along to a tank's top. */
function drawSpout(bench: Bench, roof: DrawnRoof, x: number, eaveY: number): void {
  const spot = roof.drainsTo === null ? undefined : bench.spots.get(roof.drainsTo);
  if (!spot) return;
  const { body } = spot;
  const inside = body.x + Math.min(7, body.width / 2);
  const turn = Math.max(eaveY + 3, body.y - 7);
  const reach = Math.max(0, Math.min(6, (inside - x) / 2));
  draw(
    bench.paper,
    roof.id,
    "spout",
    `M${round(x)},${round(eaveY)}V${round(turn - 3)}Q${round(x)},${round(turn)} ${round(x + reach)},${round(turn)}L${round(inside - reach)},${round(turn)}Q${round(inside)},${round(turn)} ${round(inside)},${round(Math.max(turn + 2, body.y + 4))}`,
  );
}

/** A lean-to in a column of its own; it sheds water to the right, where its tank stands. */
export function drawShed(bench: Bench, cell: Cell, roof: DrawnRoof): void {
  const { paper } = bench;
  const size = bench.small ? "small" : "full";
  const spot = roof.drainsTo === null ? undefined : bench.spots.get(roof.drainsTo);
  const [left, right] = [cell.x, cell.x + cell.width - 1];
  const groundY = groundAt(bench.ground, (left + right) / 2);
  const eave = Math.min(groundY - LEAST_EAVE[size], spot ? spot.body.y - EAVE_OVER : groundY);
  const ridge = eave - Math.min(MOST_RISE[size], (right - left) * PITCH);
  const inset = Math.min(7, cell.width / 5);
  draw(paper, roof.id, "ink", segment(left + inset, ridge + 4, left + inset, groundY));
  draw(paper, roof.id, "ink", segment(right - inset, eave, right - inset, groundY));
  draw(paper, roof.id, "roof", segment(left + 2, ridge, right - 2, eave));
  drawSpout(bench, roof, right - 1, eave);
  takes(paper, roof.id, { x: left, y: ridge - 3, width: right - left, height: eave - ridge + 6 });
  const middle = (left + right) / 2;
  paper.anchors.set(roof.id, [{ middle, from: groundY + 6, side: "under", left, right }]);
  if (roof.trouble !== null) putMark(paper, roof.id, middle, (ridge + eave) / 2);
}

/** A tank as it was held: its outline by the same scales, around the middle of the tank as it is. */
export function heldOutline(
  bench: Bench,
  held: DrawnTank,
  spot: Spot,
): { readonly vessels: readonly Box[]; readonly shape: Shape } {
  const floorY = yOf(bench, held.ground + held.stand);
  const vessels = vesselBoxes(bench, held, spot.body.x + spot.body.width / 2, floorY);
  return { vessels, shape: { look: "held", d: vessels.map((vessel) => outlineOf(held, vessel)).join("") } };
}
