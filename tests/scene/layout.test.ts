import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { flatten } from "../../src/scene/flatten.ts";
import { TARGET } from "../../src/scene/hits.ts";
import { type Kept, type Layout, layoutPlace, type PaperSize } from "../../src/scene/layout.ts";
import { overlaps } from "../../src/scene/paper.ts";
import type { Box, DrawnTank, Label, Place, Words } from "../../src/scene/place.ts";
import { LEAST_HEIGHT, leastBreadth, vesselsDrawn } from "../../src/scene/tank-sizes.ts";
import { textWidth } from "../../src/scene/text-block.ts";
import { waterOrder } from "../../src/scene/water-order.ts";
import { tries } from "../tries.ts";
import { anyPlace, EMPTY, plainLine, plainPart, plainTank } from "./made-up.ts";

const anySheet: fc.Arbitrary<PaperSize> = fc
  .record({ width: fc.integer({ min: 320, max: 1500 }), height: fc.integer({ min: 130, max: 560 }) })
  .map((size) => ({ ...size, small: size.width < 640 }));
const DESK: PaperSize = { width: 1200, height: 400, small: false };
const PHONE: PaperSize = { width: 390, height: 168, small: true };

const labelsOf = (layout: Layout): readonly Label[] => layout.parts.flatMap((part) => part.labels);
const inside = (layout: Layout, box: Box): boolean =>
  box.x >= -1e-6 &&
  box.y >= -1e-6 &&
  box.x + box.width <= layout.width + 1e-6 &&
  box.y + box.height <= layout.height + 1e-6;

function bodyOf(layout: Layout, id: string): Box {
  const spot = layout.spots.get(id);
  if (!spot) throw new Error(`${id} is not drawn`);
  return spot.body;
}

const bedsOf = (count: number, title = "Bed") =>
  Array.from({ length: count }, (_, index) => ({
    ...plainPart(`bed_${index}`, `${title} ${index}`),
    covered: false,
  }));

describe("nothing lies on what it must not", () => {
  test("labels of any place are apart, whole, and inside the paper, on any zone of any screen", () => {
    fc.assert(
      fc.property(anyPlace, anySheet, (place, sheet) => {
        const layout = layoutPlace(place, sheet);
        const labels = labelsOf(layout);
        for (const [index, label] of labels.entries()) {
          expect(inside(layout, label.box)).toBe(true);
          for (const other of labels.slice(index + 1)) expect(overlaps(label.box, other.box)).toBe(false);
          for (const words of label.words) {
            expect(words.text).not.toContain("…");
            expect(textWidth(words.text, layout.type.size, words.bold)).toBeLessThanOrEqual(
              label.box.width + 1e-6,
            );
            expect(words.y).toBeLessThanOrEqual(label.box.y + label.box.height);
          }
        }
      }),
      { numRuns: tries(150) },
    );
  });

  test("no line runs through a word: not the ground's, not a hose's, not a roof's post", () => {
    fc.assert(
      fc.property(anyPlace, anySheet, (place, sheet) => {
        const layout = layoutPlace(place, sheet);
        const paths = [
          ...layout.parts.flatMap((part) => [...part.shapes, ...part.walls]),
          ...layout.front,
        ].map(({ d }) => d);
        const strokes = [...paths, layout.ground?.line ?? ""].flatMap(flatten);
        for (const { box } of labelsOf(layout))
          for (const stroke of strokes) expect(passes(stroke, box)).toBe(false);
      }),
      { numRuns: tries(100) },
    );
  });

  test("no line of the water of any day runs through a word", () => {
    fc.assert(
      fc.property(anyPlace, anySheet, fc.double({ min: 0, max: 1, noNaN: true }), (place, sheet, share) => {
        const layout = layoutPlace(place, sheet);
        for (const { tank, x, end } of layout.grades) {
          const spot = layout.spots.get(tank);
          if (!spot) continue;
          const y = spot.floorY - share * (spot.floorY - spot.body.y);
          for (const { box } of labelsOf(layout)) expect(passes([[x, y], end], box)).toBe(false);
        }
      }),
      { numRuns: tries(100) },
    );
  });

  test("tanks stand apart, inside the paper, and no word lies on one", () => {
    fc.assert(
      fc.property(anyPlace, anySheet, (place, sheet) => {
        const layout = layoutPlace(place, sheet);
        const bodies = [...layout.spots.values()].map((spot) => spot.body);
        for (const [index, body] of bodies.entries()) {
          expect(body.x >= 0 && body.x + body.width <= layout.width).toBe(true);
          expect(body.y + body.height <= layout.height).toBe(true);
          for (const other of bodies.slice(index + 1)) expect(overlaps(body, other)).toBe(false);
          for (const label of labelsOf(layout)) expect(overlaps(body, label.box)).toBe(false);
        }
      }),
      { numRuns: tries(150) },
    );
  });

  test("discs of trouble are apart wherever there are not more than eight", () => {
    fc.assert(
      fc.property(anyPlace, anySheet, (place, sheet) => {
        const marks = layoutPlace(place, sheet).parts.flatMap(({ mark }) => mark ?? []);
        if (marks.length > 8) return;
        for (const [index, mark] of marks.entries())
          for (const other of marks.slice(index + 1))
            expect(Math.hypot(mark.x - other.x, mark.y - other.y)).toBeGreaterThanOrEqual(20);
      }),
      { numRuns: tries(150) },
    );
  });

  test("every part of any place is drawn and answers to a touch", () => {
    fc.assert(
      fc.property(anyPlace, anySheet, (place, sheet) => {
        const drawn = new Map(layoutPlace(place, sheet).parts.map((part) => [part.id, part]));
        const standing = [...place.tanks, ...place.roofs, ...place.beds, ...place.batteries, ...place.panels];
        for (const part of [...standing, ...place.carries, ...place.things])
          expect(drawn.get(part.id)?.hits.length).toBeGreaterThan(0);
        for (const part of standing) if (part.trouble) expect(drawn.get(part.id)?.mark).not.toBeNull();
      }),
      { numRuns: tries(150) },
    );
  });

  test("no number on paper is unreal", () => {
    fc.assert(
      fc.property(anyPlace, anySheet, (place, sheet) => {
        const { parts, ground, front } = layoutPlace(place, sheet);
        const paths = [...parts.flatMap((part) => [...part.shapes, ...part.walls]), ...front].map(
          ({ d }) => d,
        );
        for (const d of [...paths, ground?.area ?? ""]) expect(d).not.toMatch(/NaN|Infinity|undefined/);
      }),
      { numRuns: tries(150) },
    );
  });
});

