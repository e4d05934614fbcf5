import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { isLong, tries } from "../tries.ts";
import { hand, launch, open, row, settled, shownValueOf, site, take, tool, unfold } from "./browser.ts";
import type { Opened } from "./pages.ts";
import { twoYears } from "./rain-by-chance.ts";

/** Fifteen with LONG=1; a hundred are asked for by HUNDRED=1, or in pieces by HUNDRED=2/5, the second fifth of them. */
const [PIECE = 1, PIECES = 1] = (process.env.HUNDRED ?? "").split("/").map(Number);
const TIMES = process.env.HUNDRED ? Math.ceil(100 / PIECES) : tries(15, 2);
const FIRST = 301 + (PIECE - 1) * TIMES;
/** What is typed, one number after the other: every other one is entered, the rest only typed. */
const AMOUNTS = Array.from({ length: TIMES }, (_, at) => FIRST + at);
const OFTEN = `${TIMES} times (2 in npm test, 15 with LONG=1, 100 with HUNDRED=1)`;
/** Of tabs that go: the hardest, one that is only typed, or all of them. */
const GONE = TIMES > 2 ? AMOUNTS : AMOUNTS.slice(0, 1);
const GONE_OFTEN = OFTEN.replace(`${TIMES} times (2`, `${GONE.length} times (1`);
/** Against hanging alone: a page takes seconds to open on a busy machine [ms]. */
const WATCHDOG = 2_400_000;
const HEIGHT = "site.elevation";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(async () => {
  await left?.context.close();
  await browser.close();
});

/** The profile of the test before, when it came to its end. */
let left: Opened | null = null;

/** Leaves the profile to the next test, but for LONG=1. */
async function done(opened: Opened): Promise<void> {
  if (isLong) await opened.context.close();
  else left = opened;
}

/** An empty worksheet, kept once: it opens in a moment, so that a hundred can be opened. */
async function empty(): Promise<Opened> {
  const known = left;
  left = null;
  if (known) return known;
  const opened = await open(browser);
  const { page } = opened;
  await tool(page, "Worksheets");
  await page.getByRole("button", { name: /An empty one/ }).click();
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
  await page.goto(site(), { waitUntil: "commit" });
  return page;
}

