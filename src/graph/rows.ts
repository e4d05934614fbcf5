// Small questions about rows.

import type { Dimension } from "../units/dimension.ts";
import { MEASURES, type MeasureName } from "../units/measures.ts";
import { parseUnit } from "../units/unit.ts";
import type { Row } from "./types.ts";

/** The measure of a row's number, or null where it has no number or its dimension is the user's. */
export function measureOf(row: Row | null): MeasureName | null {
  if (row?.row === "given" || row?.row === "formula") return row.measure;
  if (row?.row === "gather") return row.measure === "series" || row.how === "list" ? null : row.measure;
  if (row?.row !== "output" || row.measure === "text" || row.measure === "series") return null;
  return row.measure;
}

/** Whether a row may be measured. */
export function isMeasurable(row: Row): boolean {
  return "measurable" in row && row.measurable !== undefined && measureOf(row) !== null;
}

/** The dimension in which a measure is held. */
export function dimensionOfMeasure(measure: MeasureName): Dimension | null {
  return parseUnit(MEASURES[measure].si)?.dimension ?? null;
}
