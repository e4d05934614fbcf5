// The worksheet with its money called otherwise: its numbers stay, what is written of money in formulas goes with it.

import { inOtherMoney } from "../units/other-money.ts";
import { setWorksheet } from "./edits.ts";
import { mapAllGivens } from "./entries.ts";
import type { Worksheet } from "./worksheet.ts";

/**
 * @param saysMoney whether the given of that kind of card is a formula of the user's, or the unit of one
 */
export function countedIn(
  worksheet: Worksheet,
  currency: string,
  saysMoney: (kind: string, given: string) => boolean,
): Worksheet {
  const called = mapAllGivens(worksheet, (entry, { kind, row }) => {
    if (typeof entry.value !== "string" || !saysMoney(kind, row)) return entry;
    const value = inOtherMoney(entry.value, worksheet.currency, currency);
    return value === entry.value ? entry : { ...entry, value };
  });
  return setWorksheet(called, { currency });
}
