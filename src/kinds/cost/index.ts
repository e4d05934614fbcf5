// What it all costs: the parts' prices together, by the year, and by the water that reaches the beds.

import { numberIn } from "../../graph/readers.ts";
import type { Model, Outcome } from "../../graph/types.ts";
import { toSi } from "../../units/unit.ts";
import { isPriced, type Kind } from "../kind.ts";
import { formula, output, text } from "../rows.ts";

function summed(amounts: readonly number[], absent: string): Outcome {
  return amounts.length > 0 ? { value: amounts.reduce((sum, amount) => sum + amount, 0) } : { none: absent };
}

const summing = (priced: readonly string[]): Model => ({
  name: "summing",
  takes: [],
  surveys: Object.fromEntries(priced.map((kind) => [kind, ["price", "life"]])),
  tolerant: true,
  outputs: ["total", "yearly"],
  run: (input) => {
    const parts = priced
      .flatMap((kind) => input.cards[kind] ?? [])
      .map(({ results }) => ({
        price: numberIn(results["price"]),
        life: numberIn(results["life"]),
      }));
    const prices = parts.flatMap(({ price }) => (price === null ? [] : [price]));
    const yearly = parts.flatMap(({ price, life }) =>
      price === null || life === null || life <= 0 ? [] : [(price * toSi(1, "year")) / life],
    );
    return {
      total: summed(prices, "no part has a price yet"),
      yearly: summed(yearly, "no part has both a price and how long it lasts"),
    };
  },
});

export const cost: Kind = {
  kind: "cost",
  label: "Money",
  purpose: "What the parts cost together, and what a year and a gallon of it cost.",
  group: "The season and the money",
  icon: { ink: "M12 4a8 8 0 1 0 0 16 8 8 0 1 0 0-16M12 8a4 4 0 1 0 0 8 4 4 0 1 0 0-8" },
  glance: ["total", "yearly"],
  single: true,
  rows: [
    text("currency", "Money is counted in", "$", { of: "currency" }),
    output("total", "All parts together", "summing", "money", { adds: ["price"] }),
    output("yearly", "By the year", "summing", "money", { adds: ["price", "life"] }),
    formula("per_volume", "By the water given", "money_per_volume", "yearly / season.got", {
      none: [{ if: "season.got <= 0 gal", reason: "no bed is given any water in a usual season" }],
    }),
  ],
  models: [],
  among: (others) => ({ models: [summing(others.filter(isPriced).map(({ kind }) => kind))] }),
  cautions: [],
};
