// Water on its way: gravity lines with their grade line, overflows, pumps and their hoses, and what else is drawn off.

import { type Bench, heightAt, type Spot, yOf } from "./bench.ts";
import type { Cell } from "./columns.ts";
import { along, deepest, groundAt, pathOf } from "./ground.ts";
import { covers, draw, putMark, round, takes } from "./paper.ts";
import type { DrawnDelivery, DrawnLine, Part } from "./place.ts";
import { humpOf } from "./route.ts";
import { circle, rect, segment } from "./strokes.ts";

/** Painted over everything else, for what sticks out of a tank. */
export const FRONT = "";

const HOSE_LIFT = 3;
const LEAD_LIFT = 9;
const LEAD = 12;

/** Where a grade line ends, and the tank whose water it starts from. */
export type Grade = {
  readonly line: string;
  readonly tank: string;
  readonly x: number;
  readonly end: readonly [x: number, y: number];
};

/** Words in the ground under a hose. */
function anchorUnder(bench: Bench, part: Part, left: number, right: number): void {
  const middle = (left + right) / 2;
  const from = deepest(bench.ground, middle - 20, middle + 20) + 8;
  bench.paper.anchors.set(part.id, [{ middle, from, side: "under", left, right }]);
}

function drawHose(bench: Bench, id: string, d: string): void {
  draw(bench.paper, id, "hose", d);
  draw(bench.paper, id, "hose-inside", d);
}

/** Which sides of two spots face each other. */
function facing(
  from: Spot,
  to: Spot,
): { readonly start: number; readonly end: number; readonly way: 1 | -1 } {
  const rightwards = from.body.x <= to.body.x;
  return {
    start: rightwards ? from.body.x + from.body.width : from.body.x,
    end: rightwards ? to.body.x : to.body.x + to.body.width,
    way: rightwards ? 1 : -1,
  };
}

/** Corner of the ground that a line's hump makes between two x, where one does. */
function cornerAtHump(bench: Bench, line: DrawnLine, left: number, right: number) {
  const hump = humpOf(line);
  const top = hump && yOf(bench, hump[1]);
  return bench.ground.find(([x, y]) => top !== null && x > left && x < right && Math.abs(y - top) < 0.5);
}

/** Where a line's mark stands: on its hump where the ground shows it, else halfway. */
function markOf(bench: Bench, line: DrawnLine, start: number, end: number): readonly [number, number] {
  const [left, right] = start < end ? [start, end] : [end, start];
  const x = cornerAtHump(bench, line, left, right)?.[0] ?? (start + end) / 2;
  return [x, groundAt(bench.ground, x) - HOSE_LIFT];
}

function drawFloat(bench: Bench, to: Spot, x: number, y: number, way: number): void {
  if (to.body.width < 34 || to.vessels.length === 0) return;
  draw(bench.paper, FRONT, "thin", segment(x, y, x + way * 11, y + 3));
  draw(bench.paper, FRONT, "float", circle(x + way * 14, y + 4, 4));
}

/** A line whose ends stand in this row; its grade line is returned, for the day to draw. */
export function drawLine(bench: Bench, line: DrawnLine, from: Spot, to: Spot): Grade | null {
  const { start, end, way } = facing(from, to);
  const startY = line.startHeight === null ? from.floorY - 4 : heightAt(from, line.startHeight);
  const endY = line.endHeight === null ? to.floorY - 8 : heightAt(to, line.endHeight);
  const lead = Math.min(LEAD, Math.abs(end - start) / 3);
  const lying = along(bench.ground, start + way * lead, end - way * lead, HOSE_LIFT);
  const [first, last] = [lying[0], lying[lying.length - 1]];
  if (!first || !last) return null;
  const middle = pathOf(lying).slice(1);
  const out = `M${round(start)},${round(startY)}C${round(start + way * lead)},${round(startY)} ${round(start)},${round(first[1])} `;
  const into = `C${round(end)},${round(last[1])} ${round(end - way * lead)},${round(endY)} ${round(end + way * 5)},${round(endY)}`;
  drawHose(bench, line.id, `${out}${middle}${into}`);
  drawFloat(bench, to, end + way * 5, endY, way);
  const [x, y] = markOf(bench, line, start, end);
  takes(bench.paper, line.id, { x: x - 5, y: y - 6, width: 10, height: 12 });
  if (line.trouble !== null) putMark(bench.paper, line.id, x, y - 2);
  anchorUnder(bench, line, Math.min(start, end), Math.max(start, end));
  const source = bench.place.tanks.some((tank) => tank.id === from.id);
  return source ? { line: line.id, tank: from.id, x: start, end: [end, endY] } : null;
}

