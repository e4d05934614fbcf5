// The chart stack: whatever numbers it gets, its shapes and words stay on the paper and keep their order.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { overlaps } from "../../src/scene/paper.ts";
import { drawPlot, type Layer, type Plot, type Point, roundAxis, shares } from "../../src/scene/plot.ts";
import { crosses, type Mark } from "../../src/scene/plot-marks.ts";
import { textWidth } from "../../src/scene/text-block.ts";
import { toSi } from "../../src/units/unit.ts";
import { tries } from "../tries.ts";

const US = { units: "us", locale: "en-US", currency: "$" } as const;
const numbers = (d: string): number[] => (d.match(/-?\d+(\.\d+)?/g) ?? []).map(Number);
const plain = { from: 0, to: 10, ticks: [] };

function plotOf(more: Partial<Plot>): Plot {
  return { across: plain, up: plain, layers: [], marks: [], ...more };
}

const anyPoints = fc.array(
  fc.tuple(fc.double({ min: 0, max: 10, noNaN: true }), fc.double({ min: 0, max: 10, noNaN: true })),
  { minLength: 1, maxLength: 30 },
);
const anyWidth = fc.integer({ min: 240, max: 1500 });

describe("what is drawn", () => {
  test("every point of a line lies on the paper, further right the greater its first number", () => {
    fc.assert(
      fc.property(anyPoints, anyWidth, (points, width) => {
        const sorted = [...points].sort((a, b) => a[0] - b[0]);
        const plot = plotOf({ layers: [{ as: "line", tone: "water", points: sorted }] });
        const drawn = numbers(drawPlot(plot, { width, height: 120 }).shapes[0]?.d ?? "");
        const xs = drawn.filter((_, index) => index % 2 === 0);
        const ys = drawn.filter((_, index) => index % 2 === 1);
        for (const x of xs) expect(x >= 0 && x <= width).toBe(true);
        for (const y of ys) expect(y >= 0 && y <= 120).toBe(true);
        expect(xs).toEqual([...xs].sort((a, b) => a - b));
      }),
      { numRuns: 100 },
    );
  });

  test("a bar stands on the foot and is as high as its number, one with a floor on its floor", () => {
    const bars = [
      { from: 1, to: 2, up: 5 },
      { from: 3, to: 4, up: 10, floor: 5 },
    ];
    const d = drawPlot(plotOf({ layers: [{ as: "bars", tone: "trouble", bars }] }), {
      width: 100,
      height: 50,
    });
    expect(d.shapes[0]?.d).toBe("M10,25h10v25h-10ZM30,0h10v25h-10Z");
  });

  test("a line has a gap where there is no number", () => {
    const points = [[0, 0], [1, 1], null, [3, 3], [4, 4]] as const;
    const drawn = drawPlot(plotOf({ layers: [{ as: "line", tone: "growth", points: [...points] }] }), {
      width: 100,
      height: 100,
    });
    expect(drawn.shapes[0]?.d.match(/M/g)).toHaveLength(2);
  });

  test("what is held is dashed and nothing else is; what is old is pale", () => {
    const points: Point[] = [
      [0, 0],
      [1, 1],
    ];
    const looks = drawPlot(
      plotOf({
        layers: [
          { as: "line", tone: "water", points },
          { as: "line", tone: "water", points, held: true },
          { as: "line", tone: "water", points, old: true },
        ],
      }),
      { width: 100, height: 100 },
    ).shapes.map(({ look }) => look);
    expect(looks).toEqual(["plot-line water", "plot-line water held", "plot-line water old"]);
  });

  test("the frame leads from a number to its place and back", () => {
    const { frame } = drawPlot(plotOf({}), { width: 200, height: 80, right: 20 });
    expect(frame.across(5)).toBeCloseTo(90, 9);
    expect(frame.up(10)).toBeCloseTo(0, 9);
    expect(frame.atX(frame.across(7.3))).toBeCloseTo(7.3, 9);
  });
});

test("words of ticks stand apart on however low a field", () => {
  fc.assert(
    fc.property(fc.integer({ min: 20, max: 200 }), fc.integer({ min: 1, max: 9 }), (height, count) => {
      const ticks = Array.from({ length: count }, (_, index) => ({
        at: (10 * (index + 1)) / count,
        label: "600 gal",
      }));
      const { up } = drawPlot(plotOf({ up: { from: 0, to: 10, ticks } }), { width: 300, height });
      expect(up.length).toBeGreaterThan(0);
      for (const [index, { words }] of up.slice(1).entries())
        expect(words - (up[index]?.words ?? 0)).toBeGreaterThanOrEqual(14);
    }),
  );
});

