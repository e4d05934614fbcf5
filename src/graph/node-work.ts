// From the rows of a card's kind to the work of its nodes: what each reads, and how it is answered.

import { bindRelation } from "./bind-nodes.ts";
import {
  type CardPlan,
  type Draft,
  entryAt,
  kindNamed,
  linkedIds,
  missingCard,
  type Reached,
  rowNamed,
  targetOf,
} from "./card-plans.ts";
import { hasWorkedDefault, isGiven } from "./entries.ts";
import { formulaWork, isWrong, stepOf, userWork, type Wrong } from "./formula-work.ts";
import { resolveName } from "./names.ts";
import {
  type EntryWork,
  type GraphNode,
  type Source,
  type Step,
  type SurveyedCard,
  twinId,
  type Work,
} from "./nodes.ts";
import { once } from "./once.ts";
import { failed, none } from "./problems.ts";
import { modelAt, nodeAt } from "./shells.ts";
import type {
  GatherRow,
  Given,
  LinkGiven,
  Model,
  NumberGiven,
  OutputRow,
  QuantityId,
  Result,
  Row,
} from "./types.ts";

const fixed = (result: Result): Work => ({ kind: "fixed", result });

function linkResult(plan: Draft, owner: CardPlan, row: LinkGiven, id: string): Result {
  const ids = linkedIds(owner.card, row);
  if (ids.length === 0) return none(row.absent, id);
  if (!row.many && ids.length > 1)
    return failed("bad_value", id, `${row.label}: only one card can stand here.`);
  for (const target of ids) {
    const found = targetOf(plan, row, target);
    if ("code" in found) return failed(found.code, id, found.text);
  }
  return { state: "ready", value: row.many ? ids : (ids[0] ?? null), origin: "given" };
}

/** Only a given can stand before another: anything worked out may be worked out from it. */
function entryWork(
  plan: Draft,
  owner: CardPlan,
  row: Given,
  place: EntryWork["place"] = "givens",
): EntryWork {
  const before = row.when && rowNamed(owner.kind, row.when.row);
  const isTyped = before !== undefined && TYPED.has(before.row) && !hasWorked(before);
  const behind = isTyped ? nodeAt(plan, owner.card.id, before.name) : null;
  return { kind: "entry", row, place, behind };
}

const TYPED: ReadonlySet<Row["row"]> = new Set(["given", "choice", "date", "text", "list"]);

const hasWorked = (row: Row): boolean => row.row === "given" && hasWorkedDefault(row);

function numberWork(plan: Draft, owner: CardPlan, row: NumberGiven, id: string): Work {
  const place = row.stored === "card" ? "card" : "givens";
  if (isGiven(row, storedEntry(owner, row))) return entryWork(plan, owner, row, place);
  const usual = row.default;
  if (usual && "formula" in usual) return formulaWork(plan, owner, id, usual.formula, []);
  if (!usual || !("by" in usual)) return entryWork(plan, owner, row, place);
  const choice = nodeAt(plan, owner.card.id, usual.by);
  return choice
    ? { kind: "pick", row, choice }
    : fixed(failed("formula", id, `There is no choice ${usual.by}.`));
}

function storedEntry({ card }: CardPlan, row: NumberGiven) {
  if (row.stored !== "card") return entryAt(card.givens, row.name);
  if (row.name === "price") return card.price;
  return row.name === "life" ? card.life : undefined;
}

function outputWork(plan: Draft, owner: CardPlan, row: OutputRow, id: string): Work {
  const [head = "", rest] = row.of.split(".");
  const kind = rest === undefined ? owner.kind : kindNamed(plan.kinds, head);
  const model = kind?.models.find(({ name }) => name === (rest ?? head));
  if (!kind || !model) return fixed(failed("formula", id, `There is no model ${row.of}.`));
  const card = rest === undefined ? owner.card.id : head;
  const node = modelAt(plan, card, model);
  if (!node) {
    const doubled = plan.byId.get(card)?.doubled;
    return fixed(
      doubled ? failed("duplicate_id", id, `Several cards are called ${card}.`) : missingAt(kind, id),
    );
  }
  const key = model.outputs === "by quantity id" ? id : row.name;
  return { kind: "output", model: node, key, relations: once(() => relationsOf(plan, owner, row, id)) };
}

/** Only a working shows them: one that cannot be read is left out of it (a test: the tables have none). */
function relationsOf(plan: Draft, owner: CardPlan, row: OutputRow, id: string): readonly Step[] {
  const node = plan.nodes.get(id);
  return (row.relations ?? []).flatMap((text) => {
    const step = stepOf(plan, text, (name) => resolveName(plan, owner, name));
    return node && !isWrong(step) && bindRelation(node, step) ? [step] : [];
  });
}

