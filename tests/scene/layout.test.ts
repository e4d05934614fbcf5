import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Layout, layoutPlace } from "../../src/scene/layout.ts";
import { overlaps } from "../../src/scene/paper.ts";
import type { Box, Label } from "../../src/scene/place.ts";
import { textWidth } from "../../src/scene/text-block.ts";
import { waterOrder } from "../../src/scene/water-order.ts";
import { anyPlace, EMPTY, plainLine, plainPart, plainTank } from "./made-up.ts";

const anyWidth = fc.integer({ min: 360, max: 1300 });
const labelsOf = (layout: Layout): readonly Label[] => layout.parts.flatMap((part) => part.labels);
const inside = (layout: Layout, box: Box): boolean =>
  box.x >= 0 && box.y >= 0 && box.x + box.width <= layout.width && box.y + box.height <= layout.height;

function bodyOf(layout: Layout, id: string): Box {
  const spot = layout.spots.get(id);
  if (!spot) throw new Error(`${id} is not drawn`);
  return spot.body;
}

describe("no two words on paper touch", () => {
  test("labels of any place are apart, at any width from a phone to a desk", () => {
    fc.assert(
      fc.property(anyPlace, anyWidth, (place, width) => {
        const labels = labelsOf(layoutPlace(place, width));
        for (const [index, label] of labels.entries())
          for (const other of labels.slice(index + 1)) expect(overlaps(label.box, other.box)).toBe(false);
      }),
      { numRuns: 300 },
    );
  });

  test("labels stand inside the paper, and their words inside the labels", () => {
    fc.assert(
      fc.property(anyPlace, anyWidth, (place, width) => {
        const layout = layoutPlace(place, width);
        for (const label of labelsOf(layout)) {
          expect(inside(layout, label.box)).toBe(true);
          for (const words of label.words) {
            expect(textWidth(words.text, layout.type.size, words.bold)).toBeLessThanOrEqual(
              label.box.width + 1e-6,
            );
            expect(words.y).toBeLessThanOrEqual(label.box.y + label.box.height);
          }
        }
      }),
      { numRuns: 200 },
    );
  });

  test("no label lies on a tank, and tanks stand apart inside the paper", () => {
    fc.assert(
      fc.property(anyPlace, anyWidth, (place, width) => {
        const layout = layoutPlace(place, width);
        const bodies = [...layout.spots.values()].map((spot) => spot.body);
        for (const [index, body] of bodies.entries()) {
          expect(inside(layout, body)).toBe(true);
          for (const other of bodies.slice(index + 1)) expect(overlaps(body, other)).toBe(false);
          for (const label of labelsOf(layout)) expect(overlaps(body, label.box)).toBe(false);
        }
      }),
      { numRuns: 200 },
    );
  });

  test("every part of any place is drawn, has its name beside it, and answers to a touch", () => {
    fc.assert(
      fc.property(anyPlace, anyWidth, (place, width) => {
        const drawn = new Map(layoutPlace(place, width).parts.map((part) => [part.id, part]));
        const standing = [...place.tanks, ...place.roofs, ...place.beds, ...place.batteries, ...place.panels];
        for (const part of [...standing, ...place.carries]) {
          expect(drawn.get(part.id)?.labels).toHaveLength(1);
          expect(drawn.get(part.id)?.hits.length).toBeGreaterThan(0);
        }
        for (const part of standing) if (part.trouble) expect(drawn.get(part.id)?.mark).not.toBeNull();
      }),
      { numRuns: 200 },
    );
  });

  test("no number on paper is unreal", () => {
    fc.assert(
      fc.property(anyPlace, anyWidth, (place, width) => {
        const { parts, grounds, front } = layoutPlace(place, width);
        const paths = [...parts.flatMap((part) => [...part.shapes, ...part.walls]), ...front].map(
          ({ d }) => d,
        );
        for (const d of [...paths, ...grounds.map(({ area }) => area)])
          expect(d).not.toMatch(/NaN|Infinity|undefined/);
      }),
      { numRuns: 200 },
    );
  });
});

describe("heights are to scale", () => {
  test("floors and rims stand as far apart as the heights are", () => {
    const tanks = [plainTank("upper", 3, 1, 0.5), plainTank("lower", 0, 1)];
    const layout = layoutPlace({ ...EMPTY, tanks }, 1200);
    const [upper, lower] = [bodyOf(layout, "upper"), bodyOf(layout, "lower")];
    const foot = (box: Box): number => box.y + box.height;
    expect(foot(lower) - foot(upper)).toBeCloseTo(3.5 * layout.scale, 6);
    expect(upper.height).toBeCloseTo(lower.height, 6);
    expect(layout.spots.get("upper")?.pxPerMetre).toBeCloseTo(layout.scale, 6);
  });

  test("a raised tank stands higher by just that much when the scale is kept", () => {
    const at = (ground: number) => {
      const tanks = [plainTank("upper", ground), plainTank("lower", 0)];
      const layout = layoutPlace({ ...EMPTY, tanks }, 900, 50);
      return bodyOf(layout, "lower").y - bodyOf(layout, "upper").y;
    };
    expect(at(2.5) - at(2)).toBeCloseTo(25, 6);
  });

  test("tanks too small for the scale are still seen", () => {
    const tanks = [plainTank("far", 60, 0.5), plainTank("near", 0, 0.5)];
    for (const body of [...layoutPlace({ ...EMPTY, tanks }, 390).spots.values()].map((spot) => spot.body))
      expect(body.height).toBeGreaterThanOrEqual(20);
  });
});

