// What it all costs: the parts' prices together, by the year, and by the water that reaches the beds.

import type { CardKind } from "../graph/types.ts";
import { toSi } from "../units/unit.ts";
import { outcomes } from "./inputs.ts";
import { DEFINITION, formula, output, text } from "./rows.ts";

const PRICED = ["roof", "tank", "line", "tee", "filter", "delivery", "battery"];

export const cost: CardKind = {
  kind: "cost",
  label: "Money",
  purpose: "What the parts cost together, and what a year and a gallon of it cost.",
  glance: ["total", "yearly"],
  single: true,
  rows: [
    text("currency", "Money", "$", "The one sign of this worksheet; nothing is converted."),
    output(
      "total",
      "All parts together",
      "summing",
      "money",
      "The prices of all parts that have one.",
      DEFINITION,
    ),
    output(
      "yearly",
      "By the year",
      "summing",
      "money",
      "Each price over how long the part lasts; parts without a life are left out.",
      DEFINITION,
    ),
    formula(
      "per_volume",
      "By the water given",
      "money_per_volume",
      "yearly / season.met",
      "The yearly cost over the water that reached the beds in a usual season.",
      DEFINITION,
    ),
  ],
  models: [
    {
      name: "summing",
      takes: [],
      surveys: Object.fromEntries(PRICED.map((kind) => [kind, ["price", "life"]])),
      tolerant: true,
      outputs: ["total", "yearly"],
      run: (input) => {
        const year = toSi(1, "year");
        let total = 0;
        let yearly = 0;
        let priced = 0;
        for (const card of PRICED.flatMap((kind) => input.cards[kind] ?? [])) {
          const price = card.results["price"];
          const life = card.results["life"];
          if (price?.state !== "ready" || typeof price.value !== "number") continue;
          priced += 1;
          total += price.value;
          if (life?.state === "ready" && typeof life.value === "number")
            yearly += (price.value * year) / life.value;
        }
        return outcomes(
          { total: priced > 0 ? total : null, yearly: yearly > 0 ? yearly : null },
          "no part has a price and a life yet",
        );
      },
    },
  ],
  cautions: [],
};
