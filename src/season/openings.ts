// Hoses with a float valve that should be running this morning: whoever finds a tank low opens them before watering.

import { levelAt } from "../physics/vessel.ts";
import { DAY } from "../units/constants.ts";
import { runGravity } from "./gravity.ts";
import type { PipeLine } from "./pipe-line.ts";
import type { SeasonState } from "./state.ts";

/** A line to be opened, the tank that it fills and how it stands. */
export type Opening = {
  readonly line: string;
  readonly tank: string;
  /** Water above the tank's floor now [m], and how long after opening it is as full as it gets [s]. */
  readonly level: number;
  readonly time: number;
};

/** Less than this share of its tank is what evaporates and drips in a day: no line stands shut for that. Our definition. */
const LEAST = 1 / 20;

/**
 * Lines with a float that fill a tank which a bed is watered from, and would run now.
 *
 * @param state a run on its morning, of its own: its lines are run and its tanks filled
 * @param beds ids of those that ask
 */
export function openings(state: SeasonState, beds: ReadonlySet<string>): readonly Opening[] {
  const { pipes, tanks } = state;
  const drawn = new Set(
    state.beds
      .filter(({ part }) => beds.has(part.id))
      .flatMap(({ sources }) => sources.map(({ tank }) => tank)),
  );
  const before = tanks.volume.slice();
  const fills = ({ float, to }: PipeLine) =>
    float !== null && to !== null && !to.isTee && drawn.has(to.place);
  if (!pipes.lines.some(fills)) return [];
  runGravity(pipes, tanks, DAY);
  return pipes.lines.flatMap((line) => {
    const part = line.to && tanks.parts[line.to.place];
    if (!part || !line.to || !fills(line) || line.moved < part.vessel.volume * LEAST) return [];
    const level = levelAt(part.vessel, before[line.to.place] as number);
    return [{ line: line.id, tank: part.id, level, time: line.doneAt }];
  });
}
