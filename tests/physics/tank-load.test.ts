import { describe, expect, test } from "vitest";
import { DomainError } from "../../src/physics/domain-error.ts";
import { fullMass, groundPressure } from "../../src/physics/tank-load.ts";

describe("a tank's load", () => {
  test("is that of the empty tank when there is no water, and grows with every litre", () => {
    expect(fullMass(0, 1000, 12)).toBe(12);
    expect(fullMass(0.2, 1000, 12)).toBe(212);
  });

  test("presses half as hard on twice the ground", () => {
    expect(groundPressure(212, 0.5)).toBe(2 * groundPressure(212, 1));
  });

  test("is refused for no ground, or a negative tank", () => {
    expect(() => groundPressure(212, 0)).toThrow(DomainError);
    expect(() => fullMass(0.2, 1000, -1)).toThrow(DomainError);
    expect(() => fullMass(Number.NaN, 1000, 0)).toThrow(DomainError);
  });
});
