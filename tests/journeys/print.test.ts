import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { DESK, launch, open, PHONE, settled, shownValueOf, tool, unfold } from "./browser.ts";

const TEMPLATES = new URL("../../templates/", import.meta.url);

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

describe("on paper", () => {
  test.each([
    ["a phone", PHONE, "dark"],
    ["a desk", DESK, "light"],
  ] as const)("the demo is one A4 page from %s, by day and night", async (_, viewport, colorScheme) => {
    const { page, context } = await open(browser, { viewport, colorScheme });
    expect(pagesOf(await page.pdf({ format: "A4", preferCSSPageSize: true }))).toBe(1);
    expect(pagesOf(await page.pdf({ format: "A4", printBackground: true }))).toBe(1);
    await context.close();
  });

  test("every starter is one page of A4 and of letter paper", async () => {
    const { page, context } = await open(browser);
    for (const name of readdirSync(TEMPLATES)) {
      await tool(page, "Worksheets");
      await page
        .locator('input[type="file"][accept*="json"]')
        .setInputFiles(fileURLToPath(new URL(name, TEMPLATES)));
      const { title } = JSON.parse(readFileSync(new URL(name, TEMPLATES), "utf8"));
      await expect.poll(() => page.getByLabel("Name of this worksheet").inputValue()).toContain(title);
      await settled(page);
      for (const format of ["A4", "Letter"])
        expect(`${name}: ${pagesOf(await page.pdf({ format }))}`).toBe(`${name}: 1`);
    }
    await context.close();
  });

  test("it has the drawing uncut, what to buy with the total, what to set, when to water, and every caution once", async () => {
    const { page, context, complaints } = await open(browser, { viewport: PHONE });
    await unfold(page, "tunnel_bed");
    const volume = await shownValueOf(page, "tunnel_bed.watering_volume");
    const interval = await shownValueOf(page, "tunnel_bed.watering_interval");
    await page.setViewportSize(PAPER);
    await page.emulateMedia({ media: "print" });
    await page.evaluate(() => dispatchEvent(new Event("beforeprint")));
    const box = await page.locator(".drawing .paper svg").boundingBox();
    expect(box?.x).toBeGreaterThanOrEqual(0);
    expect((box?.x ?? 0) + (box?.width ?? 0)).toBeLessThanOrEqual(PAPER.width);
    expect(await page.locator(".drawing .paper text", { hasText: "Long bed" }).count()).toBe(1);
    const paper = page.locator(".printed");
    const text = (await paper.innerText()).replaceAll("\u00a0", " ");
    // The demo's five prices: 85, 120, 38, 42 and 15.
    expect(text).toMatch(/All together\s+\$300/);
    expect(text).toMatch(/Hose to the tub: .*Float valve seat 3\.2 mm/);
    expect(text).toContain(`Small tunnel\t${volume} every ${interval}, by Pump and wand, Two cans`);
    expect(text.match(/Roof water is not drinking water/g)).toHaveLength(1);
    expect(text).toContain("Tool barn roof, Porch roof");
    expect(text).toContain("A stand that gives way kills");
    for (const gone of [".tools", ".zone-part", ".zone-strip", ".foot"])
      for (const one of await page.locator(gone).all()) expect(await one.isVisible()).toBe(false);
    expect(complaints).toEqual([]);
    await context.close();
  });
});
