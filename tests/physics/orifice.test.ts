import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { DomainError } from "../../src/physics/domain-error.ts";
import { openingOf, orificeHead, orificeK } from "../../src/physics/orifice.ts";
import { orificeFlow } from "../oracles/orifice.ts";

const opening = fc.double({ min: 1e-7, max: 1e-3, noNaN: true });
const head = fc.double({ min: 1e-6, max: 20, noNaN: true });

describe("a hole", () => {
  test("needs for its flow the head that drives it", () => {
    fc.assert(
      fc.property(opening, head, (hole, over) => {
        const flow = orificeFlow({ opening: hole, head: over });
        expect(orificeHead({ opening: hole, flow }) / over).toBeCloseTo(1, 12);
      }),
      { verbose: 1 },
    );
  });

  test("passes twice as much under four times the head, and nothing under none", () => {
    expect(orificeFlow({ opening: 1e-5, head: 4 }) / orificeFlow({ opening: 1e-5, head: 1 })).toBeCloseTo(
      2,
      14,
    );
    expect(orificeFlow({ opening: 1e-5, head: 0 })).toBe(0);
  });

  test("has K 1 on the pipe's speed when it is as wide as the pipe and loses nothing", () => {
    expect(orificeK(0.0159, openingOf(0.0159, 1))).toBeCloseTo(1, 12);
  });

  test("is refused with a head below its edge, no size or a coefficient over 1", () => {
    expect(() => orificeFlow({ opening: 1e-5, head: -0.1 })).toThrow(DomainError);
    expect(() => orificeHead({ opening: 0, flow: 1e-5 })).toThrow(DomainError);
    expect(() => openingOf(0.005, 1.1)).toThrow(DomainError);
    expect(() => openingOf(0.005, 0)).toThrow(DomainError);
  });
});
