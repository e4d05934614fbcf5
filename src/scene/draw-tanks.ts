// Tanks on the ground or on their stands, the joints of lines, and the roofs beside or over them.

import { type Bench, labelOver, type Spot, yOf } from "./bench.ts";
import type { Cell } from "./cells.ts";
import { groundAt } from "./ground.ts";
import { draw, putLabel, putMark, takes } from "./paper.ts";
import type { Box, DrawnRoof, DrawnTank } from "./place.ts";
import { around, circle, rect, rounded, segment, tub } from "./strokes.ts";
import { blockOf } from "./text-block.ts";

const LEAST_HEIGHT = 20;
const LEAST_VESSEL = 16;
const RIM = 4;
const MOST_VESSELS = 3;
const WALL_GAP = 5;
/** A roof beside is at least so high over the ground [px]. */
const LEAST_EAVE = 66;
const PITCH = 0.2;
/** Narrower roofs stand over one another instead of side by side [px]. */
const LEAST_ABREAST = 80;

function vesselBoxes(tank: DrawnTank, cell: Cell, floorY: number, scale: number): readonly Box[] {
  const height = Math.max(LEAST_HEIGHT, tank.height * scale) + RIM;
  const shown = Math.min(MOST_VESSELS, Math.max(1, Math.round(tank.count)));
  const room = Math.max(30, cell.width - 34);
  const each = Math.max(
    LEAST_VESSEL,
    Math.min(Math.max(30, tank.across * scale), (room - (shown - 1) * WALL_GAP) / shown),
  );
  const whole = shown * each + (shown - 1) * WALL_GAP;
  const left = cell.x + (cell.width - whole) / 2;
  return Array.from({ length: shown }, (_, index) => ({
    x: left + index * (each + WALL_GAP),
    y: floorY - height,
    width: each,
    height,
  }));
}

function drawStand(bench: Bench, tank: DrawnTank, body: Box, floorY: number, groundY: number): void {
  if (groundY - floorY < 2) return;
  const stand = { x: body.x - 3, y: floorY, width: body.width + 6, height: groundY - floorY };
  draw(bench.paper, tank.id, "sheet", rect(stand));
  if (stand.height > 8) {
    const third = stand.width / 3;
    draw(
      bench.paper,
      tank.id,
      "thin",
      segment(stand.x + 4, floorY, stand.x + third, groundY) +
        segment(stand.x + stand.width - third, floorY, stand.x + stand.width - 4, groundY),
    );
  }
  draw(bench.paper, tank.id, "ink", rect(stand));
  takes(bench.paper, tank.id, stand);
}

function drawVessels(bench: Bench, tank: DrawnTank, vessels: readonly Box[], floorY: number): void {
  const lying = tank.vessel?.form === "lying";
  for (const vessel of vessels) {
    draw(bench.paper, tank.id, "sheet", lying ? rounded(vessel, 9) : rect(vessel));
  }
  // The walls come over the water, which the day draws.
  for (const vessel of vessels) {
    const outline = tank.open ? tub(vessel) : lying ? rounded(vessel, 9) : rect(vessel);
    draw(bench.paper, tank.id, "wall", outline);
  }
  for (const [index, vessel] of vessels.slice(1).entries()) {
    const before = vessels[index];
    if (before)
      draw(bench.paper, tank.id, "wall", segment(before.x + before.width, floorY - 5, vessel.x, floorY - 5));
  }
}

/** A tank in its column, with the words over it. */
export function drawTank(bench: Bench, cell: Cell, tank: DrawnTank): void {
  const floorY = yOf(bench, tank.ground + tank.stand);
  const groundY = yOf(bench, tank.ground);
  const vessels = vesselBoxes(tank, cell, floorY, bench.scale);
  const body = around(vessels);
  drawStand(bench, tank, body, floorY, groundY);
  drawVessels(bench, tank, vessels, floorY);
  takes(bench.paper, tank.id, body);
  bench.spots.set(tank.id, {
    id: tank.id,
    row: bench.row,
    body,
    vessels,
    floor: tank.ground + tank.stand,
    floorY,
    pxPerMetre: (body.height - RIM) / Math.max(tank.height, 1e-6),
  });
  if (tank.trouble !== null) putMark(bench.paper, tank.id, body.x + body.width / 2, body.y + 2);
}

/** A joint without storage. */
export function drawTee(bench: Bench, cell: Cell, id: string, height: number): void {
  const x = cell.x + cell.width / 2;
  const y = yOf(bench, height) - 4;
  const body = { x: x - 6, y: y - 6, width: 12, height: 12 };
  draw(bench.paper, id, "joint", circle(x, y, 5));
  takes(bench.paper, id, body);
  const spot: Spot = {
    id,
    row: bench.row,
    body,
    vessels: [],
    floor: height,
    floorY: y,
    pxPerMetre: bench.scale,
  };
  bench.spots.set(id, spot);
}

