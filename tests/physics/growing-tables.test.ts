import { describe, expect, test } from "vitest";
import climates from "../../shared/climates.json" with { type: "json" };
import crops from "../../shared/crops.json" with { type: "json" };
import mulches from "../../shared/mulches.json" with { type: "json" };
import pans from "../../shared/pans.json" with { type: "json" };
import soils from "../../shared/soils.json" with { type: "json" };
import methods from "../../shared/water-methods.json" with { type: "json" };
import { toSi } from "../../src/units/unit.ts";

type Leaf = Readonly<Record<string, unknown>>;

const STATUSES = ["read", "read second-hand", "computed", "from memory", "assumption"];
const TABLES: Readonly<Record<string, unknown>> = { crops, soils, methods, mulches, climates, pans };

/** Every object that carries a value or the days of stages, with its path. */
function leaves(table: unknown, path = ""): readonly (readonly [string, Leaf])[] {
  if (typeof table !== "object" || table === null) return [];
  if ("value" in table || "days" in table) return [[path, table as Leaf]];
  return Object.entries(table).flatMap(([name, part]) => leaves(part, `${path}/${name}`));
}

describe.each(Object.keys(TABLES))("every value of the table of %s", (name) => {
  const all = leaves(TABLES[name]);

  test("names its source and how it was seen", () => {
    const wrong = all.filter(([, { source, status }]) => !source || !STATUSES.includes(status as string));
    expect(all.length).toBeGreaterThan(5);
    expect(wrong.map(([path]) => path)).toEqual([]);
  });

  test("has a unit that can be read, where it has one", () => {
    const unreadable = all.filter(
      ([, { unit }]) => unit !== undefined && !Number.isFinite(toSi(1, unit as string)),
    );
    expect(unreadable).toEqual([]);
  });

  test("lies within its range", () => {
    const outside = all.filter(([, { value, range }]) => {
      if (!Array.isArray(range)) return false;
      return !((value as number) >= range[0] && (value as number) <= range[1]);
    });
    expect(outside.map(([path]) => path)).toEqual([]);
  });
});

describe("every crop", () => {
  const all = Object.entries(crops.crops);

  test("has a word in snake case, a label of its own, and says by what it is guessed if no table has it", () => {
    expect(all.filter(([word]) => !/^[a-z][a-z0-9_]*$/.test(word))).toEqual([]);
    expect(new Set(all.map(([, { label }]) => label)).size).toBe(all.length);
    const guessed = all.filter(([, crop]) => JSON.stringify(crop.stages).includes('"assumption"'));
    expect(guessed.length).toBeGreaterThan(5);
    expect(guessed.filter(([, crop]) => !("analogy" in crop))).toEqual([]);
  });

  test("has stages that add up to the total beside them", () => {
    const wrong = all.flatMap(([word, { stages }]) =>
      stages
        .filter(({ days, total }) => days.length !== 4 || days.reduce((sum, one) => sum + one, 0) !== total)
        .map(() => word),
    );
    expect(wrong).toEqual([]);
  });

  test("uses no less with its ground wet than with it dry", () => {
    const wrong = all.filter(
      ([, { kc, kcb }]) => kcb.middle.value > kc.middle.value || kcb.end.value > kc.end.value,
    );
    expect(wrong.map(([word]) => word)).toEqual([]);
  });
});

test("what soils hold and lose is the middle of what FAO-56 Table 19 lists", () => {
  const table = Object.entries(soils.soils).flatMap(([word, soil]) =>
    [soil.field_capacity, soil.wilting_point, soil.held, soil.readily_evaporable, soil.total_evaporable]
      .filter(({ source }) => source === "FAO-56 Table 19")
      .map(({ value, range: [low = 0, high = 0] }) => ({ word, value, middle: (low + high) / 2 })),
  );
  expect(table).toHaveLength(9 * 5);
  for (const { word, value, middle } of table) expect(value, word).toBeCloseTo(middle, 12);
});

test("every soil holds less at wilting than at field capacity, and takes in water", () => {
  for (const [word, soil] of Object.entries(soils.soils)) {
    expect(soil.wilting_point.value, word).toBeLessThan(soil.field_capacity.value);
    expect(soil.held.value, word).toBeGreaterThan(0);
    expect(soil.readily_evaporable.value, word).toBeLessThan(soil.total_evaporable.value);
    expect(soil.intake_rate.value, word).toBeGreaterThan(0);
  }
});

test("every method brings some and at most all of its water to the roots", () => {
  for (const [word, { efficiency }] of Object.entries(methods.methods)) {
    expect(efficiency.value, word).toBeGreaterThan(0);
    expect(efficiency.value, word).toBeLessThanOrEqual(1);
  }
});
