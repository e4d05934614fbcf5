import { describe, expect, test } from "vitest";
import { emptyWorksheet } from "../../src/document/blank.ts";
import { addCard } from "../../src/document/card-edits.ts";
import { setGiven, setLife, setPrice } from "../../src/document/edits.ts";
import type { Worksheet } from "../../src/document/worksheet.ts";
import { explain } from "../../src/graph/explain.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { KIND_WORDS } from "../../src/kinds/words.ts";
import { workOut } from "../../src/studies/work-out.ts";

const OPTIONS = { units: "us", locale: "en-US", currency: "$" } as const;

function priced(): Worksheet {
  let sheet = addCard(emptyWorksheet(), "roof", { title: "Shed" });
  sheet = addCard(sheet, "tank", { title: "Drum" });
  sheet = addCard(sheet, "line", { title: "Hose" });
  sheet = setPrice(sheet, "shed", { value: 60, unit: "money" });
  sheet = setLife(sheet, "shed", { value: 15, unit: "year" });
  sheet = setPrice(sheet, "drum", { value: 20, unit: "money" });
  sheet = setLife(sheet, "drum", { value: 10, unit: "year" });
  return setPrice(sheet, "hose", { value: 38, unit: "money" });
}

const worked = (sheet: Worksheet, id: string) => {
  const out = workOut(sheet, CARD_KINDS);
  return explain(out.graph, out.worksheet, out.results, id, OPTIONS, KIND_WORDS);
};

describe("the money", () => {
  test("its working shows each part: 60 + 20 + 38 is 118; by the year 60 over 15 and 20 over 10 is 6", () => {
    const total = worked(priced(), "cost.total");
    expect(total.shown).toBe("$118");
    for (const part of ["Shed $60", "Drum $20", "Hose $38"]) expect(total.numbers).toContain(part);
    const yearly = worked(priced(), "cost.yearly");
    expect(yearly.shown).toBe("$6");
    expect(yearly.numbers.replaceAll("\u00a0", " ")).toMatch(/\$60 \/ 15 .*\+ .*\$20 \/ 10 /);
    expect(yearly.numbers).not.toContain("Hose");
  });

  test("what lasts no time is left out of the year, and nothing comes to no finite number", () => {
    const sheet = setLife(priced(), "drum", { value: 0, unit: "year" });
    expect(worked(sheet, "cost.yearly").shown).toBe("$4");
  });

  test("where no bed is given water, the price of water says so in words", () => {
    const perVolume = worked(priced(), "cost.per_volume");
    expect(perVolume.reason).not.toMatch(/finite/);
    expect(perVolume.reason).toMatch(/no bed|nothing/);
    const withBed = setGiven(addCard(priced(), "bed", { title: "Bed" }), "bed", "watered_by", {
      value: [],
      unit: "",
    });
    expect(worked(withBed, "cost.per_volume").reason).toBe("no bed is given any water in a usual season");
  });

  test("without a price each row names what is missing", () => {
    expect(worked(emptyWorksheet(), "cost.total").reason).toBe("no part has a price yet");
    expect(worked(emptyWorksheet(), "cost.yearly").reason).toBe(
      "no part has both a price and how long it lasts",
    );
  });

  test("every kind of part that can have a price is in the total", () => {
    const kinds = Object.values(CARD_KINDS).filter(({ rows }) => rows.some(({ name }) => name === "price"));
    let sheet = emptyWorksheet();
    for (const { kind } of kinds) {
      sheet = addCard(sheet, kind, { title: `A ${kind}` });
      sheet = setPrice(sheet, sheet.cards.at(-1)?.id ?? "", { value: 1, unit: "money" });
    }
    expect(worked(sheet, "cost.total").shown).toBe(`$${kinds.length}`);
  });
});
