// The dip stick's marks in words and on the strip: each month at its depth, close ones together, years as they would have gone.

import { describe, expect, test } from "vitest";
import { dipStrip } from "../../src/scene/dip-strip.ts";
import { stickTold } from "../../src/telling/stick.ts";

const stick = {
  madeUp: false,
  marks: [
    { month: 5, depths: { tank: 0.3 } },
    { month: 6, depths: { tank: 0.5 } },
    { month: 7, depths: { tank: null } },
    { month: 8, depths: { tank: 0.501 } },
  ],
  kept: ["tunnel"],
  held: ["long"],
  on: 1,
  years: [
    { year: 2001, loss: 0.1, plain: 0.2 },
    { year: 2002, loss: 0.05, plain: 0.06 },
  ],
};
const titleOf = (id: string) => ({ tunnel: "Small tunnel", long: "Long bed" })[id] ?? id;

describe("the stick", () => {
  const told = stickTold(stick, "tank", titleOf);

  test("says what a mark means, which months none can reach, and how the years would have gone", () => {
    expect(told?.rule).toBe("Water above the month's mark: water all. Below it: only Small tunnel.");
    expect(told?.over).toBe("In Jul even full tanks are below the mark.");
    // The means of 10 and 5 %, and of 20 and 6 %.
    expect(told?.tuned).toContain("Found by trying marks on the hardest of the 2 seasons on record.");
    expect(told?.tuned).toContain("lost 8 % of what they are worth by these marks, 13 % as the sheet waters");
    const both = {
      ...stick,
      marks: stick.marks.map((one) => ({ ...one, depths: { ...one.depths, tub: 0.2 } })),
    };
    expect(stickTold(both, "tank", titleOf)?.rule).toContain(
      "while all tanks are about as full as each other",
    );
    expect(told?.years).toEqual([
      { year: "2001", loss: "10 %", plain: "20 %" },
      { year: "2002", loss: "5 %", plain: "6 %" },
    ]);
    expect(stickTold({ ...stick, madeUp: true }, "tank", titleOf)?.tuned).toContain("2 made-up seasons");
    expect(stickTold(stick, "tub", titleOf)).toBeNull();
  });

  test("its marks stand on the strip at their true heights over the floor", () => {
    expect(told?.marks).toEqual([
      { depth: 0.3, label: "May" },
      { depth: 0.5, label: "Jun Aug" },
    ]);
    const { pieces } = dipStrip({ form: "upright", height: 1, volume: 1 }, "L", told?.marks);
    const placed = pieces.flatMap(({ from, height, months }) =>
      months.map(({ y, label }) => [label, Math.round(from + height - y)]),
    );
    expect(placed).toEqual([
      ["May", 300],
      ["Jun Aug", 500],
    ]);
  });
});
