// What is read along a height with a finger: a tank by a stick, the rain gauge by its marks; the amounts that grow out of it.

import { type Vessel, levelAt as vesselLevelAt, volumeAt } from "../physics/vessel.ts";
import { roundedDown } from "../units/scale.ts";
import { tidy } from "../units/tidy.ts";
import { fromSi, toSi } from "../units/unit.ts";

/** Steps in which a stick in a tank is read: half an inch, or a centimeter. */
const DIP_STEPS = { in: 0.5, cm: 1 } as const;
/** Steps and whole height of a rain gauge, as those sold are marked: common practice, no source. */
const GAUGES = { in: { step: 0.05, most: 2.5 }, mm: { step: 1, most: 60 } } as const;

/** What is read, in which unit and steps, how high it is [m]. */
export type Stick = {
  readonly unit: "in" | "cm" | "mm";
  readonly step: number;
  readonly height: number;
};

/** The stick of a tank. */
export const tankStick = ({ height }: Vessel, unit: keyof typeof DIP_STEPS): Stick => ({
  unit,
  step: DIP_STEPS[unit],
  height,
});

/** The marks of a gauge. */
export const gaugeStick = (unit: keyof typeof GAUGES): Stick => ({
  unit,
  step: GAUGES[unit].step,
  height: toSi(GAUGES[unit].most, unit),
});

export type Level = {
  /** As it is read, in the stick's unit. */
  readonly value: number;
  /** Of the height, 0 at the floor. */
  readonly share: number;
  /** [m] */
  readonly depth: number;
};

/** The highest that can be read, in the stick's unit. */
export const mostOf = ({ unit, step, height }: Stick): number =>
  tidy(Math.floor(fromSi(height, unit) / step + 1e-9) * step);

/** The level nearest to a depth [m], within the height, on a step of the stick. */
export function levelAt(stick: Stick, depth: number): Level {
  const { unit, step, height } = stick;
  const steps = Math.round(fromSi(depth, unit) / step);
  const value = Math.min(mostOf(stick), Math.max(0, tidy(steps * step)));
  const read = Math.min(height, toSi(value, unit));
  return { value, share: read / height, depth: read };
}

/** The level a number of steps further up. */
export const levelBy = (stick: Stick, { value }: Level, steps: number): Level =>
  levelAt(stick, toSi(value + steps * stick.step, stick.unit));

/** The level where a grip stands after it was moved by a share of the drawn height. */
export const levelMoved = (stick: Stick, from: Level, by: number): Level =>
  levelAt(stick, from.depth + by * stick.height);

/** What a tank holds at a level [m3]. */
export const heldAt = (vessel: Vessel, { depth }: Level): number => volumeAt(vessel, depth);

/** The same of whatever a tank's card says of its vessel. */
export const heldAtDepth = (vessel: unknown, depth: number): number => volumeAt(vessel as Vessel, depth);

/** How high a volume stands in a tank, more than it holds up to its rim [m]. */
export const depthHolding = (vessel: Vessel, volume: number): number =>
  vesselLevelAt(vessel, Math.min(vessel.volume, Math.max(0, volume)));

/** "1½" of inches read in halves, else the number as it is. */
export function readAs(value: number, { step }: Pick<Stick, "step">): string {
  if (step !== DIP_STEPS.in) return String(value);
  const whole = Math.floor(value);
  if (whole === value) return String(value);
  return whole === 0 ? "½" : `${whole}½`;
}

export type Mark = { readonly share: number; readonly label: string };

/** At least so many numbers stand along a height. */
const LABELS = 2.5;

/** Marks along a height, from above its floor to below its rim; every other one has its number. */
export function marksOf({ unit, height }: Stick): readonly Mark[] {
  const most = fromSi(height, unit);
  const apart = roundedDown(most / LABELS) / 2;
  const count = Math.ceil(most / apart - 0.4) - 1;
  return Array.from({ length: Math.max(0, count) }, (_, at) => ({
    share: ((at + 1) * apart) / most,
    label: at % 2 === 1 ? String(tidy((at + 1) * apart)) : "",
  }));
}

/** Figures in which an amount is said and noted: what a can or a glance tells. */
const SAID_FIGURES = 2;

/** An amount as a grower would say it, in a unit: what the button says is what is noted. */
export const amountSaid = (si: number, unit: string): number =>
  Number(fromSi(si, unit).toPrecision(SAID_FIGURES));