describe("nothing is lost right after an edit", () => {
  test(`a reload, ${OFTEN}: nothing, entered or only typed`, { timeout: WATCHDOG }, async () => {
    const { page, context, complaints } = await empty();
    const lost: number[] = [];
    for (const amount of AMOUNTS) {
      await edit(page, amount);
      await page.reload({ waitUntil: "commit" });
      if ((await standing(page)) !== amount) lost.push(amount);
    }
    expect(lost).toEqual([]);
    expect(await titles(page)).toHaveLength(1);
    expect(complaints).toEqual([]);
    await done({ page, context, complaints });
  });

  test(`a closed tab, ${GONE_OFTEN}: nothing, entered or only typed`, { timeout: WATCHDOG }, async () => {
    const { page: first, context, complaints } = await empty();
    let page = first;
    const lost: number[] = [];
    for (const amount of GONE) {
      await edit(page, amount);
      await page.close();
      page = await another(context);
      if ((await standing(page)) !== amount) lost.push(amount);
    }
    expect(lost).toEqual([]);
    expect(await titles(page)).toHaveLength(1);
    await done({ page, context, complaints });
  });

  test(`a killed tab, ${GONE_OFTEN}: at most the edit of the last second`, {
    timeout: WATCHDOG,
  }, async () => {
    const { page: first, context, complaints } = await empty();
    let page = first;
    const lost: number[] = [];
    for (const amount of GONE) {
      await edit(page, amount);
      const crashed = page.waitForEvent("crash");
      const session = await context.newCDPSession(page);
      session.send("Page.crash").catch(() => undefined);
      await crashed;
      await page.close();
      page = await another(context);
      // The last second may be lost by a kill; the number before was typed longer ago.
      if (![amount, amount - 1].includes(await standing(page))) lost.push(amount);
    }
    expect(lost).toEqual([]);
    expect(await titles(page)).toHaveLength(1);
    await done({ page, context, complaints });
  });

  test("the back button, and forward again: nothing", async () => {
    const { page, context, complaints } = await empty();
    await page.goto("about:blank");
    await page.goBack();
    for (const amount of [311, 312]) {
      await edit(page, amount);
      await page.goForward();
      await page.goBack();
      expect(await standing(page)).toBe(amount);
    }
    await done({ page, context, complaints });
  });

  test("a text that cannot be read is in its field again, after a reload and after a closed tab", async () => {
    const { page, context, complaints } = await empty();
    await take(page, HEIGHT);
    await hand(page).fill("twelve or so");
    await page.reload();
    await take(page, HEIGHT);
    await expect.poll(() => hand(page).inputValue()).toBe("twelve or so");
    await page.close();
    const next = await another(context);
    await unfold(next, HEIGHT);
    // At rest its row says so too.
    await next.getByText("Not read: twelve or so").waitFor();
    await take(next, HEIGHT);
    await expect.poll(() => hand(next).inputValue()).toBe("twelve or so");
    await expect.poll(() => hand(next).getAttribute("aria-invalid")).toBe("true");
    // Put right it is entered, and does not come back.
    await edit(next, 312);
    await next.reload();
    expect(await standing(next)).toBe(312);
    await done({ page: next, context, complaints });
  });

  test("a worksheet's name, a part's name and a crop's share that are only typed", async () => {
    const { page, context } = await open(browser, { used: true });
    await unfold(page, "tunnel_bed");
    await page.getByLabel("Name of this worksheet").fill("Below the oaks");
    await page.getByLabel("Name of this bed").fill("Long tunnel");
    await page.reload();
    await settled(page);
    await expect.poll(() => page.getByLabel("Name of this worksheet").inputValue()).toBe("Below the oaks");
    await unfold(page, "tunnel_bed");
    await expect.poll(() => page.getByLabel("Name of this bed").inputValue()).toBe("Long tunnel");
    const share = page.getByLabel("Share of the bed").first();
    await share.fill("a good half");
    await share.press("Tab");
    await page.getByText(/^Share of the bed: /).waitFor();
    await page.reload();
    await settled(page);
    await unfold(page, "tunnel_bed");
    await expect.poll(() => share.inputValue()).toBe("a good half");
    // Readable, it is entered by the reload itself.
    await share.fill("40");
    await page.reload();
    await settled(page);
    await unfold(page, "tunnel_bed");
    await expect.poll(() => share.inputValue()).toBe("40 %");
    await context.close();
  });

  test("readings of the own gauge that are only typed stand there again", async () => {
    const { page, context } = await open(browser, { used: true });
    await unfold(page, "weather");
    await page.getByText("Type or paste your own gauge").click();
    const readings = page.getByLabel("Readings, one a line");
    await readings.fill("2021-04-11 6 mm\n2021-04-12 8 mm");
    await page.reload();
    await settled(page);
    await unfold(page, "weather");
    await expect.poll(() => readings.inputValue()).toBe("2021-04-11 6 mm\n2021-04-12 8 mm");
    await context.close();
  });

  test("a record just taken: a reload in the same moment finds it, though the slow store never had it", async () => {
    const { page, context, complaints } = await open(browser, { used: true });
    await unfold(page, "weather");
    await page.getByLabel("Rain record file").setInputFiles(twoYears());
    await page.getByRole("button", { name: "Take it" }).waitFor();
    // From here on the database writes nothing, as if it were too slow; then the page goes.
    await page.evaluate(() => {
      IDBFactory.prototype.open = () => ({}) as IDBOpenDBRequest;
      IDBDatabase.prototype.transaction = () => {
        const silent: object = new Proxy(() => silent, { get: () => silent, set: () => true });
        return silent as IDBTransaction;
      };
      [...document.querySelectorAll("button")].find((button) => button.textContent === "Take it")?.click();
      location.reload();
    });
    await page.waitForEvent("load");
    await settled(page);
    await expect.poll(() => shownValueOf(page, "weather.days")).toBe("730");
    await page.reload();
    await settled(page);
    await expect.poll(() => shownValueOf(page, "weather.days")).toBe("730");
    expect(complaints).toEqual([]);
    await context.close();
  });
});
