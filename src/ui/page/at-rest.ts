// The sheet with nothing of the screen in it: nothing open, held, moved or in hand, no season or day chosen. Paper shows it so.

import { NOT_YET } from "../../graph/shown.ts";
import { NOT_WORKED_OUT } from "../../telling/printed.ts";
import type { Sheet } from "../sheet.ts";

const nothing = (): null => null;
const no = (): false => false;

export function atRest(sheet: Sheet): Sheet {
  return {
    ...sheet,
    shown: (id) => {
      const text = sheet.shown(id);
      return text === NOT_YET ? NOT_WORKED_OUT : text;
    },
    held: no,
    moved: nothing,
    // The discs' numbers lead to the list of parts, which paper has not.
    troubles: () => [],
    looking: {
      ...sheet.looking,
      part: nothing,
      inHand: nothing,
      opened: nothing,
      openedAt: () => "row",
      year: nothing,
      dayChosen: no,
      width: () => "bench",
    },
  };
}
