// A joint where lines meet without storage.

import type { Kind } from "../kind.ts";
import { COSTS, DEFINITION, given, output } from "../rows.ts";
import { TEE_SPANS } from "./spans.ts";

export const tee: Kind = {
  kind: "tee",
  label: "Tee",
  purpose: "Where one line parts in two; the lines name it as their end.",
  group: "Ways for the water",
  icon: { ink: "M3 8h18M12 8v12", tone: "M9 8a3 3 0 0 0 6 0", color: "water" },
  uses: ["ends_a_line"],
  local: ["height"],
  drawn: { as: "tee", heights: ["height"] },
  spans: TEE_SPANS,
  rows: [
    given("height", "Height", "height", [0, "ft"], "Of the joint, above the worksheet's zero.", {
      min: -1000,
      max: 1000,
    }),
    output(
      "head",
      "Water would stand at",
      "season.joints",
      "height",
      "The height at which as much water arrives as leaves, with every float down and the upper tanks at their usual share.",
      "continuity at a joint, as in the three-reservoir problem of hydraulics texts; Churchill 1977",
    ),
    output(
      "lowest_end",
      "Lowest end behind it",
      "season.feeds",
      "height",
      "The lowest end of the lines that leave it.",
      DEFINITION,
      { minor: true },
    ),
    output("feed", "Filled by", "season.feeds", "series", "The line that fills it.", DEFINITION, {
      hidden: true,
    }),
    ...COSTS,
  ],
  models: [],
  cautions: [
    {
      id: "tee_sucks_air",
      if: "head < height",
      text: "Water would stand lower here than the joint itself, so it is under suction: air gets in at every loose clamp. Lay the joint lower, or a wider line to it.",
      beside: "head",
      source: DEFINITION,
      weight: "trouble",
    },
    {
      id: "tee_shares",
      text: "Two floats open together fill more slowly than one alone; when one shuts, the other gets the whole line.",
      beside: "head",
      source: "continuity at a joint",
      weight: "note",
    },
  ],
};
