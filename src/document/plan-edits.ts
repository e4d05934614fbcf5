// Plans kept beside the sheet: keep, take over, rename, drop.

import { differences, effective } from "./effective.ts";
import type { GivenRoles } from "./entries.ts";
import { LIMITS } from "./limits.ts";
import { freePlanName, withPlans } from "./plan-names.ts";
import type { Change, Plan, Worksheet } from "./worksheet.ts";

type Links = Pick<GivenRoles, "isLink">;

/** The plan of that name, or null. */
export function planNamed(worksheet: Worksheet, name: string): Plan | null {
  return worksheet.plans?.find((plan) => plan.name === name) ?? null;
}

const namesOf = (worksheet: Worksheet): readonly string[] => (worksheet.plans ?? []).map(({ name }) => name);

/** Whether a plan of that many changes can be read again. */
function fits({ changes }: Pick<Plan, "changes">): boolean {
  return changes.length <= LIMITS.list;
}

/**
 * Keeps the sheet as it is now as a plan, and the sheet goes back to what was held. What came since and is no part of a
 * plan stays: the rain record, the settings, offers.
 *
 * @param held the sheet as it was held
 * @returns the worksheet; the same one where nothing differs or no more plans fit
 */
export function keepBeside(now: Worksheet, held: Worksheet, name: string, roles: Links): Worksheet {
  const plans = now.plans ?? [];
  const back = effective(now, differences(now, held, roles), roles);
  const differs = differences(back, now, roles);
  const same = differs.changes.length + differs.added.length + differs.removed.length === 0;
  if (same || !fits(differs) || plans.length >= LIMITS.plans) return now;
  return withPlans(back, [...plans, { name: freePlanName(namesOf(now), name), ...differs }]);
}

/** Keeps changes as a plan; the worksheet stays the same one where no more plans fit. */
export function addPlan(worksheet: Worksheet, name: string, changes: readonly Change[]): Worksheet {
  const plans = worksheet.plans ?? [];
  if (!fits({ changes }) || plans.length >= LIMITS.plans) return worksheet;
  const plan = { name: freePlanName(namesOf(worksheet), name), changes, added: [], removed: [] };
  return withPlans(worksheet, [...plans, plan]);
}

/**
 * Makes a plan the sheet. In the plan's place stands what leads back, so that taking that over is the same sheet again.
 *
 * @param back what the plan that leads back is called
 * @returns the worksheet; the same one where there is no such plan
 */
export function takeOver(worksheet: Worksheet, name: string, back: string, roles: Links): Worksheet {
  const plan = planNamed(worksheet, name);
  if (!plan) return worksheet;
  const next = effective(worksheet, plan, roles);
  const others = namesOf(worksheet).filter((other) => other !== name);
  const home = { name: freePlanName(others, back), ...differences(next, worksheet, roles) };
  if (!fits(home)) return worksheet;
  const plans = (worksheet.plans ?? []).map((other) => (other === plan ? home : other));
  return withPlans(next, plans);
}

/** Calls a plan otherwise; the same worksheet where the name is empty or another plan's. */
export function renamePlan(worksheet: Worksheet, from: string, wanted: string): Worksheet {
  const to = wanted.trim().slice(0, LIMITS.title);
  const plan = planNamed(worksheet, from);
  if (!plan || to === "" || to === from || planNamed(worksheet, to)) return worksheet;
  const plans = (worksheet.plans ?? []).map((other) => (other === plan ? { ...plan, name: to } : other));
  return withPlans(worksheet, plans);
}

/** Forgets a plan. */
export function dropPlan(worksheet: Worksheet, name: string): Worksheet {
  const plan = planNamed(worksheet, name);
  if (!plan) return worksheet;
  return withPlans(
    worksheet,
    (worksheet.plans ?? []).filter((other) => other !== plan),
  );
}
