// In which color an answer is drawn.

import { shownIn } from "../../graph/readers.ts";
import type { Tone } from "../../scene/place.ts";
import type { Sheet } from "../sheet.ts";
import { toneOf as toneOfRow } from "../tones.ts";

/** Of its state where it tells one, else of its subject. */
export function toneOf(sheet: Sheet, id: string): Tone {
  const [cardId, name = ""] = id.split(".");
  const kind = sheet.worksheet().cards.find((card) => card.id === cardId)?.kind ?? "";
  const row = sheet.kinds[kind]?.rows.find((candidate) => candidate.name === name);
  if (!row) return "water";
  const tone = toneOfRow(row, shownIn(sheet.result(id)));
  if (tone === undefined || tone === "plain")
    return "measure" in row && row.measure === "money" ? "ink" : "water";
  return tone;
}
