// What money is counted in is said once, and everything that shows money follows.

import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { axe } from "./axe.ts";
import { launch, open, PHONE, row, shownValueOf, type, unfold } from "./browser.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(async () => {
  await browser.close();
});

const undo = (page: Page) => page.getByRole("button", { name: /^Undo/ }).first();

const FIELD = "cost.currency";

async function countIn(page: Page, currency: string): Promise<void> {
  await unfold(page, FIELD);
  await row(page, FIELD).fill(currency);
  await row(page, FIELD).press("Enter");
}

test("money counted otherwise: sums, prices and what is typed follow, amounts stay, and undo names it", async () => {
  const { page, context, complaints } = await open(browser, { viewport: PHONE });
  const amount = (text: string): string => text.replace(/[^\d.,]/g, "");
  await unfold(page, FIELD);
  await expect.poll(() => row(page, FIELD).inputValue()).toBe("$");
  const total = await shownValueOf(page, "cost.total");
  expect(total).toMatch(/^\$\d/);
  await countIn(page, "€");
  await expect.poll(() => shownValueOf(page, "cost.total")).toBe(`€${amount(total)}`);
  expect(await page.locator("main").innerText()).not.toContain("$");
  expect(await axe(page)).toEqual([]);
  await expect.poll(() => undo(page).getAttribute("title")).toBe("Undo: Money in €");
  await type(page, "totes.price", "€250");
  await expect.poll(() => shownValueOf(page, "totes.price")).toContain("€250");
  await unfold(page, FIELD);
  await expect.poll(() => row(page, FIELD).inputValue()).toBe("€");
  expect(complaints).toEqual([]);
  await context.close();
});

test("what is no money is not taken, and says why; undo brings the sign before", async () => {
  const { page, context, complaints } = await open(browser, { used: true });
  await countIn(page, "gal");
  const why = page.locator("article.card .wrong");
  await expect.poll(() => why.allInnerTexts()).toEqual([expect.stringContaining("unit")]);
  await expect.poll(() => shownValueOf(page, "cost.total")).toMatch(/^\$/);
  await countIn(page, "Swiss francs");
  await expect.poll(() => why.count()).toBe(0);
  await expect.poll(() => shownValueOf(page, "cost.total")).toMatch(/^[\d,.]+ Swiss francs$/);
  await page.keyboard.press("Escape");
  await undo(page).click();
  await expect.poll(() => row(page, FIELD).inputValue()).toBe("$");
  expect(complaints).toEqual([]);
  await context.close();
});
