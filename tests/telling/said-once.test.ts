import { describe, expect, test } from "vitest";
import { saidOnce } from "../../src/telling/said-once.ts";

describe("cautions on paper", () => {
  test("one wording about several parts is said once, with every part", () => {
    expect(
      saidOnce([
        { place: "Barn", text: "Clean from a ladder." },
        { place: "Tub", text: "Keep the lid locked." },
        { place: "House", text: "Clean from a ladder." },
        { place: "House", text: "Clean from a ladder." },
      ]),
    ).toEqual([
      { places: "Barn, House", text: "Clean from a ladder." },
      { places: "Tub", text: "Keep the lid locked." },
    ]);
  });

  test("where only figures differ, each part keeps its own, in the order of the parts", () => {
    expect(
      saidOnce([
        { place: "Barn tank", text: "Weighs 9,112\u00a0lb; mesh of 1/16 in." },
        { place: "House tank", text: "Weighs 12,580\u00a0lb; mesh of 1/16 in." },
        { place: "Drums", text: "Weighs 1,376.5\u00a0lb; mesh of 1/16 in." },
      ]),
    ).toEqual([
      {
        places: "Barn tank / House tank / Drums",
        text: "Weighs 9,112 / 12,580 / 1,376.5\u00a0lb; mesh of 1/16 in.",
      },
    ]);
  });

  test("parts of which some share a figure still show one figure each", () => {
    expect(
      saidOnce([
        { place: "A", text: "Soak in 11 goes, 14 min apart." },
        { place: "B", text: "Soak in 11 goes, 18 min apart." },
        { place: "C", text: "Soak in 9 goes, 18 min apart." },
      ]),
    ).toEqual([{ places: "A / B / C", text: "Soak in 11 / 11 / 9 goes, 14 / 18 / 18 min apart." }]);
  });

  test("other units or other words are not put together", () => {
    const apart = [
      { place: "A", text: "Weighs 90 lb." },
      { place: "B", text: "Weighs 2 tons." },
    ];
    expect(saidOnce(apart)).toHaveLength(2);
  });
});
