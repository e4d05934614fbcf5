// The pumps of a place that is laid out from a few counts: one in each tank that beds are watered from.

import { type LaidPart, type LaidUnits, numbered, pumpedFrom, type Wish } from "../lay-out.ts";

/** A small pump at the end of a garden hose, until the user times a bucket: common practice, no source. */
const BUCKET = {
  us: {
    bucket_volume: { value: 5, unit: "gal", from: "default" },
    bucket_time: { value: 90, unit: "s", from: "default" },
  },
  metric: {
    bucket_volume: { value: 10, unit: "L", from: "default" },
    bucket_time: { value: 50, unit: "s", from: "default" },
  },
} as const;

export function laidDeliveries(wish: Wish, system: LaidUnits): readonly LaidPart[] {
  return pumpedFrom(wish).map((from, at) => ({
    key: `pump${at}`,
    title: numbered("Pump and hose", at),
    givens: BUCKET[system],
    links: { from, powered_by: "battery" },
  }));
}
