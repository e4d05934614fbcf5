// In what a number is held and shown where no measure says so: the user's own lines.

import { BASE_KINDS, type Dimension, sameDimension } from "../units/dimension.ts";
import { MEASURES, type MeasureName } from "../units/measures.ts";
import type { GraphNode } from "./nodes.ts";
import { dimensionOfMeasure, measureOf } from "./rows.ts";

const BASE_UNITS: Readonly<Record<(typeof BASE_KINDS)[number], string>> = {
  length: "m",
  mass: "kg",
  time: "s",
  temperature: "K",
  current: "A",
  angle: "rad",
  money: "money",
};

/** Measures that come first where several have the same dimension. */
const PREFERRED: readonly MeasureName[] = ["factor", "velocity"];

const ALL = [...PREFERRED, ...(Object.keys(MEASURES) as MeasureName[])];

/** The measure that suits a dimension best, or null where there is none. */
function naturalMeasure(dimension: Dimension): MeasureName | null {
  return (
    ALL.find((measure) => {
      const held = dimensionOfMeasure(measure);
      return held !== null && sameDimension(held, dimension);
    }) ?? null
  );
}

/** A dimension as a product of base units: "m3/s2". */
function baseUnits({ powers }: Dimension): string {
  const written = (sign: 1 | -1) =>
    BASE_KINDS.flatMap((kind, index) => {
      const power = (powers[index] ?? 0) * sign;
      return power > 0 ? [`${BASE_UNITS[kind]}${power === 1 ? "" : power}`] : [];
    });
  return [written(1).join(" ") || "1", ...written(-1)].join("/");
}

/** The measure in which a node's number is shown, or null. */
export function shownMeasure(node: GraphNode): MeasureName | null {
  return measureOf(node.row) ?? (node.dimension && naturalMeasure(node.dimension));
}

/** The coherent SI unit of a node's number, "" where it has none. */
export function siUnitOfNode(node: GraphNode | null): string {
  if (!node) return "";
  const measure = shownMeasure(node);
  if (measure) return MEASURES[measure].si;
  return node.dimension ? baseUnits(node.dimension) : "";
}
