// Beds that their grower holds back today: they get nothing on that day, and ask again the next.

import type { SeasonState } from "./state.ts";

/** A day on which some beds get nothing; the others stand back for each other as ever. */
export function holdingBack(
  { beds, input, length }: SeasonState,
  held: readonly string[],
  run: () => void,
): void {
  const own = beds.filter(({ part }) => held.includes(part.id));
  for (const bed of own) {
    const days = new Float64Array(length).fill(input.holdDays);
    bed.hold = { ahead: bed.before, all: [], days, saved: new Float64Array(length), refused: 1, served: 0 };
  }
  run();
  for (const bed of own) bed.hold = null;
}
