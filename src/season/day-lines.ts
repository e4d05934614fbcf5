// What to water on each day of a plan: one line a day, a bed and a means.

import type { Bound } from "../network/bounds.ts";
import type { BedDay } from "./day-log.ts";

export type DayLine = {
  /** [days since 1970-01-01] */
  readonly day: number;
  readonly bed: string;
  /** Water to give [m3], by which delivery or carry, its running or carrying time [s], and rounds with cans. */
  readonly volume: number;
  readonly by: string;
  readonly time: number;
  readonly trips: number;
  /** Goes of a tank, and after each but the first how long after the hour of watering it begins [s]. */
  readonly tankfuls: number;
  readonly waits: readonly number[];
  /** What the bed asks for that day, by all means [m3], and what stands in the way of the rest; null: nothing. */
  readonly asked: number;
  readonly why: Bound | null;
};

/** Less than this share of what is asked for is not worth a walk: our definition. */
const LEAST = 1 / 20;

/** The lines of a bed's days, in order; what is too little for a line is left out. */
export function linesOf(bed: string, days: readonly BedDay[]): readonly DayLine[] {
  return days.flatMap((day) =>
    day.given < day.asked * LEAST
      ? []
      : linesOfDay(bed, day).filter(({ volume }) => volume >= day.asked * LEAST),
  );
}

function linesOfDay(bed: string, { date, from, asked, bound }: BedDay): readonly DayLine[] {
  const means = [...new Set(from.map(({ id }) => id))];
  return means.map((by) => {
    const goes = from.filter(({ id }) => id === by);
    const sum = (of: (go: BedDay["from"][number]) => number) => goes.reduce((all, go) => all + of(go), 0);
    return {
      day: date,
      bed,
      volume: sum(({ volume }) => volume),
      by,
      time: sum(({ time }) => time),
      trips: sum(({ trips }) => trips),
      tankfuls: goes.length,
      waits: goes.map(({ wait }) => wait).filter((wait) => wait > 0),
      asked,
      why: bound,
    };
  });
}
