// Nodes of the quantities and models of cards, still without their work, so that every name can be found.

import { addNode, type CardPlan, type Draft, entryAt, rowNamed } from "./card-plans.ts";
import { type GraphNode, twinId } from "./nodes.ts";
import { failed } from "./problems.ts";
import { isMeasurable } from "./rows.ts";
import type { Model, Row } from "./types.ts";

/** The name under which a model's answer stands among the nodes; no quantity can be called that. */
function modelId(card: string, model: string): string {
  return `${card}.${model}()`;
}

const hasMeasured = ({ card }: CardPlan, row: Row): boolean =>
  (entryAt(card.measured, row.name)?.value ?? null) !== null;

/** Whether a row of a card was measured, and may be. */
export const isMeasured = (owner: CardPlan, row: Row): boolean =>
  hasMeasured(owner, row) && isMeasurable(row);

function shellOf(plan: Draft, owner: CardPlan, row: Row): GraphNode {
  const { card, at, kind, doubled } = owner;
  const id = `${card.id}.${row.name}`;
  const node = addNode(plan, id, "quantity", { card: card.id, cardAt: at, kind, row });
  if (doubled)
    node.work = { kind: "fixed", result: failed("duplicate_id", id, `Several cards are called ${card.id}.`) };
  else if (isMeasured(owner, row)) node.work = { kind: "measured", row };
  else if (hasMeasured(owner, row))
    plan.problems.push({
      code: "bad_value",
      at: id,
      text: `${row.label} cannot be measured; what was entered is left aside.`,
    });
  return node;
}

function modelShell(plan: Draft, { card, at, kind }: CardPlan, model: Model): GraphNode {
  return addNode(plan, modelId(card.id, model.name), "model", { card: card.id, cardAt: at, kind, row: null });
}

/** Nodes of all that a card has. */
export function addShells(plan: Draft, owner: CardPlan): void {
  const { card, at, kind, doubled } = owner;
  for (const row of kind.rows) {
    const { id, work } = shellOf(plan, owner, row);
    if (work.kind === "measured") addNode(plan, twinId(id), "twin", { card: card.id, cardAt: at, kind, row });
  }
  for (const model of doubled ? [] : kind.models) modelShell(plan, owner, model);
}

/** The node of a row of a card, or null where there is none; of a part that is built it is in the part from now on. */
export function nodeAt(plan: Draft, card: string, name: string): GraphNode | null {
  const known = plan.nodes.get(`${card}.${name}`);
  const owner = known || !plan.reached ? undefined : plan.byId.get(card);
  const row = owner && rowNamed(owner.kind, name);
  if (!owner || !row) return known ?? null;
  const node = shellOf(plan, owner, row);
  // Measured, it reads nothing; what it would be by computing is for whoever asks the whole.
  if (node.work.kind !== "measured") plan.reached?.push({ owner, node, row });
  return node;
}

/** The node of a model of a card, or null where there is no such card, or not that one alone. */
export function modelAt(plan: Draft, card: string, model: Model): GraphNode | null {
  const known = plan.nodes.get(modelId(card, model.name));
  const owner = known || !plan.reached ? undefined : plan.byId.get(card);
  if (!owner) return known ?? null;
  const node = modelShell(plan, owner, model);
  plan.reached?.push({ owner, node, model });
  return node;
}
