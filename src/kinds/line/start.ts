// How lines start: hoses downhill to the small tanks, asked for their length and bore.

import type { Picks, Start } from "../asking.ts";
import { bigTank, type LaidPart, numbered, times, type Wish } from "../lay-out.ts";

function laid(wish: Wish): readonly LaidPart[] {
  if (wish.tanks === 0) return [];
  return times(Math.min(wish.hoses, wish.small), (at) => ({
    key: `line${at}`,
    title: numbered("Hose downhill", at),
    givens: {},
    links: { from: bigTank(wish, at), to: `small${at}` },
  }));
}

const BORES = {
  inches: [
    [0.5, "1/2 in"],
    [0.625, "5/8 in"],
    [0.75, "3/4 in"],
    [1, "1 in"],
  ],
  millimeters: [
    [13, "13 mm"],
    [16, "16 mm"],
    [19, "19 mm"],
    [25, "25 mm"],
  ],
} as const;

/** Bores in which garden hose is sold. */
export const boresOf = (row: string): Picks => ({
  label: "Inside bore",
  picks: ({ units }) => {
    const unit = units === "metric" ? "mm" : "in";
    return BORES[units === "metric" ? "millimeters" : "inches"].map(([value, label]) => ({
      label,
      told: { [row]: { value, unit } },
    }));
  },
});

export const start: Start = {
  counted: [{ sort: "hoses", place: 3, label: "Hose downhill", help: "runs by itself", most: 6 }],
  laid,
  asks: [
    {
      place: 30,
      rows: ["length"],
      ask: "{title}: how long is it?",
      hint: "Pace it along the way it lies.",
      field: { row: "length" },
      picks: [boresOf("bore")],
      says: ({ number, show }) => {
        const flow = number("flow");
        return flow === null ? null : `With the upper tank half full, {${show(flow, "flow")}} run down it.`;
      },
    },
  ],
};
