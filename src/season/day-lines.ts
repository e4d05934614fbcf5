// What to water on each day of a plan: one line a day and a bed, with the goes in which it is done.

import type { DayBound } from "../network/bounds.ts";
import type { BedDay, Portion } from "./day-log.ts";

/** Water by one means at one time: by its delivery or carry, after so long from the hour of watering on. */
export type Go = Omit<Portion, "id"> & { readonly by: string };

export type DayLine = {
  /** [days since 1970-01-01] */
  readonly day: number;
  readonly bed: string;
  /** Water to give [m3], by which delivery or carry most of it, running or carrying time [s], and rounds with cans. */
  readonly volume: number;
  readonly by: string;
  readonly time: number;
  readonly trips: number;
  /** One's own time: setting up, holding the hose, carrying [s]. */
  readonly hands: number;
  /** Times that a tank is drawn from as full as it is then, and how long after the hour of watering the later ones begin [s]. */
  readonly tankfuls: number;
  readonly waits: readonly number[];
  /** What the bed asks for that day [m3], and what stands in the way of the rest; null: nothing. */
  readonly asked: number;
  readonly why: DayBound | null;
  readonly goes: readonly Go[];
};

/** A bed that asks on a day and gets nothing worth a walk. */
export type Refusal = Pick<DayLine, "day" | "bed" | "asked" | "why">;

/** Less than this share of what is asked for is not worth a walk: our definition. */
const LEAST = 1 / 20;

/** Shortfall that is rounding rather than want [-]. */
const ROUNDING = 1e-9;

/** A bed's day as a line; null where it gets too little for one, or asks for nothing. */
function lineOf(bed: string, { date, from, asked, given, bound }: BedDay): DayLine | null {
  const goes = goesOf(from).filter(({ volume }) => volume >= asked * LEAST);
  return asked > 0 && goes.length > 0
    ? summed({ day: date, bed, asked, why: asked - given > asked * ROUNDING ? bound : null }, goes)
    : null;
}

function summed({ day, bed, asked, why }: Refusal, goes: readonly Go[]): DayLine {
  const sum = (of: (go: Go) => number) => goes.reduce((all, go) => all + of(go), 0);
  const most = goes.reduce((a, b) => (b.volume > a.volume ? b : a));
  const starts = [...new Set(goes.map(({ wait }) => wait))];
  return {
    day,
    bed,
    volume: sum(({ volume }) => volume),
    by: most.by,
    time: sum(({ time }) => time),
    trips: sum(({ trips }) => trips),
    hands: sum(({ hands }) => hands),
    tankfuls: starts.length,
    waits: starts.filter((wait) => wait > 0),
    asked,
    why,
    goes,
  };
}

/** What one means gives at one time, in order. */
const goesOf = (from: readonly Portion[]): readonly Go[] => from.map(({ id, ...go }) => ({ by: id, ...go }));

type Beds = readonly { readonly id: string; readonly days: readonly BedDay[] }[];

/** What is made of each bed's days: by day, then in the order in which beds are watered on it. */
function inTurn<Made>(beds: Beds, make: (id: string, day: BedDay) => Made | null): readonly Made[] {
  const made = beds.flatMap(({ id, days }) =>
    days.flatMap((day) => {
      const one = make(id, day);
      return one === null ? [] : [{ day, one }];
    }),
  );
  made.sort((a, b) => a.day.date - b.day.date || a.day.turn - b.day.turn);
  return made.map(({ one }) => one);
}

/** The lines of a plan: by day, then in the order in which beds are watered on it. */
export const linesOf = (beds: Beds): readonly DayLine[] => inTurn(beds, lineOf);

/** Beds that ask and get next to nothing, in the same order. */
export const refusalsOf = (beds: Beds): readonly Refusal[] =>
  inTurn(beds, (id, day) =>
    day.asked > 0 && lineOf(id, day) === null
      ? { day: day.date, bed: id, asked: day.asked, why: day.bound }
      : null,
  );
