import { expect, test } from "vitest";
import { readFormula } from "../../src/formula/read.ts";
import { currencyProblem, inOtherMoney } from "../../src/units/other-money.ts";
import { readQuantity } from "../../src/units/read.ts";
import { editText, showQuantity } from "../../src/units/show.ts";

const MONEYS = ["$", "€", "EUR", "USD", "CHF", "kr", "zł", "R$", "Kč", "francs", "Swiss francs", "₦"];

test.each(MONEYS)("money may be counted in %s, and an amount shown in it is read again", (currency) => {
  expect(currencyProblem(currency)).toBeNull();
  for (const locale of ["en-US", "de-DE"]) {
    const text = editText(250, "money", locale, currency);
    const read = readQuantity(text, { measure: "money", locale, currency, defaultUnit: "money" });
    expect(read).toMatchObject({ ok: true, value: 250 });
    expect(showQuantity(250, "money", { units: "us", locale, currency })).toContain(currency);
  }
});

test.each(["5", "€5", "m", "gal", "ft", "h", "C", "a+b", "%", "?", "1/2", "a currency of very many letters"])(
  "money cannot be counted in %s",
  (currency) => {
    expect(currencyProblem(currency)).not.toBeNull();
  },
);

test.each([
  ["$40 * 3", "$", "€", "€40 * 3"],
  ["40 USD / 2 + $1.50", "$", "€", "40 € / 2 + €1.50"],
  ["$0.03/gal * totes.capacity", "$", "CHF", "0.03 CHF/gal * totes.capacity"],
  ["40 CHF", "CHF", "$", "40 $"],
  ["kraut.area * 2 kr/m2", "kr", "£", "kraut.area * 2 £/m2"],
  ["totes.price", "$", "€", "totes.price"],
  ["$", "$", "EUR", "EUR"],
])("what is written of money goes with it: %s from %s to %s", (text, from, to, wanted) => {
  expect(inOtherMoney(text, from, to)).toBe(wanted);
});

test("a formula of any money reads as well in any other, to the same number", () => {
  for (const from of MONEYS)
    for (const to of MONEYS) {
      const written = inOtherMoney(`40 ${from} * 3`, from, to);
      expect(readFormula(written, { currency: to }), written).toMatchObject({ ok: true });
    }
});

test("a unit that begins as the money is called is still that unit", () => {
  for (const currency of ["k", "g", "m", "Tb"])
    expect(readQuantity("5 mm", { measure: "rain", currency })).toMatchObject({
      ok: true,
      value: 5,
      unit: "mm",
    });
});
