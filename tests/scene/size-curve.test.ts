// The curve of size against share met: its shapes stay on the paper, and its words say what the points say.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  kneeWords,
  type SizeCurve,
  type SizePoint,
  sizeChart,
  sizeTable,
  sizeWords,
} from "../../src/scene/size-curve.ts";

const METRIC = { units: "metric", locale: "en-GB", currency: "EUR" } as const;
const PAPER = { width: 360, height: 170, unit: "L" };

const point = (multiple: number, shareMet: number | null, more: Partial<SizePoint> = {}): SizePoint => ({
  multiple,
  volume: multiple,
  shareMet,
  daysShort: 3,
  spill: 0,
  ...more,
});

/** Written down by hand: it rises to twice the size, and is flat after it. */
const RISING: SizeCurve = {
  points: [point(4, 0.961), point(1, 0.8, { daysShort: 12 }), point(0.5, 0.6), point(2, 0.96)],
  knee: 2,
};

const plain = (words: readonly string[]): readonly string[] =>
  words.map((text) => text.replaceAll(/[\u00a0\u202f]/g, " "));

describe("the size curve in words", () => {
  test("today's size, twice that, and the point past which more buys little are said with their numbers", () => {
    const [today, twice] = plain(sizeWords(RISING, METRIC));
    expect(today).toBe("Today 1,000 L: 80 % of the thirst met, 12 short days a season.");
    expect(twice).toBe("Twice that, 2,000 L: 96 % of the thirst met, 3 short days a season.");
    expect(plain([kneeWords(RISING, METRIC) ?? ""])[0]).toMatch(/^Past 2,000 L more buys little/);
  });

  test("a curve that still rises at its end names no such point, a flat one says that size hardly matters", () => {
    const climbing = { points: [point(1, 0.3), point(4, 0.9)], knee: null };
    expect(kneeWords(climbing, METRIC)).toContain("no point was found");
    const flat = { points: [point(0.25, 0.7), point(1, 0.702), point(4, 0.704)], knee: 0.25 };
    expect(kneeWords(flat, METRIC)).toContain("hardly matters");
  });

  test("today's size past that point is said so, and a share that only rounds to all is not called all", () => {
    const past = { points: [point(0.5, 0.9), point(1, 0.9996), point(2, 0.9997)], knee: 0.5 };
    expect(kneeWords(past, METRIC)).toContain("already from");
    expect(plain(sizeWords(past, METRIC))[0]).toContain(": 99.9 % of the thirst met");
    const all = { points: [point(1, 1, { daysShort: 0 })], knee: null };
    expect(plain(sizeWords(all, METRIC))[0]).toContain(": 100 % of the thirst met, 0 short days");
  });

  test("where nothing asks for the water, that is said and nothing is drawn", () => {
    const idle = { points: [point(1, null), point(2, null)], knee: null };
    expect(sizeWords(idle, METRIC)[0]).toContain("Nothing asks for this water");
    expect(kneeWords(idle, METRIC)).toBeNull();
    expect(sizeChart(idle, PAPER).dots).toEqual([]);
  });
});

describe("the size curve on paper", () => {
  test("every dot and mark of any curve stands on the paper, bigger tanks to the right, more met higher up", () => {
    const shares = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1, maxLength: 17 });
    fc.assert(
      fc.property(shares, fc.integer({ min: 280, max: 1200 }), (list, width) => {
        const points = list.map((share, place) => point(2 ** (place / 4 - 2), share));
        const chart = sizeChart({ points, knee: points[0]?.multiple ?? null }, { ...PAPER, width });
        for (const { x, y } of [
          ...chart.dots,
          ...[chart.today, chart.knee].filter((mark) => mark !== null),
        ]) {
          expect(x).toBeGreaterThanOrEqual(0);
          expect(x).toBeLessThanOrEqual(width);
          expect(y).toBeGreaterThanOrEqual(0);
          expect(y).toBeLessThanOrEqual(PAPER.height);
        }
        chart.dots.slice(1).forEach((dot, place) => {
          const [before, after] = [list[place] ?? 0, list[place + 1] ?? 0];
          expect(dot.x).toBeGreaterThan(chart.dots[place]?.x ?? 0);
          // Shares nearer than a billionth may fall on one spot.
          if (after > before + 1e-9) expect(dot.y).toBeLessThan(chart.dots[place]?.y ?? 0);
          if (after < before - 1e-9) expect(dot.y).toBeGreaterThan(chart.dots[place]?.y ?? 0);
        });
      }),
    );
  });

  test("today's size and the point past which more buys little are marked where their dots are", () => {
    const chart = sizeChart(RISING, PAPER);
    const at = (volume: number) => sizeTable(RISING).findIndex((one) => one.volume === volume);
    expect(chart.today).toMatchObject({ ...chart.dots[at(1)], volume: 1 });
    expect(chart.knee).toMatchObject({ ...chart.dots[at(2)], volume: 2 });
  });

  test("the table has every size once, from the smallest to the biggest", () => {
    expect(sizeTable(RISING).map(({ multiple }) => multiple)).toEqual([0.5, 1, 2, 4]);
  });
});
