// The drawing and the record in a real browser: one row at every width, things that open their part, seasons and days.

import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { tries } from "../tries.ts";
import { DESK, launch, open, PHONE, row, settled } from "./browser.ts";
import { DEMO_SEASONS } from "./starters.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(async () => {
  await browser.close();
});

const part = (page: Page, name: RegExp) => page.locator(".drawing").getByRole("button", { name });

/** y of the water's surfaces in the drawing, top to bottom as they are painted. */
const surfaces = (page: Page) =>
  page
    .locator(".drawing .water-surface")
    .evaluateAll((paths) => paths.map((path) => Math.round(path.getBoundingClientRect().top)));

/** Words of the drawing that stand out of it, or on another. */
const misplaced = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const zone = document.querySelector(".drawing")?.getBoundingClientRect() ?? new DOMRect();
    const words = [...document.querySelectorAll(".drawing svg text")].map((text) => ({
      said: text.textContent ?? "",
      box: text.getBoundingClientRect(),
    }));
    const isOut = (box: DOMRect) =>
      box.left < zone.left - 0.5 || box.right > zone.right + 0.5 || box.bottom > zone.bottom + 0.5;
    const isOver = (box: DOMRect, other: DOMRect) =>
      box.left < other.right - 1 &&
      other.left < box.right - 1 &&
      // Lines of one label stand closer than the boxes of their letters are high.
      box.top + 4 < other.bottom - 4 &&
      other.top + 4 < box.bottom - 4;
    return words
      .filter(({ box }, at) => isOut(box) || words.slice(at + 1).some((other) => isOver(box, other.box)))
      .map(({ said }) => said);
  });

/** The last two with LONG=1. */
const WHERE = [
  ["a phone", PHONE],
  ["a desk", DESK],
  ["a tablet", { width: 800, height: 1000 }],
  ["a wide desk", { width: 1920, height: 1000 }],
] as const;

describe("the place", () => {
  test.each(WHERE.slice(0, tries(4, 2)))(
    "on %s it is one row in its zone: one line of ground, no word outside or on another",
    async (_, viewport) => {
      const { page, context, complaints } = await open(browser, { viewport, used: true });
      await expect.poll(() => page.locator(".drawing svg path.ground").count()).toBe(1);
      await expect.poll(() => page.locator(".drawing svg text").count()).toBeGreaterThan(2);
      await expect.poll(() => misplaced(page)).toEqual([]);
      expect(complaints).toEqual([]);
      await context.close();
    },
  );

  test("pressing a thing opens its part, by finger and by key, and it stands out", async () => {
    const { page, context, complaints } = await open(browser, { used: true });
    await part(page, /^Second-hand battery/).click();
    await page.locator('.drawing [aria-current="true"][aria-label^="Second-hand battery"]').waitFor();
    await expect.poll(() => page.locator(".drawing .wash").count()).toBe(1);
    await part(page, /^Tool barn roof/).focus();
    await page.keyboard.press("Enter");
    await page.locator('.drawing [aria-current="true"][aria-label^="Tool barn roof"]').waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("what was held is outlined, dashed, once the tank holds more", async () => {
    const { page, context, complaints } = await open(browser);
    await page.getByRole("button", { name: /^Hold/ }).first().click();
    await part(page, /^Two totes/).focus();
    for (let step = 0; step < 6; step++) await page.keyboard.press("ArrowUp");
    await settled(page);
    await expect
      .poll(() =>
        page
          .locator(".drawing path.held")
          .evaluateAll((paths) => paths.filter((path) => path.getAttribute("d")).length),
      )
      .toBeGreaterThan(1);
    await expect.poll(() => row(page, "totes.stand_height").count()).toBe(1);
    expect(complaints).toEqual([]);
    await context.close();
  });
});

describe("the record", () => {
  test("pressing a season or an arrow key shows that season's water", async () => {
    const { page, context, complaints } = await open(browser, { used: true });
    const strip = page.locator(".time [role=radiogroup]");
    const chosen = () => strip.locator('[aria-checked="true"]').getAttribute("data-year");
    const worst = Number(await chosen());
    await expect.poll(() => strip.getByRole("radio").count()).toBe(DEMO_SEASONS);
    // Neither the worst, which is chosen at first, nor the last of them.
    const year = worst === 2002 ? 2001 : 2002;
    await strip.locator(`[data-year="${year}"]`).click();
    await expect.poll(() => chosen()).toBe(`${year}`);
    await expect.poll(() => page.locator(".time .year-water h2").innerText()).toContain(`${year}`);
    await page.keyboard.press("ArrowRight");
    await expect.poll(() => chosen()).toBe(`${year + 1}`);
    await page.keyboard.press("Home");
    await expect.poll(() => chosen()).toBe("2001");
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("the year's water is the slider of days: keys and a drag move the water in the drawing", async () => {
    const { page, context, complaints } = await open(browser, { used: true });
    const slider = page.getByRole("slider", { name: "Day that the drawing shows" });
    await slider.focus();
    await page.keyboard.press("Home");
    await expect.poll(() => slider.getAttribute("aria-valuetext")).toContain("Jan\u00a01");
    // The water comes to the first day in one frame, and is drawn in the next.
    await page.evaluate(
      () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))),
    );
    const winter = await surfaces(page);
    await page.keyboard.press("ArrowRight");
    await expect.poll(() => slider.getAttribute("aria-valuetext")).toContain("Jan\u00a02");
    const box = await slider.locator(".hit").boundingBox();
    if (!box) throw new Error("The slider is not drawn.");
    await page.mouse.move(box.x + 40, box.y + box.height / 2);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width * 0.62, box.y + box.height / 2, { steps: 6 });
    await page.mouse.up();
    await expect.poll(() => slider.getAttribute("aria-valuetext")).toMatch(/Aug/);
    await expect.poll(() => surfaces(page)).not.toEqual(winter);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("the year runs, and pauses", async () => {
    const { page, context, complaints } = await open(browser, { used: true });
    const slider = page.getByRole("slider", { name: "Day that the drawing shows" });
    const day = async () => Number(await slider.getAttribute("aria-valuenow"));
    const before = await day();
    await page.getByRole("button", { name: "Run the year" }).click();
    await expect.poll(day).toBeGreaterThan(before + 3);
    await page.getByRole("button", { name: "Pause" }).click();
    const stopped = await day();
    await page.waitForTimeout(300);
    expect(await day()).toBe(stopped);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("the seasons are a table too, for those who cannot look", async () => {
    const { page, context, complaints } = await open(browser, { viewport: PHONE, used: true });
    await page.locator(".time").getByText("As a table").first().click();
    // Under it stands the year's water, month by month.
    const rows = page.locator(".time table").first().locator("tbody tr");
    await expect.poll(() => rows.count()).toBe(DEMO_SEASONS);
    await expect.poll(() => rows.first().innerText()).toMatch(/^2001\s/);
    expect(complaints).toEqual([]);
    await context.close();
  });
});
