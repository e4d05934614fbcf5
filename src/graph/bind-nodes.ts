// Once the order is known: dimensions over whole formulas, and formulas bound to positions.

import { bindFormula } from "../formula/bind.ts";
import { formulaDimension } from "../formula/dimensions.ts";
import { type Dimension, sameDimension } from "../units/dimension.ts";
import { kindWords } from "../units/suits.ts";
import { parseUnit, unitProblem } from "../units/unit.ts";
import { rowNamed } from "./card-plans.ts";
import type { FormulaWork, GraphNode, Step } from "./nodes.ts";
import { failed } from "./problems.ts";
import { dimensionOfMeasure, measureOf } from "./rows.ts";
import type { Problem, ProblemCode } from "./types.ts";

type BoundStep =
  | { readonly ok: true; readonly dimension: Dimension | null; readonly fitsAny?: boolean }
  | {
      readonly ok: false;
      readonly code: ProblemCode;
      readonly text: string;
      readonly span?: Problem["span"];
    };

/** Whether a node can only be a word, a list or a link. */
function hasNoNumber(node: GraphNode): boolean {
  return node.row !== null && node.row.row !== "user_formula" && measureOf(node.row) === null;
}

/** A step whose names all lead somewhere is checked and bound; one with a loose name never runs. */
export function bindStep(step: Step): BoundStep {
  const needs = new Set<number>();
  const nodes = new Map<string, GraphNode>();
  for (const { name, link, node } of step.sources) {
    if (link) needs.add(link.position);
    if (node) {
      needs.add(node.position);
      nodes.set(name, node);
    }
  }
  step.needs = Int32Array.from([...needs].sort((a, b) => a - b));
  const known = [...nodes.values()].every((node) => node.dimension !== null || hasNoNumber(node));
  if (!known || nodes.size < step.sources.length) return { ok: true, dimension: null };
  const checked = formulaDimension(step.formula, (name) => {
    const node = nodes.get(name);
    return node?.dimension ?? `${node?.row?.label ?? name} is not a number.`;
  });
  if (!checked.ok) {
    const { message, start, end } = checked.problem;
    return { ok: false, code: "dimension", text: message, span: { start, end } };
  }
  step.run = bindFormula(step.formula, (name) => nodes.get(name)?.position ?? 0);
  return { ok: true, dimension: checked.dimension, fitsAny: checked.fitsAny };
}

function unsuited(found: Dimension, wanted: Dimension, length: number): BoundStep {
  const text = `This comes to ${kindWords(found)}, but ${kindWords(wanted)} is wanted.`;
  return { ok: false, code: "dimension", text, span: { start: 0, end: length } };
}

/** A formula of the user's that comes to something else than the unit is of, which stands in a field of its own. */
function unsuitedUnit(
  { kind, row }: GraphNode,
  found: Dimension,
  wanted: Dimension,
  unit: string,
): BoundStep {
  const field = kind && row?.row === "user_formula" ? rowNamed(kind, row.unit)?.label : undefined;
  const where = field === undefined ? "" : `, in "${field}",`;
  const text = `This comes to ${kindWords(found)}, but ${unit}${where} is ${kindWords(wanted)}.`;
  return { ok: false, code: "dimension", text };
}

/** The dimension that is wanted of a formula; null where the formula decides. */
function wantedOf(node: GraphNode, work: FormulaWork): BoundStep {
  if (work.userUnit === null) {
    const measure = measureOf(node.row);
    return { ok: true, dimension: measure && dimensionOfMeasure(measure) };
  }
  if (work.userUnit === "") return { ok: true, dimension: null };
  const unit = parseUnit(work.userUnit);
  if (unit) return { ok: true, dimension: unit.dimension };
  return {
    ok: false,
    code: "unit",
    text: unitProblem(work.userUnit) ?? `I do not know the unit "${work.userUnit}".`,
  };
}

function bindFormulaNode(node: GraphNode, work: FormulaWork): BoundStep {
  for (const { step } of work.conditions) {
    const bound = bindStep(step);
    if (!bound.ok) return bound;
  }
  const bound = bindStep(work.step);
  if (!bound.ok) return bound;
  const wanted = wantedOf(node, work);
  if (!wanted.ok || wanted.dimension === null) return wanted.ok ? bound : wanted;
  if (bound.dimension && !bound.fitsAny && !sameDimension(bound.dimension, wanted.dimension)) {
    return work.userUnit === null
      ? unsuited(bound.dimension, wanted.dimension, work.step.formula.text.length)
      : unsuitedUnit(node, bound.dimension, wanted.dimension, work.userUnit);
  }
  return wanted;
}

function bindGatherNode(node: GraphNode): BoundStep {
  const dimension = node.dimension;
  const parts = node.work.kind === "gather" && dimension ? node.work.parts : [];
  for (const part of parts) {
    const found = part.node?.dimension;
    if (dimension && found && !sameDimension(found, dimension)) return unsuited(found, dimension, 0);
  }
  return { ok: true, dimension };
}

function bindNode(node: GraphNode): void {
  const measure = node.role === "model" ? null : measureOf(node.row);
  if (measure) node.dimension = dimensionOfMeasure(measure);
  const { work } = node;
  if (work.kind !== "formula" && work.kind !== "gather") return;
  const bound = work.kind === "formula" ? bindFormulaNode(node, work) : bindGatherNode(node);
  if (bound.ok) {
    node.dimension = bound.dimension ?? node.dimension;
    return;
  }
  const span = bound.span ? { span: bound.span } : {};
  node.work = { kind: "fixed", result: failed(bound.code, node.id, bound.text, span) };
}

/** Binds what a node's answer satisfies, once every dimension is known; false where it does not fit the node. */
export function bindRelation(node: GraphNode, step: Step): boolean {
  const bound = bindStep(step);
  if (!bound.ok) return false;
  return !bound.dimension || !node.dimension || sameDimension(bound.dimension, node.dimension);
}

/** Checks and binds the nodes in their order; what is wrong fails at its own place. */
export function bindNodes(nodes: readonly GraphNode[]): void {
  for (const node of nodes) bindNode(node);
}