/** A line that leads to nothing, or comes from nothing, lies a short way on the ground. */
export function drawLooseLine(bench: Bench, line: DrawnLine, spot: Spot | null): void {
  const x = spot ? spot.body.x + spot.body.width : bench.width / 2;
  const end = Math.min(bench.width - 4, x + 46);
  drawHose(bench, line.id, pathOf(along(bench.ground, x, end, HOSE_LIFT)));
  takes(bench.paper, line.id, { x, y: groundAt(bench.ground, x) - 8, width: end - x, height: 10 });
  const mark = cornerAtHump(bench, line, x, bench.width)?.[0] ?? end;
  if (line.trouble !== null) putMark(bench.paper, line.id, mark, groundAt(bench.ground, mark) - HOSE_LIFT);
  anchorUnder(bench, line, x, end);
}

/** What one tank cannot take runs into another. */
export function drawOverflow(bench: Bench, id: string, from: Spot, to: Spot): void {
  const { start, end, way } = facing(from, to);
  const [top, rim] = [from.body.y + 6, to.body.y + 8];
  const third = (end - start) / 3;
  draw(
    bench.paper,
    id,
    "pipe",
    `M${round(start)},${round(top)}C${round(start + third)},${round(top)} ${round(end - third)},${round(rim)} ${round(end + way * 4)},${round(rim)}`,
  );
}

/** Where a pump's hose leaves its tank, for the hose to go on from. */
export type Outlet = { readonly delivery: DrawnDelivery; readonly spot: Spot; readonly x: number };

/** A pump in its tank with its hose over the rim, down to the ground. */
export function drawPump(bench: Bench, delivery: DrawnDelivery, spot: Spot, nth: number): Outlet {
  const { body, floorY } = spot;
  const size = Math.min(14, body.width - 4, body.height - 2);
  const x = Math.max(body.x + 2, body.x + body.width - 4 - size - nth * (size + 4));
  const top = floorY - size - 1;
  const over = body.y - 8;
  const out = body.x + body.width + 9 + nth * 5;
  const middle = x + size / 2;
  const down = groundAt(bench.ground, out) - HOSE_LIFT;
  draw(
    bench.paper,
    FRONT,
    "cable",
    `M${round(middle)},${round(top)}V${round(over + 6)}Q${round(middle)},${round(over)} ${round(middle + 6)},${round(over)}H${round(out - 8)}Q${round(out)},${round(over)} ${round(out)},${round(over + 8)}V${round(down - 8)}Q${round(out)},${round(down)} ${round(out + 8)},${round(down)}`,
  );
  draw(bench.paper, FRONT, "power", rect({ x, y: top, width: size, height: size }));
  covers(bench.paper, { x: middle - 4, y: over - 4, width: out - middle + 8, height: 8 });
  covers(bench.paper, { x, y: top, width: size, height: size });
  takes(bench.paper, delivery.id, { x: out - 4, y: over - 4, width: 10, height: Math.max(8, down - over) });
  if (delivery.trouble !== null) putMark(bench.paper, delivery.id, out, over);
  anchorUnder(bench, delivery, body.x, out + 12);
  return { delivery, spot, x: out + 8 };
}

/** A hose or lead along the ground. */
function runAlong(bench: Bench, look: string, id: string, from: number, to: number, lift: number): void {
  if (Math.abs(to - from) < 1) return;
  draw(bench.paper, id, look, pathOf(along(bench.ground, from, to, lift)));
}

/** A tap at a tank, for what is drawn off for no bed. */
export function drawTap(bench: Bench, part: Part, spot: Spot, nth: number): void {
  const x = spot.body.x + spot.body.width;
  const y = spot.floorY - 8 - nth * 12;
  draw(bench.paper, FRONT, "spout", `M${round(x)},${round(y)}h7v4`);
  takes(bench.paper, part.id, { x, y: y - 5, width: 12, height: 12 });
  anchorUnder(bench, part, x - 10, x + 22);
  if (part.trouble !== null) putMark(bench.paper, part.id, x + 7, y - 12);
}

/** What goes on along the ground from each tank: hoses to their beds, and leads to their batteries. */
export function runOn(bench: Bench, cells: readonly Cell[], outlet: Outlet): void {
  const { delivery, spot } = outlet;
  const beds = cells.filter(({ kind, id }) => kind === "bed" && delivery.waters.includes(id));
  if (beds.length > 0) {
    const far = Math.max(...beds.map((cell) => cell.x + Math.min(10, cell.width / 2)));
    runAlong(bench, "cable", delivery.id, outlet.x, far, HOSE_LIFT);
  }
  const battery = cells.find(({ kind, id }) => kind === "power" && id === delivery.poweredBy);
  const start = spot.body.x + spot.body.width;
  if (battery) runAlong(bench, "lead", delivery.id, start, battery.x + battery.width / 2, LEAD_LIFT);
}