/** Whether a stroke runs through a box, asked every pixel of its way. */
function passes(stroke: readonly (readonly [number, number])[], box: Box): boolean {
  return stroke.some(([x, y], index) => {
    const [toX, toY] = stroke[index + 1] ?? [x, y];
    const steps = Math.max(1, Math.ceil(Math.hypot(toX - x, toY - y)));
    for (let step = 0; step <= steps; step++) {
      const [atX, atY] = [x + ((toX - x) * step) / steps, y + ((toY - y) * step) / steps];
      if (atX > box.x && atX < box.x + box.width && atY > box.y && atY < box.y + box.height) return true;
    }
    return false;
  });
}

describe("a bigger tank is bigger", () => {
  /** Areas on paper of the vessels of each tank, with what it holds, where neither limit of the drawing is reached. */
  function areas(place: Place, sheet: PaperSize) {
    const layout = layoutPlace(place, sheet);
    return place.tanks.flatMap((tank) => {
      const { vessels } = layout.spots.get(tank.id) ?? { vessels: [] };
      const [first] = vessels;
      const least = leastBreadth(vesselsDrawn(tank)) + 1e-6;
      if (!first || first.width <= least || first.height <= LEAST_HEIGHT + 1e-6) return [];
      const all = vessels.reduce((sum, { width, height }) => sum + width * height, 0);
      return [{ all, volume: tank.vessel?.volume ?? 0 }];
    });
  }

  test("areas are to one another as volumes are, down to the narrowest vessel that is drawn", () => {
    let compared = 0;
    fc.assert(
      fc.property(anyPlace, anySheet, (place, sheet) => {
        const found = areas(place, sheet);
        for (const one of found)
          for (const other of found) {
            compared += one === other ? 0 : 1;
            expect(one.all / other.all / (one.volume / other.volume)).toBeCloseTo(1, 6);
          }
      }),
      { numRuns: tries(400) },
    );
    expect(compared).toBeGreaterThan(tries(50));
  });

  test("three are drawn three, and six six", () => {
    for (const count of [1, 2, 3, 6]) {
      const tanks = [{ ...plainTank("tank", 0), count }];
      expect(layoutPlace({ ...EMPTY, tanks }, PHONE).spots.get("tank")?.vessels).toHaveLength(count);
    }
  });

  const ofVolume = (volume: number, id = "totes"): DrawnTank => ({
    ...plainTank(id, 2, 1),
    vessel: { form: "upright", height: 1, volume },
  });
  const area = (layout: Layout, id = "totes"): number => {
    const { width, height } = bodyOf(layout, id);
    return width * height;
  };

  test("more is drawn bigger at equal height, from two barrels to a cistern, and always by enough to be seen", () => {
    const gallons = [110, 275, 550, 1000, 2500, 5000];
    for (const sheet of [DESK, PHONE]) {
      const drawn = gallons.map((of) =>
        area(layoutPlace({ ...EMPTY, tanks: [ofVolume(of * 0.003785), plainTank("tub", 0, 0.6)] }, sheet)),
      );
      for (const [at, one] of drawn.slice(1).entries())
        expect(one / (drawn[at] ?? 0), `${gallons[at + 1]} gal`).toBeGreaterThan(1.005);
    }
  });

  test("a larger volume never has a smaller area at equal height, whatever stands beside it", () => {
    fc.assert(
      fc.property(anyPlace, anySheet, fc.double({ min: 1, max: 60, noNaN: true }), (place, sheet, times) => {
        for (const { id, vessel } of place.tanks) {
          if (!vessel) continue;
          const larger = place.tanks.map((one) =>
            one.id === id ? { ...one, vessel: { ...vessel, volume: vessel.volume * times } } : one,
          );
          const after = area(layoutPlace({ ...place, tanks: larger }, sheet), id);
          expect(after).toBeGreaterThanOrEqual(area(layoutPlace(place, sheet), id) * (1 - 1e-6));
        }
      }),
      { numRuns: tries(60) },
    );
  });

  test("while something moves words stay beside their things, and lie on nothing even so", () => {
    let stayed = 0;
    fc.assert(
      fc.property(anyPlace, anySheet, fc.double({ min: 0.3, max: 3, noNaN: true }), (place, sheet, times) => {
        const first = layoutPlace(place, sheet);
        const again = layoutPlace(place, { ...sheet, kept: first.kept });
        expect(
          labelsOf(again)
            .map(({ of }) => of)
            .sort(),
        ).toEqual(
          labelsOf(first)
            .map(({ of }) => of)
            .sort(),
        );
        for (const label of labelsOf(again)) {
          const was = labelsOf(first).find(({ of }) => of === label.of);
          stayed += was?.box.x === label.box.x && was.box.y === label.box.y ? 1 : 0;
        }
        const tanks = place.tanks.map((one) => ({
          ...one,
          vessel: one.vessel && { ...one.vessel, volume: one.vessel.volume * times },
        }));
        const moved = labelsOf(layoutPlace({ ...place, tanks }, { ...sheet, kept: first.kept }));
        for (const [at, label] of moved.entries())
          for (const other of moved.slice(at + 1)) expect(overlaps(label.box, other.box)).toBe(false);
      }),
      { numRuns: tries(60) },
    );
    expect(stayed).toBeGreaterThan(tries(60));
  });

  test("the same place gives the same drawing, whatever was drawn before it", () => {
    const of = (volume: number): Layout => layoutPlace({ ...EMPTY, tanks: [ofVolume(volume)] }, DESK);
    const first = of(1);
    for (const volume of [20, 0.05, 4]) of(volume);
    expect(of(1)).toEqual(first);
  });

  test("however much it holds, it leaves room for the rest", () => {
    const huge = {
      ...plainTank("huge", 0, 2),
      vessel: { form: "upright", height: 2, volume: 4000 } as const,
    };
    const place = { ...EMPTY, tanks: [huge, plainTank("tub", 0)], beds: bedsOf(2) };
    const layout = layoutPlace(place, PHONE);
    expect(bodyOf(layout, "huge").width).toBeLessThanOrEqual(0.22 * PHONE.width + 1e-6);
    expect(bodyOf(layout, "tub").width).toBeGreaterThanOrEqual(12 - 1e-6);
  });

  test("what was held is outlined by the same scales, and not at all where it was the same", () => {
    const of = (volume: number): Place => ({
      ...EMPTY,
      tanks: [{ ...plainTank("totes", 1), vessel: { form: "upright", height: 1, volume } }],
    });
    const layout = layoutPlace(of(2), { ...DESK, held: of(1) });
    const [was] = layout.held.get("totes")?.vessels ?? [];
    expect(bodyOf(layout, "totes").width / (was?.width ?? 0)).toBeCloseTo(2, 6);
    expect(layout.held.get("totes")?.shape.d).not.toBe("");
    expect(layoutPlace(of(2), { ...DESK, held: of(2) }).held.get("totes")?.shape.d).toBe("");
  });
});

