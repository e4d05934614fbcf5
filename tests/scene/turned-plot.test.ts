import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type TurnedCurve, turnedPlot, turnedTable, turnedWords } from "../../src/scene/turned-plot.ts";

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
  whole: true,
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
    expect(plot.marks.map(({ across, label }) => [across, label])).toEqual([
      [0.25, "30"],
      // Each dot is read by itself.
      [0, "5"],
      [1, "7"],
    ]);
  });

  it("never stays the same where a part fell out of the run, and draws no line to what is left", () => {
    const without = { ...point(0, 0), said: "0, without Long bed", without: true as const };
    const plot = turnedPlot({
      ...curve,
      now: null,
      before: null,
      points: [without, point(0.5, 0), point(1, 0)],
    });
    expect(plot.marks).toEqual([]);
    expect(plot.layers.flatMap((layer) => ("points" in layer ? [layer.points.length] : []))).toEqual([
      2, 2, 2,
    ]);
    const still = turnedPlot({
      ...curve,
      now: null,
      before: null,
      points: [point(0, 0), point(0.5, 0), point(1, 0)],
    });
    expect(still.marks.map(({ label }) => label)).toEqual(["0 all along: changes nothing here"]);
    expect(turnedWords("Short days", [without, point(1, 0)], true)).toBe(
      "Short days: 0, without Long bed at 0 gal; 0 at 1000 gal.",
    );
    // A sheet that is without it all along has a curve of the others.
    const all = turnedPlot({
      ...curve,
      now: null,
      before: null,
      points: [without, { ...without, place: 1 }],
    });
    expect(all.layers.flatMap((layer) => ("points" in layer ? [layer.points.length] : []))).toEqual([
      2, 2, 2,
    ]);
  });

  it("is at 40 % while it is old, and reaches below nought where an answer does", () => {
    const plot = turnedPlot({ ...curve, old: true, points: [point(0, -3), point(1, 4)] });
    expect(plot.layers.every(({ old }) => old === true)).toBe(true);
    expect([plot.up.from, plot.up.to]).toEqual([-3, 30]);
  });

  describe("that stays the same wherever it was tried", () => {
    const flat = { ...curve, points: [point(0, 43), point(0.5, 43), point(1, 43)], before: null };
    const said = (of: Partial<TurnedCurve>) => turnedPlot({ ...flat, ...of }).marks.map(({ label }) => label);
    const now = { place: 0.75, answer: 43, said: "43" };

    it("says so at the number, with room over its line", () => {
      expect(said({ now })).toEqual(["43 all along: changes nothing here"]);
      expect(said({ now, words: true })).toEqual(["43 with each: changes nothing here"]);
      expect(turnedPlot({ ...flat, now }).up.to).toBeGreaterThan(43);
      expect(turnedWords("Short days", flat.points, true)).toBe(
        "Short days: 43 all along: changes nothing here, from 0 gal to 1000 gal.",
      );
    });

    it("says so of noughts too, and of a number that is not sure and stands nowhere", () => {
      const noughts = [point(0, 0), point(1, 0)];
      expect(turnedPlot({ ...flat, points: noughts, now: null }).marks.map(({ label }) => label)).toEqual([
        "0 all along: changes nothing here",
      ]);
    });

    it("says it neither before all was tried, nor while it is old, nor where a value has no answer, nor where it moves", () => {
      expect(said({ now, whole: false })).toEqual(["43"]);
      expect(said({ now, old: true })).toEqual(["43"]);
      expect(said({ now, points: [point(0, 43), point(0.5, null), point(1, 43)] })).toEqual(["43"]);
      expect(said({ now, points: [point(0, 43), point(0.5, 42), point(1, 43)] })).toEqual(["43"]);
      // It moves at the number itself, between two values that were tried.
      expect(said({ now: { place: 0.75, answer: 40, said: "40" } })).toEqual(["40"]);
    });

    it("does not say nothing where the numbers move by less than is read", () => {
      const reads = (answer: number, place: number) => ({ ...point(place, answer), said: "43" });
      expect(said({ now, points: [reads(43, 0), reads(43.2, 1)] })).toEqual([
        "43 all along: changes next to nothing here",
      ]);
    });

    it("says it exactly where no answer differs from another, whatever they are", () => {
      const answers = fc.array(fc.integer({ min: -3, max: 3 }), { minLength: 2, maxLength: 6 });
      fc.assert(
        fc.property(answers, (list) => {
          const points = list.map((answer, at) => point(at / (list.length - 1), answer));
          const isSaid = said({ points, now: null }).some((label) => label.includes("changes nothing"));
          expect(isSaid).toBe(new Set(list).size === 1);
        }),
      );
    });
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

  it("has in its table where the number stands and stood, in their order, and no value twice", () => {
    const panels = [{ label: "Short days", points: curve.points }];
    const standing = [
      { place: 0.5, text: "held 500", said: ["20"] },
      { place: 0.25, text: "250 gal, in hand", said: [""] },
    ];
    expect(turnedTable("Tried", "Each holds", panels, standing).rows).toEqual([
      ["0 gal", "40"],
      ["250 gal, in hand", "–"],
      ["held 500", "20"],
      ["1000 gal", "0"],
    ]);
  });
});
