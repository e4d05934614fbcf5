// Which part stands open after one is copied, taken out or brought back, and that it is seen from its head; a thumb that scrolls
// the page over a chart leaves the day alone.

import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { DESK, launch, open, PHONE, unfold } from "./browser.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(async () => {
  await browser.close();
});

const openPart = (page: Page) => page.locator("article.card").getAttribute("id");

/** How far below the top of what scrolls the head of the open part stands [px]. */
const headAt = (page: Page) =>
  page.locator("article.card").evaluate((part) => {
    const zone = part.closest(".zone-part");
    const scrolls = zone !== null && zone.scrollHeight > zone.clientHeight + 1;
    return part.getBoundingClientRect().top - (scrolls ? zone.getBoundingClientRect().top : 0);
  });

async function act(page: Page, name: string): Promise<void> {
  await page.locator(".more-menu > summary").click();
  await page.locator(".more-menu").getByRole("button", { name, exact: true }).click();
}

describe.each([PHONE, DESK])("at %o", (viewport) => {
  test("a copy opens; a part that is taken out leaves the next of its group open, and Undo opens it again", async () => {
    const { page, context, complaints } = await open(browser, { viewport, used: true });
    await unfold(page, "long_bed");
    await act(page, "Make a copy");
    await expect.poll(() => page.locator("article.card input.name").inputValue()).toBe("Long bed (copy)");
    const copy = await openPart(page);
    expect(copy).not.toBe("long_bed");
    await act(page, "Take it out");
    await expect.poll(() => openPart(page)).not.toBe(copy);
    const next = (await openPart(page)) ?? "";
    expect(next).toMatch(/bed|tunnel/);
    const undo = page.getByRole("button", { name: /^Undo/ }).first();
    await undo.click();
    await expect.poll(() => openPart(page)).toBe(copy);
    // The copy itself goes: its group stays.
    await undo.click();
    await expect.poll(() => openPart(page)).toMatch(/bed|tunnel/);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("a part opened from the foot of another is seen from its head", async () => {
    const { page, context, complaints } = await open(browser, { viewport, used: true });
    await unfold(page, "long_bed");
    const kin = page.locator("article.card .kin button").first();
    await kin.scrollIntoViewIfNeeded();
    const was = await openPart(page);
    await kin.click();
    await expect.poll(() => openPart(page)).not.toBe(was);
    await expect.poll(() => headAt(page)).toBeGreaterThanOrEqual(-1);
    expect(await headAt(page)).toBeLessThan(viewport.height / 2);
    await page.locator("article.card .kin .add").last().scrollIntoViewIfNeeded();
    await page.locator("article.card .kin .add").last().click();
    await expect.poll(() => headAt(page)).toBeGreaterThanOrEqual(-1);
    expect(complaints).toEqual([]);
    await context.close();
  });
});

type Point = { readonly x: number; readonly y: number };

/** One finger put down, drawn along and lifted, as the screen tells it. */
async function finger(page: Page, from: Point, to: Point): Promise<void> {
  const devtools = await page.context().newCDPSession(page);
  await devtools.send("Emulation.setTouchEmulationEnabled", { enabled: true });
  const STEPS = 8;
  await devtools.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints: [from] });
  for (let step = 1; step <= STEPS && (from.x !== to.x || from.y !== to.y); step++) {
    const part = step / STEPS;
    const at = { x: from.x + (to.x - from.x) * part, y: from.y + (to.y - from.y) * part };
    await devtools.send("Input.dispatchTouchEvent", { type: "touchMove", touchPoints: [at] });
  }
  await devtools.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
  await devtools.detach();
}

test("a thumb that scrolls over the year's water leaves the day; sideways it moves it, and a touch points at one", async () => {
  const { page, context, complaints } = await open(browser, { viewport: PHONE });
  const day = page.locator('.zone-time [role="slider"].day').first();
  await day.waitFor();
  await day.scrollIntoViewIfNeeded();
  const now = () => day.getAttribute("aria-valuenow");
  const box = await day.locator(".hit").boundingBox();
  if (!box) throw new Error("The chart is not seen.");
  const start = { x: box.x + box.width / 4, y: box.y + box.height / 2 };
  const before = await now();
  await finger(page, start, { x: start.x + 5, y: start.y - 150 });
  expect(await now()).toBe(before);
  await day.scrollIntoViewIfNeeded();
  const again = await day.locator(".hit").boundingBox();
  const y = (again?.y ?? 0) + (again?.height ?? 0) / 2;
  await finger(page, { x: start.x, y }, { x: start.x + 60, y });
  await expect.poll(now).not.toBe(before);
  const dragged = await now();
  await finger(page, { x: start.x, y }, { x: start.x, y });
  await expect.poll(now).not.toBe(dragged);
  expect(complaints).toEqual([]);
  await context.close();
});
