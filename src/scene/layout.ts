// The whole place on a board of paper: rows one under another, hoses from row to row, and each part as it is drawn.

import type { Shape as Form } from "../kinds/kind.ts";
import type { Spot } from "./bench.ts";
import { type Cell, type Row, rowsFor } from "./cells.ts";
import { FRONT, type Grade } from "./draw-hoses.ts";
import { deepest, pathOf } from "./ground.ts";
import { joinRows } from "./join-rows.ts";
import { type DrawingBoard, type LaidRow, layRow, scaleFor } from "./lay-row.ts";
import { extent, newPaper, type Paper, round } from "./paper.ts";
import type { Box, Label, Part, Place, Shape } from "./place.ts";
import { around, rect } from "./strokes.ts";
import type { Type } from "./text-block.ts";

export type DrawnPart = {
  readonly id: string;
  readonly shape: Form;
  readonly part: Part;
  /** Under the water, and over it. */
  readonly shapes: readonly Shape[];
  readonly walls: readonly Shape[];
  readonly labels: readonly Label[];
  /** The room it takes with its words, and the boxes and strokes that answer to a touch. */
  readonly box: Box;
  readonly hits: readonly Box[];
  readonly strokes: readonly string[];
  readonly mark: { readonly x: number; readonly y: number } | null;
};

export type DrawnGround = { readonly line: string; readonly area: string };

export type Layout = {
  readonly width: number;
  readonly height: number;
  readonly type: Type;
  /** In the order of the flow; see `PAINTED` for what lies over what. */
  readonly parts: readonly DrawnPart[];
  readonly grounds: readonly DrawnGround[];
  readonly front: readonly Shape[];
  readonly spots: ReadonlyMap<string, Spot>;
  readonly grades: readonly Grade[];
  /** Of the tanks' heights [px/m]. */
  readonly scale: number;
};

/** From the back to the front. */
export const PAINTED: readonly Form[] = [
  "line",
  "delivery",
  "draw",
  "roof",
  "tank",
  "tee",
  "panel",
  "battery",
  "carry",
  "thing",
  "bed",
];

const WIDE = 720;
const PAD = 12;
const LEAST_SOIL = 34;

const typeFor = (width: number): Type =>
  width < WIDE ? { size: 13, leading: 16 } : { size: 14.5, leading: 18 };

type Made = { readonly row: LaidRow; readonly top: number; readonly bottom: number };

function bottomOf(laid: LaidRow, paper: Paper, width: number): number {
  return Math.max(extent(paper).bottom + 4, deepest(laid.bench.ground, 0, width) + LEAST_SOIL);
}

/** Lays a row once to see how much room it takes, then where it belongs. */
function place(board: DrawingBoard, row: Row, number: number, wide: boolean, top: number): Made {
  const trial = { ...board, paper: newPaper(), spots: new Map(board.spots) };
  const tried = layRow(trial, row, number, wide, 0);
  const room = extent(trial.paper);
  const highest = Math.min(room.top, ...tried.bench.ground.map(([, y]) => y));
  const base = top + PAD - highest;
  const laid = layRow(board, row, number, wide, base);
  return { row: laid, top, bottom: base + bottomOf(tried, trial.paper, board.width) };
}

function groundsOf(made: readonly Made[], width: number): readonly DrawnGround[] {
  return made.map(({ row, bottom }) => {
    const line = pathOf(row.bench.ground);
    return { line, area: `${line}L${width},${round(bottom)}L0,${round(bottom)}Z` };
  });
}

function shapesOf(place: Place): readonly (readonly [Form, readonly Part[]])[] {
  return [
    ["roof", place.roofs],
    ["tank", place.tanks],
    ["tee", place.tees],
    ["line", place.lines],
    ["delivery", place.deliveries],
    ["draw", place.draws],
    ["carry", place.carries],
    ["battery", place.batteries],
    ["panel", place.panels],
    ["bed", place.beds],
    ["thing", place.things],
  ];
}

function drawnParts(place: Place, paper: Paper): readonly DrawnPart[] {
  return shapesOf(place).flatMap(([shape, parts]) =>
    parts.flatMap((part) => {
      const hits = paper.hits.get(part.id) ?? [];
      if (hits.length === 0) return [];
      const shapes = paper.shapes.get(part.id) ?? [];
      return [
        {
          id: part.id,
          shape,
          part,
          shapes: shapes.filter((shape) => shape.look !== "wall"),
          walls: shapes.filter((shape) => shape.look === "wall"),
          labels: paper.labels.filter((label) => label.of === part.id),
          box: around(hits),
          hits,
          strokes: shapes.filter((shape) => shape.look === "hose").map((shape) => shape.d),
          mark: paper.marks.get(part.id) ?? null,
        },
      ];
    }),
  );
}

/** Tanks on rows of their own share one scale, so that they can be compared. */
function sharedScale(place: Place, rows: readonly Row[], wide: boolean): number {
  const water: readonly Cell[] = rows.filter((row) => row.water).flatMap((row) => row.cells);
  return scaleFor(place, water, wide);
}

/**
 * Lays the place out for a width of paper.
 *
 * @param width of the paper [px]
 * @param scale kept while a tank is dragged, so that the paper does not move under the finger [px/m]
 */
export function layoutPlace(placeGiven: Place, width: number, scale: number | null = null): Layout {
  const rows = rowsFor(placeGiven, width);
  const wide = width >= WIDE;
  const used = scale ?? sharedScale(placeGiven, rows, wide);
  const type = typeFor(width);
  const board: DrawingBoard = {
    place: placeGiven,
    paper: newPaper(),
    width,
    type,
    spots: new Map(),
    scale: used,
  };
  const made: Made[] = [];
  let top = 0;
  for (const [number, row] of rows.entries()) {
    const next = place(board, row, number, wide, top);
    made.push(next);
    top = next.bottom;
  }
  joinRows(
    board,
    made.map((one) => one.row),
  );
  return {
    width,
    height: Math.ceil(top),
    type,
    parts: drawnParts(placeGiven, board.paper),
    grounds: groundsOf(made, width),
    front: board.paper.shapes.get(FRONT) ?? [],
    spots: board.spots,
    grades: made.flatMap((one) => one.row.grades),
    scale: used,
  };
}

/** A touchable outline of a part's boxes. */
export const hitPath = (part: DrawnPart): string => part.hits.map(rect).join("");
