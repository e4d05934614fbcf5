import { expect, test } from "vitest";
import { apart, bare, titlesApart } from "../../src/document/title-apart.ts";
import { fixture } from "./made-up.ts";

const BARREL = "\u05d7\u05d1\u05d9\u05ea";

test("a title that turns nothing stands as it is, and the worksheet is the very same", () => {
  expect(apart("Two totes, 550 gal")).toBe("Two totes, 550 gal");
  expect(apart("水桶")).toBe("水桶");
  expect(titlesApart(fixture())).toEqual(fixture());
  const sheet = fixture();
  expect(titlesApart(sheet)).toBe(sheet);
});

test.each([BARREL, "برميل 2", "Tank \u05d0"])("%s is kept apart from what stands beside it", (title) => {
  expect(apart(title)).toBe(`\u2068${title}\u2069`);
  expect(bare(apart(title))).toBe(title);
  expect(apart(apart(title))).toBe(apart(title));
});

test.each(["\u202e", "\u2067", "\u2069", "\u202c", "\u200f"])(
  "a sign that turns the direction, or ends a keeping apart, never reaches the text around",
  (sign) => {
    expect(apart(`Tank${sign} 5`)).toBe("Tank 5");
    expect(apart(`${BARREL}${sign}${sign}`)).toBe(`\u2068${BARREL}\u2069`);
  },
);

test("every title and name of a worksheet is kept apart, once, and the worksheet itself stays as typed", () => {
  const sheet = fixture();
  const turned = {
    ...sheet,
    title: BARREL,
    made_by: `${BARREL}\u202e`,
    cards: sheet.cards.map((card) => ({ ...card, title: BARREL })),
  };
  const shown = titlesApart(turned);
  expect(shown.title).toBe(apart(BARREL));
  expect(shown.made_by).toBe(apart(BARREL));
  expect(shown.cards.every(({ title }) => title === apart(BARREL))).toBe(true);
  expect(titlesApart(turned)).toBe(shown);
  expect(turned.title).toBe(BARREL);
});
