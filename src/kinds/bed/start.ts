// How beds start: watered by what was counted, asked for their size, for what is over them, and for what grows there.

import { toSi } from "../../units/unit.ts";
import type { Pick, Start, Told } from "../asking.ts";
import { carriedFrom, type LaidPart, numbered, pumpedFrom, times, type Wish, word } from "../lay-out.ts";
import { CROP_OPTIONS, type Planted } from "./crops.ts";

function laid(wish: Wish): readonly LaidPart[] {
  const ways = [
    ["pump", pumpedFrom(wish).length],
    ["cans", carriedFrom(wish).length],
  ] as const;
  const kept = ways.filter(([, count]) => count > 0);
  return times(wish.beds, (at) => ({
    key: `bed${at}`,
    title: numbered("Bed", at),
    givens: {
      method: word(wish.pumps > 0 ? "wand" : "can"),
      priority: { value: at + 1, unit: "1", from: "default" },
    },
    links: kept.length > 0 ? { watered_by: kept.map(([way, count]) => `${way}${at % count}`) } : {},
  }));
}

const COVERS = [
  ["open", "under the sky"],
  ["covered", "in a tunnel"],
] as const;

/** Shown before the others: what most gardens have. Common practice, no source. */
const OFTEN = [
  "tomato",
  "lettuce",
  "bean_green",
  "summer_squash",
  "cucumber",
  "bell_pepper",
  "potato",
  "onion_dry",
  "carrot",
  "cabbage",
  "chard",
  "sweet_corn",
];

/** Day on which they are taken to be planted until somebody says, as on a fresh bed. */
const PLANTED = "05-15";

const cropOf = (told: Told): string => {
  const value = told["contents"]?.value;
  return Array.isArray(value) ? String((value[0] as Planted).crop) : "";
};

const planted = (crops: readonly string[]): Told => ({
  contents:
    crops.length === 0
      ? null
      : {
          value: crops.map((crop) => ({ crop, planted: PLANTED, share: 1 / crops.length })),
          unit: "",
        },
});

function crops(): readonly Pick[] {
  const picks = CROP_OPTIONS.map(({ word: crop, label }) => ({
    label,
    told: planted([crop]),
    ...(OFTEN.includes(crop) ? {} : { seldom: true as const }),
  }));
  return picks.toSorted((a, b) => OFTEN.indexOf(cropOf(a.told)) - OFTEN.indexOf(cropOf(b.told)));
}

export const start: Start = {
  counted: [{ sort: "beds", place: 9, label: "Bed or tunnel", most: 6 }],
  laid,
  asks: [
    {
      place: 70,
      rows: ["length", "width"],
      ask: "{title}: how long and wide is it?",
      alike: "{count} beds: how long and wide is each?",
      hint: "The ground that is planted, without the paths. Length x width.",
      field: { row: "length", by: ["length", "width"] },
      picks: [
        {
          label: "It lies",
          picks: () => COVERS.map(([value, label]) => ({ label, told: { cover: { value, unit: "" } } })),
        },
      ],
      says: ({ number, show, units }) => {
        const [length, width] = [number("length"), number("width")];
        if (length === null || width === null) return null;
        const isMetric = units === "metric";
        const takes = show(length * width * (isMetric ? toSi(10, "mm") : toSi(1, "in")), "volume");
        return `${isMetric ? "Ten millimeters" : "An inch"} of water on one takes {${takes}}.`;
      },
    },
    {
      place: 72,
      rows: ["contents"],
      ask: "{title}: what grows there?",
      hint: "All that share the bed; they are taken to share it evenly.",
      picks: [
        {
          label: "Crops",
          together: (picked) => planted(picked.map(({ told }) => cropOf(told))),
          isPicked: ({ told }, { givens }) => {
            const value = givens["contents"]?.value;
            return Array.isArray(value) && value.some((one) => (one as Planted).crop === cropOf(told));
          },
          picks: crops,
        },
      ],
    },
  ],
};
