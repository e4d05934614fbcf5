// How batteries start: one, charged by the panel where there is one; asked for what is printed on it and whether it is used.

import type { Start } from "../asking.ts";
import { type LaidPart, type Wish, word } from "../lay-out.ts";
import { CHEMISTRIES } from "./chemistries.ts";

function laid(wish: Wish): readonly LaidPart[] {
  if (wish.batteries === 0) return [];
  const givens = wish.panels > 0 ? { charged: word("in_place") } : {};
  return [{ key: "battery", title: "Battery", givens, links: {} }];
}

/** What is left of one that nobody tested, and of a new one: the usual value of the row, and all. */
const AGES = [
  ["used", 70],
  ["new", 100],
] as const;

export const start: Start = {
  counted: [{ sort: "batteries", place: 6, label: "Battery", most: 1 }],
  laid,
  asks: [
    {
      place: 54,
      rows: ["rated_capacity"],
      ask: "{title}: how many ampere-hours are printed on it?",
      hint: "Beside Ah, on its side or top.",
      field: { row: "rated_capacity" },
      picks: [
        {
          label: "It is",
          picks: () =>
            AGES.map(([label, value]) => ({
              label,
              told: { health: { value, unit: "%", from: "guessed" } },
            })),
        },
        {
          label: "Inside",
          picks: () =>
            Object.entries(CHEMISTRIES).map(([value, label]) => ({
              label,
              told: { chemistry: { value, unit: "" } },
            })),
        },
      ],
      says: ({ number, show }) => {
        const energy = number("usable_energy");
        return energy === null ? null : `Of that you can use {${show(energy, "energy")}}.`;
      },
    },
  ],
};
