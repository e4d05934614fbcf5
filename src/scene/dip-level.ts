// A tank as it is dipped with a finger: from where the grip stands to the depth that is read, and back.

import { type Vessel, volumeAt } from "../physics/vessel.ts";
import { fromSi, toSi } from "../units/unit.ts";

/** Steps in which a stick is read: half an inch, or a centimetre. */
const STEPS = { in: 0.5, cm: 1 } as const;

export type DipUnit = keyof typeof STEPS;

/** A step of the stick, as it is written. */
export const stepOf = (unit: DipUnit): string => (unit === "in" ? "½" : String(STEPS[unit]));

export type Dip = {
  /** As it is read, in its unit. */
  readonly value: number;
  readonly unit: DipUnit;
  /** Of the tank's height, 0 at its floor. */
  readonly share: number;
  /** [m] and [m3] */
  readonly depth: number;
  readonly volume: number;
};

/** The dip nearest to a depth [m], within the tank, on a step of the stick. */
export function dipAt(vessel: Vessel, depth: number, unit: DipUnit): Dip {
  const step = STEPS[unit];
  const most = Math.floor(fromSi(vessel.height, unit) / step + 1e-9) * step;
  const value = Math.min(most, Math.max(0, Math.round(fromSi(depth, unit) / step) * step));
  const read = Math.min(vessel.height, toSi(value, unit));
  return { value, unit, share: read / vessel.height, depth: read, volume: volumeAt(vessel, read) };
}

/** The dip a number of steps further up. */
export const dipBy = (vessel: Vessel, dip: Dip, steps: number): Dip =>
  dipAt(vessel, toSi(dip.value + steps * STEPS[dip.unit], dip.unit), dip.unit);

/** The dip where a grip stands after it was moved by a share of the drawn height. */
export const dipMoved = (vessel: Vessel, from: Dip, by: number): Dip =>
  dipAt(vessel, from.depth + by * vessel.height, from.unit);
