// What is in trouble, numbered in the order in which the parts are listed: the disc in the drawing, the strip of groups and
// the list of parts show the same number.

import type { ShownCaution } from "../graph/cautions.ts";
import type { Problem } from "../graph/types.ts";
import { groupsOf, type Kinds } from "../kinds/kind.ts";

export type Trouble = {
  readonly card: string;
  readonly number: number;
  /** In one sentence. */
  readonly text: string;
};

type Asked = {
  readonly kinds: Kinds;
  readonly cards: readonly { readonly id: string; readonly kind: string }[];
  readonly cautions: readonly ShownCaution[];
  readonly problems: readonly Problem[];
};

/** The first sentence of a text. */
function firstSentence(text: string): string {
  const end = text.search(/[.:](?=\s)/);
  return end < 0 ? text : text.slice(0, end).concat(text[end] === "." ? "." : "");
}

function textOf({ cautions, problems }: Asked, id: string): string | null {
  const problem = problems.find(({ at }) => at === id || at.startsWith(`${id}.`));
  if (problem) return problem.text;
  const caution = cautions.find(({ card, weight }) => card === id && weight === "trouble");
  return caution ? firstSentence(caution.text) : null;
}

/** One a card at the most, from 1 on. */
export function troublesOf(asked: Asked): readonly Trouble[] {
  const grouped = groupsOf(asked.kinds).flatMap(({ kinds }) => {
    const names = new Set(kinds.map(({ kind }) => kind));
    return asked.cards.filter(({ kind }) => names.has(kind));
  });
  // Cards of a kind that this version does not know stand last in the list.
  return [...new Set([...grouped, ...asked.cards])]
    .flatMap(({ id }) => {
      const text = textOf(asked, id);
      return text === null ? [] : [{ card: id, text }];
    })
    .map((one, index) => ({ ...one, number: index + 1 }));
}
