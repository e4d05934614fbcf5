// How large a number of each kind may be where its row sets no limit of its own. Far beyond any garden, so that they refuse
// nothing but slips and mischief: numbers with which sums would run for ever or lose all meaning. Common practice, no source.

import type { Measurable } from "../graph/measurable.ts";
import { COMMON_YEAR, DAY } from "../units/constants.ts";
import type { MeasureName } from "../units/measures.ts";

/** The most, in the SI unit of the measure; angles and factors have none in common, so their rows say. */
const MOST: Partial<Record<MeasureName, number>> = {
  length: 1000,
  height: 1000,
  distance: 10_000,
  head: 100,
  bore: 1,
  depth: 30,
  rain: 5,
  evaporation: 0.1 / DAY,
  temperature: 373.15,
  roughness: 0.005,
  area: 100_000,
  opening: 0.1,
  volume: 100_000,
  flow: 1,
  mass: 1000,
  duration: 30 * DAY,
  clock: DAY,
  span: 100 * COMMON_YEAR * DAY,
  share: 1,
  count: 100_000,
  year: 9999,
  voltage: 1000,
  current: 1000,
  charge: 1e8,
  resistance: 1000,
  power: 100_000,
  money: 1e9,
};

/** The least, where that is not 0. */
const LEAST: Partial<Record<MeasureName, number>> = { height: -1000, temperature: 173.15 };

type Limits = { readonly min?: number; readonly max?: number };

/** The least and the most that a number of a measure may be; one of them is left out where its row has to say. */
export function limitsOf(measure: MeasureName): Limits {
  const most = MOST[measure];
  return { min: LEAST[measure] ?? 0, ...(most === undefined ? {} : { max: most }) };
}

/** What may be measured of a row that is worked out, within the same limits; a row that says other ones keeps them. */
export function measuredWithin(
  measure: MeasureName | "text" | "series",
  { measurable }: { readonly measurable?: Measurable },
): { readonly measurable?: Measurable } {
  if (!measurable || measure === "text" || measure === "series") return {};
  return { measurable: { ...limitsOf(measure), ...measurable } };
}
