// A joint where lines meet without storage.

import type { Kind } from "../kind.ts";
import { COSTS, given, hidden, output } from "../rows.ts";
import { teeSeason } from "./season.ts";
import { TEE_SPANS } from "./spans.ts";

export const tee: Kind = {
  kind: "tee",
  label: "Tee",
  purpose: "Where one line parts in two; the lines name it as their end.",
  group: "Ways for the water",
  season: teeSeason,
  icon: { ink: "M3 8h18M12 8v12", tone: "M9 8a3 3 0 0 0 6 0", color: "water" },
  uses: ["ends_a_line"],
  noted: ["drained"],
  local: ["height"],
  drawn: { as: "tee", heights: ["height"] },
  spans: TEE_SPANS,
  rows: [
    given("height", "Height", "height", [0, "ft"], { min: -1000, max: 1000 }),
    output("head", "Water would stand at", "season.joints", "height"),
    output("lowest_end", "Lowest end behind it", "season.feeds", "height", { minor: true }),
    hidden("feed", "Filled by", "season.feeds", "series"),
    ...COSTS,
  ],
  models: [],
  cautions: [
    {
      id: "tee_sucks_air",
      if: "head < height",
      beside: "head",
      weight: "trouble",
    },
    {
      id: "tee_shares",
      beside: "head",
      weight: "note",
    },
  ],
};
