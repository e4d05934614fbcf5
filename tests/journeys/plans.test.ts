// Plans beside the sheet: hold, turn, see what moved, keep it beside; share, and somebody else sees the same columns.

import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { isLong, tries } from "../tries.ts";
import { axe } from "./axe.ts";
import {
  DESK,
  launch,
  open,
  openAt,
  PHONE,
  row,
  settled,
  shownValueOf,
  tool,
  type,
  unfold,
} from "./browser.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(async () => {
  await browser.close();
});

const table = (page: Page) => page.locator(".plans-beside table");

/** Every cell as it is read, once the plans are worked out. */
async function columns(page: Page): Promise<readonly (readonly string[])[]> {
  await settled(page);
  await table(page).waitFor();
  await page.waitForFunction(() => !document.querySelector(".plans-beside td.old"));
  const rows = await table(page).locator("tbody tr").all();
  return Promise.all(rows.map((row) => row.locator("th, td .value").allInnerTexts()));
}

const heads = async (page: Page): Promise<readonly string[]> =>
  (await table(page).locator("thead th").allInnerTexts()).map((text) => text.replaceAll("\u00a0", " "));

/** Turns a number, and looks at what moved. */
async function turn(page: Page, id: string, text: string): Promise<void> {
  await type(page, id, text);
  await page.getByRole("button", { name: "Done", exact: true }).click();
}

const press = (page: Page, name: string) => page.getByRole("button", { name, exact: true }).click();

/** On a phone, too, with LONG=1. */
const WHERE = [
  ["a desk", DESK],
  ["a phone", PHONE],
] as const;

describe.each(WHERE.slice(0, tries(2, 1)))("on %s", (_where, viewport) => {
  const isPhone = viewport === PHONE;

  test("three plans are kept, taken over and undone, and a second profile that gets the link sees the same four columns", async () => {
    const { page, context, complaints } = await open(browser, { viewport, asks: true });
    const held = await shownValueOf(page, "totes.capacity");
    await tool(page, "Hold");
    await turn(page, "totes.capacity", "550 gal");
    if (isPhone) {
      await tool(page, "Side by side");
      await press(page, "Keep this beside");
    } else {
      const moved = page.locator(".moved-list");
      await expect.poll(() => moved.locator(".changed").innerText()).toContain("550");
      await moved.getByRole("button", { name: "Keep beside" }).click();
    }
    await columns(page);
    await expect.poll(() => shownValueOf(page, "totes.capacity")).toBe(held);
    // From here on it is two touches a plan: turn, and keep.
    await turn(page, "barn_roof.footprint", "600 ft2");
    if (isPhone) await tool(page, "Side by side");
    await press(page, "Keep this beside");
    await columns(page);
    await turn(page, "porch_roof.footprint", "300 ft2");
    if (isPhone) await tool(page, "Side by side");
    await press(page, "Keep this beside");
    const seen = await columns(page);
    const names = await heads(page);
    expect(names).toHaveLength(4);
    expect(names[1]).toContain("550 gal");
    expect(names[2]).toContain("600 ft²");
    expect(names[3]).toContain("300 ft²");
    expect(seen).toHaveLength(5);
    for (const cells of seen) expect(cells).toHaveLength(5);
    expect(seen[0]?.[0]).toBe("Short days, worst season");
    expect(new Set(seen[0]?.slice(1)).size).toBeGreaterThan(1);
    expect(await axe(page)).toEqual([]);

    await tool(page, "Share");
    const link = await page.getByLabel("The link", { exact: true }).inputValue();
    await page.keyboard.press("Escape");
    const other = await openAt(browser, new URL(link).hash, { viewport, asks: true, whole: false });
    await other.page.getByRole("button", { name: "Keep this", exact: true }).waitFor();
    await settled(other.page);
    await tool(other.page, "Side by side");
    await expect.poll(() => columns(other.page)).toEqual(seen);
    await expect.poll(async () => (await heads(other.page)).slice(1)).toEqual(names.slice(1));
    await other.context.close();

    await table(page).locator(".plan-head .name").first().click();
    await press(page, "Take over");
    await expect
      .poll(() => table(page).locator(".plan-head .name").first().innerText())
      .toContain("As it was");
    const over = await columns(page);
    expect(over[0]?.[1]).toBe(seen[0]?.[2]);
    expect(over[0]?.[2]).toBe(seen[0]?.[1]);
    await tool(page, "Undo");
    await expect.poll(() => columns(page)).toEqual(seen);

    await table(page).locator(".plan-head .name").last().click();
    await page.locator(".acts input").fill("More roof");
    await page.locator(".acts input").press("Enter");
    await expect
      .poll(() => table(page).locator(".plan-head .name").last().innerText())
      .toContain("More roof");
    await table(page).locator(".plan-head .name").last().click();
    await press(page, "Drop");
    await expect.poll(() => heads(page)).toHaveLength(3);
    expect(complaints).toEqual([]);
    await context.close();
  });
});

// With LONG=1; the plans themselves are tried just above.
test.runIf(isLong)(
  "on a desk a bigger tank and a second roof are two touches each, and going back to what is held keeps them",
  async () => {
    const { page, context } = await open(browser, { viewport: DESK, asks: true });
    await unfold(page, "totes.capacity");
    await tool(page, "Hold");
    await tool(page, "Side by side");
    await row(page, "totes.capacity").click();
    // The first touch, and the second.
    await page.locator(".hand .step").last().click();
    await press(page, "Keep this beside");
    await columns(page);
    await unfold(page, "barn_roof");
    await press(page, "+ Roof");
    await press(page, "Keep this beside");
    await columns(page);
    const kept = await heads(page);
    expect(kept).toHaveLength(3);
    expect(kept[2]).toMatch(/^With /);
    await type(page, "totes.capacity", "900 gal");
    await press(page, "Done");
    await press(page, "Go back");
    await expect.poll(() => heads(page)).toEqual(kept);
    await expect.poll(() => shownValueOf(page, "totes.capacity")).toContain("275");
    await context.close();
  },
);
