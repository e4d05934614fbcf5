// What is kept between runs is never shown for anything else: warm and cold runs agree to the last bit.

import { describe, expect, test } from "vitest";
import type { DailyRecord } from "../../src/rainfall/record.ts";
import { dailyEto } from "../../src/season/daily-eto.ts";
import type { SeasonInput } from "../../src/season/input.ts";
import { contentKey, keeper, markOf } from "../../src/season/kept.ts";
import { runSeason } from "../../src/season/run.ts";
import { skyOf } from "../../src/season/sky.ts";
import { bed, crop, delivery, inputOf, line, MM, recordOf, roof, seattle, steadyEto, tank } from "./made.ts";

/** Two tanks, a line with a float valve, three beds of which two grow the same. */
function place(more: Partial<SeasonInput> = {}): SeasonInput {
  return inputOf({
    start: "05-01",
    end: "09-30",
    roofs: [roof({ id: "r", footprint: 40, drainsTo: "a" })],
    tanks: [tank(3, { id: "a", floor: 1, startShare: 0.5 }), tank(0.3, { id: "b" })],
    lines: [line({ id: "l", from: "a", to: "b", startHeight: 1.05, endHeight: 0.2, length: 12 })],
    deliveries: [delivery({ id: "p", from: "b" })],
    beds: ["x", "y", "z"].map((id, priority) =>
      bed({ id, priority, area: 5, covered: id === "z", crops: [crop({})], wateredBy: ["p"] }),
    ),
    eto: steadyEto(4 * MM),
    ...more,
  });
}

/** The same days in a record of its own, which nothing was kept for. */
const fresh = (record: DailyRecord): DailyRecord => ({
  ...record,
  rain: record.rain.slice(),
  highest: record.highest?.slice() ?? null,
  lowest: record.lowest?.slice() ?? null,
});

/** An answer's every bit, in text. */
const bitsOf = (input: SeasonInput, days: DailyRecord) =>
  JSON.stringify(runSeason(input, days), (_, value) =>
    ArrayBuffer.isView(value)
      ? Buffer.from(value.buffer, value.byteOffset, value.byteLength).toString("base64")
      : Object.is(value, -0)
        ? "-0"
        : value,
  );

/** One number of the input changed at a time. */
const CHANGES: readonly Partial<SeasonInput>[] = [
  {},
  { rainScale: 0.8 },
  { eto: steadyEto(5 * MM) },
  { eto: { ...steadyEto(4 * MM), factor: 1.1 } },
  { start: "04-01" },
  { end: "10-31" },
  { lines: [{ ...(place().lines[0] as SeasonInput["lines"][number]), length: 25 }] },
  { lines: [{ ...(place().lines[0] as SeasonInput["lines"][number]), opening: 2e-6, shutLevel: 0.4 }] },
  { tanks: place().tanks.map((part) => ({ ...part, floor: part.floor * 3 })) },
  { roofs: [roof({ id: "r", footprint: 40, drainsTo: "a", firstFlush: 1 * MM })] },
  { beds: place().beds.map((part) => ({ ...part, area: part.area + 1 })) },
  { beds: place().beds.map((part) => ({ ...part, priority: 5 - part.priority })) },
  { beds: place().beds.map((part) => ({ ...part, efficiency: 0.7 })) },
  { beds: place().beds.map((part) => ({ ...part, crops: [crop({ planted: "06-15" })] })) },
  { beds: place().beds.map((part) => ({ ...part, letGo: { from: "07-01", dryDays: 5 } })) },
];

describe("a season run again, with what was kept from the runs before it", () => {
  const record = seattle();

  test("G1 answers to the last bit as on days that nothing was kept for, whatever was changed between", () => {
    const cold = CHANGES.map((change) => bitsOf(place(change), fresh(record)));
    for (const order of [CHANGES, [...CHANGES].reverse()])
      for (const change of order)
        expect(bitsOf(place(change), record) === cold[CHANGES.indexOf(change)]).toBe(true);
    expect(new Set(cold).size).toBe(CHANGES.length);
  });

  test("G11 does not mind the order of the parts", () => {
    const { tanks, beds } = place();
    const turned = place({ tanks: [...tanks].reverse(), beds: [...beds].reverse() });
    expect(bitsOf(turned, record) === bitsOf(place(), record)).toBe(true);
  });

  test("G9 sees days that were written over in place, and knows them again when they are put back", () => {
    const days = fresh(record);
    const before = bitsOf(place(), days);
    const kept = days.rain.slice();
    for (let day = 0; day < days.rain.length; day++) days.rain[day] = (kept[day] as number) * 0.5;
    const after = bitsOf(place(), days);
    expect(after === before).toBe(false);
    expect(after === bitsOf(place(), fresh(days))).toBe(true);
    days.rain.set(kept);
    expect(bitsOf(place(), days) === before).toBe(true);
  });

  test("works the sky and evapotranspiration out once for the same days and choices", () => {
    const days = fresh(record);
    const [one, other] = [steadyEto(4 * MM), steadyEto(5 * MM)].map((choice) => dailyEto(days, choice));
    expect(dailyEto(days, steadyEto(4 * MM))).toBe(one);
    expect(other).not.toBe(one);
    const eto = new Float64Array(days.rain.length).fill(4 * MM);
    const sky = skyOf(days, eto, 1);
    expect(skyOf(days, eto.slice(), 1)).toBe(sky);
    expect(skyOf(days, eto, 0.9)).not.toBe(sky);
    eto[3] = 5 * MM;
    expect(skyOf(days, eto, 1)).not.toBe(sky);
  });
});

describe("keeper", () => {
  test("keeps the latest few of each owner, and lets go of what was not asked for longest", () => {
    const keep = keeper<{ readonly made: number }>(2);
    const owner = {};
    let made = 0;
    const ask = (key: string, of = owner) => keep(of, key, () => ({ made: ++made })).made;
    expect([ask("a"), ask("b"), ask("a")]).toEqual([1, 2, 1]);
    expect(ask("c")).toBe(3);
    expect(ask("a")).toBe(1);
    expect(ask("b")).toBe(4);
    expect(ask("a", {})).toBe(5);
  });

  test("keeps nothing of what could not be worked out", () => {
    const keep = keeper<object>(2);
    const owner = {};
    const fail = () => {
      throw new Error("no");
    };
    expect(() => keep(owner, "a", fail)).toThrow("no");
    const value = {};
    expect(keep(owner, "a", () => value)).toBe(value);
  });
});

describe("contentKey and markOf", () => {
  test("tell apart what JSON would not", () => {
    const all = [null, Number.NaN, Infinity, -Infinity, 0, -0, "0", "NaN", [], {}, [null]];
    expect(new Set(all.map(contentKey)).size).toBe(all.length);
    expect(contentKey({ a: 1, b: [2] })).toBe(contentKey({ a: 1, b: [2] }));
  });

  test("see any one day changed by the least there is, and days in another order", () => {
    const days = Float64Array.from({ length: 400 }, (_, day) => (day % 7) * MM);
    const mark = markOf(days);
    for (let day = 0; day < days.length; day++) {
      const other = days.slice();
      other[day] = (other[day] as number) + Number.EPSILON * MM || Number.MIN_VALUE;
      if (other[day] !== days[day]) expect(markOf(other)).not.toBe(mark);
    }
    expect(markOf(days.slice().reverse())).not.toBe(mark);
    expect(markOf(days.slice())).toBe(mark);
    expect(markOf(days.subarray(1))).not.toBe(mark);
    expect(markOf(recordOf([0, -0], 0).rain)).not.toBe(markOf(recordOf([0, 0], 0).rain));
  });
});
