import { describe, expect, test } from "vitest";
import { renameInFormula } from "../../src/formula/rename.ts";

describe("renameInFormula carries a card's new id into a text", () => {
  test.each([
    ["blue.capacity * 2", "red_tank.capacity * 2"],
    ["blue.capacity+blue.usable", "red_tank.capacity+red_tank.usable"],
    ["  blue.capacity   -  3 gal ", "  red_tank.capacity   -  3 gal "],
    ["blue", "blue"],
    ["big_blue.capacity", "big_blue.capacity"],
    ["blue_2.capacity", "blue_2.capacity"],
    ["site.blue", "site.blue"],
    ["blue.blue", "red_tank.blue"],
    ["blue.x.y", "blue.x.y"],
    [
      "max(blue.capacity, 0) > 5 in ? blue.usable : 1 1/2 in",
      "max(red_tank.capacity, 0) > 5 in ? red_tank.usable : 1 1/2 in",
    ],
  ])("%s", (text, renamed) => {
    expect(renameInFormula(text, "blue", "red_tank")).toBe(renamed);
  });

  test("a unit of the same letters is no card", () => {
    expect(renameInFormula("2 gal/h * gal.h", "gal", "x")).toBe("2 gal/h * x.h");
    expect(renameInFormula("3 h - h.h", "h", "x")).toBe("3 h - x.h");
  });

  test("in a text that is wrong elsewhere the names that can be read are changed, and nothing else", () => {
    expect(renameInFormula('blue.a + ; "blue.b', "blue", "red")).toBe('red.a + ; "red.b');
    expect(renameInFormula("((blue.a * 5 wombat", "blue", "red")).toBe("((red.a * 5 wombat");
    expect(renameInFormula("$$$ ??", "blue", "red")).toBe("$$$ ??");
    expect(renameInFormula("", "blue", "red")).toBe("");
  });

  test("there and back gives the same text", () => {
    const text = " ( blue.a+  blue.b/2 gal)^2 - 40 degF ";
    expect(renameInFormula(renameInFormula(text, "blue", "red"), "red", "blue")).toBe(text);
  });
});
