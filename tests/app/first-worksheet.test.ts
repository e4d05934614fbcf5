// The first worksheet opens without being read with care, so that what reads it need not be fetched before the answers.

import { expect, test } from "vitest";
import { firstWorksheet } from "../../src/app/templates.ts";
import { readWorksheet } from "../../src/document/check.ts";

test("the first worksheet is what reading it with care gives, to the last entry", () => {
  const read = readWorksheet(firstWorksheet());
  expect(read).toEqual({ ok: true, worksheet: firstWorksheet(), readOnly: false, notes: [] });
});

test("it is frozen through and through, as every worksheet is", () => {
  const loose = (value: unknown): boolean =>
    typeof value === "object" &&
    value !== null &&
    (!Object.isFrozen(value) || Object.values(value).some((member) => loose(member)));
  expect(loose(firstWorksheet())).toBe(false);
});
