// Whether anything on a worksheet was said not to be sure.

import type { Worksheet } from "./worksheet.ts";

/** Whether some number was said to lie between two ends. */
export const isUnsure = ({ cards }: Worksheet): boolean =>
  cards.some(({ givens, measured, price, life }) =>
    [...Object.values(givens), ...Object.values(measured), price, life].some(
      (entry) => entry?.low !== undefined,
    ),
  );
