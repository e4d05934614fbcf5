import { describe, expect, test } from "vitest";
import {
  amountSaid,
  gaugeStick,
  heldAt,
  levelAt,
  levelBy,
  levelMoved,
  marksOf,
  mostOf,
  readAs,
  tankStick,
} from "../../src/scene/dip-level.ts";

const INCH = 0.0254;
/** An upright tank 46 in high of 2 m3. */
const vessel = { form: "upright", height: 46 * INCH, volume: 2 } as const;

describe("a stick in a tank", () => {
  const stick = tankStick(vessel, "in");

  test("is read in half inches, and no higher than the tank", () => {
    expect(levelAt(stick, 20.3 * INCH).value).toBe(20.5);
    expect(levelAt(stick, -1).value).toBe(0);
    expect(levelAt(stick, 2).value).toBe(46);
    expect(mostOf(stick)).toBe(46);
    expect(mostOf(tankStick({ ...vessel, height: 46.3 * INCH }, "in"))).toBe(46);
    expect(heldAt(vessel, levelAt(stick, 23 * INCH))).toBeCloseTo(1, 12);
  });

  test("a step up and a step down lead back", () => {
    const from = levelAt(stick, 20 * INCH);
    expect(levelBy(stick, from, 1).value).toBe(20.5);
    expect(levelBy(stick, levelBy(stick, from, 1), -1)).toEqual(from);
  });

  test("a grip moved by a quarter of the drawn height moves the level by a quarter of the tank", () => {
    expect(levelMoved(stick, levelAt(stick, 20 * INCH), 0.25).depth).toBeCloseTo((20 + 11.5) * INCH, 9);
  });

  test("halves are written as such", () => {
    expect([0.5, 1.5, 20].map((value) => readAs(value, stick))).toEqual(["½", "1½", "20"]);
    expect(readAs(18, tankStick(vessel, "cm"))).toBe("18");
  });

  test("numbers stand at every other mark, none at the floor or the rim", () => {
    const marks = marksOf(stick);
    expect(marks.map(({ label }) => label).filter(Boolean)).toEqual(["10", "20", "30", "40"]);
    for (const { share } of marks) expect(share > 0 && share < 1).toBe(true);
  });
});

test("a gauge is read to a twentieth of an inch or a millimeter", () => {
  expect(levelAt(gaugeStick("in"), 0.31 * INCH).value).toBe(0.3);
  expect(levelBy(gaugeStick("in"), levelAt(gaugeStick("in"), 0.1 * INCH), 1).value).toBe(0.15);
  expect(levelAt(gaugeStick("mm"), 0.0124).value).toBe(12);
  expect(marksOf(gaugeStick("in")).map(({ label }) => label)).toEqual(["", "1", "", "2"]);
});

test("an amount is noted as it is said", () => {
  const GALLON = 0.003785411784;
  expect(amountSaid(14.96 * GALLON, "gal")).toBe(15);
  expect(amountSaid(123.4 * GALLON, "gal")).toBe(120);
});
