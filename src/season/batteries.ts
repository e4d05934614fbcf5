// The batteries of a run: what each holds, and what came, went and was lost on each day.

import type { BatteryPart } from "./input.ts";
import { newTally, type Tally } from "./tally.ts";

export type Batteries = {
  readonly parts: readonly BatteryPart[];
  /** Charge of the one at the pump, of a second one at the panel, and what can be used of one [J]. */
  readonly charge: Float64Array;
  readonly spare: Float64Array;
  readonly usable: Float64Array;
  /** Lowest after a watering so far [J]; drawn today [J]; whether a watering stopped today for want of charge. */
  readonly lowest: Float64Array;
  readonly drawn: Float64Array;
  readonly short: Uint8Array;
  readonly daysShort: readonly Tally[];
  readonly books: readonly ChargeBook[];
};

/** One battery's days [J]. */
export type ChargeBook = {
  /** In it, with a second one, each evening after charging. */
  readonly stored: Float64Array;
  /** What came from panel or house, what pumps took, and what turned to heat or leaked away. */
  readonly entered: Float64Array;
  readonly used: Float64Array;
  readonly lost: Float64Array;
};

/**
 * Batteries ready to run, charged by their start share.
 *
 * @param spans whole seasons and years, and days of the record
 */
export function readyBatteries(
  parts: readonly BatteryPart[],
  spans: { readonly seasons: number; readonly years: number; readonly length: number },
): Batteries {
  const charge = Float64Array.from(parts, ({ usable, startShare }) => usable * startShare);
  const series = () => new Float64Array(spans.length);
  return {
    parts,
    charge,
    spare: charge.map((held, place) => (parts[place]?.charged === "swapped" ? held : 0)),
    usable: Float64Array.from(parts, ({ usable }) => usable),
    lowest: Float64Array.from(charge),
    drawn: new Float64Array(parts.length),
    short: new Uint8Array(parts.length),
    daysShort: parts.map(() => newTally(spans.seasons, spans.years)),
    books: parts.map(() => ({ stored: series(), entered: series(), used: series(), lost: series() })),
  };
}
