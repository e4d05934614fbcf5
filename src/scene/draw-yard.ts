// What stands by the beds: battery, panel, cans, and the beds themselves, open or under their arc.

import type { Bench } from "./bench.ts";
import type { Cell } from "./columns.ts";
import { groundAt } from "./ground.ts";
import { draw, putMark, round, takes } from "./paper.ts";
import type { Box, DrawnBed, DrawnPanel, Part } from "./place.ts";
import { circle, rect, segment } from "./strokes.ts";

const BATTERY = { width: 38, height: 26 };
/** A panel's pole, on a desk and on a phone; a panel is so high and so wide. */
export const POLE = { full: 46, small: 24 };
export const PANEL = 20;
/** Side by side only where each has so much room, else one over the other. */
const ABREAST = 50;
/** Arc over a covered bed, and plants on an open one [px]. */
export const ARC = 36;
const PLANT = 12;
const WIDEST_BED = 240;

/** Words in the ground under a thing. */
function anchorBelow(bench: Bench, part: Part, cell: Cell, from: number): void {
  const [left, right] = [cell.x, cell.x + cell.width];
  bench.paper.anchors.set(part.id, [{ middle: (left + right) / 2, from, side: "under", left, right }]);
}

function drawPanel(bench: Bench, panel: DrawnPanel, x: number, foot: number, pole: number): void {
  const { paper } = bench;
  const [top, half] = [foot - pole, 18];
  draw(paper, panel.id, "power-line", segment(x, foot, x, top));
  const corners = [
    [x - half, top + 2],
    [x + half - 6, top - 14],
    [x + half + 2, top - 2],
    [x - half + 8, top + 14],
  ] as const;
  draw(paper, panel.id, "power", `M${corners.map(([a, b]) => `${round(a)},${round(b)}`).join("L")}Z`);
  draw(
    paper,
    panel.id,
    "power-line",
    segment(x - 8, top - 2, x - 2, top + 9) + segment(x + 3, top - 8, x + 9, top + 4),
  );
  takes(paper, panel.id, { x: x - half, y: top - 14, width: 2 * half + 2, height: 28 });
  const at = { middle: x, left: x - half, right: x + half };
  paper.anchors.set(panel.id, [
    { ...at, from: top - 18, side: "over" },
    { ...at, from: groundAt(bench.ground, x) + 8, side: "under" },
  ]);
  if (panel.trouble !== null) putMark(paper, panel.id, x, top);
}

/** How many panels stand over one another, so that they reach this much higher [px]. */
export const panelTiers = (count: number, width: number): number =>
  count > 1 && width / count < ABREAST ? count : 1;

/** A battery on the ground with the panels that charge it over it, or a panel alone. */
export function drawPower(bench: Bench, cell: Cell): void {
  const { paper, place } = bench;
  const x = cell.x + cell.width / 2;
  const y = groundAt(bench.ground, x);
  const battery = place.batteries.find((candidate) => candidate.id === cell.id);
  const panels = place.panels.filter((panel) =>
    battery ? panel.charges === battery.id : panel.id === cell.id,
  );
  const height = bench.small ? 18 : BATTERY.height;
  const foot = battery ? y - height : y;
  const isTiered = panelTiers(panels.length, cell.width) > 1;
  const pole = bench.small ? POLE.small : POLE.full;
  for (const [index, panel] of panels.entries()) {
    const at = isTiered ? x : cell.x + ((index + 0.5) * cell.width) / panels.length;
    drawPanel(bench, panel, at, foot, pole + (isTiered ? index * (PANEL + 14) : 0));
  }
  if (!battery) return;
  const width = Math.min(bench.small ? 28 : BATTERY.width, cell.width);
  const box: Box = { x: x - width / 2, y: y - height, width, height };
  const [middle, post] = [box.y + height / 2, width / 5];
  draw(paper, battery.id, "power", rect(box));
  draw(
    paper,
    battery.id,
    "power-line",
    segment(box.x + post, box.y, box.x + post, box.y - 3) +
      segment(box.x + width - post, box.y, box.x + width - post, box.y - 3) +
      `M${round(x - 4)},${round(middle)}h8M${round(x)},${round(middle - 4)}v8`,
  );
  takes(paper, battery.id, box);
  anchorBelow(bench, battery, cell, y + 8);
  if (battery.trouble !== null) putMark(paper, battery.id, box.x + width, box.y);
}

