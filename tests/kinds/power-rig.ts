// One tub with its pump, hose, wire, battery and bed, and what of it does not wait for the season.

import { buildGraph } from "../../src/graph/build.ts";
import { evaluate } from "../../src/graph/evaluate.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { type Givens, sheetOf } from "./made-up-sheets.ts";

/** A straight-sided tub on the ground, 4 ft of water when full: half full stands at 2 ft. */
export const TUB: Givens = {
  capacity: [100, "gal"],
  water_height: [4, "ft"],
  ground_height: [0, "ft"],
  stand_height: [0, "ft"],
};
/** Exactly 1 m over half the tub's water. */
const ONE_METRE_UP: Givens = { outlet_height: [2 * 0.3048 + 1, "m"] };

type Cards = Parameters<typeof sheetOf>[0];

export type Parts = {
  readonly pump?: Givens;
  readonly hose?: Givens;
  readonly measured?: Givens;
  readonly wire?: Givens | null;
  readonly battery?: Givens;
  readonly more?: Cards;
  readonly tested?: Givens;
};

/** One tub, pump, hose, wire, battery and bed. */
export function rig({ pump, hose, measured = {}, wire = {}, battery, tested = {}, more = {} }: Parts) {
  return sheetOf({
    tub: ["tank", TUB],
    bed_one: ["bed", { watered_by: ["hose"] }],
    bilge: ["pump", { powered_by: "cell", ...pump }],
    hose: ["delivery", { from: "tub", pump: "bilge", ...ONE_METRE_UP, ...hose }, measured],
    cell: ["battery", { nominal_voltage: [13.6, "V"], ...battery }, tested],
    ...(wire === null ? {} : { lead: ["wire", { feeds: "bilge", ...wire }] as const }),
    ...more,
  });
}

/** What does not wait for the season. */
export function light(worksheet: ReturnType<typeof sheetOf>) {
  const results = evaluate(buildGraph(worksheet, CARD_KINDS), worksheet, {
    answers: new Map(),
    records: new Map(),
  });
  return (id: string): number => {
    const result = results.get(id);
    if (result?.state !== "ready" || typeof result.value !== "number")
      throw new Error(`${id}: ${JSON.stringify(result)}`);
    return result.value;
  };
}
