// On a phone: a line of one's own is read whole, what is wrong with it says where, the names that there are are reached, and
// what is done with a whole part is within reach at its head.

import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { launch, open, PHONE, row, settled, unfold } from "./browser.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(async () => {
  await browser.close();
});

const LONG = "(totes.price + tub.price) / (totes.usable + tub.usable) + 0 * totes.price / totes.usable";

test("a formula is seen whole; its faults stand at their field, marked; a name is picked from those there are", async () => {
  const { page, context, complaints } = await open(browser, { viewport: PHONE, used: true });
  await unfold(page, "wand_hours");
  const [formula, unit] = [row(page, "wand_hours.formula"), row(page, "wand_hours.unit")];
  const wrong = page.locator(".row .wrong");
  const enter = async (text: string) => {
    await formula.fill(text);
    await formula.press("Enter");
    await settled(page);
  };
  await enter(LONG);
  const cut = await formula.evaluate((one) => one.scrollHeight - one.clientHeight);
  expect([cut, await formula.evaluate((one) => one.scrollWidth - one.clientWidth)]).toEqual([0, 0]);
  expect((await formula.boundingBox())?.height).toBeGreaterThan(40);
  await enter("2 *");
  await expect.poll(() => wrong.innerText()).toContain("missing after *");
  expect(await wrong.locator("mark").innerText()).toBe("*");
  expect(await formula.getAttribute("aria-invalid")).toBe("true");
  await enter("totes.capacty * 2");
  await expect.poll(() => wrong.innerText()).toContain("Did you mean capacity?");
  // It is shown in hours.
  await enter("totes.capacity * 2");
  await expect.poll(() => wrong.innerText()).toContain('"Shown in"');
  expect([await unit.getAttribute("aria-invalid"), await formula.getAttribute("aria-invalid")]).toEqual([
    "true",
    null,
  ]);
  await unit.fill("gal");
  await unit.press("Enter");
  await expect.poll(() => wrong.count()).toBe(0);
  // What is typed and not entered stays as it is while a name is looked for.
  await formula.fill("4 * ");
  await page.locator(".names-there > summary").click();
  await page.locator(".names-there details", { hasText: "Two totes" }).locator("summary").click();
  await page.locator(".names-there button", { hasText: "totes.capacity" }).click();
  await expect.poll(() => formula.inputValue()).toBe("4 * totes.capacity");
  await formula.press("Enter");
  await settled(page);
  await expect.poll(() => page.locator(".card .row.result").first().innerText()).toMatch(/1,100\s*gal/);
  expect(complaints).toEqual([]);
  await context.close();
});

test("renaming, copying and taking out are at the head of a part, and no group's name fills its own", async () => {
  const { page, context, complaints } = await open(browser, { viewport: PHONE, used: true });
  await unfold(page, "totes.capacity");
  const menu = page.locator(".one-line .more-menu summary");
  const [at, first] = [await menu.boundingBox(), await row(page, "totes.capacity").boundingBox()];
  expect(at?.y ?? Number.POSITIVE_INFINITY).toBeLessThan(first?.y ?? 0);
  await menu.click();
  for (const name of ["Make a copy", "Take it out"])
    expect(await page.getByRole("button", { name, exact: true }).isVisible()).toBe(true);
  await page.getByRole("button", { name: "Rename", exact: true }).click();
  await page.keyboard.type("The pair");
  await page.keyboard.press("Enter");
  await expect.poll(() => page.locator(".one-line h2").innerText()).toBe("The pair");
  const rooms = await page.locator(".zone-strip button").evaluateAll((buttons) =>
    buttons.map((button) => {
      const words = document.createRange();
      words.selectNodeContents(button.querySelector(".name") ?? button);
      return button.getBoundingClientRect().width - words.getBoundingClientRect().width;
    }),
  );
  expect(rooms).toHaveLength(8);
  expect(Math.min(...rooms)).toBeGreaterThan(7);
  expect(complaints).toEqual([]);
  await context.close();
});