/** A watering can, smaller where its column is narrow. */
export function drawCan(bench: Bench, cell: Cell, carry: Part): void {
  const { paper } = bench;
  const size = Math.min(1, cell.width / 44);
  const at = (px: number): number => round(px * size);
  const x = cell.x + cell.width / 2 - at(5);
  const y = groundAt(bench.ground, x);
  draw(
    paper,
    carry.id,
    "ink-sheet",
    `M${round(x - at(11))},${round(y - 20)}h${at(20)}l${at(2)},20h${at(-24)}Z`,
  );
  draw(
    paper,
    carry.id,
    "ink",
    `M${round(x + at(10))},${round(y - 8)}l${at(13)},-10l${at(5)},3M${round(x - at(8))},${round(y - 20)}q${at(7)},-9 ${at(14)},0`,
  );
  takes(paper, carry.id, { x: x - at(14), y: y - 26, width: at(43), height: 26 });
  anchorBelow(bench, carry, cell, y + 8);
  if (carry.trouble !== null) putMark(paper, carry.id, x, y - 30);
}

/** A small post with a plate, for whatever has no shape of its own. */
export function drawThing(bench: Bench, cell: Cell, thing: Part): void {
  const { paper } = bench;
  const x = cell.x + cell.width / 2;
  const y = groundAt(bench.ground, x);
  draw(paper, thing.id, "ink", segment(x, y, x, y - 20));
  draw(paper, thing.id, "ink-sheet", rect({ x: x - 8, y: y - 34, width: 16, height: 14 }));
  takes(paper, thing.id, { x: x - 10, y: y - 36, width: 20, height: 36 });
  anchorBelow(bench, thing, cell, y + 8);
  if (thing.trouble !== null) putMark(paper, thing.id, x, y - 44);
}

function drawPlants(bench: Bench, bed: DrawnBed, box: Box): void {
  const count = Math.max(1, Math.floor(box.width / 20));
  const strokes: string[] = [];
  for (let index = 0; index < count; index++) {
    const x = round(box.x + ((index + 0.5) * box.width) / count);
    const y = round(box.y);
    strokes.push(`M${x},${y}v-11M${x},${y - 4}q-6,-1 -7,-7M${x},${y - 5}q6,-1 7,-7`);
  }
  draw(bench.paper, bed.id, "growth-line", strokes.join(""));
}

function drawSoil(bench: Bench, bed: DrawnBed, box: Box): void {
  const dots: string[] = [];
  for (let x = box.x + 7; x < box.x + box.width - 4; x += 11) {
    dots.push(circle(x, box.y + 6, 0.9), circle(x + 5, box.y + 13, 0.9));
  }
  draw(bench.paper, bed.id, "growth-dots", dots.join(""));
}

/** A bed, half in the ground, with its plants; a covered one under an arc. */
export function drawBed(bench: Bench, cell: Cell, bed: DrawnBed): void {
  const { paper } = bench;
  const width = Math.min(WIDEST_BED, cell.width - (cell.width > 40 ? 12 : 2));
  const x = cell.x + (cell.width - width) / 2;
  const y = groundAt(bench.ground, cell.x + cell.width / 2);
  const box: Box = { x, y: y - 9, width, height: 20 };
  draw(paper, bed.id, "growth", rect(box));
  drawSoil(bench, bed, box);
  drawPlants(bench, bed, box);
  takes(paper, bed.id, { ...box, y: box.y - PLANT, height: box.height + PLANT });
  if (bed.covered) {
    const [left, right, rise] = [cell.x, cell.x + cell.width, ARC];
    draw(
      paper,
      bed.id,
      "ink",
      `M${round(left)},${round(y)}C${round(left)},${round(y - rise * 1.33)} ${round(right)},${round(y - rise * 1.33)} ${round(right)},${round(y)}`,
    );
    takes(paper, bed.id, { x: left, y: y - rise, width: right - left, height: 10 });
  }
  const [left, right] = [cell.x, cell.x + cell.width];
  const middle = (left + right) / 2;
  paper.anchors.set(bed.id, [
    { middle, from: y + 17, side: "under", left, right },
    { middle, from: y - (bed.covered ? ARC : PLANT) - 4, side: "over", left, right, spare: true },
  ]);
  if (bed.trouble !== null) putMark(paper, bed.id, cell.x + cell.width / 2, y - 26);
}
