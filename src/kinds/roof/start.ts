// How roofs start: counted, laid out to the big tanks, and asked for the ground they cover.

import { toSi } from "../../units/unit.ts";
import type { Start } from "../asking.ts";
import { bigTank, type LaidPart, numbered, times, type Wish } from "../lay-out.ts";

function laid(wish: Wish): readonly LaidPart[] {
  const target = (at: number) => (wish.tanks > 0 ? bigTank(wish, at) : "small0");
  return times(wish.roofs, (at) => ({
    key: `roof${at}`,
    title: numbered("Roof", at),
    givens: {},
    links: wish.tanks + wish.small > 0 ? { drains_to: target(at) } : {},
  }));
}

const MATERIALS = [
  ["metal", "metal"],
  ["shingle", "shingle"],
  ["tile", "tile"],
  ["plastic", "film"],
] as const;

export const start: Start = {
  counted: [{ sort: "roofs", place: 1, label: "Roof", most: 6 }],
  laid,
  asks: [
    {
      place: 10,
      rows: ["footprint", "length"],
      ask: "{title}: how much ground does it cover?",
      hint: "Pace it on the ground, eave to eave. Length x width, or an area.",
      field: { row: "footprint", by: ["length", "width"] },
      picks: [
        {
          label: "It is of",
          picks: () =>
            MATERIALS.map(([value, label]) => ({ label, told: { material: { value, unit: "" } } })),
        },
      ],
      says: ({ number, show, units }) => {
        const area = number("catch_per_depth");
        if (area === null) return null;
        const isMetric = units === "metric";
        const brings = show(area * (isMetric ? toSi(10, "mm") : toSi(1, "in")), "volume");
        return `${isMetric ? "Ten millimeters" : "An inch"} of rain on it brings {${brings}}.`;
      },
    },
  ],
};
