// What a number was, in few words beside it: the unit is said once where both have the same.

const PARTS = /^([-−]?[\d.,  ]*\d)\s*(\D*)$/u;

/** Days and day are one unit. */
const unitIn = (text: string): string | null => PARTS.exec(text)?.[2]?.trim().replace(/s$/, "") ?? null;

/**
 * "24" for "24 days" beside "43 days", "83 %" for "83 %" beside "99 %".
 * @param was as it was shown
 * @param now as it is shown
 */
export function wasText(was: string, now: string): string {
  const [unit, number] = [unitIn(was), PARTS.exec(was)?.[1]];
  return number !== undefined && unit !== null && unit !== "%" && unit === unitIn(now) ? number.trim() : was;
}

type Seen = {
  /** What a quantity was; null where a reader would see no difference. */
  readonly moved: (id: string) => { readonly was: string } | null;
  readonly shown: (id: string) => string;
};

/**
 * What stands behind "was": the number of before, of the whole of before where that was another: "13 of 20".
 *
 * @param whole the quantity of which this one is a part, as seasons short are of all seasons
 * @returns null where nothing is said
 */
export function wasOf(
  {
    quantity,
    whole,
    was: words,
  }: { readonly quantity: string; readonly whole?: string; readonly was?: string | null },
  { moved, shown }: Seen,
): string | null {
  if (words === null) return null;
  const part = moved(quantity);
  const all = whole === undefined ? null : moved(whole);
  if (!all) return part && wasText(part.was, shown(quantity));
  // Four of four are not the four of twenty that they were, but none is none of any.
  return part || words === undefined ? `${part?.was ?? shown(quantity)} of ${all.was}` : null;
}
