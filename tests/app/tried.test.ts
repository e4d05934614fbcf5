// What was tried along the axis, where a value lets a part of the place fall out of the run.

import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { askedWith, triedOf, withoutAt } from "../../src/app/tried.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { recordKey } from "../../src/rainfall/record-key.ts";
import { worksheetFromFileText } from "../../src/storage/file.ts";
import { ask, baseOf } from "../../src/studies/ask.ts";

const file = readFileSync(new URL("../../templates/pump-battery-panel.json", import.meta.url), "utf8");
const read = worksheetFromFileText(file, recordKey);
if (!read.ok) throw new Error("The template cannot be read.");
const base = baseOf(read.worksheet, CARD_KINDS);
const battery = read.worksheet.cards.find(({ kind }) => kind === "battery");
const SHORT = "season.worst_season_days_short";

const raws = [5, 18, 35].map((value, at) => {
  const change = {
    card: battery?.id ?? "",
    part: "givens",
    row: "rated_capacity",
    entry: { value, unit: "Ah" },
  } as const;
  return { place: at / 2, value, answers: ask(base, [change], askedWith(base.whole.graph, [SHORT])) };
});

test("an answer of the season says which bed it is without, and is none to compare with", () => {
  const said = raws.map(({ answers }) => withoutAt(base.whole, SHORT, answers));
  expect(said).toEqual(["without Beans and squash outside", "", ""]);
  const tried = triedOf(raws, SHORT).map(({ answer }) => answer);
  // The bed that fell out is not short: a nought that would read as good.
  expect(raws[0]?.answers[SHORT]).toMatchObject({ state: "ready", value: 0 });
  expect(tried[0]).toBeNull();
  expect(tried.slice(1)).not.toContain(null);
});

test("what the season is not asked for is asked for alone", () => {
  const own = `${battery?.id}.usable_energy`;
  expect(askedWith(base.whole.graph, [own])).toEqual([own]);
  expect(withoutAt(base.whole, own, raws[0]?.answers ?? {})).toBe("");
});
