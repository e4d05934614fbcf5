// Cautions for paper and for the readable report: worst first, and those that say the same of several parts once, with
// each part's own figures in the order of the parts.

import type { ShownCaution } from "../graph/cautions.ts";

export type Said = { readonly place: string; readonly text: string };
export type SaidOnce = { readonly places: string; readonly text: string };

// A figure as any locale writes it: groups apart by comma, point, narrow space or apostrophe.
const FIGURE = /\d+(?:[.,\u00a0\u202f'’]\d+)*/g;

function woven(texts: readonly string[]): string {
  const figures = texts.map((text) => text.match(FIGURE) ?? []);
  let at = -1;
  return (texts[0] ?? "").replace(FIGURE, (own) => {
    at += 1;
    const each = figures.map((of) => of[at] ?? own);
    return new Set(each).size === 1 ? own : each.join(" / ");
  });
}

function once(said: readonly Said[]): SaidOnce {
  const texts = said.map((one) => one.text);
  const apart = new Set(texts).size > 1;
  return {
    // Parts with the same text are merely listed; a slash pairs each part with its figure.
    places: said.map((one) => one.place).join(apart ? " / " : ", "),
    text: woven(texts),
  };
}

/** Cautions that differ in nothing but their figures, put together in the order in which they come. */
export function saidOnce(cautions: readonly Said[]): readonly SaidOnce[] {
  const alike = new Map<string, Map<string, Said>>();
  for (const caution of cautions) {
    const shape = caution.text.replace(FIGURE, "#");
    const at = alike.get(shape) ?? new Map<string, Said>();
    alike.set(shape, at.set(`${caution.place}\n${caution.text}`, caution));
  }
  return [...alike.values()].map((said) => once([...said.values()]));
}

const WEIGHTS = ["harm", "trouble", "note"] as const;

type Weighed = Pick<ShownCaution, "weight" | "kills">;

/** What a caution is about, as a place in the order of danger: 0 can kill, 1 can hurt, 2 goes wrong, 3 is good to know. */
export const dangerOf = ({ weight, kills }: Weighed): number => (kills ? 0 : 1 + WEIGHTS.indexOf(weight));

/** What can kill first, then what can hurt, then what goes wrong; of equals as they come. */
export function byDanger<C extends Weighed>(cautions: readonly C[]): readonly C[] {
  return [...cautions].sort((a, b) => dangerOf(a) - dangerOf(b));
}
