// A worksheet with nothing in it but the four cards that always exist.

import type { WorksheetSettings } from "./edits.ts";
import { frozen } from "./freeze.ts";
import { CURRENT_VERSION, SINGLE_CARDS, type Worksheet } from "./worksheet.ts";

const TITLES: Readonly<Record<(typeof SINGLE_CARDS)[number], string>> = {
  site: "The place",
  weather: "The sky",
  season: "The season",
  cost: "The money",
};

/** An empty worksheet; settings left out have their usual values. */
export function emptyWorksheet(settings: Partial<WorksheetSettings> = {}): Worksheet {
  return frozen({
    version: CURRENT_VERSION,
    title: "My garden",
    units: "metric",
    locale: "en-US",
    currency: "$",
    datum: "the lowest ground",
    made_by: "",
    made_on: "",
    ...settings,
    cards: SINGLE_CARDS.map((id) => ({ id, kind: id, title: TITLES[id], givens: {}, measured: {} })),
  });
}
