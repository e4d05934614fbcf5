// What a plan counts on that nobody but its grower does: batteries carried, swapped, or put on the charger.

import type { DayLine } from "./day-lines.ts";
import type { BatteryPart } from "./input.ts";
import type { SeasonState } from "./state.ts";

export type ByHand = {
  readonly battery: string;
  readonly way: "mains" | "carried" | "swapped";
  /** Days on which it is carried, where it is [days since 1970-01-01]. */
  readonly days: readonly number[];
};

/** Whether a battery is at the panel on a day of a run. */
export const isCarried = ({ counted }: SeasonState, { carriedEvery }: BatteryPart, day: number): boolean =>
  (day + counted + 1) % carriedEvery === 0;

/**
 * Batteries of what waters in a plan, and how each is charged where no panel does it by itself.
 *
 * @param first the plan's first day in the run [day], which is that date [days since 1970-01-01]
 */
export function byHand(
  state: SeasonState,
  lines: readonly DayLine[],
  { first, date }: { readonly first: number; readonly date: number },
): readonly ByHand[] {
  const used = new Set(lines.flatMap(({ goes }) => goes.map(({ by }) => by)));
  const batteries = new Set(
    state.input.deliveries.flatMap(({ id, battery }) => (used.has(id) && battery !== null ? [battery] : [])),
  );
  return state.batteries.parts.flatMap((part): ByHand[] => {
    const { id, charged } = part;
    if (!batteries.has(id) || charged === "in_place") return [];
    const days = Array.from({ length: state.length - first }, (_, at) => first + at);
    return [
      {
        battery: id,
        way: charged,
        days:
          charged === "carried"
            ? days.filter((day) => isCarried(state, part, day)).map((day) => date + day - first)
            : [],
      },
    ];
  });
}
