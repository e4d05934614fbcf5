// The plans of a worksheet as a list, each name only once.

import { frozen } from "./freeze.ts";
import { LIMITS } from "./limits.ts";
import type { Plan, Worksheet } from "./worksheet.ts";

/** The worksheet with these plans and no others. */
export function withPlans(worksheet: Worksheet, plans: readonly Plan[]): Worksheet {
  const { plans: _plans, ...bare } = worksheet;
  return frozen(plans.length === 0 ? bare : { ...bare, plans });
}

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
