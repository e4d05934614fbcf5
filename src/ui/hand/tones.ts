// In which color an answer is drawn.

import type { Tone } from "../../scene/place.ts";
import { MEASURES } from "../../units/measures.ts";
import type { Sheet } from "../sheet.ts";

const BY_UNIT: Readonly<Record<string, Tone>> = {
  C: "power",
  J: "power",
  W: "power",
  A: "power",
  V: "power",
  money: "ink",
};

/** What is short is trouble as long as there is any; a share of thirst met is growth; else the color of its subject. */
export function toneOf(sheet: Sheet, id: string, isNought: boolean): Tone {
  const [cardId, name = ""] = id.split(".");
  if (name.includes("short")) return isNought ? "growth" : "trouble";
  const kind = sheet.worksheet().cards.find((card) => card.id === cardId)?.kind ?? "";
  const row = sheet.kinds[kind]?.rows.find((candidate) => candidate.name === name);
  const measure =
    row && "measure" in row && row.measure !== "text" && row.measure !== "series" ? row.measure : null;
  if (measure === "share") return "growth";
  return (measure && BY_UNIT[MEASURES[measure].si]) || "water";
}
