import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { fullReport, jsonReport, optionsOf } from "../../src/cli/report.ts";
import { shortReport } from "../../src/cli/short-report.ts";
import { setGiven } from "../../src/document/edits.ts";
import { cautionsOf } from "../../src/graph/cautions.ts";
import { shownValue } from "../../src/graph/shown.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { KIND_WORDS } from "../../src/kinds/words.ts";
import { workOut } from "../../src/studies/work-out.ts";
import { answers } from "../../src/telling/answers.ts";
import { textOf } from "../../src/telling/asked.ts";
import { readWorksheetText } from "../document/read-text.ts";
import { tries } from "../tries.ts";

const FOLDER = new URL("../../templates/", import.meta.url);
const MOST_LINES = 60;

function worked(name: string) {
  const read = readWorksheetText(readFileSync(new URL(name, FOLDER), "utf8"));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  // Few made-up years are told as twenty are.
  const few = setGiven(read.worksheet, "weather", "years", { value: tries(20, 5), unit: "1" });
  return workOut(few, CARD_KINDS);
}

describe.each(readdirSync(FOLDER).filter((name) => name.endsWith(".json")))(
  "the readable report of %s",
  (name) => {
    const whole = worked(name);
    const { graph, worksheet, results } = whole;
    const options = optionsOf(whole);
    const lines = shortReport(whole, CARD_KINDS).trimEnd().split("\n");

    test("begins with the sentences of the page, in their order, and fits within sixty lines", () => {
      const shown = (id: string) => shownValue(graph, worksheet, results, id, options);
      const onTop = answers({ result: (id) => results.get(id), cards: worksheet.cards });
      expect(lines[0]).toBe(worksheet.title);
      onTop.forEach((sentence, at) => {
        expect(lines[at + 2]?.replace(/\.$/, "")).toBe(textOf(sentence, shown).replace(/\.$/, ""));
      });
      expect(lines.length).toBeLessThanOrEqual(MOST_LINES);
    });

    test("leaves out nothing that can hurt somebody", () => {
      const text = lines.join("\n");
      // What several parts share stands once, with their figures side by side: what has none stands as it is.
      for (const caution of cautionsOf(graph, worksheet, results, options, KIND_WORDS)) {
        if (caution.weight === "harm" && !/\d/.test(caution.text)) expect(text).toContain(caution.text);
      }
    });

    test("says no line twice, and names every bed", () => {
      const said = lines.filter((line) => line !== "");
      expect(new Set(said).size).toBe(said.length);
      for (const { title } of worksheet.cards.filter(({ kind }) => kind === "bed"))
        expect(said.some((line) => line.startsWith(`  ${title}, by `))).toBe(true);
    });

    test("with --all has every quantity by its name", () => {
      const all = fullReport(whole, CARD_KINDS);
      for (const id of Object.keys(jsonReport(whole, CARD_KINDS).quantities))
        expect(all).toContain(`  ${id.split(".")[1]} `);
    });
  },
);
