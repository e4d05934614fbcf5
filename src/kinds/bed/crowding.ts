// How much of a bed its crops take at once, through any year.

import { dayInYear } from "../../units/calendar.ts";
import { COMMON_YEAR } from "../../units/constants.ts";
import { cropPart, type Planted } from "./crops.ts";

const SOME_YEAR = 2001;

/** First day and length of a crop's stand; null where its lines cannot be read, which its bed says itself. */
function standOf(content: Planted): { readonly first: number; readonly days: number } | null {
  const part = cropPart(content, "none", { start: 0, end: 0 });
  const first = dayInYear(content.planted, SOME_YEAR);
  if ("reason" in part || first === null) return null;
  const [initial, development, middle, late] = part.stages;
  return { first, days: initial + development + middle + late };
}

/**
 * The most of the bed that stands planted at once, and the first day on which so much does. What stands longer than a
 * year is not set beside itself: the next planting takes its place.
 */
export function crowding(
  contents: readonly Planted[],
): { readonly share: number; readonly day: number } | null {
  const stands = contents.flatMap((content) => {
    const stand = standOf(content);
    return stand ? [{ ...stand, share: content.share }] : [];
  });
  let most: { share: number; day: number } | null = null;
  // More can only stand from a day on which something is planted.
  for (const { first: day } of stands) {
    const share = stands.reduce((sum, stand) => {
      const age = (((day - stand.first) % COMMON_YEAR) + COMMON_YEAR) % COMMON_YEAR;
      return age < stand.days ? sum + stand.share : sum;
    }, 0);
    if (!most || share > most.share) most = { share, day };
  }
  return most;
}
