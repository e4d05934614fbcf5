// What one wrong number of one bed does to all the others: nothing but what taking that bed away would do, said by its name.

import { removeCard } from "../../../src/document/card-edits.ts";
import { setGiven } from "../../../src/document/edits.ts";
import type { Results } from "../../../src/graph/evaluate.ts";
import { isReady } from "../../../src/graph/readers.ts";
import { CARD_KINDS } from "../../../src/kinds/index.ts";
import { SEASON_ROWS } from "../../../src/kinds/season/rows.ts";
import { workOut } from "../../../src/studies/work-out.ts";
import { answers } from "../../../src/telling/answers.ts";
import { textOf } from "../../../src/telling/asked.ts";
import { property } from "../harness.ts";

const isLink = (kind: string, given: string): boolean =>
  CARD_KINDS[kind]?.rows.some((row) => row.row === "link" && row.name === given) ?? false;

/** Rows that the season's card shows of the whole; what it is without is told apart. */
const WHOLE = SEASON_ROWS.filter(
  (row) => (row.row === "output" || row.row === "formula") && !row.hidden && row.name !== "left_out",
).map(({ name }) => `season.${name}`);

const WRONG: readonly (readonly [row: string, value: number | null, unit: string])[] = [
  ["priority", -1, "1"],
  ["length", 0, "m"],
  ["width", null, "m"],
];

const saidOf = (results: Results, id: string): string => {
  const result = results.get(id);
  if (result?.state === "ready") return JSON.stringify(result.value);
  return result?.state ?? "not there";
};

property(
  "[G4] a bed with a wrong number changes no answer more than a bed that is not there, and is named with it",
  ({ seed, worksheet, records, cardsOf, results: before }) => {
    const beds = cardsOf("bed").filter((id) => isReady(before.get(`${id}.days_short`)));
    const bed = beds[Math.floor(seed / 10) % Math.max(1, beds.length)];
    const [row, value, unit] = WRONG[Math.floor(seed / 10) % WRONG.length] as (typeof WRONG)[number];
    const title = worksheet.cards.find(({ id }) => id === bed)?.title ?? "";
    if (bed === undefined || beds.length < 2) return null;
    const wrong = workOut(setGiven(worksheet, bed, row, { value, unit }), CARD_KINDS, records);
    if (wrong.results.get(`${bed}.${row}`)?.state !== "failed") return null;
    const gone = workOut(removeCard(worksheet, bed, { isLink }), CARD_KINDS, records);
    const differs = WHOLE.filter((id) => saidOf(wrong.results, id) !== saidOf(gone.results, id));
    if (differs.length > 0)
      return `${bed}.${row} is wrong: ${differs.map((id) => `${id} is ${saidOf(wrong.results, id)}, without the bed ${saidOf(gone.results, id)}`)}`;
    const said = answers({ result: (id) => wrong.results.get(id), cards: worksheet.cards });
    const text = said.map((sentence) => textOf(sentence, (id) => id)).join(" | ");
    const isNamed = text.includes(`Without ${title}: `) || text.startsWith(`Without ${title},`);
    if (!text.includes("Without ") && !isNamed) return `not said: ${text}`;
    // Where another part is left out too, the one that is named is what the button leads to.
    const acts = said[0]?.acts ?? [];
    const leadsThere = isNamed
      ? acts.some(({ does, at }) => (does === "ask_for" || does === "change") && at === `${bed}.${row}`)
      : acts.some(({ at }) => at !== undefined && at.split(".")[0] !== bed);
    return leadsThere ? null : `no way to mend it: ${text} | ${JSON.stringify(acts)}`;
  },
  { every: 10 },
);
