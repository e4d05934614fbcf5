// The cautions that hold now, with the numbers put in.

import type { Worksheet } from "../document/worksheet.ts";
import type { ShowOptions } from "../units/show.ts";
import type { CardCaution, Graph } from "./nodes.ts";
import { READY } from "./pass.ts";
import type { Results } from "./results.ts";
import { shownValue } from "./shown.ts";
import type { Caution } from "./types.ts";

export type ShownCaution = {
  readonly id: string;
  readonly card: string;
  readonly text: string;
  readonly beside: string;
  readonly weight: Caution["weight"];
  readonly source: string;
};

const idOf = (card: string, name: string) => (name.includes(".") ? name : `${card}.${name}`);

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
 */
export function cautionsOf(
  graph: Graph,
  worksheet: Worksheet,
  results: Results,
  options: ShowOptions,
): readonly ShownCaution[] {
  return graph.cautions
    .filter((held) => holds(results, held))
    .map(({ card, caution }) => ({
      id: caution.id,
      card,
      text: caution.text.replace(/\{([a-z0-9_.]+)\}/g, (_, name: string) => {
        const id = idOf(card, name);
        const shown = shownValue(graph, worksheet, results, id, options);
        const { state } = results.get(id) ?? { state: "none" };
        return state === "ready" || state === "pending" ? shown : `(not known: ${shown || name})`;
      }),
      beside: caution.beside,
      weight: caution.weight,
      source: caution.source,
    }));
}
