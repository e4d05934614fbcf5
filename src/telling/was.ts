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
