import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { GravityLine } from "../../src/physics/gravity-line.ts";
import { openingOf } from "../../src/physics/orifice.ts";
import { openingFromFlow, openingFromRefill, type Refill, refillTime } from "../../src/physics/refill.ts";
import type { Vessel } from "../../src/physics/vessel.ts";
import { emptyingTime, fallingHeadTime } from "../oracles/emptying.ts";

const upright = (volume: number, height: number): Vessel => ({ form: "upright", volume, height });

const hose: GravityLine = {
  length: 38.1,
  bore: 0.0159,
  roughness: 1.5e-6,
  fittingsK: 3.5,
  opening: openingOf(0.0032, 0.62),
  viscosity: 1.1386e-6,
};

/** A stock tank whose float shuts at 0.4 m, a metre under a wide tank. */
const stock: Refill = {
  line: hose,
  source: { vessel: upright(20, 2), floor: 1, outlet: 0.05, level: 1.5 },
  target: { vessel: upright(0.15, 0.5), floor: 0, from: 0.1, shut: 0.4 },
  band: 0.05,
  startHeight: 1.05,
  endHeight: 0.45,
};

function timeOf(refill: Refill): number {
  const end = refillTime(refill);
  if (end.state === "stops") throw new Error(end.reason);
  return end.time;
}

describe("a refill through a joint", () => {
  const trunk: GravityLine = { ...hose, length: 20, fittingsK: 2, opening: null };
  const branch: GravityLine = { ...hose, length: hose.length - 20, fittingsK: hose.fittingsK - 2 };

  test("of a hose cut in two takes as long as of the whole hose", () => {
    expect(timeOf({ ...stock, line: branch, before: trunk }) / timeOf(stock)).toBeCloseTo(1, 8);
  });

  test("takes longer the longer or the narrower the trunk, and hardly longer behind a short wide one", () => {
    const plain = timeOf({ ...stock, line: branch });
    const through = timeOf({ ...stock, line: branch, before: trunk });
    expect(through).toBeGreaterThan(plain);
    expect(timeOf({ ...stock, line: branch, before: { ...trunk, length: 200 } })).toBeGreaterThan(through);
    expect(timeOf({ ...stock, line: branch, before: { ...trunk, bore: 0.008 } })).toBeGreaterThan(through);
    const wide = timeOf({ ...stock, line: branch, before: { ...trunk, length: 0.1, bore: 0.1 } });
    expect(wide / plain).toBeGreaterThanOrEqual(1);
    expect(wide / plain).toBeLessThan(1.0001);
  });

  test("stops where the plain one stops, whatever the trunk: levels do not hang on the hose", () => {
    const level: Refill = {
      ...stock,
      source: { vessel: upright(0.15, 0.5), floor: 0, outlet: 0, level: 0.3 },
      startHeight: 0,
      endHeight: 0,
    };
    expect(refillTime({ ...level, before: trunk })).toEqual(refillTime(level));
    expect(refillTime(level)).toMatchObject({ state: "stops", cause: "levels_equal" });
  });

  test("teaches the branch's opening from a measured time, the trunk counted in", () => {
    const joined: Refill = { ...stock, line: branch, before: trunk };
    const taught = openingFromRefill(joined, timeOf(joined));
    expect("opening" in taught ? taught.opening / (branch.opening ?? 0) : taught.reason).toBeCloseTo(1, 6);
  });
});

