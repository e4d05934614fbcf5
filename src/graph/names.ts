// What a name in a rule stands for: an own row, a row through a link, a row of a single card, a measured value.

import { nearestOf } from "../units/spelling.ts";
import {
  type CardPlan,
  type Draft,
  kindNamed,
  linkedIds,
  missingCard,
  rowNamed,
  standIn,
  targetOf,
} from "./card-plans.ts";
import type { GraphNode, Source } from "./nodes.ts";
import { failed, none } from "./problems.ts";
import { isMeasured, nodeAt } from "./shells.ts";
import type { CardKind, LinkGiven } from "./types.ts";

export type Resolved = { readonly source: Source } | { readonly wrong: string };

const found = (name: string, node: GraphNode | null, link: GraphNode | null = null): Resolved => ({
  source: { name, link, node },
});

/** A row that only some of a link's kinds have does not apply to the others. */
function throughLink(plan: Draft, from: CardPlan, row: LinkGiven, rest: string, name: string): Resolved {
  if (row.many) return { wrong: `${name}: ${row.label} may lead to several cards.` };
  const has = (word: string): boolean => {
    const kind = kindNamed(plan.kinds, word);
    return kind !== undefined && rowNamed(kind, rest) !== undefined;
  };
  if (!row.kinds.some(has)) return { wrong: `${name}: nothing there is called ${rest}.` };
  const link = nodeAt(plan, from.card.id, row.name);
  const [id, ...more] = linkedIds(from.card, row);
  const target = id === undefined || more.length > 0 ? null : targetOf(plan, row, id);
  if (!target || "code" in target) return found(name, null, link);
  const { card, kind } = target.plan;
  if (rowNamed(kind, rest)) return found(name, nodeAt(plan, card.id, rest), link);
  const lacking = `${card.id}.${rest}`;
  const reason = `a card of the kind "${kind.label}" has no such number`;
  return found(name, standIn(plan, lacking, kind, null, none(reason, lacking)), link);
}

/** A name that stands for nothing, and the one that was perhaps meant. */
function unknown(said: string, word: string, words: Iterable<string>): Resolved {
  const near = nearestOf(word, words);
  return { wrong: near === null ? said : `${said} Did you mean ${near}?` };
}

const namesOf = (kind: CardKind): readonly string[] =>
  kind.rows.flatMap(({ name, hidden }) => (hidden ? [] : [name]));

function ofSingleCard(plan: Draft, kind: CardKind, rest: string, name: string): Resolved {
  const row = rowNamed(kind, rest);
  if (!row)
    return unknown(`${name}: the card "${kind.label}" has nothing called ${rest}.`, rest, namesOf(kind));
  const node = plan.byId.has(kind.kind) ? nodeAt(plan, kind.kind, rest) : null;
  if (node) return found(name, node);
  const { code, text } = missingCard(kind, name);
  return found(name, standIn(plan, name, kind, row, failed(code, name, text)));
}

function ofMeasured(plan: Draft, from: CardPlan, rest: string, name: string): Resolved {
  const row = rowNamed(from.kind, rest);
  if (!row) return { wrong: `${name}: this card has nothing called ${rest}.` };
  const id = `${from.card.id}.${rest}`;
  if (isMeasured(from, row)) return found(name, nodeAt(plan, from.card.id, rest));
  return found(name, standIn(plan, `${id}~measured`, from.kind, row, none("not measured", id)));
}

/** What a name in a rule of a card's kind stands for, or why it stands for nothing. */
export function resolveName(plan: Draft, from: CardPlan, name: string): Resolved {
  // Thousands of names are looked up before the page says anything: nothing is made that need not be.
  const dot = name.indexOf(".");
  if (dot < 0) {
    return rowNamed(from.kind, name)
      ? found(name, nodeAt(plan, from.card.id, name))
      : { wrong: `${name}: this card has nothing of that name.` };
  }
  if (name.includes(".", dot + 1)) return { wrong: `${name}: one dot is enough.` };
  const [head, rest] = [name.slice(0, dot), name.slice(dot + 1)];
  if (head === "measured") return ofMeasured(plan, from, rest, name);
  const row = rowNamed(from.kind, head);
  if (row?.row === "link") return throughLink(plan, from, row, rest, name);
  const single = kindNamed(plan.kinds, head);
  if (single?.single) return ofSingleCard(plan, single, rest, name);
  return { wrong: `${name}: ${head} is no link of this card.` };
}

/** What a name in the user's own formula stands for: `card_id.row` of any card. */
export function resolveAnywhere(plan: Draft, name: string): Resolved {
  const [head = "", rest, ...more] = name.split(".");
  if (rest === undefined || more.length > 0) {
    return {
      wrong: `I do not know ${name}. Write the card and the quantity with a dot between: shed_roof.footprint.`,
    };
  }
  const card = plan.byId.get(head);
  if (card) {
    const row = card.kind.once?.[rest] ?? rest;
    const node = rowNamed(card.kind, row) ? nodeAt(plan, head, row) : null;
    return node
      ? found(name, node)
      : unknown(`The card ${head} has nothing called ${rest}.`, rest, namesOf(card.kind));
  }
  const single = kindNamed(plan.kinds, head);
  return single?.single
    ? ofSingleCard(plan, single, single.once?.[rest] ?? rest, name)
    : unknown(`There is no card ${head}.`, head, plan.byId.keys());
}
