// Beds, crops and hands in a real browser: what a grower does with them.

import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { tries } from "../tries.ts";
import { DESK, launch, open, PHONE, row, settled, shownValueOf, tool, type, unfold } from "./browser.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(async () => {
  await browser.close();
});

const FROM = [
  ["a desk", DESK],
  ["a phone", PHONE],
] as const;
const BED = "long_bed";
const amount = (text: string): number => Number.parseFloat(text.replaceAll(",", ""));
const plain = (text: string): string => text.replaceAll("\u00a0", " ");
const card = (page: Page, id: string) => page.locator(`article[id="${id}"]`);

async function choose(page: Page, id: string, label: string): Promise<void> {
  await unfold(page, id);
  await row(page, id).selectOption({ label });
  await settled(page);
}

/** Month by month from the table under a bed's chart: what it would use, what rain brings, what it needs. */
async function months(page: Page, id: string): Promise<ReadonlyMap<string, readonly number[]>> {
  await unfold(page, id);
  const table = card(page, id).locator(".through .plot-table");
  await table.evaluate((details: HTMLDetailsElement) => {
    details.open = true;
  });
  await table.locator("tbody tr").first().waitFor();
  const lines = await table
    .locator("tbody tr")
    .evaluateAll((rows) => rows.map((line) => [...line.children].map((cell) => cell.textContent ?? "")));
  return new Map(lines.map(([month = "", ...cells]) => [month, cells.slice(0, 3).map(amount)]));
}