describe("refillTime", () => {
  test("is volume over flow when neither head nor valve moves", () => {
    const steady: Refill = {
      ...stock,
      line: { ...hose, length: 0, fittingsK: 0 },
      source: { vessel: upright(2e9, 2), floor: 1, outlet: 0, level: 1.5 },
      band: 0,
    };
    const flow = openingOf(0.0032, 0.62) * Math.sqrt(2 * 9.80665 * 2.05);
    expect(timeOf(steady) / ((0.15 * 0.6) / flow)).toBeCloseTo(1, 8);
  });

  test("is the closed form of a falling level when an opening governs", () => {
    // 1 m2 of source falling from 1.0 to 0.25 m over a free 5 mm orifice: 18,548 s by 2A(√H1-√H2)/(Cd a √2g).
    const falling: Refill = {
      line: { ...hose, length: 0, fittingsK: 0, opening: openingOf(0.005, 0.62) },
      source: { vessel: upright(1, 1), floor: 0, outlet: 0, level: 1 },
      target: { vessel: upright(0.75, 0.75), floor: -5, from: 0, shut: 0.75 },
      band: 0,
      endHeight: 0,
    };
    const closed = emptyingTime({ surface: 1, opening: openingOf(0.005, 0.62), from: 1, to: 0.25 });
    expect(closed).toBeCloseTo(18_548, 0);
    expect(timeOf(falling) / closed).toBeCloseTo(1, 8);
  });

  test("through a hose is the surface over the flow, summed over the head that falls", () => {
    // 0.5 m3 out of 1 m2, let fall freely from a hose's end 2 m under the tank's floor: the head goes from 3.0 to 2.5 m.
    const falling: Refill = {
      line: { ...hose, opening: null },
      source: { vessel: upright(1, 1), floor: 0, outlet: 0, level: 1 },
      target: { vessel: upright(0.5, 0.5), floor: -5, from: 0, shut: 0.5 },
      band: 0,
      endHeight: -2,
    };
    const summed = fallingHeadTime({ line: falling.line, surface: 1, from: 3, to: 2.5 });
    expect(timeOf(falling) / summed).toBeCloseTo(1, 6);
  });

  test("is longer with a wider closing band, a longer or a narrower hose", () => {
    const scale = fc.double({ min: 1.05, max: 4, noNaN: true });
    fc.assert(
      fc.property(scale, (more) => {
        const time = timeOf(stock);
        expect(timeOf({ ...stock, band: stock.band * more })).toBeGreaterThan(time);
        expect(timeOf({ ...stock, line: { ...hose, length: hose.length * more } })).toBeGreaterThan(time);
        expect(timeOf({ ...stock, line: { ...hose, bore: hose.bore / more } })).toBeGreaterThan(time);
      }),
      { numRuns: 30, verbose: 1 },
    );
  });

  test("stops where the levels meet, with the water shared by the two surfaces", () => {
    const level: Refill = {
      ...stock,
      source: { vessel: upright(1, 1), floor: 0, outlet: 0, level: 0.6 },
      target: { vessel: upright(1, 1), floor: 0, from: 0.2, shut: 0.8 },
      startHeight: 0,
      endHeight: 0,
      band: 0,
    };
    const end = refillTime(level);
    expect(end).toMatchObject({ state: "stops", cause: "levels_equal" });
    if (end.state === "stops") {
      expect(end.level).toBeCloseTo(0.4, 9);
      expect(end.volume).toBeCloseTo(0.2, 9);
    }
  });

  test("stops when the source gives out, never starts uphill, and has nothing to do when full", () => {
    const small = { ...stock.source, vessel: upright(0.1, 2), level: 0.5 };
    expect(refillTime({ ...stock, source: small })).toMatchObject({
      cause: "source_dry",
      volume: expect.closeTo(0.0225, 9),
    });
    expect(refillTime({ ...stock, endHeight: 3 })).toMatchObject({ cause: "never_starts", volume: 0 });
    expect(refillTime({ ...stock, line: { ...hose, opening: 0 } })).toMatchObject({ cause: "never_starts" });
    expect(refillTime({ ...stock, startHeight: 2.6 })).toMatchObject({ cause: "never_starts" });
    expect(refillTime({ ...stock, target: { ...stock.target, from: 0.4 } })).toMatchObject({
      cause: "already_full",
    });
  });

  test("refuses to say when a closing valve is wholly shut, which it never is", () => {
    expect(() => refillTime({ ...stock, doneShare: 1 })).toThrow(/share of the rise/);
  });
});

describe("openingFromRefill and openingFromFlow", () => {
  test("find the opening that made the time or the flow", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 0.009, noNaN: true }), (seat) => {
        const opening = openingOf(seat, 0.62);
        const time = timeOf({ ...stock, line: { ...hose, opening } });
        const taught = openingFromRefill(stock, time);
        expect("opening" in taught && taught.opening / opening).toBeCloseTo(1, 7);
      }),
      { numRuns: 20, verbose: 1 },
    );
  });

  test("with the valve governing, doubling the head afterwards predicts the measured time over √2", () => {
    const high = { ...stock, source: { ...stock.source, vessel: upright(2000, 2) } };
    const head = 2.5 - 0.45;
    const measured = 9 * 3600;
    const taught = openingFromRefill(high, measured);
    if (!("opening" in taught)) throw new Error(taught.reason);
    const line = { ...hose, opening: taught.opening };
    const doubled = {
      ...high,
      line,
      source: { ...high.source, floor: high.source.floor + head },
      startHeight: 1.05 + head,
    };
    expect(timeOf(doubled) / (measured / Math.SQRT2)).toBeCloseTo(1, 2);
  });

  test("say why a measurement cannot be", () => {
    expect(openingFromRefill(stock, 1)).toEqual({ reason: "the hose alone could not fill it so fast" });
    expect(openingFromRefill({ ...stock, endHeight: 3 }, 100)).toEqual({
      reason: "the water never starts to run",
    });
    expect(openingFromFlow(hose, 0.3, 1)).toEqual({
      reason: "the hose alone could not pass so much at this drop",
    });
  });
});