describe("what is drawn where", () => {
  test("a tank stands right of the tank that feeds it, by line or overflow", () => {
    const tanks = [
      plainTank("a_trough", 0),
      { ...plainTank("b_cistern", 2), overflowsTo: "c_second" },
      plainTank("c_second", 3),
    ];
    const lines = [plainLine("pipe", "c_second", "a_trough")];
    expect(waterOrder({ ...EMPTY, tanks, lines })).toEqual(["b_cistern", "c_second", "a_trough"]);
  });

  test("a loop of tanks comes to an end", () => {
    const tanks = [plainTank("a", 0), plainTank("b", 0), plainTank("c", 0)];
    const lines = [plainLine("ab", "a", "b"), plainLine("bc", "b", "c"), plainLine("ca", "c", "a")];
    expect([...waterOrder({ ...EMPTY, tanks, lines })].sort()).toEqual(["a", "b", "c"]);
  });

  test("trouble with a hump is marked at the hump", () => {
    const tanks = [plainTank("upper", 2), plainTank("lower", 0)];
    const route = [
      [0, 2],
      [5, 0.5],
      [15, 1.2],
      [20, 0],
    ] as const;
    const line = { ...plainLine("hose", "upper", "lower", { route }), trouble: "Air sits at the hump." };
    const layout = layoutPlace({ ...EMPTY, tanks, lines: [line] }, 1000);
    const [upper, lower] = [bodyOf(layout, "upper"), bodyOf(layout, "lower")];
    const mark = layout.parts.find((part) => part.id === "hose")?.mark;
    const humpY = lower.y + lower.height - 1.2 * layout.scale;
    expect(mark?.x).toBeGreaterThan((upper.x + upper.width + lower.x) / 2);
    expect(mark?.x).toBeLessThan(lower.x);
    // The mark sits on the hose, whose middle lies 3 px over the ground, 2 px higher still.
    expect(Math.abs((mark?.y ?? 0) - humpY)).toBeCloseTo(5, 6);
  });

  test("a hump of a hose that leads past other tanks is drawn and marked where it leaves its own", () => {
    const tanks = [plainTank("upper", 4), plainTank("between", 2), plainTank("lower", 0)];
    const route = [
      [0, 4],
      [9, 5.5],
      [20, 0],
    ] as const;
    const line = { ...plainLine("hose", "upper", "lower", { route }), trouble: "Air sits at the hump." };
    const layout = layoutPlace({ ...EMPTY, tanks, lines: [line] }, 1000);
    const [upper, between] = [bodyOf(layout, "upper"), bodyOf(layout, "between")];
    const mark = layout.parts.find((part) => part.id === "hose")?.mark;
    expect(mark?.x).toBeGreaterThan(upper.x + upper.width);
    expect(mark?.x).toBeLessThan(between.x);
    const humpY = upper.y + upper.height - 1.5 * layout.scale;
    expect(Math.abs((mark?.y ?? 0) - humpY)).toBeCloseTo(5, 6);
  });

  test("one row on a desk, rows under one another on a phone, beds two or three abreast", () => {
    const beds = Array.from({ length: 6 }, (_, index) => ({
      ...plainPart(`bed_${index}`, `Bed ${index}`),
      covered: false,
    }));
    const place = { ...EMPTY, tanks: [plainTank("tank", 0)], beds };
    expect(layoutPlace(place, 1280).grounds).toHaveLength(1);
    expect(layoutPlace(place, 390).grounds).toHaveLength(3);
  });

  test("nothing to draw gives an empty sheet", () => {
    expect(layoutPlace(EMPTY, 390)).toMatchObject({ parts: [], grounds: [], height: 0 });
  });

  test("twenty cards of each kind are laid out within a fifth of a second", () => {
    const many = Array.from({ length: 20 }, (_, index) => index);
    const place = {
      ...EMPTY,
      tanks: many.map((index) => plainTank(`tank_${index}`, 20 - index)),
      lines: many.slice(1).map((index) => plainLine(`line_${index}`, `tank_${index - 1}`, `tank_${index}`)),
      beds: many.map((index) => ({ ...plainPart(`bed_${index}`, `Bed ${index}`), covered: index % 2 === 0 })),
    };
    const start = performance.now();
    for (const width of [390, 1280]) layoutPlace(place, width);
    expect(performance.now() - start).toBeLessThan(200);
  });
});
