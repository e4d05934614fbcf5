// What a tank's refill alone would have let through: of one that stood full in time more than the tank could hold.

import { volumeAt } from "../physics/vessel.ts";
import { DAY } from "../units/constants.ts";
import { untilDark } from "./dark.ts";
import type { TankPart } from "./input.ts";
import { openFlow, readFlows } from "./pipe-flow.ts";
import type { PipeLine } from "./pipe-line.ts";
import type { SeasonState } from "./state.ts";

/** The day of the record, and whether the tank was drawn from at the hour of watering and is asked again before dark. */
type When = { readonly day: number; readonly isSecond: boolean };

/**
 * What the lines into a tank would have brought by now in a tank without end, less what was drawn today [m3].
 *
 * @returns 0 where the tank was not full by the hour of watering, or for the second time by now: then what it holds tells
 * @validity as the heads stand now, since the last watering; at a tee as the other lines' floats stand now
 */
export function refillAllows(state: SeasonState, tank: number, { day, isSecond }: When): number {
  const { tanks, pipes, input, record } = state;
  const drawn = tanks.drawn[tank] as number;
  const held = tanks.volume[tank] as number;
  const lines = pipes.lines.filter(({ to }) => to?.place === tank && !to.isTee);
  const full = fullBy(tanks.parts[tank] as TankPart, lines);
  if (isSecond ? Math.min(held, drawn) < full : held + drawn < full) return 0;
  const flow = lines.reduce((sum, line) => sum + openFlow(line, tanks), 0) + joinedFlow(state, lines, full);
  const time = DAY + (isSecond ? untilDark(input, record.firstDay + day) : 0);
  return flow * time - drawn;
}

/** Water at which the last of the floats begins to close [m3]; without one the brim. */
function fullBy({ floor, vessel }: TankPart, lines: readonly PipeLine[]): number {
  const level = lines.reduce(
    (most, { float }) => Math.max(most, float ? float.shutHeight - float.band - floor : vessel.height),
    0,
  );
  return volumeAt(vessel, Math.min(vessel.height, Math.max(0, level)));
}

/** What the lines that come to a tank from a tee would bring now with their floats open [m3/s]: it stands where they begin to close. */
function joinedFlow({ tanks, pipes }: SeasonState, lines: readonly PipeLine[], full: number): number {
  if (!lines.some(({ joined }) => joined)) return 0;
  const groups = pipes.groups.filter((group) =>
    lines.some((line) => line.joined && group.lines.includes(line)),
  );
  const place = lines[0]?.to?.place ?? 0;
  const held = tanks.volume[place] as number;
  tanks.volume[place] = Math.min(held, full);
  for (const group of groups) readFlows(pipes, group, tanks);
  tanks.volume[place] = held;
  return lines.reduce((sum, { joined, flow }) => sum + (joined ? Math.max(0, flow) : 0), 0);
}
