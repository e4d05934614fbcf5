// Which color a result has: of its state where it tells one, else water or power by what it measures. Color never speaks
// alone: the unit says it too.

import type { Row } from "../graph/types.ts";
import type { Tone } from "../telling/asked.ts";
import { stateTone } from "../telling/state-tone.ts";

const TONES: Readonly<Record<string, Tone>> = {
  volume: "water",
  yearly_volume: "water",
  flow: "water",
  catch_rate: "water",
  rain: "water",
  depth: "water",
  head: "water",
  span: "water",
  energy: "power",
  power: "power",
  current: "power",
  voltage: "power",
  charge: "power",
};

/** The tone of a row's number as it stands. */
export function toneOf(row: Row, value: unknown): Tone | undefined {
  return stateTone(row.name, value) ?? ("measure" in row ? TONES[row.measure] : undefined);
}
