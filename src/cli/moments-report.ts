// What `--all --today` tells beside the numbers: first fillings, frost, tanks that fill, this year against what was expected.

import { CARD_KINDS } from "../kinds/index.ts";
import { KIND_WORDS } from "../kinds/words.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { toldMoments } from "../studies/told-moments.ts";
import type { Whole } from "../studies/work-out.ts";
import { yearMoments } from "../studies/year-moments.ts";
import { FILLING_ASIDE, FULL_ASIDE } from "../telling/told-moments.ts";
import { parseIsoDate } from "../units/calendar.ts";
import { showQuantity } from "../units/show.ts";
import { optionsOf } from "./report.ts";

const part = (head: string, lines: readonly string[]): readonly string[] =>
  lines.length === 0 ? [] : [head, ...lines.map((line) => `  ${line}`), ""];

/** The year's other moments for reading; nothing where the day is not known. */
export function momentsText(whole: Whole, records: readonly DailyRecord[], today: string | null): string {
  const day = parseIsoDate(today ?? "");
  if (day === null) return "";
  const moments = yearMoments(whole, records, day);
  if ("failed" in moments) return `${moments.failed}\n`;
  const options = optionsOf(whole);
  const told = toldMoments(whole, moments, { kinds: CARD_KINDS, words: KIND_WORDS }, (si, measure) =>
    showQuantity(si, measure, options),
  );
  const { thisYear, frost, full, fillings } = told;
  const lines = [
    ...part("This year against what was expected", [
      ...(thisYear ? [thisYear.head] : []),
      ...(thisYear?.rows ?? []).map(({ what, noted, expected }) => `${what}: ${noted}; expected ${expected}`),
      ...(thisYear?.missing ?? []),
    ]),
    ...part("Before the first frost", [
      frost.by,
      ...frost.lines.map(
        ({ title, text, source, done }) => `${done === null ? "" : "done: "}${title}: ${text} (${source})`,
      ),
    ]),
    ...part(
      "When an empty tank is full",
      full.map(({ title, said }) => `${title}: ${said}`).concat(full.length > 0 ? [FULL_ASIDE] : []),
    ),
    ...fillings.flatMap(({ title, steps }) =>
      part(`Filling for the first time: ${title}`, [
        ...steps.map((step, at) => `${at + 1}. ${step}`),
        FILLING_ASIDE,
      ]),
    ),
  ];
  return `${lines.join("\n")}\n`;
}
