// The words of the week's plan in the open sheet's titles and units.

import { shownIn } from "../../graph/readers.ts";
import type { WeekSpan } from "../../kinds/season/week.ts";
import type { Voice } from "../../telling/today.ts";
import { showQuantity } from "../../units/show.ts";
import { useSheet } from "../sheet.ts";
import { useTitleOf } from "../titles.ts";

/** As a gardener would say it aloud. */
const FIGURES = 2;

/** The week from today on, the last one while a new one is worked out; null where no day is known. */
export function useWeekSpan(): () => WeekSpan | null {
  const sheet = useSheet();
  return () => shownIn(sheet.result("season.week_span")) as WeekSpan | null;
}

export function useVoice(): () => Voice {
  const sheet = useSheet();
  const titleOf = useTitleOf();
  const span = useWeekSpan();
  return () => ({
    show: (si, measure) => showQuantity(si, measure, { ...sheet.showOptions(), figures: FIGURES }),
    locale: sheet.showOptions().locale,
    titleOf,
    driverOf: (bed) => span()?.drivers[bed] ?? "either",
    tanksOf: (bed) => span()?.tanks[bed],
    tankBy: (by) => span()?.tankBy[by],
  });
}