describe("a bed", () => {
  test("another crop on another day moves its need through the year, drawn and in a table", async () => {
    const { page, context, complaints } = await open(browser, { used: true });
    const before = await months(page, BED);
    const drawn = await card(page, BED).locator(".through .plot-area.water").getAttribute("d");
    const crop = card(page, BED).getByLabel("Crop", { exact: true }).first();
    await crop.selectOption({ label: "Lettuce" });
    await card(page, BED).getByLabel("Planted, month").first().selectOption({ label: "Jul" });
    await settled(page);
    const after = await months(page, BED);
    expect(before.get("Jul")?.[0]).toBeGreaterThan(0);
    expect([...after.keys()]).not.toEqual([...before.keys()]);
    await expect
      .poll(() => card(page, BED).locator(".through .plot-area.water").getAttribute("d"))
      .not.toBe(drawn);
    await expect
      .poll(() => card(page, BED).locator(".through figcaption").innerText())
      .toMatch(/^Needs most in (?:Jul|Aug|Sep)/);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("covered, rain vanishes from its balance", async () => {
    const { page, context } = await open(browser, { used: true });
    await expect.poll(async () => amount(await shownValueOf(page, `${BED}.rain_counted`))).toBeGreaterThan(0);
    const open_ = await months(page, BED);
    expect(Math.max(...[...open_.values()].map(([, rain = 0]) => rain))).toBeGreaterThan(0);
    await choose(page, `${BED}.cover`, "a tunnel or roof");
    await expect.poll(() => shownValueOf(page, `${BED}.rain_counted`)).toMatch(/^0 gal/);
    // Charts follow after the numbers.
    const rains = async () => [...(await months(page, BED)).values()].map(([, rain = 0]) => rain);
    await expect.poll(async () => Math.max(...(await rains()))).toBe(0);
    for (const [month, [use, rain, need]] of await months(page, BED)) {
      expect(rain, month).toBe(0);
      expect(need, month).toBe(use);
    }
    await context.close();
  });

  test("its pump swapped for cans says trips, weight and minutes; undo brings the pump back", async () => {
    const { page, context, complaints } = await open(browser, { used: true });
    const pumped = await shownValueOf(page, `${BED}.time_by_pump`);
    await expect.poll(() => row(page, `${BED}.trips_per_watering`).count()).toBe(0);
    expect(pumped).toMatch(/min/);
    await card(page, BED).getByRole("button", { name: "Swap the pump for cans" }).click();
    await settled(page);
    const trips = amount(await shownValueOf(page, `${BED}.trips_per_watering`));
    expect(trips).toBeGreaterThan(1);
    await expect.poll(() => shownValueOf(page, `${BED}.weight_per_trip`)).toMatch(/lb$/);
    await expect.poll(() => shownValueOf(page, `${BED}.time_by_hand`)).toMatch(/min/);
    await expect.poll(() => row(page, `${BED}.time_by_pump`).count()).toBe(0);
    await page.getByRole("button", { name: "Undo" }).click();
    await settled(page);
    await expect.poll(() => shownValueOf(page, `${BED}.time_by_pump`)).toBe(pumped);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("each says in one sentence what it needs now and whether it will get it, in the list of parts too", async () => {
    const { page, context } = await open(browser, { viewport: PHONE });
    const says = () => page.locator(".list .says");
    await expect.poll(() => says().count()).toBe(2);
    for (const text of await says().allInnerTexts()) {
      expect(plain(text)).toMatch(/^On peak days it needs .*(?:gets it|gets .* of what it would drink)/s);
    }
    await unfold(page, "site.today");
    await row(page, "site.today").fill("2026-07-08");
    await settled(page);
    // A day that is said is in hand, and the hand stands before the groups of parts.
    await page.getByRole("button", { name: "Done", exact: true }).click();
    await page.locator('.zone-strip [aria-pressed="true"]').click();
    await page.waitForFunction(() =>
      [...document.querySelectorAll(".list .says")].every((line) => line.textContent?.includes("wants")),
    );
    for (const text of await says().allInnerTexts()) {
      expect(plain(text)).toMatch(/(?:Today it wants|It wants) .*, (?:and will get it|but gets )/s);
    }
    await context.close();
  });

  test("a season is looked at day by day from the table of seasons, whose figures stand for that year", async () => {
    const { page, context, complaints } = await open(browser, { used: true });
    await unfold(page, BED);
    await card(page, BED).getByText("Season by season").click();
    const year = card(page, BED).locator(".by-season tbody tr").first();
    const short = amount(await year.locator("td").nth(2).innerText());
    await year.getByRole("button").click();
    await settled(page);
    const words = await card(page, BED).locator(".calendar > p").first().innerText();
    const thirsty = Number(/short on (\d+)/.exec(words)?.[1]);
    expect(thirsty).toBe(short);
    // A cross a day, of two strokes; a square a day that something grows.
    const strokes = async (look: string) => {
      const d = await card(page, BED).locator(`.month-sheet ${look}`).getAttribute("d");
      return d?.match(/M/g)?.length ?? 0;
    };
    await expect.poll(async () => (await strokes(".plot-signs.trouble")) / 2).toBe(thirsty);
    // Beans from May 20 and squash from May 25, by the crop table's stages: something grows on about 95 days.
    await expect.poll(() => strokes(".plot-bars.faint")).toBeGreaterThan(90);
    await expect.poll(() => strokes(".plot-bars.faint")).toBeLessThan(110);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("set days of the week are picked by buttons and said in the week's plan", async () => {
    const { page, context } = await open(browser, { used: true });
    await choose(page, `${BED}.rule`, "on set days of the week");
    const days = card(page, BED).getByRole("group", { name: "On these days" });
    await days.getByRole("button", { name: "Fri" }).click();
    await days.getByRole("button", { name: "Sat" }).click();
    await settled(page);
    await unfold(page, "site.today");
    await row(page, "site.today").fill("2026-07-08");
    await settled(page);
    await expect.poll(() => shownValueOf(page, `${BED}.week_days`)).toBe("Saturday and Tuesday");
    await context.close();
  });
});

describe("the week's plan", () => {
  // From a phone, too, with LONG=1.
  test.each(FROM.slice(0, tries(2, 1)))(
    "is asked for, planned from a day, and prints alone on one page: %s",
    async (_, viewport) => {
      const { page, context, complaints } = await open(browser, { viewport, used: true });
      await tool(page, "This week");
      const plan = page.getByRole("dialog", { name: "The week's plan" });
      await plan.getByText("Say what day it is").first().waitFor();
      await expect.poll(() => plan.innerText()).toContain("Say what day it is");
      await plan.locator("input[type=date]").fill("2026-07-08");
      await plan.locator(".plan > li").first().waitFor();
      const lines = await plan.locator(".plan > li").allInnerTexts();
      expect(lines.length).toBe(2);
      for (const line of lines) expect(plain(line)).toMatch(/\d gal/);
      await expect.poll(() => plan.locator(".boxes li").count()).toBeGreaterThan(1);

      await page.emulateMedia({ media: "print" });
      await expect.poll(() => page.locator("main").isVisible()).toBe(false);
      await expect.poll(() => plan.getByRole("button", { name: "Print the plan" }).isVisible()).toBe(false);
      await expect.poll(() => plan.locator(".plan > li").first().isVisible()).toBe(true);
      const pdf = (await page.pdf({ format: "Letter" })).toString("latin1");
      expect(pdf.match(/\/Type\s*\/Page\b(?!s)/g)?.length).toBe(1);
      await page.emulateMedia({ media: "screen" });
      await plan.getByRole("button", { name: "Close" }).click();
      expect(complaints).toEqual([]);
      await context.close();
    },
  );
});

describe("the place", () => {
  test("takes the time of watering as people write it", async () => {
    const { page, context } = await open(browser, { used: true });
    await type(page, "site.water_at", "6:30 am");
    await expect.poll(() => shownValueOf(page, "site.water_at")).toBe("6:30 am");
    await type(page, "site.water_at", "19:30");
    await expect.poll(() => shownValueOf(page, "site.water_at")).toBe("7:30 pm");
    await context.close();
  });
});