/** Water from an eave down to a tank's top. */
function drawSpout(bench: Bench, roof: DrawnRoof, x: number, eaveY: number): void {
  const spot = roof.drainsTo === null ? undefined : bench.spots.get(roof.drainsTo);
  if (!spot || spot.row !== bench.row) return;
  const { body } = spot;
  const fromLeft = x < body.x + body.width / 2;
  const inside = fromLeft ? body.x + 7 : body.x + body.width - 7;
  const turn = body.y - 9;
  const way = fromLeft ? 1 : -1;
  const start = `M${x},${eaveY}V${Math.min(eaveY + 2, turn)}`;
  const level = Math.max(eaveY, turn - 6);
  const bend = `V${level}Q${x},${turn} ${x + way * 6},${turn}L${inside - way * 6},${turn}Q${inside},${turn} ${inside},${body.y + 5}`;
  draw(bench.paper, roof.id, "spout", start + bend);
}

/** A lean-to in a column of its own, its words under its roof; it sheds water to the right, where its tank stands. */
export function drawShed(bench: Bench, cell: Cell, roof: DrawnRoof): void {
  const spot = roof.drainsTo === null ? undefined : bench.spots.get(roof.drainsTo);
  const [left, right] = [cell.x + 6, cell.x + cell.width - 8];
  const groundY = Math.min(groundAt(bench.ground, left), groundAt(bench.ground, right));
  const [from, to] = [left + 12, right - 12];
  const block = blockOf(roof.words, to - from, bench.type);
  const eave = Math.min(groundY - Math.max(LEAST_EAVE, block.height + 18), spot ? spot.body.y - 14 : groundY);
  const ridge = eave - (right - left) * PITCH;
  const { paper } = bench;
  draw(paper, roof.id, "ink", segment(left + 8, ridge + 6, left + 8, groundAt(bench.ground, left + 8)));
  draw(paper, roof.id, "ink", segment(right - 8, eave, right - 8, groundAt(bench.ground, right - 8)));
  draw(paper, roof.id, "roof", segment(left, ridge, right, eave));
  drawSpout(bench, roof, right + 2, eave);
  takes(paper, roof.id, { x: left, y: ridge - 3, width: right - left, height: eave - ridge + 6 });
  const middle = (left + right) / 2;
  putLabel(paper, roof.id, block, {
    middle,
    from: groundY - block.height - 6,
    towards: "down",
    left: from,
    right: to,
  });
  if (roof.trouble !== null) putMark(paper, roof.id, middle, (ridge + eave) / 2);
}

/** How a roof lies over its tank: which of its sides stand on posts, and on which it sheds its water. */
type Over = {
  readonly postLeft: boolean;
  readonly postRight: boolean;
  readonly spoutLeft: boolean;
  /** Kept free of words at both sides, where another roof's water comes down [px]. */
  readonly inset: number;
};

/** One roof over a tank, with its words; the y above all of it is returned. */
function drawRoofOver(bench: Bench, roof: DrawnRoof, part: Cell, eave: number, over: Over): number {
  const { paper, ground } = bench;
  const [left, right] = [part.x + 1, part.x + part.width - 1];
  const ridge = eave - Math.min(16, part.width * PITCH);
  const [leftY, rightY] = over.spoutLeft ? [eave, ridge] : [ridge, eave];
  const post = (x: number, y: number): void =>
    draw(paper, roof.id, "thin", segment(x, y, x, groundAt(ground, x)));
  if (over.postLeft) post(left + 4, leftY);
  if (over.postRight) post(right - 4, rightY);
  draw(paper, roof.id, "roof", segment(left, leftY, right, rightY));
  drawSpout(bench, roof, over.spoutLeft ? left + 8 : right - 8, eave);
  takes(paper, roof.id, { x: left, y: ridge - 3, width: right - left, height: eave - ridge + 6 });
  if (roof.trouble !== null) putMark(paper, roof.id, (left + right) / 2, (ridge + eave) / 2);
  return labelOver(bench, roof, part, ridge - 6, over.inset) - 8;
}

/** Roofs over their tank: side by side where the column is wide enough, else one over the other. */
export function drawRoofsOver(bench: Bench, cell: Cell, top: number): void {
  const roofs = bench.place.roofs.filter((roof) => cell.roofs.includes(roof.id));
  const each = cell.width / Math.max(1, roofs.length);
  const tiers = each < LEAST_ABREAST;
  let eave = top - 12;
  for (const [index, roof] of roofs.entries()) {
    const [first, last] = [index === 0, index === roofs.length - 1];
    const part = tiers ? cell : { ...cell, x: cell.x + index * each, width: each };
    const next = drawRoofOver(bench, roof, part, eave, {
      postLeft: tiers || first,
      postRight: tiers || last,
      spoutLeft: !tiers && first && !last,
      inset: tiers && !last ? 11 : 2,
    });
    if (tiers) eave = next;
  }
}
