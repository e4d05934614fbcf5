// Today until the hour of watering: between what was noted, and from the last of it on, the lines run.

import type { Happened } from "../happened/happened.ts";
import { MINUTE } from "../units/constants.ts";
import { runGravity } from "./gravity.ts";
import type { SeasonState } from "./state.ts";
import { settleOverflow } from "./tanks.ts";

/** Water that was given before it had run in is taken as it comes, not all of it at the end: so many times on the way. */
const PARTS = 12;

/** The time of day as far as the notes have told it. */
export type TodayClock = {
  /** Lets the lines run until a note's minute; one without stands where it is. */
  readonly until: (one: Happened) => void;
  /** Lets the lines run until the hour of watering, and takes what is still to be taken: on the way too where it is more than there was. */
  readonly untilWatering: (take: () => void, onTheWay: boolean) => void;
};

/**
 * A clock that begins with the first note whose minute is known: until then the tanks stand as they will at the watering.
 *
 * @param dawn when a level was read of which nobody knows the minute [s]; null: at the hour of watering
 */
export function todayClock(state: SeasonState, dawn: number | null): TodayClock {
  const { waterAt } = state.input;
  let now: number | null = null;
  const runTo = (time: number): void => {
    if (now !== null && time > now) runLines(state, time - now);
    now = Math.max(now ?? time, time);
  };
  const timeOf = ({ minute, side, what }: Happened): number | null => {
    if (minute !== null) return minute * MINUTE;
    return side === null && what === "dipped" ? dawn : null;
  };
  return {
    until: (one) => {
      const time = timeOf(one);
      if (time !== null) runTo(Math.min(time, waterAt));
    },
    untilWatering: (take, onTheWay) => {
      const from = now ?? waterAt;
      const parts = onTheWay ? PARTS : 1;
      for (let part = 1; part <= parts; part++) {
        if (now !== null) runTo(from + ((waterAt - from) * part) / parts);
        take();
      }
    },
  };
}

function runLines({ pipes, tanks, ledger }: SeasonState, time: number): void {
  ledger.waterOut += runGravity(pipes, tanks, time);
  settleOverflow(tanks, null);
  for (const line of pipes.lines) {
    line.moved = 0;
    line.doneAt = 0;
    line.rise = 0;
  }
}
