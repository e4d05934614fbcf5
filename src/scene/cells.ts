// Which thing stands in which column: one row where the paper is wide enough, else rows under one another.

import type { Place } from "./place.ts";
import { waterOrder } from "./water-order.ts";

export type CellKind = "roof" | "tank" | "tee" | "power" | "can" | "thing" | "bed";

/** A column of paper: its thing, the roofs over it, and from where to where it goes [px]. */
export type Cell = {
  readonly kind: CellKind;
  readonly id: string;
  readonly roofs: readonly string[];
  readonly x: number;
  readonly width: number;
};

export type Row = { readonly cells: readonly Cell[]; readonly water: boolean };

type Wanted = Omit<Cell, "x" | "width"> & {
  readonly least: number;
  readonly most: number;
  /** Gap to the next column, at least and at most; a wide one where a hose may lie in it. */
  readonly gap: number;
  readonly widestGap: number;
};

export const MARGIN = 14;
const GAP = 10;
const WIDEST_GAP = 64;
const LINE_GAP = { wide: 34, narrow: 12 };
const WIDEST_LINE_GAP = 230;

/** Least and most width of a column: on one wide row, and where rows stand under one another. */
const WIDTHS: Readonly<
  Record<CellKind, { readonly wide: number; readonly narrow: number; readonly most: number }>
> = {
  roof: { wide: 128, narrow: 104, most: 180 },
  tank: { wide: 128, narrow: 74, most: 200 },
  tee: { wide: 60, narrow: 44, most: 80 },
  power: { wide: 116, narrow: 92, most: 160 },
  can: { wide: 96, narrow: 84, most: 130 },
  thing: { wide: 84, narrow: 74, most: 120 },
  bed: { wide: 112, narrow: 104, most: 190 },
};

type RoofsStand = "beside" | "over" | "tiers";

function wanted(
  kind: CellKind,
  id: string,
  wide: boolean,
  roofs: readonly string[],
  stand: RoofsStand,
): Wanted {
  const { wide: roomy, narrow, most } = WIDTHS[kind];
  const each = wide ? roomy : narrow;
  const least = stand === "over" ? Math.max(each, roofs.length * (wide ? 120 : 84)) : each;
  return { kind, id, roofs, least, most: Math.max(most, least), gap: GAP, widestGap: WIDEST_GAP };
}

function waterCells(place: Place, wide: boolean, stand: RoofsStand): readonly Wanted[] {
  const order = waterOrder(place);
  const tees = new Set(place.tees.map((tee) => tee.id));
  const homeless = place.roofs.filter((roof) => roof.drainsTo === null || !order.includes(roof.drainsTo));
  const cells: Wanted[] = homeless.map((roof) => wanted("roof", roof.id, wide, [], stand));
  for (const [index, id] of order.entries()) {
    const roofs = place.roofs.filter((roof) => roof.drainsTo === id).map((roof) => roof.id);
    if (stand === "beside") cells.push(...roofs.map((roof) => wanted("roof", roof, wide, [], stand)));
    const kind = tees.has(id) ? "tee" : "tank";
    const cell = wanted(kind, id, wide, stand === "beside" ? [] : roofs, stand);
    const last = index === order.length - 1;
    const gap = wide ? LINE_GAP.wide : LINE_GAP.narrow;
    cells.push(last ? cell : { ...cell, gap, widestGap: WIDEST_LINE_GAP });
  }
  return cells;
}

function yardCells(
  place: Place,
  wide: boolean,
): { readonly tools: readonly Wanted[]; readonly beds: readonly Wanted[] } {
  const lonely = place.panels.filter(
    (panel) => !place.batteries.some((battery) => battery.id === panel.charges),
  );
  const make = (kind: CellKind) => (part: { readonly id: string }) =>
    wanted(kind, part.id, wide, [], "beside");
  return {
    tools: [
      ...[...place.batteries, ...lonely].map(make("power")),
      ...place.carries.map(make("can")),
      ...place.things.map(make("thing")),
    ],
    beds: place.beds.map(make("bed")),
  };
}

function leastWidth(cells: readonly Wanted[]): number {
  return cells.reduce((sum, cell, index) => sum + cell.least + (index < cells.length - 1 ? cell.gap : 0), 0);
}

/** Shares what is left among columns and gaps, each up to its most; the rest stays at both ends. */
function spread(cells: readonly Wanted[], paper: number): readonly Cell[] {
  const spare = Math.max(0, paper - 2 * MARGIN - leastWidth(cells));
  const gaps = cells.map((cell, index) => (index === cells.length - 1 ? 0 : cell.widestGap - cell.gap));
  const growth = cells.map((cell) => cell.most - cell.least);
  const total = [...gaps, ...growth].reduce((sum, one) => sum + one, 0);
  const share = total > 0 ? Math.min(1, spare / total) : 0;
  let x = MARGIN + (spare - share * total) / 2;
  return cells.map(({ kind, id, roofs, least, gap }, index) => {
    const cell: Cell = { kind, id, roofs, x, width: least + share * (growth[index] ?? 0) };
    x += cell.width + share * (gaps[index] ?? 0) + gap;
    return cell;
  });
}

/** Even rows, as few as there can be. */
function rowsOf(cells: readonly Wanted[], paper: number): readonly (readonly Wanted[])[] {
  const widest = Math.max(1, ...cells.map((cell) => cell.least + cell.gap));
  const most = Math.max(1, Math.floor((paper - 2 * MARGIN + GAP) / widest));
  const count = Math.max(1, Math.ceil(cells.length / most));
  const each = Math.max(1, Math.ceil(cells.length / count));
  return Array.from({ length: Math.ceil(cells.length / each) }, (_, row) =>
    cells.slice(row * each, (row + 1) * each),
  );
}

function waterRows(place: Place, paper: number): readonly (readonly Wanted[])[] {
  for (const stand of ["over", "tiers"] as const) {
    const cells = waterCells(place, false, stand);
    if (leastWidth(cells) <= paper - 2 * MARGIN) return [cells];
  }
  return rowsOf(waterCells(place, false, "tiers"), paper);
}

function yardRows(place: Place, paper: number): readonly (readonly Wanted[])[] {
  const { tools, beds } = yardCells(place, false);
  const all = [...tools, ...beds];
  if (all.length === 0) return [];
  if (leastWidth(all) <= paper - 2 * MARGIN) return [all];
  return [tools, beds].filter((cells) => cells.length > 0).flatMap((cells) => rowsOf(cells, paper));
}

/** The rows of columns for a width of paper [px]; none where there is nothing to draw. */
export function rowsFor(place: Place, paper: number): readonly Row[] {
  const yard = yardCells(place, true);
  for (const stand of ["beside", "over"] as const) {
    const water = waterCells(place, true, stand);
    const all = [...water, ...yard.tools, ...yard.beds];
    if (all.length > 0 && leastWidth(all) <= paper - 2 * MARGIN)
      return [{ cells: spread(all, paper), water: water.length > 0 }];
  }
  const water = waterRows(place, paper).filter((cells) => cells.length > 0);
  return [
    ...water.map((cells) => ({ cells: spread(cells, paper), water: true })),
    ...yardRows(place, paper).map((cells) => ({ cells: spread(cells, paper), water: false })),
  ];
}
