// Where the overflow of each tank ends: on the ground, in another tank, or round in a circle.

import { readyWord } from "../../graph/readers.ts";
import type { Model, ModelInput, Outcome } from "../../graph/types.ts";

export const OVERFLOW_ENDS = [
  { word: "ground", label: "on the ground" },
  { word: "tank", label: "in another tank, then on the ground" },
  { word: "loop", label: "nowhere: it comes round to itself" },
];

function endOf(next: ReadonlyMap<string, string>, start: string): string {
  let at = next.get(start) ?? "";
  if (at === "") return "ground";
  const seen = new Set<string>();
  while (at !== "" && !seen.has(at)) {
    if (at === start) return "loop";
    seen.add(at);
    at = next.get(at) ?? "";
  }
  return "tank";
}

/** Where each tank's overflow ends, by quantity id. */
export const overflows: Model = {
  name: "overflows",
  takes: [],
  surveys: { tank: ["overflows_to"] },
  tolerant: true,
  outputs: "by quantity id",
  run: (input: ModelInput) => {
    const tanks = input.cards["tank"] ?? [];
    const next = new Map(tanks.map(({ id, results }) => [id, readyWord(results, "overflows_to")]));
    const outputs: Record<string, Outcome> = {};
    for (const { id } of tanks) outputs[`${id}.overflow_ends`] = { value: endOf(next, id) };
    return outputs;
  },
};
