import { describe, expect, test } from "vitest";
import { addJoined } from "../../src/app/joining.ts";
import { emptyWorksheet } from "../../src/document/blank.ts";
import { setGiven } from "../../src/document/edits.ts";
import type { Worksheet } from "../../src/document/worksheet.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";

const given = (sheet: Worksheet, id: string, name: string) =>
  sheet.cards.find((card) => card.id === id)?.givens[name]?.value;

const grown = (...kinds: readonly string[]): Worksheet =>
  kinds.reduce(
    (sheet, kind) => addJoined(CARD_KINDS, sheet, kind, CARD_KINDS[kind]?.label ?? kind),
    emptyWorksheet(),
  );

describe("a card put on the sheet is joined to what stands before it", () => {
  test("roof to the newest tank, line from the tank before to the newest, pump in the newest, bed by the newest way", () => {
    const sheet = grown("tank", "roof", "tank", "line", "battery", "delivery", "bed");
    expect(given(sheet, "roof", "drains_to")).toBe("tank");
    expect([given(sheet, "gravity_line", "from"), given(sheet, "gravity_line", "to")]).toEqual([
      "tank",
      "tank_2",
    ]);
    expect(given(sheet, "pump_and_hose", "from")).toBe("tank_2");
    expect(given(sheet, "pump_and_hose", "powered_by")).toBe("battery");
    expect(given(sheet, "bed", "watered_by")).toEqual(["pump_and_hose"]);
  });

  test("what waited for such a card is joined to it when it comes", () => {
    const sheet = grown("roof", "bed", "delivery", "tank", "battery");
    expect(given(sheet, "roof", "drains_to")).toBe("tank");
    expect(given(sheet, "bed", "watered_by")).toEqual(["pump_and_hose"]);
    expect(given(sheet, "pump_and_hose", "from")).toBe("tank");
    expect(given(sheet, "pump_and_hose", "powered_by")).toBe("battery");
  });

  test("a link that somebody chose, or took away while there was a choice, stays as it is", () => {
    let sheet = setGiven(grown("tank", "roof"), "roof", "drains_to", null);
    sheet = addJoined(CARD_KINDS, sheet, "tank", "Tank");
    expect(given(sheet, "roof", "drains_to")).toBeUndefined();
    const kept = addJoined(CARD_KINDS, grown("tank", "roof"), "tank", "Tank");
    expect(given(kept, "roof", "drains_to")).toBe("tank");
  });

  test("with one tank only, a line does not lead from it to itself", () => {
    const sheet = grown("tank", "line");
    expect(given(sheet, "gravity_line", "from")).toBe("tank");
    expect(given(sheet, "gravity_line", "to")).toBeUndefined();
  });

  test("a sheet that is full, or already has its single card, is the same sheet", () => {
    const sheet = grown("tank");
    expect(addJoined(CARD_KINDS, sheet, "weather", "The sky")).toBe(sheet);
  });
});
