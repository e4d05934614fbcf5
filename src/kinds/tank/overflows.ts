// Where the overflow of each tank ends: on the ground, in another tank, or round in a circle.

import type { Model, ModelInput, Outcome } from "../../graph/types.ts";
import { overflowEnd } from "../../network/feeds.ts";
import { networkIn } from "../network-in.ts";

export const OVERFLOW_ENDS = [
  { word: "ground", label: "on the ground" },
  { word: "tank", label: "in another tank, then on the ground" },
  { word: "loop", label: "nowhere: it comes round to itself" },
];

/** Where each tank's overflow ends, by quantity id. */
export const overflows: Model = {
  name: "overflows",
  takes: ["network"],
  surveys: { tank: ["count"] },
  tolerant: true,
  outputs: "by quantity id",
  run: (input: ModelInput) => {
    const network = networkIn(input);
    const outputs: Record<string, Outcome> = {};
    for (const { id } of input.cards["tank"] ?? [])
      outputs[`${id}.overflow_ends`] = { value: overflowEnd(network, id) };
    return outputs;
  },
};
