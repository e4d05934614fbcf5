// The whole place on one sheet: one order at every width, one ground line, true heights; only the horizontal scale gives.

import type { Shape as Form } from "../kinds/kind.ts";
import { type Bench, type Spot, yOf } from "./bench.ts";
import { columnsFor } from "./columns.ts";
import { FRONT, type Grade } from "./draw-hoses.ts";
import { drawEverything } from "./draw-place.ts";
import { heldOutline } from "./draw-tanks.ts";
import { type Ground, pathOf } from "./ground.ts";
import { groundOf } from "./ground-line.ts";
import { hitsOf } from "./hits.ts";
import type { Wanted } from "./label-words.ts";
import { placeLabels } from "./labels.ts";
import { DISC, newPaper, type Paper, round } from "./paper.ts";
import type { Box, Label, LabelWay, Part, Place, Shape } from "./place.ts";
import { reachesOf } from "./reaches.ts";
import { newRoom, type Room } from "./room.ts";
import { around, rect } from "./strokes.ts";
import { breadthOf, perAreaFor } from "./tank-sizes.ts";
import type { Type } from "./text-block.ts";
import { type Upright, uprightFor } from "./uprights.ts";

export type DrawnPart = {
  readonly id: string;
  readonly shape: Form;
  readonly part: Part;
  /** Under the water, and over it. */
  readonly shapes: readonly Shape[];
  readonly walls: readonly Shape[];
  readonly labels: readonly Label[];
  /** The room its thing takes, and the boxes and strokes that answer to a touch. */
  readonly box: Box;
  readonly hits: readonly Box[];
  readonly strokes: readonly string[];
  /** Where its disc of trouble stands. */
  readonly mark: { readonly x: number; readonly y: number } | null;
};

export type DrawnGround = { readonly line: string; readonly area: string };

/** While something moves heights keep their scale and words their places, so that the paper does not move under the finger. */
export type Kept = Upright & { readonly ways: ReadonlyMap<string, readonly LabelWay[]> };

export type Layout = {
  readonly width: number;
  readonly height: number;
  readonly type: Type;
  /** In the order of the flow; see `PAINTED` for what lies over what. */
  readonly parts: readonly DrawnPart[];
  readonly ground: DrawnGround | null;
  readonly front: readonly Shape[];
  readonly spots: ReadonlyMap<string, Spot>;
  readonly grades: readonly Grade[];
  /** Tanks as they were held: their outline, dashed, and their vessels, by the same scales. */
  readonly held: ReadonlyMap<string, { readonly vessels: readonly Box[]; readonly shape: Shape }>;
  readonly kept: Kept;
};

