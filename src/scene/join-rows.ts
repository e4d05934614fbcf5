// Hoses, leads and lines that go on from where they leave their tank: along the ground, and down the edge to another row.

import type { Cell } from "./cells.ts";
import { type Outlet, runAlong } from "./draw-hoses.ts";
import { groundAt } from "./ground.ts";
import type { DrawingBoard, LaidRow } from "./lay-row.ts";
import { draw, round } from "./paper.ts";

const HOSE_LIFT = 3;
const LEAD_LIFT = 9;
/** Lanes down the right edge, outside all words. */
const LANES = 4;
const LANE = 3;

type Goal = { readonly row: LaidRow; readonly x: number };

const laneX = (width: number, lane: number): number => width - 2 - (lane % LANES) * LANE;

/** From a place in one row to places in others: to the edge, down it, and along the ground there. */
function overEdge(
  from: Goal,
  goals: readonly Goal[],
  look: string,
  id: string,
  lift: number,
  lane: number,
): void {
  const last = goals[goals.length - 1];
  if (!last) return;
  const { bench } = from.row;
  const edge = laneX(bench.width, lane);
  const start = groundAt(bench.ground, edge) - lift;
  const end = groundAt(last.row.bench.ground, edge) - lift;
  runAlong(bench, look, id, from.x, edge, lift);
  draw(bench.paper, id, look, `M${round(edge)},${round(start)}V${round(end)}`);
  for (const goal of goals) runAlong(goal.row.bench, look, id, edge, goal.x, lift);
}

/** Leftmost column of each row that a test picks. */
function goalsOf(
  rows: readonly LaidRow[],
  wanted: (cell: Cell) => boolean,
  at: (cell: Cell) => number,
): readonly Goal[] {
  return rows.flatMap((row) => {
    const cells = row.cells.filter(wanted);
    return cells.length > 0 ? [{ row, x: Math.min(...cells.map(at)) }] : [];
  });
}

function runHose(rows: readonly LaidRow[], home: LaidRow, outlet: Outlet, lane: number): void {
  const { delivery } = outlet;
  const watered = (cell: Cell): boolean => cell.kind === "bed" && delivery.waters.includes(cell.id);
  const near = home.cells.filter(watered).map((cell) => cell.x + 10);
  if (near.length > 0) runAlong(home.bench, "cable", delivery.id, outlet.x, Math.max(...near), HOSE_LIFT);
  const far = goalsOf(
    rows.filter((row) => row !== home),
    watered,
    (cell) => cell.x + cell.width / 2,
  );
  overEdge({ row: home, x: outlet.x }, far, "cable", delivery.id, HOSE_LIFT, lane);
}

function runLead(rows: readonly LaidRow[], home: LaidRow, outlet: Outlet, lane: number): void {
  const { delivery, spot } = outlet;
  const battery = (cell: Cell): boolean => cell.kind === "power" && cell.id === delivery.poweredBy;
  const start = spot.body.x + spot.body.width;
  const near = home.cells.find(battery);
  if (near) {
    runAlong(home.bench, "lead", delivery.id, start, near.x + near.width / 2 - 19, LEAD_LIFT);
    return;
  }
  const goals = goalsOf(rows, battery, (cell) => cell.x + cell.width / 2 + 19);
  overEdge({ row: home, x: start }, goals, "lead", delivery.id, LEAD_LIFT, lane);
}

/** Draws everything that goes on from its tank, within a row or to another. */
export function joinRows(board: DrawingBoard, rows: readonly LaidRow[]): void {
  let lane = 0;
  for (const row of rows) {
    for (const outlet of row.outlets) {
      runHose(rows, row, outlet, lane);
      runLead(rows, row, outlet, lane + 1);
      lane += 2;
    }
  }
  for (const line of board.place.lines) {
    const [from, to] = [board.spots.get(line.from ?? ""), board.spots.get(line.to ?? "")];
    const [home, goal] = [rows[from?.row ?? -1], rows[to?.row ?? -1]];
    if (!from || !to || !home || !goal || home === goal) continue;
    const start = { row: home, x: from.body.x + from.body.width };
    overEdge(start, [{ row: goal, x: to.body.x + to.body.width }], "cable", line.id, HOSE_LIFT, lane);
    lane++;
  }
}
