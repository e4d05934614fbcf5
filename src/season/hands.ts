// What watering asks of one person in a season: rounds, time, way and weight.

import type { HandsAnswer } from "./answer.ts";
import type { SeasonState } from "./state.ts";
import { meanOf } from "./tally.ts";

/**
 * One person's watering, means of whole seasons.
 * The last round of a watering counts whole for its way and its cans, and only the water in it.
 *
 * @param state the run after its last day
 * @returns rounds, water [m3], time [s], way [m] and mass [kg]
 */
export function handsOf(state: SeasonState): HandsAnswer {
  const carries = new Map(state.input.carries.map((part) => [part.id, part]));
  const sum = { trips: 0, volume: 0, time: 0, distance: 0, mass: 0 };
  for (const source of state.sources) {
    sum.time += meanOf(source.hands.seasons) ?? 0;
    const part = carries.get(source.id);
    if (!part) continue;
    const [trips, volume] = [meanOf(source.trips.seasons) ?? 0, meanOf(source.volume.seasons) ?? 0];
    sum.trips += trips;
    sum.volume += volume;
    sum.distance += trips * 2 * part.distance;
    sum.mass += volume * state.input.waterDensity + trips * part.cansAtOnce * part.canMass;
  }
  return sum;
}
