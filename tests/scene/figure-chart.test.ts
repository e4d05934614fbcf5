// Figures of a card as shapes on paper.

import { describe, expect, test } from "vitest";
import type { Figure, FigureChart } from "../../src/graph/figure.ts";
import { figurePlot, figureTable, figureWords } from "../../src/scene/figure-chart.ts";
import { drawPlot } from "../../src/scene/plot.ts";

const PAPER = { width: 360, height: 180, right: 26 };
const US = { units: "us", locale: "en-US", currency: "$" } as const;
const METRIC = { ...US, units: "metric" } as const;

const CHART: FigureChart = {
  across: { label: "comes out", measure: "flow" },
  up: { label: "head", measure: "head" },
  curves: [
    {
      label: "rising",
      part: "first",
      points: [
        [0, 0],
        [0.0005, 3],
      ],
    },
  ],
  marks: [
    { label: "here", across: 0.0001, up: 1 },
    { label: "far", across: 0.0005, up: 0 },
    { label: "now", across: 0.00025 },
  ],
};
const FIGURE: Figure = {
  says: "It rises.",
  columns: [
    { label: "With", measure: "text" },
    { label: "Flow", measure: "flow", bar: true },
  ],
  rows: [
    ["one", 2],
    ["two", 4],
    ["none", null],
  ],
  chart: CHART,
};

describe("a figure", () => {
  test("ticks stand at round numbers of the reader's units", () => {
    const litres = figurePlot(CHART, 360, METRIC).across.ticks.map(({ at }) => at * 60_000);
    for (const tick of litres) expect(tick / 5).toBeCloseTo(Math.round(tick / 5), 9);
    expect(litres.length).toBeGreaterThan(2);
  });

  test("a line runs over its paper from foot to top, and marks lie on it", () => {
    const drawn = drawPlot(figurePlot(CHART, 360, METRIC), PAPER);
    expect(drawn.shapes[0]?.d).toBe("M0,180L334,0");
    const [here, far, now] = drawn.marks;
    expect(here?.x).toBeCloseTo(334 / 5, 9);
    expect(here?.y).toBeCloseTo(120, 9);
    expect(here?.words.x).toBeGreaterThan(here?.x ?? 0);
    expect(far?.y).toBe(180);
    for (const { box } of drawn.marks) expect(box.x + box.width).toBeLessThanOrEqual(PAPER.width);
    expect(now?.y).toBeNull();
  });

  test("hours of the day are told in threes, within the chart", () => {
    const hours: FigureChart = {
      ...CHART,
      across: { label: "by the sun", measure: "clock" },
      curves: [
        {
          label: "light",
          part: "first",
          points: [
            [4 * 3600, 0],
            [20 * 3600, 1],
          ],
        },
      ],
      marks: [],
    };
    expect(figurePlot(hours, 360, US).across.ticks.map(({ at }) => at / 3600)).toEqual([6, 9, 12, 15, 18]);
  });

  test("what it says names its marks with their numbers", () => {
    expect(figureWords(FIGURE, METRIC).replaceAll("\u00a0", " ")).toBe(
      "It rises. here: 6 L/min at 1 m. far: 30 L/min. now: 15 L/min.",
    );
    expect(figureWords({ says: "It rises.", columns: [], rows: [] }, US)).toBe("It rises.");
  });

  test("bars are shares of the greatest; where there is no number there is no bar", () => {
    expect(figureTable(FIGURE, "Flows", METRIC).bars).toEqual([null, [0.5, 1, null]]);
  });
});
