import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { hand, launch, open, row, shownValueOf, take } from "./browser.ts";
import type { Opened } from "./pages.ts";

const TIMES = process.env.HUNDRED === "1" ? 100 : 15;
const OFTEN = `${TIMES} times (15 in npm test, 100 with HUNDRED=1)`;
/** Against hanging alone: a page takes seconds to open on a busy machine [ms]. */
const WATCHDOG = 2_400_000;
const HEIGHT = "site.elevation";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(async () => {
  await browser.close();
});

/** An empty worksheet, kept once: it opens in a moment, so that a hundred can be opened. */
async function empty(): Promise<Opened> {
  const opened = await open(browser);
  const { page } = opened;
  await page.getByRole("button", { name: "Start my own" }).click();
  await row(page, "totes.capacity").waitFor({ state: "detached" });
  await edit(page, 300);
  await page.getByText("Saved", { exact: true }).waitFor();
  return opened;
}

/** Puts a number in the field; every other time only typed, not yet entered. */
async function edit(page: Page, amount: number): Promise<void> {
  await take(page, HEIGHT);
  await hand(page).fill(`${amount} ft`);
  if (amount % 2 === 0) await hand(page).press("Enter");
}

/** The number that the field shows once the page stands; the season need not be worked out for it. */
async function standing(page: Page): Promise<number> {
  return Number.parseFloat(await shownValueOf(page, HEIGHT));
}

/** Titles of what is kept, as the page lists them. */
async function titles(page: Page): Promise<readonly string[]> {
  await page.getByRole("button", { name: "Worksheets" }).click();
  await page
    .getByRole("button", { name: /^Throw away/ })
    .first()
    .waitFor();
  const names = await page.getByRole("button", { name: /^Throw away/ }).allInnerTexts();
  await page.getByRole("button", { name: "Close" }).first().click();
  return names;
}

/** A new tab of the same profile; what is left of the old one is the page's affair. */
async function another(context: BrowserContext): Promise<Page> {
  const page = await context.newPage();
  await page.goto(inject("url"), { waitUntil: "commit" });
  return page;
}

describe("nothing is lost right after an edit", () => {
  test(`a reload, ${OFTEN}: nothing, entered or only typed`, { timeout: WATCHDOG }, async () => {
    const { page, context, complaints } = await empty();
    const lost: number[] = [];
    for (let amount = 301; amount <= 300 + TIMES; amount++) {
      await edit(page, amount);
      await page.reload({ waitUntil: "commit" });
      if ((await standing(page)) !== amount) lost.push(amount);
    }
    expect(lost).toEqual([]);
    expect(await titles(page)).toHaveLength(1);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test(`a closed tab, ${OFTEN}: nothing that was entered`, { timeout: WATCHDOG }, async () => {
    const { page: first, context } = await empty();
    let page = first;
    const lost: number[] = [];
    for (let amount = 302; amount <= 300 + 2 * TIMES; amount += 2) {
      await edit(page, amount);
      await page.close();
      page = await another(context);
      if ((await standing(page)) !== amount) lost.push(amount);
    }
    expect(lost).toEqual([]);
    expect(await titles(page)).toHaveLength(1);
    await context.close();
  });

  test(`a killed tab, ${OFTEN}: at most the edit of the last second`, { timeout: WATCHDOG }, async () => {
    const { page: first, context } = await empty();
    let page = first;
    const lost: number[] = [];
    for (let amount = 302; amount <= 300 + 2 * TIMES; amount += 2) {
      await edit(page, amount);
      const crashed = page.waitForEvent("crash");
      const session = await context.newCDPSession(page);
      session.send("Page.crash").catch(() => undefined);
      await crashed;
      await page.close();
      page = await another(context);
      // The last second may be lost by a kill; the edit before it was made longer ago.
      if (![amount, amount - 2].includes(await standing(page))) lost.push(amount);
    }
    expect(lost).toEqual([]);
    expect(await titles(page)).toHaveLength(1);
    await context.close();
  });

  test("the back button, and forward again: nothing", async () => {
    const { page, context } = await empty();
    await page.goto("about:blank");
    await page.goBack();
    for (const amount of [311, 312]) {
      await edit(page, amount);
      await page.goForward();
      await page.goBack();
      expect(await standing(page)).toBe(amount);
    }
    await context.close();
  });
});