function missingAt(kind: Parameters<typeof missingCard>[0], id: string): Result {
  const { code, text } = missingCard(kind, id);
  return failed(code, id, text);
}

function gatherWork(plan: Draft, owner: CardPlan, row: GatherRow, id: string): Work {
  const kind = kindNamed(plan.kinds, row.kind);
  const by = kind && rowNamed(kind, row.by);
  if (!kind || by?.row !== "link" || (row.take !== "id" && !rowNamed(kind, row.take))) {
    return fixed(failed("formula", id, `There is no ${row.kind}.${row.by} or no ${row.take} to gather.`));
  }
  const parts = by.kinds.includes(owner.kind.kind)
    ? plan.cards
        .filter((part) => part.kind === kind && linkedIds(part.card, by).includes(owner.card.id))
        .map(({ card, at }) => ({
          card: card.id,
          cardAt: at,
          node: row.take === "id" ? null : nodeAt(plan, card.id, row.take),
        }))
    : [];
  return { kind: "gather", how: row.how, parts };
}

function workOf(plan: Draft, owner: CardPlan, row: Row, id: string): Work {
  switch (row.row) {
    case "link":
      return fixed(linkResult(plan, owner, row, id));
    case "given":
      return numberWork(plan, owner, row, id);
    case "formula":
      return formulaWork(plan, owner, id, row.formula, row.none ?? []);
    case "user_formula":
      return userWork(plan, owner, row, id);
    case "output":
      return outputWork(plan, owner, row, id);
    case "gather":
      return gatherWork(plan, owner, row, id);
    case "text":
      return row.of === "currency" ? fixed(headCurrency(plan)) : entryWork(plan, owner, row);
    default:
      return entryWork(plan, owner, row);
  }
}

/** Read in the worksheet's head; a worksheet of another currency has another graph. */
const headCurrency = ({ worksheet: { currency } }: Draft): Result => ({
  state: "ready",
  value: currency,
  origin: "given",
});

function surveyedCards(plan: Draft, model: Model): readonly SurveyedCard[] | Wrong {
  const surveyed: SurveyedCard[] = [];
  for (const kind of Object.keys(model.surveys ?? {}).sort()) {
    for (const owner of plan.cards) {
      if (owner.kind.kind !== kind || owner.doubled) continue;
      const sources = allSources(plan, owner, model.surveys?.[kind] ?? []);
      if (isWrong(sources)) return sources;
      surveyed.push({ id: owner.card.id, kind, cardAt: owner.at, sources });
    }
  }
  return surveyed;
}

function allSources(plan: Draft, owner: CardPlan, names: readonly string[]): readonly Source[] | Wrong {
  const sources: Source[] = [];
  for (const name of names) {
    const resolved = resolveName(plan, owner, name);
    if ("wrong" in resolved) return resolved;
    sources.push(resolved.source);
  }
  return sources;
}

function modelWork(plan: Draft, owner: CardPlan, model: Model, id: string): Work {
  const takes = allSources(plan, owner, model.takes);
  const records = allSources(plan, owner, model.record === undefined ? [] : [model.record]);
  const surveyed = surveyedCards(plan, model);
  const wrongAt = (part: Wrong): Work => fixed(failed("formula", id, part.wrong));
  if (isWrong(takes)) return wrongAt(takes);
  if (isWrong(records)) return wrongAt(records);
  if (isWrong(surveyed)) return wrongAt(surveyed);
  return {
    kind: "model",
    name: `${owner.card.id}.${model.name}`,
    cardKind: owner.kind.kind,
    model,
    takes,
    record: records[0] ?? null,
    surveyed,
  };
}

/** Gives every node of a card its work. */
export function addNodeWork(plan: Draft, owner: CardPlan): void {
  if (owner.doubled) return;
  for (const row of owner.kind.rows) {
    const id = `${owner.card.id}.${row.name}`;
    const node: GraphNode | undefined = plan.nodes.get(twinId(id)) ?? plan.nodes.get(id);
    if (node) node.work = workOf(plan, owner, row, id);
  }
  for (const model of owner.kind.models) {
    const node = modelAt(plan, owner.card.id, model);
    if (node) node.work = modelWork(plan, owner, model, node.id);
  }
}

/** Gives every node its work that some quantities read, at any distance, and them. */
export function addPartWork(plan: Draft, wanted: readonly QuantityId[]): void {
  const found: Reached[] = [];
  plan.reached = found;
  for (const id of wanted) {
    const [card = "", name = ""] = id.split(".");
    nodeAt(plan, card, name);
  }
  for (let next = found.pop(); next; next = found.pop()) {
    const { owner, node } = next;
    node.work =
      "row" in next ? workOf(plan, owner, next.row, node.id) : modelWork(plan, owner, next.model, node.id);
  }
  // Nothing that is asked for later would get any work.
  plan.reached = null;
}
