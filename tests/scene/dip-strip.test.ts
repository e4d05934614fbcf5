// The strip's marks are where the water stands: checked against geometry, not against the strip's own sums.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Vessel } from "../../src/physics/vessel.ts";
import { type DipStrip, dipStrip, dipStripOf } from "../../src/scene/dip-strip.ts";
import { toSi } from "../../src/units/unit.ts";

/** Every mark with its height over the floor [mm] and, where it has one, its number. */
const marksOf = (strip: DipStrip) =>
  strip.pieces.flatMap(({ from, height, marks }) =>
    marks.map(({ y, label }) => ({ at: from + height - y, label: label === null ? null : Number(label) })),
  );

describe("the strip of an upright tank", () => {
  // A box of 1 m by 1 m: a litre stands a millimetre high.
  const strip = dipStrip({ form: "upright", height: 0.5, volume: 0.5 }, "L");

  test("shows litres at their millimetres, from the floor to the brim", () => {
    const marks = marksOf(strip);
    for (const { at, label } of marks) if (label !== null) expect(at).toBeCloseTo(label, 9);
    expect(marks[0]).toMatchObject({ at: 0, label: 0 });
    expect(marks[marks.length - 1]?.at).toBeCloseTo(500, 9);
  });

  test("comes in pieces that fit on a page and follow each other without a gap", () => {
    expect(strip.pieces.length).toBe(3);
    let foot = 0;
    for (const piece of strip.pieces) {
      expect(piece.from).toBeCloseTo(foot, 9);
      // A4 is 297 mm, Letter 279.4: 20 mm of margin at both ends.
      expect(piece.height).toBeLessThanOrEqual(239.4);
      for (const { y } of piece.marks) expect(y >= 0 && y <= piece.height).toBe(true);
      foot += piece.height;
    }
    expect(foot).toBeCloseTo(500, 9);
  });
});

describe("the strip of a lying tank", () => {
  // Computed in the reference: 48 in across and 96 in long holds 752.02 gal, and 280.90 gal at 19.2 in.
  const vessel: Vessel = { form: "lying", height: toSi(48, "in"), volume: toSi(752.02, "gal") };

  test("has 280.9 gal at 19.2 in between its marks, and half at half height", () => {
    const marks = marksOf(dipStrip(vessel, "gal")).filter(({ label }) => label !== null);
    const under = marks.filter(({ label }) => (label ?? 0) <= 280.9).pop();
    const over = marks.find(({ label }) => (label ?? 0) > 280.9);
    expect(under?.at).toBeLessThan(19.2 * 25.4);
    expect(over?.at).toBeGreaterThan(19.2 * 25.4);
  });

  test("is close-marked in the middle and wide at both ends", () => {
    const marks = marksOf(dipStrip(vessel, "gal"));
    const gaps = marks.slice(1).map((mark, index) => mark.at - (marks[index]?.at ?? 0));
    const middle = gaps[Math.floor(gaps.length / 2)] ?? 0;
    expect(gaps[0]).toBeGreaterThan(3 * middle);
    expect(gaps[gaps.length - 1]).toBeGreaterThan(middle);
  });
});

test("any tank in any unit: marks rise, are far enough apart, and carry round numbers", () => {
  fc.assert(
    fc.property(
      fc.constantFrom("upright", "lying"),
      fc.double({ min: 0.05, max: 4, noNaN: true }),
      fc.double({ min: 0.001, max: 50, noNaN: true }),
      fc.constantFrom("gal", "imp gal", "L"),
      (form, height, volume, unit) => {
        const strip = dipStrip({ form, height, volume } as Vessel, unit);
        const marks = marksOf(strip);
        const gaps = marks.slice(1).map((mark, index) => mark.at - (marks[index]?.at ?? 0));
        // 3 mm, less rounding.
        expect(gaps.reduce((least, gap) => Math.min(least, gap), Infinity)).toBeGreaterThan(2.999_99);
        const labels = marks.flatMap(({ label }) => (label === null ? [] : [label]));
        const each = labels[1] ?? 1;
        expect(each.toExponential()).toMatch(/^[125]e/);
        expect(labels.every((label, index) => Math.abs(label / each - index) < 1e-9)).toBe(true);
        expect(marks[marks.length - 1]?.at).toBeLessThanOrEqual(height * 1000 * (1 + 1e-9));
      },
    ),
  );
});

test("what is no vessel has no strip", () => {
  expect(dipStripOf(null, "gal")).toBeNull();
  expect(dipStripOf({ height: 1 }, "gal")).toBeNull();
  expect(dipStripOf([1, 2], "gal")).toBeNull();
  expect(dipStripOf({ form: "upright", height: 0.5, volume: 0.5 }, "L")?.pieces.length).toBe(3);
});