describe("one arrangement at every width", () => {
  test("things stand in the same order from left to right on a phone and on a desk", () => {
    fc.assert(
      fc.property(anyPlace, (place) => {
        const order = (sheet: PaperSize): readonly string[] => {
          const { parts } = layoutPlace(place, sheet);
          const standing = parts.filter(({ shape }) => ["roof", "tank", "bed", "carry"].includes(shape));
          return [...standing]
            .sort((a, b) => a.box.x + a.box.width / 2 - (b.box.x + b.box.width / 2))
            .map(({ id }) => id);
        };
        expect(order(PHONE)).toEqual(order({ ...DESK, width: 1500 }));
      }),
      { numRuns: tries(100) },
    );
  });

  test("every thing stands on ground at its own height, from its left edge to its right", () => {
    fc.assert(
      fc.property(anyPlace, anySheet, (place, sheet) => {
        const layout = layoutPlace(place, sheet);
        const { scale, base } = layout.kept;
        const [ground = []] = flatten(layout.ground?.line ?? "");
        for (const tank of place.tanks) {
          const { body } = layout.spots.get(tank.id) ?? {};
          if (!body) continue;
          for (const x of [body.x, body.x + body.width / 2, body.x + body.width])
            expect(Math.abs(groundY(ground, x) - (base - tank.ground * scale))).toBeLessThan(0.2);
        }
        for (const { shape, box } of layout.parts)
          if (shape === "bed" || shape === "roof" || shape === "battery")
            expect(
              Math.abs(groundY(ground, box.x + 1) - groundY(ground, box.x + box.width - 1)),
            ).toBeLessThan(0.2);
      }),
      { numRuns: tries(150) },
    );
  });

  test("eight beds fit on a phone beside all the rest, and a finger finds each", () => {
    const place: Place = {
      ...EMPTY,
      roofs: [{ ...plainPart("roof", "Roof"), drainsTo: "upper" }],
      tanks: [plainTank("upper", 2), plainTank("lower", 0)],
      lines: [plainLine("hose", "upper", "lower")],
      beds: bedsOf(8, "Runner beans on poles by the south wall"),
    };
    const layout = layoutPlace(place, PHONE);
    const beds = layout.parts.filter(({ shape }) => shape === "bed");
    expect(beds).toHaveLength(8);
    for (const [index, bed] of beds.entries()) {
      expect(bed.box.x + bed.box.width).toBeLessThanOrEqual(PHONE.width);
      const [hit] = bed.hits;
      expect(hit?.height).toBeGreaterThanOrEqual(TARGET);
      expect(hit?.width).toBeGreaterThanOrEqual(18);
      const next = beds[index + 1];
      if (next) expect(bed.box.x + bed.box.width).toBeLessThanOrEqual(next.box.x);
    }
  });

  test("of eight beds under long names the worst and whatever is in trouble is named at 800, and each has its figure", () => {
    const days = [16, 22, 39, 67, 54, 98, 61, 120];
    const wordsOf = (title: string, short: number): readonly Words[] => [
      { text: title, tone: "ink", bold: true },
      {
        text: `short ${short} days a season`,
        brief: `${short} days`,
        least: `${short}d`,
        tone: "trouble",
        wrong: short,
      },
    ];
    const beds = bedsOf(8, "Strawberries along the south wall").map((bed, at) => ({
      ...bed,
      trouble: at === 2 ? "Nothing waters it." : null,
      words: wordsOf(bed.title, days[at] ?? 0),
    }));
    const place: Place = {
      ...EMPTY,
      roofs: [{ ...plainPart("roof", "Roof"), drainsTo: "upper" }],
      tanks: [plainTank("upper", 2), plainTank("lower", 0)],
      lines: [plainLine("hose", "upper", "lower")],
      beds,
    };
    const sheet = { width: 800, height: 220, small: false };
    const saidIn = ({ parts }: Layout): ReadonlyMap<string, string> =>
      new Map(
        parts.map(({ id, labels }) => [
          id,
          labels.flatMap(({ words }) => words.map(({ text }) => text)).join(" "),
        ]),
      );
    const layout = layoutPlace(place, sheet);
    const said = saidIn(layout);
    for (const [at, { id }] of beds.entries()) expect(said.get(id), id).toContain(String(days[at]));
    for (const at of [2, 7])
      expect(said.get(`bed_${at}`)).toContain(`Strawberries along the south wall ${at}`);
    const labels = labelsOf(layout);
    for (const [index, label] of labels.entries())
      for (const other of labels.slice(index + 1)) expect(overlaps(label.box, other.box)).toBe(false);
    // So is the open one, whichever it is.
    for (const { id, title } of beds)
      expect(saidIn(layoutPlace(place, { ...sheet, open: id })).get(id), id).toContain(title);
    // While something moves each keeps all that was said of it.
    const moved = layoutPlace(place, { ...sheet, kept: layout.kept });
    expect(labelsOf(moved).map(({ of, box }) => [of, box])).toEqual(labels.map(({ of, box }) => [of, box]));
  });

  test("where there is room a target is as large as a finger wants it", () => {
    const place = { ...EMPTY, tanks: [plainTank("tank", 0)], beds: bedsOf(2) };
    for (const sheet of [PHONE, DESK])
      for (const { hits } of layoutPlace(place, sheet).parts) {
        expect(hits[0]?.width).toBeGreaterThanOrEqual(TARGET - 1e-6);
        expect(hits[0]?.height).toBeGreaterThanOrEqual(TARGET - 1e-6);
      }
  });

  test("on a phone the open part is named, levels and trouble are said, and nothing else", () => {
    const short = {
      ...plainPart("bed", "Long bed"),
      covered: false,
      words: [
        { text: "Long bed", tone: "ink", bold: true },
        { text: "short 8 days a season", brief: "8 days", tone: "trouble" },
      ] as const,
    };
    const tank = {
      ...plainTank("tank", 0),
      words: [
        { text: "Two totes", tone: "ink", bold: true },
        { text: "300 of 500 gal", live: "300 gal", tone: "water" },
        { text: "from full 20 days", tone: "water" },
      ] as const,
    };
    const place: Place = {
      ...EMPTY,
      tanks: [tank],
      beds: [short],
      batteries: [plainPart("battery", "Battery")],
    };
    const said = (open: string | null): readonly string[] =>
      labelsOf(layoutPlace(place, { ...PHONE, open })).flatMap(({ words }) => words.map(({ text }) => text));
    expect(said(null)).toEqual(["300 gal", "8 days"]);
    expect(said("tank")).toEqual(["Two totes", "300 gal", "8 days"]);
  });

  test("beside each of eight beds with long names stands how long it is short, on a desk and on a phone", () => {
    const beds = bedsOf(8, "Tomatoes and basil under the long tunnel").map((bed, index) => ({
      ...bed,
      words: [
        { text: bed.title, tone: "ink", bold: true },
        {
          text: `short ${30 + index} days a season`,
          brief: `${30 + index} days`,
          least: `${30 + index}d`,
          tone: "trouble",
        },
      ] as const,
    }));
    const tanks = [plainTank("totes", 1.2, 2, 0.3), plainTank("tub", 0)];
    const place: Place = { ...EMPTY, tanks, beds };
    for (const sheet of [
      { width: 848, height: 300, small: false },
      { width: 800, height: 220, small: false },
      { width: 390, height: 248, small: true },
    ]) {
      const said = labelsOf(layoutPlace(place, sheet)).filter(({ of }) => of.startsWith("bed"));
      expect(said.map(({ of }) => of)).toEqual(beds.map(({ id }) => id));
      for (const [index, { words }] of said.entries())
        expect(words.map(({ text }) => text).join(" ")).toMatch(new RegExp(`${30 + index}( day|d)`));
    }
    // Two with short names have room for both.
    const named = beds.slice(0, 2).map((bed) => {
      const [, ...said] = bed.words;
      return { ...bed, words: [{ text: "Onions", tone: "ink", bold: true } as const, ...said] };
    });
    const two = layoutPlace({ ...place, beds: named }, { width: 848, height: 300, small: false });
    for (const { words } of labelsOf(two).filter(({ of }) => of.startsWith("bed")))
      expect(words.map(({ text }) => text).join(" ")).toMatch(/^Onions .*3[01] day/);
  });
});

