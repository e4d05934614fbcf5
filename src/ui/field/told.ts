// What was noted before, as the pages of the season look it up.

import { createMemo } from "solid-js";
import { inForce } from "../../document/note-order.ts";
import type { Note } from "../../document/worksheet.ts";
import { parseIsoDate } from "../../units/calendar.ts";
import { clockText } from "../../units/clock.ts";
import { MINUTE } from "../../units/constants.ts";
import { useSheet } from "../sheet.ts";
import { dayAndMonth } from "../words.ts";

export function useTold() {
  const sheet = useSheet();
  const notes = createMemo(() => inForce(sheet.worksheet().notes ?? []));
  const locale = () => sheet.worksheet().locale;
  const isToday = ({ day }: Note): boolean => day === sheet.today();
  return {
    /** Notes of a part that stand, of these kinds, earliest first. */
    of: (where: string, ...what: readonly string[]): readonly Note[] =>
      notes().filter((note) => note.where === where && what.includes(note.what)),
    /** The latest that stands of these kinds, of any part. */
    last: (...what: readonly string[]): Note | undefined =>
      notes().findLast((note) => what.includes(note.what)),
    isToday,
    /** "6:46 am" of today, else "Jul 19". */
    when: (note: Note): string => {
      if (isToday(note))
        return note.minute === undefined ? "today" : clockText(note.minute * MINUTE, locale());
      const day = parseIsoDate(note.day);
      return day === null ? note.day : dayAndMonth(day, locale());
    },
  };
}
