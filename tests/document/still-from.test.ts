import { expect, test } from "vitest";
import { withFrom } from "../../src/document/still-from.ts";
import type { Entry, Origin } from "../../src/document/worksheet.ts";

const gallons = (value: number, from?: Origin): Entry => ({ value, unit: "gal", ...(from ? { from } : {}) });

test("a number typed or turned in the place of one off a label, or of a measured one, is from neither", () => {
  expect(withFrom(gallons(400), [gallons(275, "label")])).toEqual(gallons(400));
  expect(withFrom(gallons(400), [gallons(275, "measured")])).toEqual(gallons(400));
});

test("the same number typed again stays from where it was, in another unit too", () => {
  expect(withFrom(gallons(275), [gallons(275, "label")])).toEqual(gallons(275, "label"));
  // 1 gal is 3.785 411 784 L.
  const liters: Entry = { value: 3.785411784, unit: "L" };
  expect(withFrom(liters, [gallons(1, "measured")])).toEqual({ ...liters, from: "measured" });
  expect(withFrom({ value: 275, unit: "L" }, [gallons(275, "label")])).toEqual({ value: 275, unit: "L" });
});

test("turned away and back at what stood there when it was taken, it is from there again", () => {
  expect(withFrom(gallons(275), [gallons(300), gallons(275, "label")])).toEqual(gallons(275, "label"));
  expect(withFrom(gallons(325), [gallons(300), gallons(275, "label")])).toEqual(gallons(325));
});

test("a guess stays a guess, and what was borrowed or usual is the grower's own", () => {
  expect(withFrom(gallons(400), [gallons(275, "guessed"), gallons(400, "label")])).toEqual(
    gallons(400, "guessed"),
  );
  expect(withFrom(gallons(275), [gallons(275, "borrowed")])).toEqual(gallons(275));
  expect(withFrom(gallons(275), [gallons(275, "default"), null])).toEqual(gallons(275));
  expect(withFrom(gallons(275), [undefined])).toEqual(gallons(275));
});
