// Which thing stands in which column of the one row: in the order in which the water flows, whatever the width.

import type { Place } from "./place.ts";
import { humpOf } from "./route.ts";
import { waterOrder } from "./water-order.ts";

export type CellKind = "roof" | "tank" | "tee" | "power" | "can" | "thing" | "bed";

/** A column of paper: its thing, and from where to where it goes [px]. */
export type Cell = {
  readonly kind: CellKind;
  readonly id: string;
  readonly x: number;
  readonly width: number;
};

/** From the narrowest that still shows what it is, over what is comfortable, to the widest [px]. */
type Span = readonly [least: number, wish: number, most: number];

type Wanted = { readonly kind: CellKind; readonly id: string; readonly span: Span; readonly gap: Span };

export type Columns = {
  readonly cells: readonly Cell[];
  /** 1, or less where even the narrowest columns do not fit side by side: everything is that much narrower. */
  readonly squeeze: number;
};

const MARGIN = 8;
const SPANS: Readonly<Record<Exclude<CellKind, "tank">, Span>> = {
  roof: [20, 66, 120],
  tee: [14, 24, 40],
  power: [22, 76, 110],
  can: [20, 60, 90],
  thing: [18, 60, 90],
  bed: [18, 92, 160],
};
const PLAIN_GAP: Span = [3, 8, 26];
/** Room for a hose down a slope, and for a pump's hose beside its tank. */
const HOSE_GAP: Span = [24, 72, 170];
const HUMP_GAP: Span = [34, 90, 200];
const PUMP_GAP: Span = [17, 34, 60];
const PUMPS_APART = 5;
/** Kept clear at both sides of a tank, for its stand. */
const BESIDE_TANK = 4;

const EDGES = [0, 1, 2] as const;
const widest = (a: Span, b: Span): Span => [Math.max(a[0], b[0]), Math.max(a[1], b[1]), Math.max(a[2], b[2])];

/** The gap right of a tank: for the hoses that leave it, and for those that come in from the right. */
function gapAfter(place: Place, id: string, isLast: boolean): Span {
  const pumps = place.deliveries.filter((delivery) => delivery.from === id).length;
  const lines = place.lines.filter((line) => line.from === id || line.to === id);
  let gap = isLast ? PLAIN_GAP : HOSE_GAP;
  if (lines.some((line) => line.from === id && humpOf(line))) gap = widest(gap, HUMP_GAP);
  if (pumps > 0) {
    const more = (pumps - 1) * PUMPS_APART;
    gap = widest(gap, [PUMP_GAP[0] + more, PUMP_GAP[1] + more, PUMP_GAP[2]]);
  }
  return lines.length > 0 || place.draws.some((draw) => draw.from === id) ? widest(gap, PUMP_GAP) : gap;
}

function waterCells(place: Place, breadths: ReadonlyMap<string, number>): readonly Wanted[] {
  const order = waterOrder(place);
  const tees = new Set(place.tees.map((tee) => tee.id));
  const roof = ({ id }: { readonly id: string }): Wanted => ({
    kind: "roof",
    id,
    span: SPANS.roof,
    gap: PLAIN_GAP,
  });
  const homeless = place.roofs.filter(({ drainsTo }) => drainsTo === null || !order.includes(drainsTo));
  return [
    ...homeless.map(roof),
    ...order.flatMap((id, index): readonly Wanted[] => {
      const breadth = (breadths.get(id) ?? 12) + 2 * BESIDE_TANK;
      const span: Span = tees.has(id) ? SPANS.tee : [breadth, breadth, breadth];
      const cell: Wanted = {
        kind: tees.has(id) ? "tee" : "tank",
        id,
        span,
        gap: gapAfter(place, id, index === order.length - 1),
      };
      return [...place.roofs.filter(({ drainsTo }) => drainsTo === id).map(roof), cell];
    }),
  ];
}

function yardCells(place: Place): readonly Wanted[] {
  const lonely = place.panels.filter(
    (panel) => !place.batteries.some((battery) => battery.id === panel.charges),
  );
  const make =
    (kind: Exclude<CellKind, "tank">) =>
    ({ id }: { readonly id: string }): Wanted => ({ kind, id, span: SPANS[kind], gap: PLAIN_GAP });
  return [
    ...[...place.batteries, ...lonely].map(make("power")),
    ...place.carries.map(make("can")),
    ...place.things.map(make("thing")),
    ...place.beds.map(make("bed")),
  ];
}

/** Beyond it few things would stand lost far apart. */
const MOST_STRETCH = 2.2;
const isFirm = (span: Span): boolean => span[0] === span[2];

/** Widths between two steps of their spans, so that all together they fill the room as far as they may. */
function shared(
  spans: readonly Span[],
  room: number,
): { readonly widths: number[]; readonly squeeze: number } {
  const total = EDGES.map((edge) => spans.reduce((sum, span) => sum + span[edge], 0));
  const [least = 0, wish = 0, most = 0] = total;
  if (least >= room) {
    const squeeze = least > 0 ? room / least : 1;
    return { widths: spans.map(([narrow]) => narrow * squeeze), squeeze };
  }
  // On very wide paper everything but the tanks, whose breadth tells what they hold, takes its share of what is over.
  if (most < room) {
    const firm = spans.reduce((sum, span) => sum + (isFirm(span) ? span[2] : 0), 0);
    const stretch = most > firm ? Math.min(MOST_STRETCH, (room - firm) / (most - firm)) : 1;
    return { widths: spans.map((span) => span[2] * (isFirm(span) ? 1 : stretch)), squeeze: 1 };
  }
  const [from, to] = wish >= room ? ([0, 1] as const) : ([1, 2] as const);
  const [low, high] = wish >= room ? [least, wish] : [wish, most];
  const share = high > low ? Math.min(1, (room - low) / (high - low)) : 0;
  return { widths: spans.map((span) => span[from] + share * (span[to] - span[from])), squeeze: 1 };
}

/**
 * The columns of the one row, from left to right.
 *
 * @param width of the paper [px]
 * @param breadths of all vessels of a tank together, by its id [px]
 */
export function columnsFor(place: Place, width: number, breadths: ReadonlyMap<string, number>): Columns {
  const wanted = [...waterCells(place, breadths), ...yardCells(place)];
  const spans = wanted.flatMap(({ span, gap }, index) =>
    index === wanted.length - 1 ? [span] : [span, gap],
  );
  const room = width - 2 * MARGIN;
  const { widths, squeeze } = shared(spans, room);
  const taken = widths.reduce((sum, one) => sum + one, 0);
  let x = MARGIN + Math.max(0, room - taken) / 2;
  const cells = wanted.map(({ kind, id }, index): Cell => {
    const cell = { kind, id, x, width: widths[2 * index] ?? 0 };
    x += cell.width + (widths[2 * index + 1] ?? 0);
    return cell;
  });
  return { cells, squeeze };
}
