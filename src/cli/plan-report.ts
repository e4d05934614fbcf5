// `--plan`: the sheet as one of its plans has it.

import { laidOver } from "../document/effective.ts";
import type { Worksheet } from "../document/worksheet.ts";
import { rolesOf } from "../graph/roles.ts";
import type { CardKinds } from "../graph/types.ts";
import { leftOutSaid } from "../telling/plans.ts";
import { UsageError } from "./usage.ts";

/** Which plan was laid over, and what of it does not count. */
type PlanReport = { readonly name: string; readonly left_out: readonly string[] };

/** The worksheet with the plan of that name laid over. */
export function layPlan(
  sheet: Worksheet,
  kinds: CardKinds,
  name: string,
): { readonly worksheet: Worksheet; readonly report: PlanReport } {
  const plan = sheet.plans?.find((one) => one.name === name);
  if (!plan) {
    const names = (sheet.plans ?? []).map((one) => `"${one.name}"`);
    const known = names.length > 0 ? `Its plans are ${names.join(", ")}.` : "It has no plans.";
    throw new UsageError(`The worksheet has no plan "${name}". ${known}`);
  }
  const { worksheet, left } = laidOver(sheet, plan, rolesOf(kinds));
  return { worksheet, report: { name, left_out: left.map(leftOutSaid) } };
}

/** The lines that stand before a readable report. */
export function planText({ name, left_out }: PlanReport): string {
  return `${[`The sheet with the plan "${name}".`, ...left_out].join("\n")}\n\n`;
}
