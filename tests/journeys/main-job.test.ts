import { fileURLToPath } from "node:url";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { tries } from "../tries.ts";
import { axe } from "./axe.ts";
import {
  DESK,
  enter,
  hand,
  launch,
  open,
  PHONE,
  row,
  settled,
  shownValueOf,
  tool,
  type,
  unfold,
} from "./browser.ts";

const SEATTLE = fileURLToPath(new URL("../fixtures/seattle-weather.csv", import.meta.url));

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(async () => {
  await browser.close();
});

const days = (text: string): number => Number.parseFloat(text.replaceAll(",", ""));

describe("the main job, in a real browser", () => {
  test("the demo opens with its answers, the tank is doubled in another unit, and undo, redo and reload keep it", async () => {
    const { page, context, complaints } = await open(browser);
    await expect.poll(() => page.locator("h1.lead").innerText()).toMatch(/Full tanks last\s+\d/);
    const before = days(await shownValueOf(page, "totes.days_of_autonomy"));
    const reachable = days(await shownValueOf(page, "totes.reachable"));
    await row(page, "totes.days_of_autonomy").locator(".label").click();
    await page.locator(".working").waitFor();

    await type(page, "totes.capacity", "2082 L");
    const after = days(await shownValueOf(page, "totes.days_of_autonomy"));
    const gained = days(await shownValueOf(page, "totes.reachable")) - reachable;
    const draw = reachable / before;
    expect(after - before).toBeCloseTo(gained / draw, 0);
    await expect
      .poll(() => row(page, "totes.days_of_autonomy").locator(".moved").innerText())
      .toContain(`was ${before}`);
    await expect
      .poll(() => page.locator(".working .sum, .working .inputs").first().innerText())
      .toContain("1,0");
    await unfold(page, "season.share_met");
    await expect
      .poll(() => row(page, "season.share_met").locator(".moved").innerText())
      .toMatch(/^was\s\d+\s%$/);

    await page.getByRole("button", { name: "Undo" }).click();
    await settled(page);
    await expect.poll(async () => days(await shownValueOf(page, "totes.days_of_autonomy"))).toBe(before);
    await page.getByRole("button", { name: "Redo" }).click();
    await settled(page);
    await expect.poll(async () => days(await shownValueOf(page, "totes.days_of_autonomy"))).toBe(after);
    await page.getByText("Saved", { exact: true }).waitFor();
    await page.reload();
    await settled(page);
    await expect.poll(async () => days(await shownValueOf(page, "totes.days_of_autonomy"))).toBe(after);
    await expect.poll(() => shownValueOf(page, "totes.capacity")).toContain("2,082");
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("a rain record comes in: the unit is asked, the days and years are said, the answers move", async () => {
    const { page, context, complaints } = await open(browser, { used: true });
    const before = await shownValueOf(page, "season.share_met");
    await unfold(page, "weather");
    await page.getByLabel("Rain record file").setInputFiles(SEATTLE);
    await page
      .getByRole("radio", { name: /millimet|\bmm\b/i })
      .first()
      .check();
    await page.getByRole("button", { name: "Take it" }).click();
    await page.locator(".import summary", { hasText: "came in" }).click();
    await settled(page);
    const facts = await page.locator(".import").innerText();
    expect(facts).toContain("1461 days");
    await page.getByLabel("Units").selectOption("metric");
    await settled(page);
    await expect.poll(() => shownValueOf(page, "weather.days")).toBe("1,461");
    // The row says three figures, as a grower does; its working says the rest.
    await expect.poll(() => shownValueOf(page, "weather.mean_yearly_rain")).toBe("1,110 mm");
    await row(page, "weather.mean_yearly_rain").locator(".label").click();
    await page.locator(".working", { hasText: /\b1,107\smm/ }).waitFor();
    await expect.poll(() => shownValueOf(page, "weather.longest_dry_run")).toBe("81");
    await expect.poll(() => shownValueOf(page, "season.share_met")).not.toBe(before);
    await page.getByText("Saved", { exact: true }).waitFor();
    await page.reload();
    await settled(page);
    await expect.poll(() => shownValueOf(page, "weather.days")).toBe("1,461");
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("a file that is no rain record is refused with its line", async () => {
    const { page, context } = await open(browser, { used: true });
    await unfold(page, "weather");
    await page.getByLabel("Rain record file").setInputFiles({
      name: "odd.csv",
      mimeType: "text/csv",
      buffer: Buffer.from("date,rain mm\n2020-01-01,1\n2020-01-02,a lot\n2020-01-03,2\n"),
    });
    const refused = page.locator(".import [role=alert]");
    await refused.waitFor();
    await expect.poll(() => refused.innerText()).toContain("3");
    await context.close();
  });

  test("cards are added, linked, renamed and taken out; what cannot be read is refused with its place", async () => {
    const { page, context, complaints } = await open(browser, { viewport: PHONE, used: true });
    await tool(page, "Worksheets");
    await page.getByRole("button", { name: /An empty one/ }).click();
    await settled(page);
    await expect.poll(() => page.locator("h1.lead").innerText()).toContain("Nothing is here yet");
    await page.getByRole("button", { name: "+ Tank" }).click();
    await row(page, "tank.capacity").waitFor();
    // Pressed again, the group of the open part leads back to the list of all.
    await page.locator('.zone-strip [aria-pressed="true"]').click();
    await page.getByRole("button", { name: "+ Roof" }).click();
    await row(page, "roof.drains_to").selectOption("tank");
    await settled(page);
    await type(page, "roof.footprint", "20 ft * 15 ft");
    await expect.poll(() => shownValueOf(page, "roof.footprint")).toContain("300");
    await unfold(page, "tank.capacity");
    const name = page.getByLabel("Name of this Tank");
    await name.fill("Old drum");
    await name.press("Enter");
    await enter(page, "tank.capacity", "5 fathoms");
    await expect.poll(() => page.locator(".wrong mark").first().innerText()).toContain("fathoms");
    await hand(page).press("Escape");
    await page.getByLabel("More for Old drum").click();
    await page.getByRole("button", { name: "Take it out" }).click();
    await settled(page);
    await unfold(page, "roof");
    await expect.poll(() => row(page, "roof.drains_to").inputValue()).toBe("");
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("on a phone no part is open at first; one that is asked for opens, and closes again", async () => {
    const { page, context, complaints } = await open(browser, { viewport: PHONE });
    await expect.poll(() => page.locator("article.card").count()).toBe(0);
    // An answer's working opens under the answers, and nothing else moves.
    await page.locator("h1.lead .number").first().click();
    await page.locator(".answer-working").waitFor();
    await expect.poll(() => page.locator("article.card").count()).toBe(0);
    await page.keyboard.press("Escape");
    await page.locator(".answer-working").waitFor({ state: "detached" });
    await page
      .locator(".zone-strip")
      .getByRole("button", { name: /^Tanks/ })
      .click();
    await row(page, "totes.capacity").waitFor();
    await page
      .locator(".zone-strip")
      .getByRole("button", { name: /^Tanks/ })
      .click();
    await expect.poll(() => page.locator("article.card").count()).toBe(0);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("keyboard alone: a number is found, stepped with the arrow keys, and its working opened", async () => {
    const { page, context } = await open(browser, { used: true });
    const before = await shownValueOf(page, "totes.stand_height");
    await row(page, "totes.stand_height").focus();
    for (let press = 0; press < 3; press++) {
      await page.keyboard.press("ArrowUp");
      await expect.poll(() => hand(page).evaluate((field) => field === document.activeElement)).toBe(true);
    }
    await page.keyboard.press("Tab");
    await settled(page);
    await expect.poll(() => shownValueOf(page, "totes.stand_height")).not.toBe(before);
    await row(page, "totes.full_weight").getByRole("button").first().focus();
    await page.keyboard.press("Enter");
    await page.locator(".working").waitFor();
    await expect.poll(() => page.locator(".working").innerText()).toContain("Source:");
    await context.close();
  });

  // On a desk, too, with LONG=1.
  test.each([PHONE, DESK].slice(0, tries(2, 1)))(
    "nothing is cut off at %o, light and dark, and every control has a name",
    async (viewport) => {
      const { page, context, complaints } = await open(browser, { viewport, used: true });
      for (const colorScheme of ["light", "dark"] as const) {
        await page.emulateMedia({ colorScheme });
        await expect
          .poll(() => page.evaluate(() => document.documentElement.scrollWidth - innerWidth))
          .toBeLessThanOrEqual(0);
        const violations = await axe(page, true);
        expect(violations).toEqual([]);
      }
      expect(complaints).toEqual([]);
      await context.close();
    },
  );
});
