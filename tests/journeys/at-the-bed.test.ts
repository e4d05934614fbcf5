// At the bed: a dip and a watering noted with a thumb or by keys, said to be only once they are stored, there again after the
// page was thrown away, and taken back.
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { axe } from "./axe.ts";
import { launch } from "./browser.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(async () => {
  await browser.close();
});

const MORNING = new Date("2026-07-20T08:00:00");

async function atTheBed(page: Page): Promise<void> {
  await page.clock.setFixedTime(MORNING);
  await page.goto(`${inject("url")}#bed`);
  await page.getByRole("slider", { name: "Depth in Two totes" }).waitFor();
}

async function dragged(page: Page, name: string, by: number): Promise<void> {
  const grip = page.getByRole("slider", { name });
  await grip.hover();
  const box = await grip.boundingBox();
  if (!box) throw new Error("no grip");
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.down();
  await page.mouse.move(x, y + by, { steps: 4 });
  await page.mouse.up();
}

const foot = (page: Page, said: RegExp) => page.getByRole("status").filter({ hasText: said }).waitFor();

test("a dip is noted on lifting, what it changes is told, and both are there after the page was thrown away", async () => {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 } });
  const page = await context.newPage();
  await atTheBed(page);
  await page.getByText("Dip a tank, and it is told").waitFor();
  // A touch alone changes nothing.
  await page.getByRole("slider", { name: "Depth in Two totes" }).click();
  await page.getByText("What you note stays here").waitFor();
  await dragged(page, "Depth in Two totes", -20);
  await foot(page, /Noted on this phone: Two totes, \d/);
  const said = await page.getByRole("status").filter({ hasText: "Two totes" }).innerText();
  const depth = (/Two totes, (\d+½?) in/.exec(said)?.[1] ?? "").replace("½", ".5");
  await page.getByText(/^Lasts to /).waitFor();
  await page.getByText(/without rain\.$/).waitFor();
  expect(await axe(page)).toEqual([]);
  await page.close();
  const again = await context.newPage();
  await atTheBed(again);
  expect(await again.getByRole("slider", { name: "Depth in Two totes" }).getAttribute("aria-valuenow")).toBe(
    depth,
  );
  await context.close();
});

test("by keys and spoken names alone: a dip, half an inch more, a watering, and the watering taken back", async () => {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 } });
  const page = await context.newPage();
  await atTheBed(page);
  const tub = page.getByRole("slider", { name: "Depth in Tub by the tunnel" });
  await tub.focus();
  const before = Number(await tub.getAttribute("aria-valuenow"));
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("Enter");
  await foot(page, new RegExp(`Noted on this phone: Tub by the tunnel, ${before - 1} in`));
  await page.getByRole("button", { name: "+½ in" }).click();
  await foot(page, new RegExp(`Noted on this phone: Tub by the tunnel, ${before - 1}½ in`));
  const watered = page.getByRole("button", { name: /^Watered \d+ gal: Long bed/ });
  await watered.press("Enter");
  await foot(page, /Noted on this phone: Long bed, \d+\sgal/);
  await page.getByRole("button", { name: /^Watered: Long bed/ }).waitFor();
  await page.getByRole("button", { name: "Undo" }).last().press("Enter");
  await foot(page, /Taken back: Long bed/);
  await watered.waitFor();
  await context.close();
});
