import { describe, expect, test } from "vitest";
import { monthSheet, type SheetDay } from "../../src/scene/month-sheet.ts";
import { drawPlot } from "../../src/scene/plot.ts";

const day = (date: string, more: Partial<SheetDay> = {}): SheetDay => ({
  date,
  given: 0,
  rain: 0,
  stressed: false,
  letGo: false,
  grows: true,
  ...more,
});

describe("a sheet of months", () => {
  const days = [
    day("2009-07-30", { given: 2 }),
    day("2009-07-31", { stressed: true, letGo: true }),
    day("2009-08-01", { given: 4 }),
    day("2009-08-02", { rain: 0.01 }),
    day("2009-08-03", { letGo: true }),
    day("2009-08-04", { grows: false }),
  ];
  const sheet = monthSheet(days);
  const shapes = drawPlot(sheet.plot, { width: 380, height: sheet.rows * 20 }).shapes;
  const d = (look: string) => shapes.find((shape) => shape.look === look)?.d ?? "";
  const count = (look: string) => d(look).match(/M/g)?.length ?? 0;

  test("has a row a month, the first at the top, and their names", () => {
    expect(sheet.rows).toBe(2);
    expect(sheet.plot.up.ticks.map(({ label }) => label)).toEqual(["Jul 2009", "Aug 2009"]);
  });

  test("has a square a day that something grows, a bar as high as its share of the largest watering", () => {
    expect(count("plot-bars soft faint")).toBe(5);
    const heights = [...d("plot-bars water").matchAll(/v(\d+(?:\.\d+)?)/g)].map(([, px]) => Number(px));
    expect(heights).toEqual([8, 16]);
  });

  test("marks rain that counts, thirst before what was let go", () => {
    expect(count("plot-dots water")).toBe(1);
    expect(count("plot-signs trouble")).toBe(2);
    expect(count("plot-signs soft")).toBe(1);
  });

  test("knows which day is under a finger", () => {
    for (const [index, one] of days.entries()) {
      const column = Number(one.date.slice(8)) - 0.5;
      expect(sheet.at(column, index < 2 ? 1.5 : 0.5)).toBe(one);
    }
    expect(sheet.at(-2, 0.5)).toBeNull();
    expect(sheet.at(29.5, 0.5)).toBeNull();
  });
});
