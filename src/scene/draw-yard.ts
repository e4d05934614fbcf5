// What stands by the beds: battery, panel, cans, and the beds themselves, open or under their arc.

import { type Bench, labelOver } from "./bench.ts";
import type { Cell } from "./cells.ts";
import { groundAt } from "./ground.ts";
import { draw, putLabel, putMark, round, takes } from "./paper.ts";
import type { Box, DrawnBed, DrawnPanel, Part } from "./place.ts";
import { circle, rect, segment } from "./strokes.ts";
import { blockOf } from "./text-block.ts";

const BATTERY = { width: 38, height: 26 };
const POLE = 58;

/** Words in the ground under a thing, no wider than its column. */
function labelBelow(bench: Bench, part: Part, cell: Cell, from: number): void {
  const [left, right] = [cell.x, cell.x + cell.width];
  const block = blockOf(part.words, cell.width, bench.type);
  putLabel(bench.paper, part.id, block, {
    middle: (left + right) / 2,
    from,
    towards: "down",
    left,
    right,
    under: true,
  });
}

function drawPanel(bench: Bench, panel: DrawnPanel, cell: Cell, x: number, foot: number, pole: number): void {
  const { paper } = bench;
  const [top, half] = [foot - pole, 24];
  draw(paper, panel.id, "power-line", segment(x, foot, x, top));
  const corners = [
    [x - half, top + 4],
    [x + half - 6, top - 20],
    [x + half + 2, top - 4],
    [x - half + 8, top + 20],
  ] as const;
  draw(paper, panel.id, "power", `M${corners.map(([a, b]) => `${round(a)},${round(b)}`).join("L")}Z`);
  draw(
    paper,
    panel.id,
    "power-line",
    segment(x - 10, top - 3, x - 2, top + 13) + segment(x + 4, top - 11, x + 12, top + 5),
  );
  takes(paper, panel.id, { x: x - half, y: top - 20, width: 2 * half + 2, height: 40 });
  labelOver(bench, panel, cell, top - 26);
  if (panel.trouble !== null) putMark(paper, panel.id, x, top);
}

/** A battery on the ground with the panels that charge it over it, or a panel alone. */
export function drawPower(bench: Bench, cell: Cell): void {
  const { paper, place } = bench;
  const x = cell.x + cell.width / 2;
  const y = groundAt(bench.ground, x);
  const battery = place.batteries.find((candidate) => candidate.id === cell.id);
  const panels = place.panels.filter((panel) =>
    battery ? panel.charges === battery.id : panel.id === cell.id,
  );
  const foot = battery ? y - BATTERY.height : y;
  for (const [index, panel] of panels.entries()) {
    const each = cell.width / panels.length;
    const part = { ...cell, x: cell.x + index * each, width: each };
    const tall = each < 60 ? index * 110 : 0;
    drawPanel(bench, panel, each < 60 ? cell : part, part.x + each / 2, foot, POLE + tall);
  }
  if (!battery) return;
  const box: Box = { x: x - BATTERY.width / 2, y: y - BATTERY.height, ...BATTERY };
  draw(paper, battery.id, "power", rect(box));
  draw(
    paper,
    battery.id,
    "power-line",
    segment(box.x + 8, box.y, box.x + 8, box.y - 4) +
      segment(box.x + box.width - 8, box.y, box.x + box.width - 8, box.y - 4) +
      `M${round(x - 4)},${round(box.y + 13)}h8M${round(x)},${round(box.y + 9)}v8`,
  );
  takes(paper, battery.id, box);
  labelBelow(bench, battery, cell, y + 8);
  if (battery.trouble !== null) putMark(paper, battery.id, box.x + box.width + 6, box.y);
}

/** A watering can. */
export function drawCan(bench: Bench, cell: Cell, carry: Part): void {
  const { paper } = bench;
  const x = cell.x + cell.width / 2;
  const y = groundAt(bench.ground, x);
  draw(paper, carry.id, "ink-sheet", `M${round(x - 11)},${round(y - 22)}h20l2,22h-24Z`);
  draw(
    paper,
    carry.id,
    "ink",
    `M${round(x + 10)},${round(y - 8)}l13,-12l5,3M${round(x - 7)},${round(y - 22)}a8,8 0 0 1 12,0M${round(x - 12)},${round(y - 18)}q-10,4 0,12`,
  );
  takes(paper, carry.id, { x: x - 18, y: y - 28, width: 46, height: 28 });
  labelBelow(bench, carry, cell, y + 8);
  if (carry.trouble !== null) putMark(paper, carry.id, x, y - 34);
}

/** A small post with a plate, for whatever has no shape of its own. */
export function drawThing(bench: Bench, cell: Cell, thing: Part): void {
  const { paper } = bench;
  const x = cell.x + cell.width / 2;
  const y = groundAt(bench.ground, x);
  draw(paper, thing.id, "ink", segment(x, y, x, y - 20));
  draw(paper, thing.id, "ink-sheet", rect({ x: x - 8, y: y - 34, width: 16, height: 14 }));
  takes(paper, thing.id, { x: x - 10, y: y - 36, width: 20, height: 36 });
  labelBelow(bench, thing, cell, y + 8);
  if (thing.trouble !== null) putMark(paper, thing.id, x, y - 44);
}

function drawPlants(bench: Bench, bed: DrawnBed, box: Box): void {
  const count = Math.max(2, Math.floor(box.width / 22));
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
  const width = Math.min(150, cell.width - 14);
  const x = cell.x + (cell.width - width) / 2;
  const y = groundAt(bench.ground, cell.x + cell.width / 2);
  const box: Box = { x, y: y - 9, width, height: 20 };
  draw(paper, bed.id, "growth", rect(box));
  drawSoil(bench, bed, box);
  drawPlants(bench, bed, box);
  takes(paper, bed.id, { ...box, y: box.y - 14, height: box.height + 14 });
  if (bed.covered) {
    const [left, right, rise] = [cell.x + 2, cell.x + cell.width - 2, 50];
    draw(
      paper,
      bed.id,
      "ink",
      `M${round(left)},${round(y)}C${round(left)},${round(y - rise * 1.33)} ${round(right)},${round(y - rise * 1.33)} ${round(right)},${round(y)}`,
    );
    takes(paper, bed.id, { x: left, y: y - rise, width: right - left, height: 10 });
  }
  labelBelow(bench, bed, cell, y + 17);
  if (bed.trouble !== null) putMark(paper, bed.id, cell.x + cell.width / 2, y - 34);
}
