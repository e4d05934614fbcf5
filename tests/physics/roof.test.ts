import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { DomainError } from "../../src/physics/domain-error.ts";
import { downspoutCapacity } from "../../src/physics/downspout.ts";
import { dayRunoff, type Roof, runoffShare } from "../../src/physics/roof.ts";
import { drainedArea, stormFlow } from "../oracles/downspout.ts";
import { dailyRunoff } from "../oracles/roof.ts";

const roof: Roof = { footprint: 100, runoffCoefficient: 0.9, wettingLoss: 0.0005, firstFlush: 0.001 };
const anyRoof: fc.Arbitrary<Roof> = fc.record({
  footprint: fc.double({ min: 0, max: 500, noNaN: true }),
  runoffCoefficient: fc.double({ min: 0, max: 1, noNaN: true }),
  wettingLoss: fc.double({ min: 0, max: 0.003, noNaN: true }),
  firstFlush: fc.double({ min: 0, max: 0.005, noNaN: true }),
});
const anyRain = fc.array(fc.double({ min: 0, max: 0.06, noNaN: true }), { maxLength: 60 });

describe("one dipped rain", () => {
  test("teaches the share that dayRunoff turned into water, at any roof and rain that brought some", () => {
    // Rains that bring something whatever is lost of them.
    const wet = fc.record({
      footprint: fc.double({ min: 1, max: 500, noNaN: true }),
      runoffCoefficient: fc.double({ min: 0.5, max: 1, noNaN: true }),
      wettingLoss: fc.double({ min: 0, max: 0.003, noNaN: true }),
      firstFlush: fc.double({ min: 0, max: 0.005, noNaN: true }),
    });
    fc.assert(
      fc.property(wet, fc.double({ min: 0.02, max: 0.06, noNaN: true }), (any, rain) => {
        const { volume } = dayRunoff(any, rain, any.firstFlush);
        const lost = any.wettingLoss + any.firstFlush;
        expect(runoffShare({ volume, area: any.footprint, rain, lost })).toBeCloseTo(
          any.runoffCoefficient,
          9,
        );
      }),
    );
  });

  test("is over 1 where more came in than fell, and refuses no rain and no roof", () => {
    expect(runoffShare({ volume: 1.2, area: 100, rain: 0.01, lost: 0 })).toBeCloseTo(1.2, 12);
    expect(() => runoffShare({ volume: 1, area: 100, rain: 0, lost: 0 })).toThrow(DomainError);
    expect(() => runoffShare({ volume: 1, area: 0, rain: 0.01, lost: 0 })).toThrow(DomainError);
    expect(() => runoffShare({ volume: -1, area: 100, rain: 0.01, lost: 0 })).toThrow(DomainError);
  });
});

describe("a roof's day", () => {
  test("gives the coefficient's share, less the wetting, less the first flush", () => {
    const day = dayRunoff(roof, 0.01, 0.001);
    expect(day.volume).toBeCloseTo(100 * (0.9 * 0.01 - 0.0005 - 0.001), 12);
    expect(day.flushed).toBeCloseTo(0.1, 12);
    expect(day.flushLeft).toBe(0);
  });

  test("flushes once an event, and again after a day under 1 mm", () => {
    const days = dailyRunoff(roof, [0.01, 0.01, 0.0009, 0.01]);
    expect(days[0]).toBeCloseTo(0.75, 12);
    expect(days[1]).toBeCloseTo(0.85, 12);
    expect(days[2]).toBeCloseTo(0.031, 12);
    expect(days[3]).toBeCloseTo(0.75, 12);
  });

  test("fills the diverter over several small rains of one event", () => {
    const small = dailyRunoff({ ...roof, wettingLoss: 0, firstFlush: 0.0015 }, [0.001, 0.001, 0.001]);
    expect(Array.from(small, (volume) => Math.round(volume * 1000))).toEqual([0, 30, 90]);
  });

  test("never gives less than nothing nor more than its rain, and loses no drop unaccounted", () => {
    fc.assert(
      fc.property(anyRoof, anyRain, (any, rain) => {
        let flushLeft = any.firstFlush;
        for (const depth of rain) {
          const day = dayRunoff(any, depth, flushLeft);
          expect(day.volume).toBeGreaterThanOrEqual(0);
          expect(day.volume + day.flushed).toBeLessThanOrEqual(
            any.footprint * depth * any.runoffCoefficient + 1e-12,
          );
          expect(day.flushLeft).toBeGreaterThanOrEqual(0);
          flushLeft = day.flushLeft;
        }
      }),
      { verbose: 1 },
    );
  });

  test("without losses is the plain product", () => {
    const bare = { ...roof, wettingLoss: 0, firstFlush: 0 };
    expect(dayRunoff(bare, 0.02, 0).volume).toBeCloseTo(100 * 0.9 * 0.02, 12);
  });

  test("refuses a coefficient over 1, negative rain and a gap", () => {
    expect(() => dayRunoff({ ...roof, runoffCoefficient: 1.2 }, 0.01, 0)).toThrow(DomainError);
    expect(() => dayRunoff(roof, -0.01, 0)).toThrow(DomainError);
    expect(() => dailyRunoff(roof, [0.01, Number.NaN])).toThrow(DomainError);
  });
});

describe("downspouts", () => {
  test("drain from the area they are rated for exactly what they carry", () => {
    const rate = 2e-5;
    expect(stormFlow(drainedArea(0.075, rate), rate)).toBeCloseTo(downspoutCapacity(0.075), 14);
  });

  test("of twice the bore carry 2^(8/3) times as much", () => {
    expect(downspoutCapacity(0.1) / downspoutCapacity(0.05)).toBeCloseTo(2 ** (8 / 3), 12);
  });

  test("refuse no bore or no rain", () => {
    expect(() => downspoutCapacity(0)).toThrow(DomainError);
    expect(() => drainedArea(0.1, 0)).toThrow(DomainError);
    expect(() => stormFlow(-1, 1)).toThrow(DomainError);
  });
});
