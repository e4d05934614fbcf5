import { describe, expect, test } from "vitest";
import downspouts from "../../shared/downspouts.json";
import fittings from "../../shared/fittings-k.json";
import bores from "../../shared/pipe-bores.json";
import roofs from "../../shared/roofs.json";
import tanks from "../../shared/tanks.json";
import { downspoutCapacity } from "../../src/physics/downspout.ts";
import { toSi } from "../../src/units/unit.ts";
import { hazenWilliams } from "../oracles/pipe-friction.ts";

const TABLES = { downspouts, fittings, bores, roofs, tanks };
const STATUSES = ["read", "read second-hand", "computed", "from memory", "assumption"];
const NO_SOURCE = ["common practice, no source", "from memory", "sum of the fittings"];

type Entry = { readonly path: string; readonly entry: Record<string, unknown> };

/** Everything in a table that carries a status, with the way to it. */
function entriesOf(node: unknown, path: string): readonly Entry[] {
  if (typeof node !== "object" || node === null) return [];
  const here = "status" in node ? [{ path, entry: node as Record<string, unknown> }] : [];
  return [...here, ...Object.entries(node).flatMap(([name, child]) => entriesOf(child, `${path}.${name}`))];
}

/** Numbers that stand under a `value` without a status beside them. */
function bareValues(node: unknown, path: string): readonly string[] {
  if (typeof node !== "object" || node === null) return [];
  const here = "value" in node && !("status" in node) ? [path] : [];
  return [...here, ...Object.entries(node).flatMap(([name, child]) => bareValues(child, `${path}.${name}`))];
}

describe.each(Object.entries(TABLES))("the table of %s", (name, table) => {
  const entries = entriesOf(table, name);

  test("has a status and a listed source for every value", () => {
    expect(bareValues(table, name)).toEqual([]);
    const sources = [...Object.keys(table.sources), ...NO_SOURCE];
    const wrong = entries.filter(
      ({ entry }) => !STATUSES.includes(String(entry.status)) || !sources.includes(String(entry.source)),
    );
    expect(wrong.map(({ path }) => path)).toEqual([]);
    expect(entries.length).toBeGreaterThan(5);
  });

  test("has units that are understood, and values inside their ranges", () => {
    for (const { path, entry } of entries) {
      const { value, unit, range } = entry as { value?: number; unit?: string; range?: [number, number] };
      if (value === undefined) continue;
      expect(() => toSi(value, unit ?? ""), path).not.toThrow();
      if (range) expect(value >= range[0] && value <= range[1], path).toBe(true);
    }
  });

  test("says of no value without a source that it was read", () => {
    const wrong = entries.filter(
      ({ entry }) => NO_SOURCE.includes(String(entry.source)) && String(entry.status).startsWith("read"),
    );
    expect(wrong.map(({ path }) => path)).toEqual([]);
  });

  test("lists no source that it does not use", () => {
    const text = JSON.stringify({ ...table, sources: {} });
    expect(Object.keys(table.sources).filter((source) => !text.includes(source))).toEqual([]);
  });
});

describe("the tables agree with the relations", () => {
  test.each(downspouts.leaders)(
    "a leader of $diameter carries what the relation says",
    ({ diameter, capacity }) => {
      const [size, sizeUnit] = diameter as [number, string];
      const [flow, flowUnit] = capacity as [number, string];
      const computed = downspoutCapacity(toSi(size, sizeUnit));
      expect(Math.abs(computed - toSi(flow, flowUnit))).toBeLessThan(toSi(0.5, flowUnit));
    },
  );

  test("a hose's fittings sum to what stands for the line", () => {
    const { entry_flush, exit, hose_coupling } = fittings.fittings;
    const sum = entry_flush.k.value + exit.k.value + 2 * hose_coupling.k.value;
    expect(Math.abs(sum - fittings.lines.hose.k.value)).toBeLessThan(0.05);
  });

  test("the bore of 1 in Schedule 40 gives the 5.50 ft per 100 ft at 10 gpm of Illinois 77-906 App. A", () => {
    const { value, unit } = bores.bores.pipe_1.bore;
    const loss = hazenWilliams({
      flow: toSi(10, "gpm"),
      length: toSi(100, "ft"),
      bore: toSi(value, unit),
      coefficient: 150,
    });
    expect(Math.abs(loss / toSi(5.5, "ft") - 1)).toBeLessThan(0.02);
  });

  test("a drum's inside dimensions hold what it is sold as, and a little more", () => {
    const { diameter, water_height, capacity } = tanks.tanks.drum_55;
    const brim =
      (Math.PI / 4) * toSi(diameter.value, diameter.unit) ** 2 * toSi(water_height.value, water_height.unit);
    expect(brim / toSi(capacity.value, capacity.unit)).toBeGreaterThan(1);
    expect(brim / toSi(capacity.value, capacity.unit)).toBeLessThan(1.06);
  });
});
