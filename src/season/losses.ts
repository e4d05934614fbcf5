// What a tank loses by itself: open water to the air, and what seeps out.

import { OPEN_WATER_COEFFICIENT } from "../physics/open-water.ts";
import { noteGone } from "./gone.ts";
import type { SeasonState } from "./state.ts";

/** Open water under 2 m deep against reference evapotranspiration [-]: FAO-56 Table 12. */
export const OPEN_WATER = OPEN_WATER_COEFFICIENT;

/**
 * Takes the day's losses from every tank, as far as there is water.
 *
 * @param day of the record [day]
 * @source FAO-56 Table 12: 1.05 ETo
 */
export function loseAll(state: SeasonState, day: number): void {
  const { volume, dryingArea, leak } = state.tanks;
  const depth = OPEN_WATER * (state.eto[day] as number);
  for (let place = 0; place < volume.length; place++) {
    if (dryingArea[place] === 0 && leak[place] === 0) continue;
    const held = volume[place] as number;
    const dried = Math.min(held, depth * (dryingArea[place] as number));
    const leaked = Math.min(held - dried, leak[place] as number);
    volume[place] = held - dried - leaked;
    state.evaporated[place] = (state.evaporated[place] as number) + dried;
    state.leaked[place] = (state.leaked[place] as number) + leaked;
    noteGone(state.gone.lost, place, day + state.counted, dried + leaked);
    state.ledger.waterOut += dried + leaked;
  }
}
