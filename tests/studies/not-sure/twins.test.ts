// Twins of real worksheets with planted truths: what is said to hold eight of ten does, and the doubt that is said to
// matter most is the one that does.

import { readFileSync } from "node:fs";
import { randomLcg } from "d3-random";
import { expect, test } from "vitest";
import { withChanges } from "../../../src/document/changes.ts";
import type { Worksheet } from "../../../src/document/worksheet.ts";
import { numberIn } from "../../../src/graph/readers.ts";
import { CARD_KINDS } from "../../../src/kinds/index.ts";
import { recordKey } from "../../../src/rainfall/record-key.ts";
import { worksheetFromFileText } from "../../../src/storage/file.ts";
import { ask, baseOf, rebased } from "../../../src/studies/ask.ts";
import { changesAt } from "../../../src/studies/not-sure/doubts.ts";
import { notSure, spansOf } from "../../../src/studies/not-sure/not-sure.ts";
import { tries } from "../../tries.ts";

const CONTINUOUS = ["season.spill", "season.days_of_autonomy", "season.days_short"];
const COUNTS = ["season.worst_season_days_short", "season.seasons_short"];
const WANTED = [...CONTINUOUS, ...COUNTS];
/** Ten sheets with LONG=1. */
const SHEETS = tries(10, 4);
const TRUTHS = 20;

function barrel(): Worksheet {
  const path = new URL("../../../templates/one-barrel.json", import.meta.url);
  const read = worksheetFromFileText(readFileSync(path, "utf8"), recordKey);
  if (!read.ok) throw new Error("not read");
  return read.worksheet;
}

/** Years of the record: what holds eight of ten of the answers does so in any. */
const YEARS = tries(6, 3);

/** A sheet with spans of its own: how far each reaches, and where in it the usual value lies, by chance. A short record. */
function twin(chance: () => number): Worksheet {
  const span = (value: number) => {
    const width = value * (0.2 + 0.8 * chance());
    const low = value - width * chance();
    return { low, high: low + width };
  };
  const of = (card: string, row: string, value: number, unit: string) => {
    const { low, high } = span(value);
    return { card, part: "givens" as const, row, entry: { value: (low + high) / 2, unit, low, high } };
  };
  return withChanges(barrel(), [
    { card: "weather", part: "givens", row: "years", entry: { value: YEARS, unit: "" } },
    {
      card: "weather",
      part: "givens",
      row: "seed",
      entry: { value: Math.floor(1 + 1000 * chance()), unit: "" },
    },
    of("shed_roof", "footprint", 90 + 90 * chance(), "ft2"),
    of("barrel", "capacity", 50 + 80 * chance(), "gal"),
    of("salad_bed", "length", 6 + 8 * chance(), "ft"),
    of("salad_bed", "root_depth", 8 + 8 * chance(), "in"),
  ]);
}

type Held = { inside: number; of: number };

test(`${SHEETS * TRUTHS} twins with planted truths: eight of ten of a continuous answer lie between its ends, of a count no fewer`, () => {
  const chance = randomLcg(200);
  const held = { continuous: { inside: 0, of: 0 }, count: { inside: 0, of: 0 } };
  for (let sheet = 0; sheet < SHEETS; sheet++) {
    const own = baseOf(twin(chance), CARD_KINDS);
    const question = notSure(own, WANTED, 128);
    expect(question.doubts.taken.length).toBeGreaterThanOrEqual(4);
    const base = rebased(own, question.sheet);
    const answered = question.runs.map((changes) => ask(base, changes, WANTED));
    const spans = spansOf(question, answered);
    for (let truth = 0; truth < TRUTHS; truth++) {
      const planted = question.doubts.taken.flatMap((doubt) => changesAt(doubt, chance()));
      const answers = ask(base, planted, WANTED);
      for (const id of WANTED) {
        const [span, value] = [spans.get(id), numberIn(answers[id])];
        const all = answered.map((one) => numberIn(one[id]));
        // An answer that stands still over much of the doubt (never short, nothing spilled) is held by more than eight of ten.
        const isStill = all.filter((one) => one === all[0] || one === 0).length > all.length / 20;
        if (!span || value === null || (CONTINUOUS.includes(id) && isStill)) continue;
        const into: Held = CONTINUOUS.includes(id) ? held.continuous : held.count;
        into.of++;
        if (value >= span.low && value <= span.high) into.inside++;
      }
    }
  }
  const share = ({ inside, of }: Held) => inside / of;
  expect(held.continuous.of).toBeGreaterThan(25 * SHEETS);
  expect(held.count.of).toBeGreaterThan(25 * SHEETS);
  expect(share(held.continuous)).toBeGreaterThanOrEqual(0.72);
  expect(share(held.continuous)).toBeLessThanOrEqual(0.88);
  expect(share(held.count)).toBeGreaterThanOrEqual(0.72);
});
