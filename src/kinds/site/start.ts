// How the place starts: where it lies, by a place about as far from the equator, or by its latitude.

import type { AskedCard, Start, Told } from "../asking.ts";
import type { Planted } from "../bed/crops.ts";
import { PLACES } from "./places.ts";

/** South of the equator the year is the other way round. */
const SOUTH = { season_start: "11-01", season_end: "03-31" } as const;

const isUsual = (card: AskedCard, row: string): boolean =>
  card.givens[row] === undefined || card.givens[row].from === "default";

/** A day half a year on: "05-15" as "11-15". */
const halfAYearOn = (day: string): string => {
  const [month = "01", date = "01"] = day.split("-");
  return `${String(((Number(month) + 5) % 12) + 1).padStart(2, "0")}-${date}`;
};

const isWinter = (day: string): boolean => day >= "04-01" && day < "10-01";

/** South of the equator: the season and what was planted for a summer of the north, half a year on. */
function turned(told: Told, cards: readonly AskedCard[]): Readonly<Record<string, Told>> {
  const latitude = told["latitude"]?.value;
  if (typeof latitude !== "number" || latitude >= 0) return {};
  const all: Record<string, Told> = {};
  for (const card of cards) {
    const contents = card.givens["contents"]?.value;
    if (Array.isArray(contents)) {
      const later = (contents as readonly Planted[]).map((one) =>
        isWinter(one.planted) ? { ...one, planted: halfAYearOn(one.planted) } : one,
      );
      all[card.id] = { contents: { value: later, unit: "" } };
    }
    if (card.kind === "site")
      all[card.id] = Object.fromEntries(
        Object.entries(SOUTH)
          .filter(([row]) => isUsual(card, row))
          .map(([row, value]) => [row, { value, unit: "", from: "default" as const }]),
      );
  }
  return all;
}

const degrees = (latitude: number): string =>
  latitude === 0 ? "0°" : `${Math.abs(latitude)}° ${latitude < 0 ? "S" : "N"}`;

export const start: Start = {
  asks: [
    {
      place: 90,
      rows: ["latitude"],
      picked: true,
      ask: "Where is it?",
      hint: "Pick a place about as far from the equator as yours, or type your latitude, such as 45 or 34 S.",
      field: {
        row: "latitude",
        plain: (text) =>
          text.replace(/^\s*([\d.,]+)\s*(?:°|deg)?\s*([NS])\s*$/i, (_, number, side) =>
            /s/i.test(side) ? `-${number}` : number,
          ),
      },
      picks: [
        {
          label: "About as far north or south as",
          tall: true,
          picks: () =>
            PLACES.map(([latitude, names]) => ({
              label: `${degrees(latitude)}  ${names}`,
              told: { latitude: { value: latitude, unit: "deg" } },
            })),
        },
      ],
      others: turned,
    },
  ],
};
