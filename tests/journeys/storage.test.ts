import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { launch, open, row, settled, shownValueOf, type, unfold } from "./browser.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(async () => {
  await browser.close();
});

/** A duration as it is shown, such as "1 h 53 min" [min]. */
function minutes(text: string): number {
  const each = { d: 1440, h: 60, min: 1, s: 1 / 60 };
  const parts = [...text.matchAll(/([\d.]+)\s*(days?|h|min|s)\b/g)];
  expect(parts.length, text).toBeGreaterThan(0);
  return parts.reduce(
    (sum, [, amount, unit = ""]) => sum + Number(amount) * (each[unit as keyof typeof each] ?? each.d),
    0,
  );
}

/** Drags a part of the drawing upwards to where it is wanted, in great steps while it is far from there. */
async function dragUp(
  page: Page,
  name: RegExp,
  where: () => Promise<"far" | "near" | "there">,
): Promise<void> {
  const box = await page.locator(".drawing").getByRole("button", { name }).locator(".hit").boundingBox();
  if (!box) throw new Error("The part is not drawn.");
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  let at = await where();
  for (let up = 4; up < 300 && at !== "there"; up += at === "far" ? 5 : 1) {
    await page.mouse.move(x, y - up);
    // What a move changes is painted by the next frame.
    await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => setTimeout(done))));
    at = await where();
  }
  await page.mouse.up();
  await settled(page);
}

describe("stored water, in a real browser", () => {
  test("raised by 2 ft in the drawing, the main tank refills the small one sooner, and undo lowers it in one step", async () => {
    const { page, context, complaints } = await open(browser, { used: true });
    const stand = () => shownValueOf(page, "totes.stand_height");
    await expect.poll(() => stand()).toMatch(/^1\sft$/);
    const before = minutes(await shownValueOf(page, "hose_down.refill_time"));
    await unfold(page, "totes");
    await dragUp(page, /^Two totes/, async () => {
      const said = await stand();
      if (/^3\sft$/.test(said)) return "there";
      return Number.parseFloat(said) < 2 ? "far" : "near";
    });
    await expect.poll(() => stand()).toMatch(/^3\sft$/);
    const after = minutes(await shownValueOf(page, "hose_down.refill_time"));
    expect(after).toBeLessThan(before);
    await expect
      .poll(async () => minutes(await row(page, "hose_down.refill_time").locator(".moved").innerText()))
      .toBe(before);
    await page.getByRole("button", { name: "Undo" }).click();
    await settled(page);
    await expect.poll(() => stand()).toMatch(/^1\sft$/);
    await expect.poll(async () => minutes(await shownValueOf(page, "hose_down.refill_time"))).toBe(before);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("what is held stays what every later edit is measured from, until it is let go", async () => {
    const { page, context, complaints } = await open(browser, { used: true });
    const moved = async (id: string) => {
      await unfold(page, id);
      return row(page, id).locator(".moved");
    };
    const short = async () => Number.parseFloat(await shownValueOf(page, "season.days_short"));
    await page.getByRole("button", { name: "Hold", exact: true }).click();
    const before = await short();
    await type(page, "totes.capacity", "300 gal");
    const was = async () =>
      Number.parseFloat((await (await moved("season.days_short")).innerText()).replace(/^was\s/, ""));
    expect(await was()).toBe(before);
    await type(page, "totes.capacity", "350 gal");
    await type(page, "weather.rain_scale", "90 %");
    await expect.poll(() => short()).toBeLessThan(before);
    // What was held, not what stood before the last edit.
    expect(await was()).toBe(before);
    // Weights did not move with the rain: measured from what was held they are still told.
    await expect
      .poll(async () => await (await moved("totes.full_weight")).innerText())
      .toMatch(/^was\s[\d,]+$/);
    for (let step = 0; step < 3; step++) await page.getByRole("button", { name: "Undo" }).click();
    await settled(page);
    expect(await (await moved("season.days_short")).count()).toBe(0);
    expect(await (await moved("totes.full_weight")).count()).toBe(0);
    // Nothing has moved, so that what is held stands only behind its chip, which lets go of nothing by itself.
    await page.locator(".tools .pill").click();
    await page.locator(".menu-panel.held", { hasText: "Nothing has changed since." }).waitFor();
    await page.getByRole("button", { name: "Let go", exact: true }).click();
    await type(page, "totes.capacity", "280 gal");
    await type(page, "weather.rain_scale", "95 %");
    expect(await (await moved("totes.full_weight")).count()).toBe(0);
    expect(complaints).toEqual([]);
    await context.close();
  });
});
