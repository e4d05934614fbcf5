// From the name of a quantity to the card and the row that it stands on.

import type { Card } from "../document/worksheet.ts";
import type { Row } from "../graph/types.ts";
import type { Sheet } from "./sheet.ts";

export type CardRow = { readonly card: Card; readonly row: Row };

/** Null where there is no such card, or it has no such row. */
export function rowAt({ worksheet, kinds }: Pick<Sheet, "worksheet" | "kinds">, id: string): CardRow | null {
  // No id of a card has a dot in it.
  const [cardId = "", name = ""] = id.split(".");
  const card = worksheet().cards.find((one) => one.id === cardId);
  const row = card && kinds[card.kind]?.rows.find((one) => one.name === name);
  return card && row ? { card, row } : null;
}
