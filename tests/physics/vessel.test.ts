import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { DomainError } from "../../src/physics/domain-error.ts";
import { levelAt, surfaceAt, type Vessel, volumeAt } from "../../src/physics/vessel.ts";

const vessel: fc.Arbitrary<Vessel> = fc.record({
  form: fc.constantFrom("upright" as const, "lying" as const),
  height: fc.double({ min: 0.1, max: 5, noNaN: true }),
  volume: fc.double({ min: 0.01, max: 50, noNaN: true }),
});
const share = fc.double({ min: 0, max: 1, noNaN: true });

describe("level and volume", () => {
  test("are each other's inverse to 1e-12, from either side", () => {
    fc.assert(
      fc.property(vessel, share, (tank, part) => {
        const volume = tank.volume * part;
        expect(Math.abs(volumeAt(tank, levelAt(tank, volume)) - volume)).toBeLessThan(1e-12 * tank.volume);
        // In the last billionth under the top of a lying tank, neighbouring volumes are further apart than that in level.
        const level = tank.height * Math.min(part, 1 - 1e-8);
        expect(Math.abs(levelAt(tank, volumeAt(tank, level)) - level)).toBeLessThan(1e-12 * tank.height);
      }),
      { numRuns: 1000, verbose: 1 },
    );
  });

  test("keep twelve figures in the last drops of a lying tank", () => {
    const tank: Vessel = { form: "lying", height: 1, volume: 1 };
    for (const volume of [1e-3, 1e-6, 1e-12, 1e-30]) {
      expect(volumeAt(tank, levelAt(tank, volume)) / volume).toBeCloseTo(1, 12);
    }
  });

  test("rise together, from 0 at the floor to full at the top", () => {
    fc.assert(
      fc.property(vessel, share, share, (tank, one, other) => {
        const [low, high] = [Math.min(one, other), Math.max(one, other)];
        expect(volumeAt(tank, low * tank.height)).toBeLessThanOrEqual(volumeAt(tank, high * tank.height));
        expect(volumeAt(tank, 0)).toBe(0);
        expect(volumeAt(tank, tank.height)).toBe(tank.volume);
        expect(levelAt(tank, 0)).toBe(0);
        expect(levelAt(tank, tank.volume)).toBe(tank.height);
      }),
      { verbose: 1 },
    );
  });

  test("of a lying tank are symmetric about its middle", () => {
    const tank: Vessel = { form: "lying", height: 1, volume: 1 };
    fc.assert(
      fc.property(share, (part) => {
        expect(volumeAt(tank, part) + volumeAt(tank, 1 - part)).toBeCloseTo(1, 14);
      }),
      { verbose: 1 },
    );
  });

  test("change with each other as the surface says", () => {
    fc.assert(
      fc.property(vessel, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (tank, part) => {
        const [level, step] = [tank.height * part, tank.height * 1e-5];
        const slope = (volumeAt(tank, level + step) - volumeAt(tank, level - step)) / (2 * step);
        expect(surfaceAt(tank, level) / slope).toBeCloseTo(1, 5);
      }),
      { verbose: 1 },
    );
  });

  test("take off what rounding leaves over full or under empty, and refuse more", () => {
    const tank: Vessel = { form: "upright", height: 2, volume: 1 };
    expect(levelAt(tank, 1 + 1e-13)).toBe(2);
    expect(levelAt(tank, -1e-13)).toBe(0);
    expect(() => levelAt(tank, 1.001)).toThrow(DomainError);
    expect(() => volumeAt(tank, -0.001)).toThrow(DomainError);
    expect(() => surfaceAt(tank, Number.NaN)).toThrow(DomainError);
    expect(() => levelAt({ ...tank, volume: 0 }, 0)).toThrow(DomainError);
  });
});
