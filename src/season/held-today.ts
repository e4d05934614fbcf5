// Beds that their grower holds back today: they get nothing on that day, and ask again the next.

import type { DayLog } from "./day-log.ts";
import type { SeasonState } from "./state.ts";

/** A day on which some beds get nothing; the others stand back for each other as ever. */
export function holdingBack(
  { beds }: Pick<SeasonState, "beds">,
  held: readonly string[],
  run: () => void,
): void {
  const own = beds.filter(({ part }) => held.includes(part.id));
  // Refused on the one day that is run: what else would stay in the tanks is not asked.
  for (const bed of own) bed.hold = { kept: [], above: null, refused: 1, served: 0 };
  run();
  for (const bed of own) bed.hold = null;
}

/** Says of held beds that their grower holds them back, until they ask again: no other bed has their water by a rule. */
export function sayHeld({ days }: DayLog, held: readonly string[]): void {
  for (const id of held) {
    const own = days.get(id) ?? [];
    const again = own.findIndex(({ asked }, place) => place > 0 && asked > 0);
    const until = again < 0 ? own.length : again;
    const told = own.map((day, place) =>
      place < until && day.bound !== null ? { ...day, bound: "by_grower" as const } : day,
    );
    days.set(id, told);
  }
}
