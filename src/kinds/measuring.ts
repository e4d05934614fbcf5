// How a number is best measured: what its room says, else what any number of its measure is measured with.

import type { Row } from "../graph/types.ts";
import type { MeasureName } from "../units/measures.ts";
import type { Measuring } from "./doubtful.ts";
import { KIND_DOUBTS } from "./doubts.ts";

const TAPE: Measuring = { with: "tape", how: "measure it with a tape" };
const FILLED: Measuring = { with: "bucket", how: "fill it by the bucket and count" };
const TIMED: Measuring = { with: "clock", how: "look at the clock the next time" };
const METERED: Measuring = { with: "gauge", how: "put a meter on it" };

const BY_MEASURE: Partial<Record<MeasureName, Measuring>> = {
  length: TAPE,
  height: TAPE,
  distance: TAPE,
  depth: TAPE,
  bore: TAPE,
  area: TAPE,
  volume: FILLED,
  flow: { with: "bucket", how: "time a bucket" },
  duration: TIMED,
  pace: TIMED,
  voltage: METERED,
  current: METERED,
  temperature: { with: "gauge", how: "hang a thermometer there" },
  mass: { with: "gauge", how: "put it on a scale" },
  count: { with: "label", how: "count once more" },
};

/** Null: nothing simple measures it. */
export function measuringOf(kind: string, row: Row): Measuring | null {
  const own = KIND_DOUBTS.get(kind)?.measuring?.[row.name];
  if (own) return own;
  const measure = "measure" in row ? row.measure : undefined;
  return measure === undefined || measure === "text" || measure === "series"
    ? null
    : (BY_MEASURE[measure] ?? null);
}
