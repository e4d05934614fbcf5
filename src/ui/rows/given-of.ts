// A given by the id of its quantity, for what stands elsewhere than on its card.

import type { EntryValue } from "../../document/worksheet.ts";
import { useSheet } from "../sheet.ts";

/** What is given there, and a way to give it; null takes it out. */
export function useGiven(id: string) {
  const sheet = useSheet();
  const [cardId, name] = id.split(".");
  const card = () => sheet.worksheet().cards.find((candidate) => candidate.id === cardId);
  const row = () => sheet.kinds[card()?.kind ?? ""]?.rows.find((candidate) => candidate.name === name);
  return {
    value: (): EntryValue => card()?.givens[name ?? ""]?.value ?? null,
    put: (value: EntryValue): void => {
      const [of, given] = [card(), row()];
      if (of && given) sheet.edit.given(of, given, value === null ? null : { value, unit: "" });
      sheet.edit.settle();
    },
  };
}
