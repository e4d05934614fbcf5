// What differs between the sheet and a plan of it, each as a reader would name it.

import type { Differences } from "../document/effective.ts";
import type { Change, Worksheet } from "../document/worksheet.ts";
import type { ShowOptions } from "../units/show.ts";
import { kindNamed, rowNamed } from "./card-plans.ts";
import { shownEntry, titleOf } from "./shown.ts";
import type { CardKinds } from "./types.ts";

/** A part that is more or gone, that is called otherwise, or a number of one. */
export type Differing = {
  readonly what: "added" | "removed" | "title" | "given" | "measured";
  /** What the part is called; where its title differs, on the sheet. */
  readonly title: string;
  /** What the number is called; "" of a whole part. */
  readonly label: string;
  /** The number as it was typed, "" for the usual one; the title in the plan; "" of a whole part. */
  readonly text: string;
};

const part = (what: "added" | "removed", title: string): Differing => ({ what, title, label: "", text: "" });

function changedAs(
  sheet: Worksheet,
  planned: Worksheet,
  change: Change,
  kinds: CardKinds,
  options: ShowOptions,
): Differing {
  const { card, part: of, entry } = change;
  const title = titleOf(planned, card);
  if (of === "title") return { what: "title", title: titleOf(sheet, card), label: "", text: title };
  const kind = kindNamed(kinds, planned.cards.find(({ id }) => id === card)?.kind ?? "");
  const name = of === "givens" || of === "measured" ? change.row : of;
  const row = (kind && rowNamed(kind, name)) ?? null;
  const text = entry ? shownEntry(planned, row, entry, options) : "";
  const label = row?.label ?? name;
  return { what: of === "measured" ? "measured" : "given", title, label, text };
}

/**
 * @param sheet as it is now
 * @param planned the sheet with the plan laid over
 * @param differences what leads from the one to the other
 */
export function differing(
  sheet: Worksheet,
  planned: Worksheet,
  { changes, added, removed }: Differences,
  kinds: CardKinds,
  options: ShowOptions,
): readonly Differing[] {
  return [
    ...added.map(({ id }) => part("added", titleOf(planned, id))),
    ...removed.map((id) => part("removed", titleOf(sheet, id))),
    ...changes.map((change) => changedAs(sheet, planned, change, kinds, options)),
  ];
}