function groundY(ground: readonly (readonly [number, number])[], x: number): number {
  const after = ground.findIndex(([corner]) => corner >= x);
  const [toX, toY] = ground[after < 0 ? ground.length - 1 : after] ?? [0, 0];
  const [fromX, fromY] = ground[Math.max(0, after - 1)] ?? [toX, toY];
  return toX === fromX ? toY : fromY + ((toY - fromY) * (x - fromX)) / (toX - fromX);
}

describe("heights are to scale", () => {
  test("floors and rims stand as far apart as the heights are", () => {
    const tanks = [plainTank("upper", 3, 1, 0.5), plainTank("lower", 0, 1)];
    const layout = layoutPlace({ ...EMPTY, tanks }, DESK);
    const [upper, lower] = [bodyOf(layout, "upper"), bodyOf(layout, "lower")];
    const foot = (box: Box): number => box.y + box.height;
    expect(foot(lower) - foot(upper)).toBeCloseTo(3.5 * layout.kept.scale, 6);
    expect(upper.height).toBeCloseTo(lower.height, 6);
    expect(layout.spots.get("upper")?.pxPerMetre).toBeCloseTo(layout.kept.scale, 6);
  });

  test("a raised tank stands higher by just that much when the scale is kept", () => {
    const kept: Kept = { scale: 50, base: 300, ways: new Map() };
    const at = (ground: number) => {
      const tanks = [plainTank("upper", ground), plainTank("lower", 0)];
      const layout = layoutPlace({ ...EMPTY, tanks }, { ...DESK, kept });
      return bodyOf(layout, "lower").y - bodyOf(layout, "upper").y;
    };
    expect(at(2.5) - at(2)).toBeCloseTo(25, 6);
  });

  test("all heights of any place are by one scale: floors, rims, humps of hoses", () => {
    fc.assert(
      fc.property(anyPlace, anySheet, (place, sheet) => {
        const { kept, spots } = layoutPlace(place, sheet);
        for (const tank of place.tanks) {
          const spot = spots.get(tank.id);
          const y = (height: number): number => kept.base - height * kept.scale;
          expect(spot?.floorY).toBeCloseTo(y(tank.ground + tank.stand), 6);
          if (tank.height * kept.scale > LEAST_HEIGHT)
            expect(spot?.body.y).toBeCloseTo(y(tank.ground + tank.stand + tank.height), 6);
        }
      }),
      { numRuns: tries(150) },
    );
  });

  test("tanks too small for the scale are still seen", () => {
    const tanks = [plainTank("far", 60, 0.5), plainTank("near", 0, 0.5)];
    for (const { body } of layoutPlace({ ...EMPTY, tanks }, PHONE).spots.values())
      expect(body.height).toBeGreaterThanOrEqual(LEAST_HEIGHT);
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
    const layout = layoutPlace({ ...EMPTY, tanks, lines: [line] }, DESK);
    const [upper, lower] = [bodyOf(layout, "upper"), bodyOf(layout, "lower")];
    const mark = layout.parts.find((part) => part.id === "hose")?.mark;
    const humpY = lower.y + lower.height - 1.2 * layout.kept.scale;
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
    const layout = layoutPlace({ ...EMPTY, tanks, lines: [line] }, DESK);
    const [upper, between] = [bodyOf(layout, "upper"), bodyOf(layout, "between")];
    const mark = layout.parts.find((part) => part.id === "hose")?.mark;
    expect(mark?.x).toBeGreaterThan(upper.x + upper.width);
    expect(mark?.x).toBeLessThan(between.x);
    const humpY = upper.y + upper.height - 1.5 * layout.kept.scale;
    expect(Math.abs((mark?.y ?? 0) - humpY)).toBeCloseTo(5, 6);
  });

  test("nothing to draw gives an empty sheet", () => {
    expect(layoutPlace(EMPTY, PHONE)).toMatchObject({ parts: [], ground: null });
  });

  test("twenty cards of each kind are laid out within a fifth of a second", () => {
    const many = Array.from({ length: 20 }, (_, index) => index);
    const place = {
      ...EMPTY,
      tanks: many.map((index) => plainTank(`tank_${index}`, 20 - index)),
      lines: many.slice(1).map((index) => plainLine(`line_${index}`, `tank_${index - 1}`, `tank_${index}`)),
      beds: many.map((index) => ({ ...plainPart(`bed_${index}`, `Bed ${index}`), covered: index % 2 === 0 })),
    };
    const work = () => {
      const before = process.cpuUsage();
      for (const sheet of [PHONE, DESK]) layoutPlace(place, sheet);
      return process.cpuUsage(before).user / 1000;
    };
    // Work, not time, and the best of three: on a busy machine, and while it is still being compiled, a first one tells little.
    expect(Math.min(work(), work(), work())).toBeLessThan(200);
  });
});
