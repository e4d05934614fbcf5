// One rain that was dipped: what it should have brought, and the share that runs off that it teaches.

import { outcomes } from "../../graph/outcomes.ts";
import { numberOf, numberOrNull, wordOf } from "../../graph/readers.ts";
import type { Model, ModelInput, Outcome, Row } from "../../graph/types.ts";
import { runoffShare } from "../../physics/roof.ts";
import { given, output } from "../rows.ts";

const LOSSES = ["catching_area", "runoff_coefficient", "losses", "wetting_loss", "first_flush"];

export const DIP_ROWS: readonly Row[] = [
  given("dip_rain", "Dipped after a rain of", "rain", null, {
    absent: "no rain dipped yet",
    minor: true,
    min: 0.000_1,
    max: 1,
  }),
  output("dip_catch", "Brought by that rain", "dipping", "volume", {
    minor: true,
    measurable: { teaches: "the share that runs off, and the season uses it" },
  }),
  output("coefficient_in_use", "Share that runs off, in use", "learning", "factor", { minor: true }),
];

function lostOf(input: ModelInput): number {
  if (wordOf(input, "losses") === "in_coefficient") return 0;
  return numberOf(input, "wetting_loss") + numberOf(input, "first_flush");
}

export const dipping: Model = {
  name: "dipping",
  takes: [...LOSSES, "dip_rain"],
  outputs: ["dip_catch"],
  run: (input) => {
    const depth = numberOf(input, "runoff_coefficient") * numberOf(input, "dip_rain") - lostOf(input);
    return outcomes({ dip_catch: numberOf(input, "catching_area") * Math.max(0, depth) });
  },
};

function learnedFrom(input: ModelInput): Outcome {
  const volume = numberOrNull(input, "measured.dip_catch");
  if (volume === null) return { value: numberOf(input, "runoff_coefficient") };
  const [rain, area] = [numberOrNull(input, "dip_rain"), numberOf(input, "catching_area")];
  if (rain === null) return { failed: "Give the depth of the rain after which you dipped." };
  if (area === 0) return { failed: "A roof without area brings nothing." };
  const share = runoffShare({ volume, area, rain, lost: lostOf(input) });
  if (share <= 1) return { value: share };
  return { failed: "The dip says more than this roof can bring in such a rain: something else ran in too." };
}

export const learning: Model = {
  name: "learning",
  takes: [...LOSSES, "dip_rain", "measured.dip_catch"],
  optional: ["dip_rain", "measured.dip_catch"],
  outputs: ["coefficient_in_use"],
  run: (input) => ({ coefficient_in_use: learnedFrom(input) }),
};
