// Which colour a result has: water, power or growth by what it measures. Colour never speaks alone: the unit says it too.

import type { Row } from "../graph/types.ts";
import type { Tone } from "../telling/asked.ts";

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
  share: "growth",
};

/** The tone of a row's number, by its measure. */
export function toneOf(row: Row): Tone | undefined {
  return "measure" in row ? TONES[row.measure] : undefined;
}
