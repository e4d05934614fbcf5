import { describe, expect, test } from "vitest";
import { emptyWorksheet } from "../../src/document/blank.ts";
import { addCard } from "../../src/document/card-edits.ts";
import { swapped } from "../../src/document/swap.ts";
import type { Worksheet } from "../../src/document/worksheet.ts";

const SWAP = { from: "delivery", to: "carry", keep: "from", title: "Cans by hand" };
const link = (value: string) => ({ value, unit: "" });

/** A bed with a pump out of the tub, and whatever else waters it. */
function sheet(cards: (worksheet: Worksheet) => Worksheet, by: readonly string[]): Worksheet {
  const pumped = addCard(emptyWorksheet(), "delivery", { title: "pump", givens: { from: link("tub") } });
  return addCard(cards(pumped), "bed", {
    title: "bed",
    givens: { watered_by: { value: [...by], unit: "" } },
  });
}

const wateredBy = (worksheet: Worksheet): unknown =>
  worksheet.cards.find(({ kind }) => kind === "bed")?.givens["watered_by"]?.value;
const idOf = (worksheet: Worksheet, kind: string): string =>
  worksheet.cards.find((card) => card.kind === kind)?.id ?? "";

describe("swapping a pump for cans", () => {
  test("adds cans that are filled where the pump stands, behind it, and keeps the pump's card", () => {
    const before = sheet((worksheet) => worksheet, ["pump"]);
    const after = swapped(before, idOf(before, "bed"), "watered_by", SWAP);
    const cans = after.cards.find(({ kind }) => kind === "carry");
    expect(cans?.givens["from"]).toEqual(link("tub"));
    expect(wateredBy(after)).toEqual([cans?.id]);
    expect(after.cards.findIndex(({ kind }) => kind === "carry")).toBe(
      after.cards.findIndex(({ kind }) => kind === "delivery") + 1,
    );
  });

  test("takes cans that are there if they are filled at the same tank, and no others", () => {
    const cansAt = (tank: string) => (worksheet: Worksheet) =>
      addCard(worksheet, "carry", { title: "cans", givens: { from: link(tank) } });
    const same = sheet(cansAt("tub"), ["pump"]);
    expect(swapped(same, idOf(same, "bed"), "watered_by", SWAP).cards).toHaveLength(same.cards.length);
    const other = sheet(cansAt("barrel"), ["pump"]);
    const after = swapped(other, idOf(other, "bed"), "watered_by", SWAP);
    expect(after.cards).toHaveLength(other.cards.length + 1);
  });

  test("names each once where both were in the list, and there and back waters as before", () => {
    const both = sheet(
      (worksheet) => addCard(worksheet, "carry", { title: "cans", givens: { from: link("tub") } }),
      ["pump", "cans"],
    );
    const byHand = swapped(both, idOf(both, "bed"), "watered_by", SWAP);
    expect(wateredBy(byHand)).toEqual(["cans"]);
    const back = swapped(byHand, idOf(both, "bed"), "watered_by", { ...SWAP, from: "carry", to: "delivery" });
    expect(wateredBy(back)).toEqual(["pump"]);
  });

  test("leaves a worksheet as it is where there is nothing to swap", () => {
    const bare = sheet((worksheet) => worksheet, []);
    expect(swapped(bare, idOf(bare, "bed"), "watered_by", SWAP)).toBe(bare);
  });
});
