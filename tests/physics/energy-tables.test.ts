import { describe, expect, test } from "vitest";
import ampacities from "../../shared/ampacities.json";
import batteries from "../../shared/batteries.json";
import fuses from "../../shared/fuses.json";
import panels from "../../shared/panels.json";
import pumps from "../../shared/pumps.json";
import gauges from "../../shared/wire-gauges.json";
import { CONTINUOUS_MARGIN, fuseDistanceLimit, REGULATION_EXCESS } from "../../src/physics/fuse.ts";
import { TRACKER_EFFICIENCY } from "../../src/physics/panel-charging.ts";
import { BELIEVED_LABEL_SHARE } from "../../src/physics/pump-curve.ts";
import { toSi } from "../../src/units/unit.ts";
import { copperResistance, gaugeArea } from "../oracles/copper-wire.ts";
import { fillFactor } from "../oracles/panel-curve.ts";

const TABLES = { ampacities, batteries, fuses, panels, pumps, gauges };
const STATUSES = ["read", "read second-hand", "computed", "from memory", "assumption"];
const NO_SOURCE = ["common practice, no source", "from memory"];

type Entry = { readonly path: string; readonly entry: Record<string, unknown> };
type Amount = { readonly value: number; readonly unit: string };

/** Everything in a table that carries a status, with the way to it. */
function entriesOf(node: unknown, path: string): readonly Entry[] {
  if (typeof node !== "object" || node === null) return [];
  const here = "status" in node ? [{ path, entry: node as Record<string, unknown> }] : [];
  return [...here, ...Object.entries(node).flatMap(([name, child]) => entriesOf(child, `${path}.${name}`))];
}

/** Numbers that stand under a `value` or `values` without a status beside them. */
function bareValues(node: unknown, path: string): readonly string[] {
  if (typeof node !== "object" || node === null) return [];
  const bare = (Object.hasOwn(node, "value") || Object.hasOwn(node, "values")) && !("status" in node);
  const deeper = Object.entries(node).flatMap(([name, child]) => bareValues(child, `${path}.${name}`));
  return bare ? [path, ...deeper] : deeper;
}

const si = ({ value, unit }: Amount) => toSi(value, unit);

describe.each(Object.entries(TABLES))("the table of %s", (name, table) => {
  const entries = entriesOf(table, name);

  test("has a status and a listed source for every value", () => {
    expect(bareValues(table, name)).toEqual([]);
    const sources = [...Object.keys(table.sources), ...NO_SOURCE];
    const wrong = entries.filter(
      ({ entry }) =>
        !STATUSES.includes(String(entry["status"])) || !sources.includes(String(entry["source"])),
    );
    expect(wrong.map(({ path }) => path)).toEqual([]);
    expect(entries.length).toBeGreaterThan(5);
  });

  test("says of every number that nobody published how doubtful it is, a low and a high", () => {
    if (!["pumps", "panels", "batteries"].includes(name)) return;
    const doubted = entries.filter(
      ({ entry }) =>
        "value" in entry && ["from memory", "assumption", "computed"].includes(String(entry["status"])),
    );
    expect(doubted.length).toBeGreaterThan(5);
    expect(doubted.filter(({ entry }) => !entry["range"]).map(({ path }) => path)).toEqual([]);
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
      ({ entry }) =>
        NO_SOURCE.includes(String(entry["source"])) && String(entry["status"]).startsWith("read"),
    );
    expect(wrong.map(({ path }) => path)).toEqual([]);
  });

  test("lists no source that it does not use", () => {
    const used = new Set(entries.map(({ entry }) => entry["source"]));
    expect(Object.keys(table.sources).filter((source) => !used.has(source))).toEqual([]);
  });
});

describe("the tables agree with the relations", () => {
  test.each(gauges.wires.filter((wire) => "gauge" in wire))("$word has the area of its gauge", (wire) => {
    expect(si(wire.area) / gaugeArea(wire.gauge ?? Number.NaN)).toBeCloseTo(1, 4);
  });

  test.each(gauges.wires)("$word has the resistance of copper of that area, to 16 %", (wire) => {
    // IEC 60228 sets the most that fine strands may have; their true area is up to a seventh under the nominal one.
    const ratio = si(wire.resistance) / copperResistance(si(wire.area), si(wire.resistance_at), 1);
    expect(ratio).toBeGreaterThan(1);
    expect(ratio).toBeLessThan(1.16);
  });

  test("every current has its column of insulation, and never falls with it or with thicker wire", () => {
    for (const [index, { values }] of ampacities.currents.entries()) {
      expect(values.length).toBe(ampacities.insulations.values.length);
      expect([...values].sort((one, other) => one - other)).toEqual(values);
      const thinner = ampacities.currents[index - 1];
      for (const [column, current] of (thinner?.values ?? []).entries()) {
        expect(values[column]).toBeGreaterThan(current);
      }
    }
    const words = gauges.wires.map(({ word }) => word);
    expect(ampacities.currents.filter(({ word }) => !words.includes(word))).toEqual([]);
  });

  test("constants that stand in both are the same", () => {
    expect(fuses.margin.value).toBe(CONTINUOUS_MARGIN);
    expect(fuses.most_over_ampacity.value).toBe(REGULATION_EXCESS);
    expect(si(fuses.from_battery)).toBeCloseTo(fuseDistanceLimit(false), 12);
    expect(si(fuses.from_battery_sheathed)).toBeCloseTo(fuseDistanceLimit(true), 12);
    expect(pumps.believed_share.value).toBe(BELIEVED_LABEL_SHARE);
    expect(panels.tracker_efficiency.value).toBe(TRACKER_EFFICIENCY);
  });

  test.each(panels.panels)("$label has a label that fits its watts and that a panel can have", (panel) => {
    const volts = si(panel.vmp) * si(panel.imp);
    expect(Math.abs(volts / si(panel.rated_power) - 1)).toBeLessThan(0.01);
    const label = {
      openVoltage: si(panel.voc),
      bestVoltage: si(panel.vmp),
      shortCurrent: si(panel.isc),
      bestCurrent: si(panel.imp),
    };
    expect(fillFactor(label)).toBeGreaterThan(0.7);
    expect(fillFactor(label)).toBeLessThan(0.83);
  });

  // Maurer 2016: small centrifugal pumps peak near 0.20. The heads in metres were worked out independently of this code from
  // that: 0.8 of the label's flow at the rated current and 13.6 V, the current rising straight from 0.6 of it at no flow.
  test.each([
    ["gph_500", 2.8],
    ["gph_800", 2.4],
    ["gph_1100", 2.2],
    ["gph_2000", 2.8],
  ])("a usual pump of %s shuts off at about %d m and reaches at most a fifth of its power", (word, head) => {
    const row = pumps.pumps.find((each) => each.word === word);
    if (!row) throw new Error(word);
    const [shutoff, flow, amperes] = [si(row.shutoff_head), si(row.open_flow) * 0.8, si(row.rated_current)];
    expect(Math.abs(shutoff - head)).toBeLessThanOrEqual(0.05);
    const efficiency = (share: number) => {
      const lifted = 1000 * 9.80665 * share * flow * shutoff * (1 - share * share);
      return lifted / (13.6 * amperes * (0.6 + 0.4 * share));
    };
    const best = Math.max(...Array.from({ length: 999 }, (_, step) => efficiency((step + 1) / 1000)));
    expect(best).toBeLessThanOrEqual(0.2 * 1.01);
    expect(best).toBeGreaterThan(0.18);
  });
});
