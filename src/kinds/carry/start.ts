// How cans start: at each tank that beds are watered from, asked for what one holds and how far it is carried.

import type { Start } from "../asking.ts";
import { carriedFrom, type LaidPart, numbered, type Wish } from "../lay-out.ts";

function laid(wish: Wish): readonly LaidPart[] {
  return carriedFrom(wish).map((from, at) => ({
    key: `cans${at}`,
    title: numbered("Cans", at),
    givens: {},
    links: { from },
  }));
}

const AT_ONCE = [
  ["one", 1],
  ["two", 2],
] as const;

export const start: Start = {
  counted: [{ sort: "cans", place: 8, label: "Watering cans", most: 1 }],
  laid,
  asks: [
    {
      place: 60,
      rows: ["can_volume"],
      ask: "{title}: how much does one hold?",
      alike: "Watering cans: how much does one hold?",
      hint: "It is often molded into its side.",
      field: { row: "can_volume" },
      picks: [
        {
          label: "You carry at a time",
          picks: () =>
            AT_ONCE.map(([label, value]) => ({ label, told: { cans_at_once: { value, unit: "1" } } })),
        },
      ],
      says: ({ number, show }) => {
        const weight = number("weight_per_trip");
        return weight === null ? null : `Full, you carry {${show(weight, "mass")}} at a time.`;
      },
    },
    {
      place: 62,
      rows: ["distance"],
      ask: "{title}: how far is it from the tank to the bed?",
      hint: "One way.",
      field: { row: "distance" },
      says: ({ number, show }) => {
        const time = number("round_time");
        return time === null ? null : `One round takes {${show(time, "duration")}}.`;
      },
    },
  ],
};
