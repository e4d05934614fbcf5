// Not sure of three roofs' run-off: two ends in hand, answers as spans, and what to measure first.

import { type Browser, chromium, type Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { findBrowser, LAUNCH_ARGUMENTS } from "../browser.mjs";
import { tries } from "../tries.ts";
import { axe } from "./axe.ts";
import { DESK, hand, PHONE, row, settled, shownValueOf, take, type } from "./browser.ts";
import { openKept } from "./kept.ts";
import { lend } from "./pages.ts";
import { fileOf } from "./starters.ts";

let browser: Browser;
beforeAll(async () => {
  // One of its own, that compiles for speed as early as usual: seasons are run hundreds of times.
  browser = await chromium.launch({ executablePath: await findBrowser(), args: LAUNCH_ARGUMENTS });
});
afterAll(async () => {
  await browser.close();
});

/** With a record of two years but for LONG=1: three times 128 whole seasons are run meanwhile, on whatever else the machine does. */
const LONG = 400_000;
/** On a desk, too, with LONG=1. */
const WHERE = [PHONE, DESK];
const ROOFS = ["house_roof", "barn_roof", "shed_roof"];
const lead = async (page: Page) => (await page.locator("h1.lead").innerText()).replaceAll("\u00a0", " ");
const said = (page: Page) => page.locator('li.not-sure[aria-busy="false"]');
const thumb = (page: Page, end: "at least" | "at most") =>
  page.getByRole("slider", { name: new RegExp(`, ${end}$`) });

async function toRest(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Done", exact: true }).click();
  if ((page.viewportSize()?.width ?? 0) < 640)
    await page.locator('.zone-strip [aria-pressed="true"]').click();
}

describe("three roofs' run-off", () => {
  test.each(WHERE.slice(0, tries(2, 1)))(
    "said not to be sure at $width, and what to measure first",
    {
      timeout: LONG,
    },
    async (viewport) => {
      const { page, context, complaints } = await lend(browser, {
        viewport,
        colorScheme: "light",
        glass: 1,
        asks: true,
      });
      await openKept(page, fileOf("three-roofs-two-tunnels.json", tries(20, 2)));
      await expect
        .poll(() => page.getByLabel("Name of this worksheet").inputValue())
        .toContain("Three roofs");
      await settled(page);
      await expect.poll(() => page.locator("li.not-sure").count()).toBe(0);
      for (const roof of ROOFS) {
        await take(page, `${roof}.runoff_coefficient`);
        await page.getByRole("button", { name: "Not sure", exact: true }).click();
        await thumb(page, "at least").waitFor();
        await expect.poll(() => hand(page).inputValue()).toMatch(/^0\.\d+ to 0\.\d+$/);
      }
      // A span is turned end by end, and typed as it is said.
      const before = await hand(page).inputValue();
      await thumb(page, "at most").focus();
      await page.keyboard.press("ArrowLeft");
      await expect.poll(() => hand(page).inputValue()).not.toBe(before);
      expect((await hand(page).inputValue()).split(" to ")[0]).toBe(before.split(" to ")[0]);
      await type(page, `${ROOFS[0]}.runoff_coefficient`, "0.5 to 0.95");
      await expect.poll(() => page.locator(".doubt-band").isVisible()).toBe(true);
      expect(await axe(page)).toEqual([]);
      await toRest(page);

      await said(page).waitFor({ timeout: LONG / 2 });
      await expect.poll(() => lead(page)).toMatch(/in the worst on \d+ to \d+ days/);
      const text = await said(page).innerText();
      expect(text).toMatch(/^Short days, worst season: \d+ to \d+\./);
      expect(text).toMatch(
        /matters? most|Most of the spread|Nearly all of the spread|matter about alike|No single doubt/,
      );
      expect(text).toMatch(/dip the tank|bucket|Nothing/i);
      expect(await axe(page)).toEqual([]);

      await expect.poll(() => shownValueOf(page, `${ROOFS[0]}.runoff_coefficient`)).toBe("0.5 to 0.95");
      await expect.poll(() => row(page, `${ROOFS[0]}.runoff_coefficient`).innerText()).toContain("not sure");
      for (const roof of ROOFS) {
        await take(page, `${roof}.runoff_coefficient`);
        await page.getByRole("button", { name: "Sure of it", exact: true }).click();
      }
      await toRest(page);
      await page.locator("li.not-sure").waitFor({ state: "detached" });
      await expect.poll(() => lead(page)).not.toMatch(/\d+ to \d+ days/);
      expect(complaints).toEqual([]);
      await context.close();
    },
  );
});
