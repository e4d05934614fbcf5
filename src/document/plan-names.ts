// Names of plans: each only once in a worksheet.

import { LIMITS } from "./limits.ts";

/** A name that no plan has, as close to the wished-for one as can be. */
export function freePlanName(taken: readonly string[], wish: string): string {
  const stem = wish.trim().slice(0, LIMITS.title) || "Plan";
  if (!taken.includes(stem)) return stem;
  for (let count = 2; ; count += 1) {
    const mark = ` ${count}`;
    const name = `${stem.slice(0, LIMITS.title - mark.length)}${mark}`;
    if (!taken.includes(name)) return name;
  }
}
