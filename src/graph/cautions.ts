// The cautions that hold now, with the numbers put in.

import type { Card, Worksheet } from "../document/worksheet.ts";
import type { ShowOptions } from "../units/show.ts";
import { kindNamed, linkedIds, rowNamed } from "./card-plans.ts";
import { filledWith } from "./fill.ts";
import type { CardCaution, Graph } from "./nodes.ts";
import { READY } from "./pass.ts";
import type { Results } from "./results.ts";
import { shownValue } from "./shown.ts";
import type { Caution } from "./types.ts";
import { cautionWords, type Words } from "./words.ts";

export type ShownCaution = {
  readonly id: string;
  readonly card: string;
  readonly text: string;
  readonly beside: string;
  readonly weight: Caution["weight"];
  readonly source: string;
  /** It stands open beside its number until it has been read once on a device. */
  readonly kills: boolean;
  /** A number sets it off; what always holds of such a thing is said once. */
  readonly setOff: boolean;
};

const idOf = (card: string, name: string) => (name.includes(".") ? name : `${card}.${name}`);

/** What a name in a caution's words stands for: a row of its card, of the card that a link of it leads to, or of a single card. */
function namedIn({ kinds }: Graph, card: Card, name: string): string {
  const [head = "", rest] = name.split(".");
  const kind = kindNamed(kinds, card.kind);
  const row = rest !== undefined && kind ? rowNamed(kind, head) : undefined;
  const [linked] = row?.row === "link" ? linkedIds(card, row) : [];
  return linked === undefined ? idOf(card.id, name) : `${linked}.${rest}`;
}

function standsWhere(results: Results, card: string, where: NonNullable<Caution["where"]>): boolean {
  const result = results.get(idOf(card, where.row));
  if ("state" in where) return result?.state === "none";
  return result?.state === "ready" && result.value === where.word;
}

/** A condition that cannot be worked out does not hold; that it failed is said at its quantity. */
function holds(results: Results, { card, caution, step }: CardCaution): boolean {
  if (caution.where && !standsWhere(results, card, caution.where)) return false;
  if (!step) return true;
  const { states, values } = results.inside;
  if (step.needs.some((position) => states[position] !== READY)) return false;
  const answer = step.run(values);
  return Number.isFinite(answer) && answer !== 0;
}

/**
 * The cautions that hold, in the order of the cards' names.
 * @param options units, locale and currency of the numbers in them
 * @param words what they say; those that have no words yet are left out
 */
export function cautionsOf(
  graph: Graph,
  worksheet: Worksheet,
  results: Results,
  options: ShowOptions,
  words: Words,
): readonly ShownCaution[] {
  const filled = (card: Card, text: string): string =>
    filledWith(text, (name) => {
      const id = namedIn(graph, card, name);
      const shown = shownValue(graph, worksheet, results, id, options);
      const { state } = results.get(id) ?? { state: "none" };
      return state === "ready" || state === "pending" ? shown : `(not known: ${shown || name})`;
    });
  const cards = new Map(worksheet.cards.map((card) => [card.id, card]));
  return graph.cautions().flatMap((held) => {
    const { card, caution } = held;
    const on = cards.get(card);
    const said = on && holds(results, held) ? cautionWords(words, on.kind, caution) : null;
    if (!on || !said) return [];
    const { id, beside, weight, kills = false } = caution;
    const text = filled(on, said.text);
    return [{ id, card, text, beside, weight, source: said.source, kills, setOff: caution.if !== undefined }];
  });
}
