import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { placeAxisWords, turnedPlot, turnedTable, turnedWords } from "../../src/scene/turned-plot.ts";

const point = (place: number, answer: number | null) => ({
  place,
  text: `${place * 1000} gal`,
  answer,
  said: answer === null ? "no bed is watered" : `${answer}`,
});

const curve = {
  points: [point(0, 40), point(0.5, 20), point(1, 0)],
  words: false,
  now: { place: 0.75, answer: null, said: "" },
  before: { place: 0.25, answer: 30, said: "30" },
  tone: "trouble" as const,
  old: false,
};

describe("an answer over the number in hand", () => {
  it("is drawn from nought up, and marks what stands now and what stood before", () => {
    const plot = turnedPlot(curve);
    expect([plot.up.from, plot.up.to]).toEqual([0, 40]);
    expect(plot.layers.map(({ as }) => as)).toEqual(["area", "line", "dots"]);
    // Not answered yet: it lies on the curve between the values that were tried.
    expect(plot.marks.map(({ across, up, dot }) => [across, up, dot])).toEqual([
      [0.75, 10, "full"],
      [0.25, 30, "hollow"],
    ]);
  });

  it("leaves a gap of nothing where a value has no answer, and shows no curve between words", () => {
    const plot = turnedPlot({ ...curve, words: true, points: [point(0, 5), point(0.5, null), point(1, 7)] });
    expect(plot.layers.map(({ as }) => as)).toEqual(["dots"]);
    expect(plot.layers.flatMap((layer) => ("points" in layer ? layer.points : []))).toEqual([
      [0, 5],
      [1, 7],
    ]);
    expect(plot.marks.map(({ across }) => across)).toEqual([0.25]);
  });

  it("is at 40 % while it is old, and reaches below nought where an answer does", () => {
    const plot = turnedPlot({ ...curve, old: true, points: [point(0, -3), point(1, 4)] });
    expect(plot.layers.every(({ old }) => old === true)).toBe(true);
    expect([plot.up.from, plot.up.to]).toEqual([-3, 30]);
  });

  it("is told in words and as a table", () => {
    expect(turnedWords("Short days", curve.points)).toBe(
      "Short days: 40 at 0 gal; 20 at 500 gal; 0 at 1000 gal.",
    );
    expect(turnedTable("Tried", "Each holds", [{ label: "Short days", points: curve.points }]).rows).toEqual([
      ["0 gal", "40"],
      ["500 gal", "20"],
      ["1000 gal", "0"],
    ]);
  });
});

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
    fc.assert(
      fc.property(fc.array(mark, { maxLength: 8 }), fc.integer({ min: 80, max: 500 }), (marks, width) => {
        const placed = placeAxisWords(marks, width, 17, 13);
        for (const [at, one] of placed.entries()) {
          expect(one.left).toBeGreaterThanOrEqual(0);
          expect(one.left + one.width).toBeLessThanOrEqual(width);
          for (const other of placed.slice(at + 1)) {
            expect(one.left + one.width <= other.left || other.left + other.width <= one.left).toBe(true);
          }
        }
      }),
    );
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
