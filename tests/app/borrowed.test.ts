import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { borrowedIn, markBorrowed, unmarkBorrowed } from "../../src/app/borrowed.ts";
import { readWorksheet } from "../../src/document/check.ts";
import { setGiven } from "../../src/document/edits.ts";
import { keepBeside, planNamed, takeOver } from "../../src/document/plan-edits.ts";
import { rolesOf } from "../../src/graph/roles.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";

const read = readWorksheet(
  JSON.parse(readFileSync(new URL("../../templates/hillside-totes.json", import.meta.url), "utf8")),
);
if (!read.ok) throw new Error("the template is broken");
const { worksheet } = read;

describe("numbers of somebody else's place", () => {
  it("none is borrowed in one's own worksheet; marked, place, rain, roofs and heights are", () => {
    expect(borrowedIn(worksheet)).toEqual([]);
    const ids = borrowedIn(markBorrowed(worksheet));
    for (const id of ["site.latitude", "weather.normal_rain", "barn_roof.footprint", "totes.ground_height"])
      expect(ids).toContain(id);
    expect(ids).not.toContain("totes.capacity");
  });

  it("a number of one's own is borrowed no more, and the rest stays so", () => {
    const marked = markBorrowed(worksheet);
    const own = setGiven(marked, "site", "latitude", { value: 44, unit: "deg" });
    expect(borrowedIn(own)).toEqual(borrowedIn(marked).filter((id) => id !== "site.latitude"));
  });

  it("a card of a kind named like an inherited word has none, and hurts nothing", () => {
    const odd = { id: "odd", title: "Odd", givens: { latitude: { value: 1, unit: "deg" } }, measured: {} };
    const cards = ["constructor", "toString", "__proto__"].map((kind) => ({
      ...odd,
      id: `odd_${kind}`,
      kind,
    }));
    const strange = { ...worksheet, cards: [...worksheet.cards, ...cards] };
    expect(borrowedIn(markBorrowed(strange))).toEqual(borrowedIn(markBorrowed(worksheet)));
  });

  it("taken off again, the worksheet is as it came", () => {
    expect(unmarkBorrowed(markBorrowed(worksheet), worksheet)).toEqual(worksheet);
  });

  it("in the plans beside it too, and taking one over brings the mark along", () => {
    const roles = rolesOf(CARD_KINDS);
    const moved = setGiven(worksheet, "barn_roof", "footprint", { value: 400, unit: "ft2" });
    const marked = markBorrowed(keepBeside(moved, worksheet, "more roof", roles));
    expect(planNamed(marked, "more roof")?.changes[0]?.entry?.from).toBe("borrowed");
    const own = setGiven(marked, "barn_roof", "footprint", { value: 410, unit: "ft2" });
    expect(borrowedIn(own)).not.toContain("barn_roof.footprint");
    expect(borrowedIn(takeOver(own, "more roof", "back", roles))).toContain("barn_roof.footprint");
  });
});
