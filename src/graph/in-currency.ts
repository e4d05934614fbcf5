// Money called otherwise, in all of the worksheet.

import { countedIn } from "../document/counted-in.ts";
import type { Worksheet } from "../document/worksheet.ts";
import { kindNamed } from "./card-plans.ts";
import { formulaTexts } from "./shape.ts";
import type { CardKinds } from "./types.ts";

/** The worksheet counting its money in another currency: every amount stays the number it is. */
export const inCurrency = (worksheet: Worksheet, kinds: CardKinds, currency: string): Worksheet =>
  countedIn(worksheet, currency, (name, given) => {
    const kind = kindNamed(kinds, name);
    return kind ? formulaTexts(kind).includes(given) : false;
  });