test("words of ticks stand where no curve runs through them, if there is such a place", () => {
  const ticks = [
    { at: 3, label: "200 gal" },
    { at: 9, label: "600 gal" },
  ];
  // A curve that falls through the left ends of both grid lines.
  const points: readonly Point[] = [
    [0, 9.5],
    [0.3, 8.6],
    [0.6, 4],
    [2, 2],
    [10, 1],
  ];
  const field = { width: 300, height: 100 };
  const up = { from: 0, to: 10, ticks };
  const drawn = drawPlot(plotOf({ up, layers: [{ as: "line", tone: "water", points }] }), field);
  expect(drawn.up.map(({ label, anchor }) => [label, anchor])).toEqual([
    ["600 gal", "end"],
    ["200 gal", "end"],
  ]);
  // Full at both ends of the year: the upper line stays unsaid rather than in mid-air.
  const year: readonly Point[] = [...points.slice(0, 4), [8, 1], [9, 8.8], [10, 9]];
  const full = drawPlot(plotOf({ up, layers: [{ as: "line", tone: "water", points: year }] }), field);
  expect(full.up.map(({ label, anchor }) => [label, anchor])).toEqual([["200 gal", "end"]]);
  const alone = drawPlot(plotOf({ up }), field);
  expect(alone.up.map(({ anchor }) => anchor)).toEqual(["start", "start"]);
});

test("words of a scale stand at one edge and clear of any curve; in between only where neither edge has a place", () => {
  const anyCurve = fc.array(fc.double({ min: 0, max: 10, noNaN: true }), { minLength: 2, maxLength: 40 });
  const size = 13;
  fc.assert(
    fc.property(
      anyCurve,
      fc.integer({ min: 1, max: 4 }),
      fc.integer({ min: 40, max: 160 }),
      (heights, count, height) => {
        const points = heights.map((at, index): Point => [(10 * index) / (heights.length - 1), at]);
        const ticks = Array.from({ length: count }, (_, index) => ({
          at: (10 * (index + 1)) / count,
          label: `${index + 1}00 gal`,
        }));
        const layers: readonly Layer[] = [{ as: "line", tone: "water", points }];
        const drawn = drawPlot(
          plotOf({ up: { from: 0, to: 10, ticks }, layers }),
          { width: 400, height },
          size,
        );
        if (drawn.up.length > 1) {
          expect(new Set(drawn.up.map(({ anchor }) => anchor)).size).toBe(1);
          expect(drawn.up[0]?.anchor).not.toBe("middle");
        }
        const line = points.map(([x, y]) => [drawn.frame.across(x), drawn.frame.up(y)] as const);
        for (const { x, words, anchor, label } of drawn.up.length > 1 ? drawn.up : []) {
          const own = textWidth(label, size);
          const box = { x: anchor === "start" ? x : x - own, y: words - size, width: own, height: 16 };
          expect(crosses(box, line)).toBe(false);
        }
      },
    ),
    { numRuns: tries(300) },
  );
});

describe("words of marks", () => {
  const anyMark: fc.Arbitrary<Mark> = fc.record({
    across: fc.double({ min: 0, max: 10, noNaN: true }),
    up: fc.double({ min: 0, max: 10, noNaN: true }),
    label: fc.constantFrom("8", "34 short days", "held 275 gal", "enough from 550"),
    tone: fc.constantFrom("ink" as const, "trouble" as const, "growth" as const),
  });

  test("stay within the paper's width and apart from one another", () => {
    fc.assert(
      fc.property(fc.array(anyMark, { maxLength: 4 }), anyWidth, (marks, width) => {
        const { marks: placed } = drawPlot(plotOf({ marks }), { width, height: 140 });
        for (const [index, { box }] of placed.entries()) {
          expect(box.x).toBeGreaterThanOrEqual(0);
          expect(box.x + box.width).toBeLessThanOrEqual(width + 1e-9);
          for (const other of placed.slice(index + 1)) expect(overlaps(box, other.box)).toBe(false);
        }
      }),
      { numRuns: 200 },
    );
  });

  test("one whose place is not known is left out", () => {
    const marks: Mark[] = [{ across: Number.POSITIVE_INFINITY, label: "never", tone: "ink" }];
    expect(drawPlot(plotOf({ marks }), { width: 300, height: 100 }).marks).toEqual([]);
  });
});

describe("axes", () => {
  test("ticks stand at round numbers of the reader's unit, and say them in it", () => {
    const axis = roundAxis([0, toSi(980, "gal")], "volume", US, { count: 2, nice: true });
    expect(axis.ticks.map(({ label }) => label.replaceAll("\u00a0", " "))).toEqual([
      "0 gal",
      "500 gal",
      "1,000 gal",
    ]);
    expect(axis.to).toBeCloseTo(toSi(1000, "gal"), 9);
  });

  test("without numbers there is an axis all the same", () => {
    const axis = roundAxis([], "count", US, { count: 3 });
    expect(axis.to).toBeGreaterThan(axis.from);
  });

  test("bars beside one another are shares of the greatest", () => {
    expect(shares([2, 4, null, -1])).toEqual([0.5, 1, null, 0]);
  });
});
