import fc from "fast-check";
import { describe, expect, test } from "vitest";
import fuses from "../../shared/fuses.json";
import { DomainError } from "../../src/physics/domain-error.ts";
import {
  type FittedFuse,
  faultCurrent,
  fuseChoice,
  fuseFaults,
  stalledCurrent,
} from "../../src/physics/fuse.ts";

const sizes = fuses.blade_sizes.values;
const fitted = (change: Partial<FittedFuse>): FittedFuse => ({
  fuse: 5,
  runningCurrent: 2,
  makerFuse: null,
  ampacity: 15,
  stalledCurrent: null,
  ...change,
});

/** Nothing is known of a stuck rotor. */
const FREE = { stalledCurrent: null };

describe("the choice of a fuse", () => {
  test("breaks none of the rules by which a fitted one is judged", () => {
    const current = fc.double({ min: 0.3, max: 30, noNaN: true });
    const maker = fc.option(fc.constantFrom(...sizes));
    fc.assert(
      fc.property(
        current,
        maker,
        fc.constantFrom(10, 15, 20, 25, 40),
        (runningCurrent, makerFuse, ampacity) => {
          const duty = { runningCurrent, makerFuse, ampacity, stalledCurrent: null };
          const choice = fuseChoice(duty, sizes);
          if (choice.state !== "fits") return;
          expect(fuseFaults({ ...duty, fuse: choice.size })).toEqual([]);
        },
      ),
      { numRuns: 500, verbose: 1 },
    );
  });

  test("follows the maker's figure, down to the wire's", () => {
    expect(fuseChoice({ runningCurrent: 3, makerFuse: 10, ampacity: 20, ...FREE }, sizes)).toEqual({
      state: "fits",
      size: 10,
    });
    expect(fuseChoice({ runningCurrent: 3, makerFuse: 10, ampacity: 9, ...FREE }, sizes)).toEqual({
      state: "fits",
      size: 7.5,
    });
    expect(fuseChoice({ runningCurrent: 1.4, makerFuse: 2.5, ampacity: 9, ...FREE }, sizes)).toEqual({
      state: "fits",
      size: 2,
    });
  });

  test("says why none fits", () => {
    expect(fuseChoice({ runningCurrent: 12, makerFuse: null, ampacity: 10, ...FREE }, sizes).state).toBe(
      "wire_too_thin",
    );
    expect(fuseChoice({ runningCurrent: 12, makerFuse: 10, ampacity: 40, ...FREE }, sizes).state).toBe(
      "maker_below_running",
    );
    expect(fuseChoice({ runningCurrent: 50, makerFuse: null, ampacity: 99, ...FREE }, sizes).state).toBe(
      "no_such_size",
    );
    expect(() => fuseChoice({ runningCurrent: 0, makerFuse: null, ampacity: 10, ...FREE }, sizes)).toThrow(
      DomainError,
    );
  });
});

describe("a fitted fuse", () => {
  test("of 15 A on a pump of 2 A over 16 AWG (15 A, 60 °C) of which the maker asks 2.5 A is over the maker's figure", () => {
    const faults = fuseFaults(fitted({ fuse: 15, makerFuse: 2.5, stalledCurrent: 8 }));
    expect(faults).toEqual(["over_maker", "stall_does_not_blow"]);
  });

  test.each([
    [{ fuse: null }, ["no_fuse"]],
    [{ fuse: 2 }, ["under_running_current"]],
    [{ fuse: 3 }, []],
    [{ fuse: 2, runningCurrent: 1.8 }, ["little_margin"]],
    [{ fuse: 20 }, ["over_ampacity"]],
    [{ fuse: 22.5 }, ["over_ampacity"]],
    [{ fuse: 25 }, ["over_regulation", "over_ampacity"]],
    [{ fuse: 5, stalledCurrent: 9.9 }, ["stall_does_not_blow"]],
    [{ fuse: 5, stalledCurrent: 10 }, []],
  ])("%j breaks %j", (change, faults) => {
    expect(fuseFaults(fitted(change))).toEqual(faults);
  });
});

describe("a stalled pump", () => {
  test("draws less through a long wire than on the bench", () => {
    const stall = { current: 8, ratedVoltage: 12, sourceVoltage: 12, wireResistance: 0 };
    expect(stalledCurrent(stall)).toBeCloseTo(8, 12);
    expect(stalledCurrent({ ...stall, wireResistance: 1.5 })).toBeCloseTo(4, 12);
    expect(() => stalledCurrent({ ...stall, current: 0 })).toThrow(DomainError);
  });
});

test("a short of a lithium battery is more than a blade fuse can break, and less than one on the post can", () => {
  const short = faultCurrent(14, 3.75e-3);
  const breaks = (word: string) => fuses.kinds.find((kind) => kind.word === word)?.breaks.value ?? 0;
  expect(short).toBeGreaterThan(breaks("blade"));
  expect(short).toBeLessThan(breaks("mrbf"));
});
