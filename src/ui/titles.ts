// What parts are called.

import { useSheet } from "./sheet.ts";

/** Titles by id; of one that is gone its id. */
export function useTitleOf(): (id: string) => string {
  const sheet = useSheet();
  return (id) => sheet.worksheet().cards.find((card) => card.id === id)?.title ?? id;
}
