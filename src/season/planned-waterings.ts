// The waterings of a bed that is never refused: its plan, before it is asked what there will be for it.

import type { Bed } from "./beds.ts";
import { askOf } from "./decide.ts";
import { moveRoots, passDay } from "./soil-step.ts";
import type { SeasonState } from "./state.ts";

/** A day of the record, and what the bed asks for on it [m3]. */
export type Wanted = { readonly day: number; readonly volume: number };

/**
 * Waterings of a bed that gets what it asks for each time.
 * Each decided as in the run.
 *
 * @param state the run, on the morning of the first day
 * @param bed the bed, its soil as on that morning
 * @param from first day [day]
 * @param owed what it asks for on that day, whatever its rule would ask [m3]; left out: what its rule asks
 * @returns the waterings until the run's last day, in order [m3]
 */
export function wantedWaterings(
  state: SeasonState,
  bed: Bed,
  from: number,
  owed?: number,
): readonly Wanted[] {
  const start = { ...bed.soil };
  const wanted: Wanted[] = [];
  for (let day = from; day < state.length; day++) {
    moveRoots(bed.days, day, bed.soil);
    const place = state.dayInSeason[day] as number;
    const asked = place > 0 ? askOf(bed, day, place, state.record.firstDay + day) : 0;
    const volume = day === from ? (owed ?? asked) : asked;
    if (volume > 0) wanted.push({ day, volume });
    passDay(bed.days, day, bed.soil, volume / bed.perDepth);
  }
  Object.assign(bed.soil, start);
  return wanted;
}
