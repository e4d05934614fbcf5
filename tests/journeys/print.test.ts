import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { isLong, tries } from "../tries.ts";
import { DESK, launch, open, openAt, PHONE, settled, shownValueOf, type, unfold } from "./browser.ts";
import { openKept } from "./kept.ts";
import { lend } from "./pages.ts";
import { FULLEST, fileOf } from "./starters.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(async () => {
  await browser.close();
});

/** Pages of a PDF: each has an object of the type Page; the tree over them is of the type Pages. */
const pagesOf = (pdf: Buffer): number => pdf.toString("latin1").match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;

// A4 less the margins of 10 mm, at 96 pixels an inch.
const PAPER = { width: Math.round(((210 - 20) / 25.4) * 96), height: Math.round(((297 - 20) / 25.4) * 96) };

const plain = (text: string): string => text.replaceAll("\u00a0", " ");

const FROM = [
  ["a phone", PHONE, "dark"],
  ["a desk", DESK, "light"],
] as const;

/** The page as it is printed. */
async function onPaper(page: Page): Promise<void> {
  await page.setViewportSize(PAPER);
  await page.emulateMedia({ media: "print" });
  await page.evaluate(() => dispatchEvent(new Event("beforeprint")));
  await page.locator(".printed").waitFor();
}

describe("on paper", () => {
  // From a desk, too, with LONG=1.
  test.each(FROM.slice(0, tries(2, 1)))(
    "the demo is two A4 pages from %s, by day and night",
    async (_, viewport, colorScheme) => {
      const { page, context } = await open(browser, { viewport, colorScheme });
      // What only paper shows is fetched when the page has stood for a while.
      await expect
        .poll(async () => pagesOf(await page.pdf({ format: "A4", preferCSSPageSize: true })))
        .toBe(2);
      expect(pagesOf(await page.pdf({ format: "A4", printBackground: true }))).toBe(2);
      await context.close();
    },
  );

  test("printed before the season is in, it says so over all, and of each number instead of dots", async () => {
    const { page, context } = await openAt(browser, "", {
      before: () => {
        // Workers that never answer.
        Worker.prototype.postMessage = () => undefined;
      },
    });
    await page.locator(".answers h1").first().waitFor();
    await onPaper(page);
    const text = plain(await page.locator(".printed").innerText());
    expect(text).toContain("Printed before the season was worked out");
    expect(text).toContain("not worked out yet");
    expect(text).not.toContain("…");
    await context.close();
  });

  test("every starter (LONG=1; else the two with most to print) is a page and its page of cautions, on A4 and on letter paper", async () => {
    const { page, context } = await lend(browser, {
      viewport: DESK,
      colorScheme: "light",
      glass: 1,
      asks: isLong,
    });
    for (const name of FULLEST) {
      const file = fileOf(name);
      await openKept(page, file);
      await expect.poll(() => page.getByLabel("Name of this worksheet").inputValue()).toContain(file.title);
      await settled(page);
      for (const format of ["A4", "Letter"])
        await expect.poll(async () => `${name}: ${pagesOf(await page.pdf({ format }))}`).toBe(`${name}: 2`);
    }
    await context.close();
    // Ten worksheets are worked out, and twenty papers made.
  }, 300_000);

  test("first the answers, the place over the whole width, parts with what is set, and beds; then cautions by danger, each once", async () => {
    const { page, context, complaints } = await open(browser, { viewport: PHONE });
    await unfold(page, "tunnel_bed");
    const volume = await shownValueOf(page, "tunnel_bed.watering_volume");
    const interval = await shownValueOf(page, "tunnel_bed.watering_interval");
    const lead = await page.locator("h1.lead").innerText();
    await onPaper(page);
    const paper = page.locator(".printed");
    const box = await paper.locator(".drawing svg").boundingBox();
    expect([box?.x, box?.width].map((px) => Math.round(px ?? 0))).toEqual([0, PAPER.width]);
    await expect.poll(() => paper.locator(".drawing text", { hasText: "Long bed" }).count()).toBe(1);
    const text = plain(await paper.innerText());
    // On a phone it is said in fewer words.
    const numbers = (said: string) => said.match(/\d+/g) ?? [];
    expect(numbers(lead).length).toBeGreaterThan(3);
    await expect
      .poll(async () => numbers(await paper.locator(".said .lead").innerText()))
      .toEqual(numbers(lead));
    // The demo's five prices: 85, 120, 38, 42 and 15.
    expect(text).toMatch(/All together\s+\$300/);
    expect(text).toMatch(
      /Hose to the tub\s+Length \d+ ft; inside bore [\d.]+ in; float valve seat 3\.2 mm; float shuts at depth/,
    );
    expect(text).toContain(`Small tunnel\t${volume} every ${interval}, by Pump and wand, Two cans`);
    expect(text.match(/Roof water is not drinking water/g)).toHaveLength(1);
    expect(text).toContain("Tool barn roof, Porch roof");
    expect(text).toContain("A stand that gives way kills");
    const heads = await paper.locator("h1, h2").allInnerTexts();
    expect(heads).toEqual([
      "Larkspur Bank",
      "Parts: sizes, and what is set by hand",
      "Each bed, when it is driest",
      "Cautions: Larkspur Bank",
      "What can kill",
      "What can hurt",
      "What goes wrong",
      "What else to know",
    ]);
    const dangers = paper.locator(".dangers");
    expect(await dangers.evaluate((element) => getComputedStyle(element).breakBefore)).toBe("page");
    expect((await dangers.boundingBox())?.y).toBeLessThan(PAPER.height);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("nothing of the screen's state is on it: what is saved, held, moved, open, in hand, or in trouble's list", async () => {
    const { page, context } = await open(browser, { used: true });
    await page.getByRole("button", { name: "Hold", exact: true }).click();
    await type(page, "totes.capacity", "400 gal");
    await page.getByText("Saved", { exact: true }).waitFor();
    // All of it is on the screen.
    await page.locator(".zone-place .drawing .held").first().waitFor({ state: "attached" });
    await expect
      .poll(() => page.locator(".zone-place .drawing :is(.wash, .mark)").count())
      .toBeGreaterThan(1);
    await expect.poll(() => page.locator(".answers .was").count()).toBeGreaterThan(0);
    await onPaper(page);
    for (const one of await page.locator("#page > *").all())
      await expect.poll(() => one.isVisible()).toBe((await one.getAttribute("class")) === "printed");
    const paper = page.locator(".printed");
    await expect
      .poll(() => paper.locator(".was, .moved, .held, .wash, .mark, g.open, [aria-expanded=true]").count())
      .toBe(0);
    await expect.poll(async () => plain(await paper.innerText())).not.toMatch(/Saved|\bwas\b|\bHeld\b/);
    // Paper gone, the screen is as it was.
    await page.evaluate(() => dispatchEvent(new Event("afterprint")));
    await page.emulateMedia({ media: null });
    await page.setViewportSize(DESK);
    await expect.poll(() => page.locator(".printed").count()).toBe(0);
    await expect.poll(() => page.locator(".answers .was").count()).toBeGreaterThan(0);
    await context.close();
  });
});
