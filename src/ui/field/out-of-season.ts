// What the pages of the season say on a day outside it.

import { wordIn } from "../../graph/readers.ts";
import { outOfSeasonSaid } from "../../telling/out-of-season.ts";
import { parseIsoDate } from "../../units/calendar.ts";
import { useSheet } from "../sheet.ts";

/** That the season has not begun or is over, by the day that counts as today; "" within it. */
export function useOutOfSeason(): () => string {
  const sheet = useSheet();
  const word = (id: string): string => wordIn(sheet.result(id));
  return () => {
    const today = parseIsoDate(word("site.today")) ?? parseIsoDate(sheet.today());
    if (today === null) return "";
    return outOfSeasonSaid({ start: word("site.season_start"), end: word("site.season_end") }, today);
  };
}