/** The paper's size [px], whether it is a phone's, the open part, what is held, and what scales to keep. */
export type PaperSize = {
  readonly width: number;
  readonly height: number;
  readonly small: boolean;
  readonly open?: string | null;
  readonly held?: Place | null;
  readonly kept?: Kept | null;
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
/** Whose words choose their place first. */
const FIRST_TO_SPEAK: readonly Form[] = [
  "tank",
  "bed",
  "delivery",
  "line",
  "battery",
  "roof",
  "carry",
  "panel",
  "draw",
  "tee",
  "thing",
];

const ROOMY = 1000;
const typeFor = ({ width, small }: PaperSize): Type =>
  width >= ROOMY
    ? { size: 14, leading: 17 }
    : small
      ? { size: 12.5, leading: 15 }
      : { size: 13, leading: 16 };
const CORNER = { width: 92, height: 30 };
/** Under the lowest ground there is at least so much soil for words [px], or such a share of the zone. */
const SOIL = { small: 36, full: 58 };
const SOIL_SHARE = { small: 0.26, full: 0.27 };
/** However high the zone: three rows of words and a little [px]. */
const MOST_SOIL = 150;

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

/** Marks all that is drawn, and all that the day may draw, as taken. */
function fillRoom(room: Room, bench: Bench, grades: readonly Grade[]): void {
  const { paper } = bench;
  for (const box of paper.taken) room.take(box, 2);
  for (const shapes of paper.shapes.values()) for (const { d } of shapes) room.takePath(d);
  room.takePath(pathOf(bench.ground), 1);
  for (const { x, y } of paper.marks.values())
    room.take({ x: x - DISC, y: y - DISC, width: 2 * DISC, height: 2 * DISC }, 1);
  // A grade line goes up and down with the water that it starts from.
  for (const { tank, x, end } of grades) {
    const spot = bench.spots.get(tank);
    if (!spot) continue;
    for (let y = spot.body.y; y <= spot.floorY; y += 4) room.takeLine([x, y], end);
  }
}

function labelsOf(bench: Bench, sheet: PaperSize, grades: readonly Grade[]): readonly Label[] {
  const room = newRoom(sheet.width, sheet.height);
  fillRoom(room, bench, grades);
  // The corner of what leads to the same in words.
  if (!sheet.small) room.take({ x: sheet.width - CORNER.width, y: 0, ...CORNER });
  const byShape = new Map(shapesOf(bench.place));
  const wanted = FIRST_TO_SPEAK.map((shape) =>
    (byShape.get(shape) ?? []).flatMap((part): readonly Wanted[] => {
      const anchors = bench.paper.anchors.get(part.id) ?? [];
      return anchors.length > 0 ? [{ part, anchors }] : [];
    }),
  );
  const { width, small, open = null } = sheet;
  const ways = sheet.kept?.ways ?? null;
  return placeLabels(wanted, { room, width, ground: bench.ground, type: typeFor(sheet), small, open, ways });
}

function waysOf(labels: readonly Label[]): Kept["ways"] {
  const ways = new Map<string, LabelWay[]>();
  for (const { of, way } of labels) ways.set(of, [...(ways.get(of) ?? []), way]);
  return ways;
}

function drawnParts(
  place: Place,
  paper: Paper,
  labels: readonly Label[],
  sheet: PaperSize,
): readonly DrawnPart[] {
  const touched = hitsOf(paper, sheet);
  return shapesOf(place).flatMap(([shape, parts]) =>
    parts.flatMap((part): readonly DrawnPart[] => {
      const taken = paper.hits.get(part.id) ?? [];
      if (taken.length === 0) return [];
      const shapes = paper.shapes.get(part.id) ?? [];
      return [
        {
          id: part.id,
          shape,
          part,
          shapes: shapes.filter((one) => one.look !== "wall"),
          walls: shapes.filter((one) => one.look === "wall"),
          labels: labels.filter((label) => label.of === part.id),
          box: around(taken),
          hits: touched.get(part.id) ?? taken,
          strokes: shapes.filter((one) => one.look === "hose").map((one) => one.d),
          mark: paper.marks.get(part.id) ?? null,
        },
      ];
    }),
  );
}

/** Of each tank as it is and as it was held, the broader one counts for its column. */
function breadthsOf(place: Place, held: Place | null, perArea: number): ReadonlyMap<string, number> {
  const before = new Map((held?.tanks ?? []).map((tank) => [tank.id, tank]));
  return new Map(
    place.tanks.map((tank) => {
      const was = before.get(tank.id);
      const wholes = [tank, ...(was ? [was] : [])].map((one) => breadthOf(one, perArea).whole);
      return [tank.id, Math.max(...wholes)];
    }),
  );
}

/** Tanks whose size or place was another when it was held; what changed by less than shows is not drawn. */
function heldOf(bench: Bench, held: Place | null): Layout["held"] {
  const outlines = new Map<string, { vessels: readonly Box[]; shape: Shape }>();
  for (const tank of held?.tanks ?? []) {
    const spot = bench.spots.get(tank.id);
    if (!spot || spot.vessels.length === 0) continue;
    const { vessels, shape } = heldOutline(bench, tank, spot);
    const [was, now] = [around(vessels), spot.body];
    const moved = [was.x - now.x, was.y - now.y, was.width - now.width, was.height - now.height];
    const isSame = vessels.length === spot.vessels.length && moved.every((px) => Math.abs(px) < 1);
    outlines.set(tank.id, { vessels, shape: isSame ? { ...shape, d: "" } : shape });
  }
  return outlines;
}

function groundShape(ground: Ground, { width, height }: PaperSize): DrawnGround {
  const line = pathOf(ground);
  return { line, area: `${line}L${round(width)},${round(height)}L0,${round(height)}Z` };
}

/** The scales, the columns and the ground on which everything is drawn. */
function benchFor(
  place: Place,
  sheet: PaperSize,
): Bench & { readonly cells: ReturnType<typeof columnsFor>["cells"] } {
  const { width, height, small, held = null, kept = null } = sheet;
  const { reaches, lowest } = reachesOf(place, held, small);
  const share = (small ? SOIL_SHARE.small : SOIL_SHARE.full) * height;
  const soil = Math.max(small ? SOIL.small : SOIL.full, Math.min(share, MOST_SOIL));
  const upright = uprightFor(reaches, lowest, height, soil, kept);
  const perArea = perAreaFor(place.tanks, held?.tanks ?? [], width, upright.scale);
  const { cells, squeeze } = columnsFor(place, width, breadthsOf(place, held, perArea));
  const ground = groundOf(place, cells, width, (one) => yOf(upright, one));
  const rest = { place, paper: newPaper(), width, height, small, ...upright, squeeze, ground };
  return { ...rest, perArea, spots: new Map(), cells };
}

/** Lays the place out on a sheet of paper. */
export function layoutPlace(place: Place, sheet: PaperSize): Layout {
  const bench = benchFor(place, sheet);
  const { cells, scale, base, paper } = bench;
  const grades = drawEverything(bench, cells);
  const held = heldOf(bench, sheet.held ?? null);
  const labels = labelsOf(bench, sheet, grades);
  return {
    width: sheet.width,
    height: sheet.height,
    type: typeFor(sheet),
    parts: drawnParts(place, paper, labels, sheet),
    ground: cells.length > 0 ? groundShape(bench.ground, sheet) : null,
    front: paper.shapes.get(FRONT) ?? [],
    spots: bench.spots,
    grades,
    held,
    kept: { scale, base, ways: waysOf(labels) },
  };
}

/** A touchable outline of a part's boxes. */
export const hitPath = (part: DrawnPart): string => part.hits.map(rect).join("");
