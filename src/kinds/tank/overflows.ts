// Whether water comes to each tank at all, and where its overflow ends: on the ground, in another tank, or round in a circle.

import type { Model, ModelInput, Outcome } from "../../graph/types.ts";
import { isFilled, overflowEnd } from "../../network/feeds.ts";
import { networkIn } from "../network-in.ts";

export const OVERFLOW_ENDS = [
  { word: "ground", label: "on the ground" },
  { word: "tank", label: "in another tank, then on the ground" },
  { word: "loop", label: "nowhere: it comes round to itself" },
];

export const FILLED_BY = [
  { word: "water", label: "a roof, a hose or another's overflow" },
  { word: "nothing", label: "nothing on this sheet" },
];

/** What fills each tank and where its overflow ends, by quantity id. */
export const overflows: Model = {
  name: "overflows",
  takes: ["network"],
  surveys: { tank: ["count"] },
  tolerant: true,
  outputs: "by quantity id",
  run: (input: ModelInput) => {
    const network = networkIn(input);
    const outputs: Record<string, Outcome> = {};
    for (const { id } of input.cards["tank"] ?? []) {
      outputs[`${id}.filled_by`] = { value: isFilled(network, id) ? "water" : "nothing" };
      outputs[`${id}.overflow_ends`] = { value: overflowEnd(network, id) };
    }
    return outputs;
  },
};
