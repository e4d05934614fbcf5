import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { launch, open, PHONE, row, settled, shownValueOf, type, unfold } from "./browser.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(async () => {
  await browser.close();
});

/** CSS pixels of a millimetre: 96 to the inch, by definition. */
const PIXELS = 96 / 25.4;

describe("what is measured in the garden, in a real browser", () => {
  test("a hump typed into the route says where it is and what to do; taken out again, it is gone", async () => {
    const { page, context, complaints } = await open(browser, { viewport: PHONE, used: true });
    const card = page.locator("#hose_down");
    await unfold(page, "hose_down");
    await card.locator("details.minor > summary").click();
    const points = row(page, "hose_down.route");
    await expect.poll(() => points.locator("li").count()).toBe(4);
    await points.getByRole("button", { name: "Add a point" }).click();
    await settled(page);
    // Behind the last point, at 68 ft; now it stands higher than the water in the totes.
    await points.getByLabel("Point 4, height").fill("2.4 m");
    await points.getByLabel("Point 4, height").press("Enter");
    await settled(page);
    await page.locator("#hose_down").getByText("runs only as a siphon").first().waitFor();
    await expect.poll(() => card.innerText()).toMatch(/at 68\s*ft/);
    await points.getByLabel("Take point 4 out").click();
    await settled(page);
    await expect.poll(() => card.getByText("runs only as a siphon").count()).toBe(0);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("a timed refill teaches the valve; its lesson kept, a raised tank fills faster than was timed", async () => {
    const { page, context, complaints } = await open(browser, { viewport: PHONE, used: true });
    await unfold(page, "hose_down");
    const refill = row(page, "hose_down.refill_time");
    await refill.locator(".label").click();
    await refill.getByLabel("You measured").fill("3 h");
    await refill.getByLabel("You measured").press("Enter");
    await settled(page);
    await expect.poll(() => shownValueOf(page, "hose_down.refill_time")).toMatch(/^3 h/);
    await refill.getByRole("button", { name: /^Keep the opening/ }).click();
    await settled(page);
    await expect.poll(() => shownValueOf(page, "hose_down.refill_time")).toBe("3 h");
    await expect.poll(() => refill.getByLabel("You measured").inputValue()).toBe("");
    // The drop is 4.63 ft: this doubles it, and the small seat governs, so 3 h becomes 3 h over the square root of 2.
    await type(page, "totes.stand_height", "5.63 ft");
    await expect.poll(() => shownValueOf(page, "hose_down.refill_time")).toMatch(/^2 h [5-9] min/);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("the dip-stick strip stands at true scale on the page and in print", async () => {
    const { page, context, complaints } = await open(browser, { used: true });
    await page.getByLabel("More for Two totes").click();
    await page.locator("#totes").getByRole("button", { name: "Dip-stick strip" }).click();
    const strip = page.locator("dialog.dip");
    await strip.waitFor();
    // The check line of 100 mm with a millimetre of room at both ends.
    const check = async () => ((await strip.locator("svg.check").boundingBox())?.width ?? 0) / PIXELS;
    await expect.poll(() => strip.locator("svg.check").getAttribute("viewBox")).toBe("-1 0 102 6");
    expect(await check()).toBeCloseTo(102, 1);
    const pieces = await strip.locator(".pieces svg").all();
    let height = 0;
    for (const piece of pieces) height += (await piece.boundingBox())?.height ?? 0;
    // The demo's water stands 39 in.
    expect(height / PIXELS).toBeCloseTo(39 * 25.4, 0);
    await page.emulateMedia({ media: "print" });
    await expect.poll(() => page.locator("#totes").isVisible()).toBe(false);
    expect(await check()).toBeCloseTo(102, 1);
    await page.emulateMedia({ media: "screen" });
    await strip.getByRole("button", { name: "Close" }).click();
    await expect.poll(() => page.locator("dialog.dip").count()).toBe(0);
    expect(complaints).toEqual([]);
    await context.close();
  });
});
