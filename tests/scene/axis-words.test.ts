import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { placeAxisWords } from "../../src/scene/axis-words.ts";

describe("the words under the axis", () => {
  test("stand about their places, the ends at the edges", () => {
    const placed = placeAxisWords(
      [
        { place: 0.5, text: "here", look: "here" },
        { place: 0, text: "20", look: "end" },
        { place: 1, text: "5,000", look: "end" },
      ],
      360,
      17,
      13,
    );
    expect(placed.map(({ text }) => text)).toEqual(["here", "20", "5,000"]);
  });

  it("never lie on one another or over the edge, whatever their places", () => {
    const mark = fc.record({
      place: fc.double({ min: 0, max: 1, noNaN: true }),
      text: fc.constantFrom("", "20", "held 275", "enough from 550", "a word that is much too long for this"),
      look: fc.constant("end"),
    });
    const list = fc.array(mark, { maxLength: 8 });
    const [widths, lines] = [fc.integer({ min: 80, max: 500 }), fc.integer({ min: 1, max: 2 })];
    fc.assert(
      fc.property(list, widths, lines, (marks, width, rows) => {
        const placed = placeAxisWords(marks, width, 17, 13, rows);
        for (const [at, one] of placed.entries()) {
          expect(one.left).toBeGreaterThanOrEqual(0);
          expect(one.left + one.width).toBeLessThanOrEqual(width);
          expect(one.row).toBeLessThan(rows);
          for (const other of placed.slice(at + 1).filter(({ row }) => row === one.row)) {
            expect(one.left + one.width <= other.left || other.left + other.width <= one.left).toBe(true);
          }
        }
      }),
    );
  });

  test("of four long ones each has its place in two lines at a phone's width", () => {
    const names = [
      "No mulch",
      "Plastic film: best",
      "Straw, leaves or compost",
      "Straw, leaves or compost on half the ground",
    ];
    const marks = names.map((text, at) => ({ place: at / 3, text, look: "end" }));
    expect(placeAxisWords(marks, 362, 17, 13, 2).map(({ text }) => text)).toEqual(names);
    expect(placeAxisWords(marks, 362, 17, 13).length).toBeLessThan(names.length);
  });

  it("of two lines stand under their dots where two lines let them, and share what they have to give way", () => {
    const names = ["No mulch", "Plastic film: best", "Straw, leaves or compost", "Half the ground"];
    const [width, inset] = [364, 17];
    const marks = names.map((text, at) => ({ place: at / 3, text, look: "end" }));
    const placed = placeAxisWords(marks, width, inset, 13, 2);
    expect(placed.map(({ text }) => text).sort()).toEqual([...names].sort());
    for (const { text, place, left, width: wide } of placed) {
      const about = Math.max(0, Math.min(width - wide, inset + place * (width - 2 * inset) - wide / 2));
      expect(Math.abs(left - about), text).toBeLessThanOrEqual(1);
    }
  });

  it("step aside for what stands there already, but stay by their place", () => {
    const [enough, held] = placeAxisWords(
      [
        { place: 0.6, text: "enough from 550", look: "enough" },
        { place: 0.46, text: "held 275", look: "before" },
      ],
      400,
      17,
      13,
    );
    const middle = 17 + 0.46 * (400 - 34);
    expect(held && enough && held.left + held.width <= enough.left).toBe(true);
    expect(held && held.left <= middle + 20 && held.left + held.width >= middle - 20).toBe(true);
  });
});
