// Work of quantities that a formula answers: a kind's own rule, or one that the user wrote.

import { type CardPlan, type Draft, entryAt, readingOf, rowNamed } from "./card-plans.ts";
import { type Resolved, resolveAnywhere, resolveName } from "./names.ts";
import type { Source, Step, Work } from "./nodes.ts";
import { failed } from "./problems.ts";
import type { Condition, Problem, QuantityId, UserFormulaRow } from "./types.ts";

export type Wrong = { readonly wrong: string; readonly span?: Problem["span"] };

/** Whether something could not be resolved. */
export function isWrong<T extends object>(part: T | Wrong): part is Wrong {
  return "wrong" in part;
}

/** A formula text with what its names stand for, or what is wrong with it and where. */
export function stepOf(plan: Draft, text: string, resolve: (name: string) => Resolved): Step | Wrong {
  const reading = readingOf(plan, text);
  if (!reading.ok) {
    const { message, start, end } = reading.problem;
    return { wrong: message, span: { start, end } };
  }
  const sources = new Map<string, Source>();
  for (const { name, start, end } of reading.formula.names) {
    if (sources.has(name)) continue;
    const resolved = resolve(name);
    if ("wrong" in resolved) return { wrong: resolved.wrong, span: { start, end } };
    sources.set(name, resolved.source);
  }
  return {
    formula: reading.formula,
    sources: [...sources.values()],
    needs: new Int32Array(0),
    run: () => Number.NaN,
  };
}

function wrongAt(id: QuantityId, wrong: Wrong): Work {
  return {
    kind: "fixed",
    result: failed("formula", id, wrong.wrong, wrong.span ? { span: wrong.span } : {}),
  };
}

/** The work of a rule of the card's own kind. */
export function formulaWork(
  plan: Draft,
  owner: CardPlan,
  id: QuantityId,
  text: string,
  none: readonly Condition[],
): Work {
  const resolve = (name: string) => resolveName(plan, owner, name);
  const conditions: { readonly step: Step; readonly reason: string }[] = [];
  for (const condition of none) {
    const step = stepOf(plan, condition.if, resolve);
    if (isWrong(step)) return wrongAt(id, step);
    conditions.push({ step, reason: condition.reason });
  }
  const step = stepOf(plan, text, resolve);
  return isWrong(step) ? wrongAt(id, step) : { kind: "formula", conditions, step, userUnit: null };
}

function textGiven(owner: CardPlan, name: string): string | null {
  const value = entryAt(owner.card.givens, name)?.value;
  if (typeof value === "string") return value;
  const row = rowNamed(owner.kind, name);
  return value === undefined && row?.row === "text" ? row.default : null;
}

/** The work of a formula that the user wrote. */
export function userWork(plan: Draft, owner: CardPlan, row: UserFormulaRow, id: QuantityId): Work {
  const text = textGiven(owner, row.formula);
  const unit = textGiven(owner, row.unit);
  if (text === null || unit === null) return wrongAt(id, { wrong: "The formula and its unit must be text." });
  const step = stepOf(plan, text, (name) => resolveAnywhere(plan, name));
  if (isWrong(step)) return wrongAt(id, step);
  const userUnit = unit === plan.worksheet.currency ? "money" : unit.trim();
  return { kind: "formula", conditions: [], step, userUnit };
}
