import { describe, expect, test } from "vitest";
import { gradeLine, waterOf, waterShapes, waterToday, waterWords } from "../../src/scene/day-water.ts";
import { layoutPlace } from "../../src/scene/layout.ts";
import type { Place } from "../../src/scene/place.ts";
import { toSi } from "../../src/units/unit.ts";
import { EMPTY, plainLine, plainTank } from "./made-up.ts";

const US = { units: "us", locale: "en-US", currency: "$" } as const;

const place: Place = {
  ...EMPTY,
  tanks: [plainTank("upper", 2), plainTank("lower", 0)],
  lines: [plainLine("hose", "upper", "lower", { startHeight: 2, endHeight: 0.9 })],
};

/** Numbers of a path, in order. */
const numbers = (d: string): number[] => (d.match(/-?\d+(\.\d+)?/g) ?? []).map(Number);

describe("how much water a tank shows", () => {
  const dipped = { ...plainTank("tub", 0), dipped: 0.3 };

  test("a chosen day's, before what was dipped, before the share at the start", () => {
    expect(waterOf({ ...EMPTY, tanks: [dipped] }, () => 0.8).get("tub")?.level).toBeCloseTo(0.8, 12);
    expect(waterOf({ ...EMPTY, tanks: [dipped] }, null).get("tub")?.level).toBeCloseTo(0.3, 12);
    // Today a dip counts as what it has come to since, once that is worked out; what nobody dipped stays as it begins.
    const both = { ...EMPTY, tanks: [dipped, plainTank("tote", 0)] };
    const today = (now: Record<string, number> | null) =>
      ["tub", "tote"].map((id) => waterToday(both, now).get(id)?.volume);
    expect(today({ tub: 0.25, tote: 0.9 })).toEqual([0.25, 0.5]);
    expect(today(null)).toEqual([waterOf(both, null).get("tub")?.volume, 0.5]);
    expect(waterOf({ ...EMPTY, tanks: [plainTank("tub", 0)] }, null).get("tub")?.volume).toBeCloseTo(0.5, 12);
  });

  test("a lying tank half full by volume stands half full by depth; a quarter stands higher than a quarter", () => {
    const vessel = { form: "lying", height: 1, volume: 4 } as const;
    const level = (volume: number) =>
      waterOf({ ...EMPTY, tanks: [{ ...plainTank("tub", 0), vessel }] }, () => volume).get("tub")?.level;
    expect(level(2)).toBeCloseTo(0.5, 9);
    expect(level(1)).toBeGreaterThan(0.25);
  });

  test("more than it holds is full, less than nothing is empty", () => {
    const at = (volume: number) => waterOf({ ...EMPTY, tanks: [dipped] }, () => volume).get("tub")?.volume;
    expect(at(7)).toBe(1);
    expect(at(-7)).toBe(0);
  });

  test("it is told in the worksheet's unit, in round steps, with a decimal for what is small", () => {
    // To five from 100 gal, to ten from 500 (shared/look/look.md, Precision).
    expect(waterWords(toSi(346.6, "gal"), toSi(550, "gal"), US)).toEqual({
      long: "345 of 550\u00a0gal",
      short: "345\u00a0gal",
    });
    expect(waterWords(toSi(769, "gal"), toSi(1100, "gal"), US).long).toBe("770 of 1,100\u00a0gal");
    expect(waterWords(toSi(6356, "gal"), toSi(6356, "gal"), US).long).toBe("6,360 of 6,360\u00a0gal");
    expect(waterWords(toSi(1.26, "gal"), toSi(5, "gal"), US).short).toBe("1.3\u00a0gal");
    expect(waterWords(0, toSi(550, "gal"), US).long).toBe("0 of 550\u00a0gal");
  });

  test("it is rounded once: what lies nearer to the lower step never reads as the upper by way of a whole", () => {
    expect(waterWords(toSi(544.6, "gal"), toSi(1100, "gal"), US).short).toBe("540\u00a0gal");
    expect(waterWords(toSi(545.2, "gal"), toSi(1100, "gal"), US).short).toBe("550\u00a0gal");
    expect(waterWords(0, toSi(1234.6, "gal"), US).long).toBe("0 of 1,230\u00a0gal");
  });

  test("a tank that is not full is not told as full", () => {
    expect(waterWords(toSi(546, "gal"), toSi(550, "gal"), US).long).toBe("546 of 550\u00a0gal");
    expect(waterWords(toSi(549.8, "gal"), toSi(550, "gal"), US).long).toBe("550 of 550\u00a0gal");
    expect(waterWords(toSi(126, "gal"), toSi(127, "gal"), US).long).toBe("125 of 127\u00a0gal");
  });
});

describe("where it stands on paper", () => {
  const layout = layoutPlace(place, { width: 1000, height: 400, small: false });
  const [upper, lower] = [layout.spots.get("upper"), layout.spots.get("lower")];
  if (!upper || !lower) throw new Error("the tanks are not drawn");

  test("the surface stands as high over the floor as the water is deep", () => {
    for (const level of [0, 0.25, 1]) {
      const shapes = waterShapes(upper, plainTank("upper", 2), { level, volume: level });
      const [, y = 0] = numbers(shapes.surface);
      expect(upper.floorY - y).toBeCloseTo(level * layout.kept.scale, 0);
    }
  });

  test("the grade line runs from the upper water's surface to the end of the hose, falling", () => {
    const grade = layout.grades[0];
    if (!grade) throw new Error("there is no grade line");
    const waters = waterOf(place, (id) => (id === "upper" ? 0.6 : 0.1));
    const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = numbers(gradeLine(layout, grade, waters));
    expect(upper.floorY - y1).toBeCloseTo(0.6 * layout.kept.scale, 0);
    expect(lower.floorY - y2).toBeCloseTo(0.9 * layout.kept.scale, 0);
    expect(x1).toBeCloseTo(upper.body.x + upper.body.width, 0);
    expect(x2).toBeCloseTo(lower.body.x, 0);
    expect(y2).toBeGreaterThan(y1);
  });
});
