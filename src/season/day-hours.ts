// When each go of a day is done: one person does one after the other, from the hour of watering on.

import type { DayLine, Go } from "./day-lines.ts";

/** A go with its line: from when to when after midnight, and for how long a tank fills before it [s]. */
export type TimedGo = {
  readonly line: DayLine;
  readonly go: Go;
  readonly from: number;
  readonly until: number;
  readonly filling: number;
};

/**
 * The goes of one day in the order in which they are done.
 *
 * @param lines of that day, in the order of the beds
 * @param waterAt hour of watering, after midnight [s]
 * @returns each with its time; a pump that nobody attends is waited for all the same
 */
export function hoursOf(lines: readonly DayLine[], waterAt: number): readonly TimedGo[] {
  const goes = lines.flatMap((line) => line.goes.map((go) => ({ line, go })));
  goes.sort((a, b) => a.go.wait - b.go.wait);
  let free = waterAt;
  return goes.map(({ line, go }) => {
    const from = Math.max(free, waterAt + go.wait);
    const filling = go.wait > 0 ? from - free : 0;
    free = from + go.setUp + go.time;
    return { line, go, from, until: free, filling };
  });
}
