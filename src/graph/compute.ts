// One node at a time: from what it reads, all settled by now, to its result.

import { entryAt } from "./card-plans.ts";
import { computeModel, computeOutput } from "./compute-model.ts";
import { givenResult, measuredResult, pickedResult } from "./entries.ts";
import type { FormulaWork, GatherPart, GraphNode, Work } from "./nodes.ts";
import { blockedBy, notFiniteAt, type Pass, resultAt } from "./pass.ts";
import { failed, none } from "./problems.ts";
import { measureOf } from "./rows.ts";
import type { Given, Result, Row } from "./types.ts";

function entryResult(pass: Pass, node: GraphNode, row: Given, place: "givens" | "card"): Result {
  const card = pass.cards[node.cardAt];
  const kept = row.name === "life" ? card?.life : card?.price;
  const entry = place === "card" ? kept : entryAt(card?.givens, row.name);
  return givenResult(row, entry, node.id.replace("~computed", ""), pass.show);
}

function measured(pass: Pass, node: GraphNode, row: Row): Result {
  const measure = measureOf(row);
  if (!measure) return failed("bad_value", node.id, `${row.label} cannot be measured.`);
  const limits = row.row === "given" ? row : "measurable" in row ? row.measurable : undefined;
  const entry = entryAt(pass.cards[node.cardAt]?.measured, row.name);
  return measuredResult({ label: row.label, measure, limits: limits ?? {} }, entry, node.id, pass.show);
}

function numberResult(pass: Pass, node: GraphNode, value: number): Result {
  return Number.isFinite(value)
    ? { state: "ready", value, origin: "computed" }
    : notFiniteAt(pass, node.position);
}

function computeFormula(pass: Pass, node: GraphNode, work: FormulaWork): Result {
  for (const { step, reason } of work.conditions) {
    const blocked = blockedBy(pass, node, step.needs);
    if (blocked) return blocked;
    if (step.run(pass.values) !== 0) return none(reason, node.id);
  }
  return blockedBy(pass, node, work.step.needs) ?? numberResult(pass, node, work.step.run(pass.values));
}

function gathered(pass: Pass, node: GraphNode, how: "sum" | "max", values: readonly unknown[]): Result {
  const numbers = values.filter((value): value is number => typeof value === "number");
  if (how === "sum")
    return numberResult(
      pass,
      node,
      numbers.reduce((sum, value) => sum + value, 0),
    );
  if (numbers.length > 0)
    return numberResult(
      pass,
      node,
      numbers.reduce((most, value) => Math.max(most, value)),
    );
  return none("nothing leads here", node.id);
}

function computeGather(
  pass: Pass,
  node: GraphNode,
  how: "sum" | "max" | "list",
  parts: readonly GatherPart[],
): Result {
  const read = parts.flatMap((part) => (part.node ? [part.node.position] : [])).sort((a, b) => a - b);
  const blocked = blockedBy(pass, node, read);
  if (blocked && blocked.state !== "none") return blocked;
  const values = parts.flatMap((part) => {
    const result = part.node ? resultAt(pass, part.node.position) : null;
    if (!result) return [part.card];
    return result.state === "ready" ? [result.value] : [];
  });
  return how === "list"
    ? { state: "ready", value: values, origin: "computed" }
    : gathered(pass, node, how, values);
}

function picked(pass: Pass, node: GraphNode, work: Extract<Work, { kind: "pick" }>): Result {
  const blocked = blockedBy(pass, node, [work.choice.position]);
  if (blocked) return blocked;
  const word = resultAt(pass, work.choice.position);
  const text = word.state === "ready" && typeof word.value === "string" ? word.value : "";
  return pickedResult(work.row, text, node.id.replace("~computed", ""), pass.show);
}

/**
 * The result of a node.
 * @throws whatever a model or a physics function throws outside its relation
 */
export function compute(pass: Pass, node: GraphNode): Result {
  const { work } = node;
  switch (work.kind) {
    case "formula":
      return computeFormula(pass, node, work);
    case "fixed":
      return work.result;
    case "entry":
      return entryResult(pass, node, work.row, work.place);
    case "measured":
      return measured(pass, node, work.row);
    case "pick":
      return picked(pass, node, work);
    case "model":
      return computeModel(pass, node, work);
    case "output":
      return computeOutput(pass, node, work.model, work.key);
    case "gather":
      return computeGather(pass, node, work.how, work.parts);
  }
}
