// The spans over which numbers are turned: each of a number that is there, of its dimension, within its limits, and wide
// enough for the usual value.

import { describe, expect, test } from "vitest";
import type { NumberGiven } from "../../src/graph/types.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { MEASURES } from "../../src/units/measures.ts";
import { dimensionOf, toSi } from "../../src/units/unit.ts";

/** Numbers that stand for one's own reading or purchase: turned around their own value, where they have one. */
const OWN_VALUE =
  /^(roof\.dip_rain|tank\.(level_today|plan_area)|line\.roughness|delivery\.(roughness|bucket_\w+|open_time|tested_\w+)|pump\.(no_flow_current|stall_current|maker_fuse)|wire\.(fuse|fuse_from_battery)|battery\.(test_load|charge_today|charge_noted|tested_temperature)|panel\.(voc|vmp|imp|isc|noon_current)|bed\.(plant_count|spot_area|can_volume|soak_tried)|weather\.seed|season\.look_at_year|\w+\.(price|life))$/;

const numbers = Object.values(CARD_KINDS).flatMap(({ kind, rows }) =>
  rows.flatMap((row) => (row.row === "given" ? [{ id: `${kind}.${row.name}`, row }] : [])),
);

const usualValues = ({ default: usual }: NumberGiven): readonly (readonly [number, string])[] => {
  if (!usual || "formula" in usual) return [];
  return "by" in usual ? Object.values(usual.pick) : [usual];
};

describe("spans", () => {
  test("every number that is turned has one, and only numbers that are there", () => {
    for (const { id, row } of numbers) {
      // Numbers that came since are turned around their own value until somebody says what is usual.
      if (row.usual) expect(OWN_VALUE.test(id), id).toBe(false);
    }
    const names = new Set(numbers.map(({ id }) => id));
    for (const { kind, spans } of Object.values(CARD_KINDS)) {
      for (const name of Object.keys(spans ?? {}))
        expect(names, `${kind}.${name}`).toContain(`${kind}.${name}`);
    }
    const without = numbers.filter(({ id, row }) => !row.usual && !OWN_VALUE.test(id)).map(({ id }) => id);
    expect(without).toEqual([]);
  });

  test.each(numbers.filter(({ row }) => row.usual))("$id", ({ row }) => {
    const [low, high] = row.usual as NonNullable<NumberGiven["usual"]>;
    for (const [, unit] of [low, high])
      expect(dimensionOf(unit)).toMatchObject(dimensionOf(MEASURES[row.measure].si));
    const [least, most] = [toSi(...low), toSi(...high)];
    expect(least).toBeLessThan(most);
    expect(least).toBeGreaterThanOrEqual((row.min ?? -Infinity) - 1e-9);
    expect(most).toBeLessThanOrEqual((row.max ?? Infinity) + 1e-9);
    for (const value of usualValues(row)) {
      expect(toSi(...value)).toBeGreaterThanOrEqual(least - 1e-9);
      expect(toSi(...value)).toBeLessThanOrEqual(most + 1e-9);
    }
  });
});
