import { describe, expect, test } from "vitest";
import {
  DomainError,
  requireNotNegative,
  requirePositive,
  requireWithin,
} from "../../src/physics/domain-error.ts";

const BROKEN = [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, -1];

describe("DomainError", () => {
  test("says what broke which limit of whom", () => {
    const error = new DomainError("bore", -1, "above 0", "geometry");
    expect(error).toMatchObject({
      name: "DomainError",
      quantity: "bore",
      value: -1,
      limit: "above 0",
      source: "geometry",
    });
    expect(error.message).toBe("bore is -1, but must be above 0 (geometry)");
  });
});

describe("the checks", () => {
  test.each(BROKEN)("refuse %s", (value) => {
    expect(() => requirePositive("x", value, "y")).toThrow(DomainError);
    expect(() => requireNotNegative("x", value, "y")).toThrow(DomainError);
    expect(() => requireWithin("x", value, [0, 1], "y")).toThrow(DomainError);
  });

  test("let the limits themselves pass, but 0 not as positive", () => {
    expect(() => requireNotNegative("x", 0, "y")).not.toThrow();
    expect(() => requireWithin("x", 0, [0, 1], "y")).not.toThrow();
    expect(() => requireWithin("x", 1, [0, 1], "y")).not.toThrow();
    expect(() => requirePositive("x", 0, "y")).toThrow(DomainError);
  });
});
