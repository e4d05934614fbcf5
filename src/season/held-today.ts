// Beds that their grower holds back today: they get nothing on that day, and ask again the next.

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
