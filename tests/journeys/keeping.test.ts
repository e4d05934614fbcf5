import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { type Browser, chromium } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { serve } from "../../src/cli/serve.mjs";
import { findBrowser, LAUNCH_ARGUMENTS } from "../browser.mjs";
import { launch, open, row, settled, shownValueOf, type } from "./browser.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(async () => {
  await browser.close();
});

describe("worksheets are kept", () => {
  test("thirty edits are undone and redone, each to the same answers", async () => {
    const { page, context, complaints } = await open(browser);
    const seen: string[] = [await shownValueOf(page, "totes.reachable")];
    for (let step = 1; step <= 30; step++) {
      await type(page, "totes.capacity", `${275 + step * 10} gal`);
      seen.push(await shownValueOf(page, "totes.reachable"));
    }
    expect(new Set(seen).size).toBe(31);
    for (let step = 29; step >= 0; step--) {
      await page.getByRole("button", { name: "Undo" }).click();
      expect(await shownValueOf(page, "totes.reachable")).toBe(seen[step]);
    }
    for (let step = 1; step <= 30; step++) {
      await page.getByRole("button", { name: "Redo" }).click();
      expect(await shownValueOf(page, "totes.reachable")).toBe(seen[step]);
    }
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("renamed, copied, thrown away and brought back", async () => {
    const { page, context, complaints } = await open(browser);
    await type(page, "totes.capacity", "280 gal");
    await page.getByText("Saved", { exact: true }).waitFor();
    await page.getByRole("button", { name: "Worksheets" }).click();
    await page.getByRole("button", { name: "Copy Larkspur Bank" }).click();
    await page.getByRole("button", { name: "Rename Larkspur Bank (copy)" }).click();
    const name = page.getByLabel("New name of Larkspur Bank (copy)");
    await name.fill("With a third tote");
    await name.press("Enter");
    await page.getByRole("button", { name: "Throw away With a third tote" }).click();
    await expect.poll(() => page.getByRole("button", { name: /^Throw away/ }).count()).toBe(1);
    await page.getByRole("button", { name: "Bring it back" }).click();
    await page.getByRole("button", { name: "Throw away With a third tote" }).waitFor();
    await page.getByRole("button", { name: /^With a third tote/ }).click();
    await settled(page);
    expect(await page.getByLabel("Name of this worksheet").inputValue()).toBe("With a third tote");
    expect(await row(page, "totes.capacity").inputValue()).toContain("280");
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("two tabs that change the same worksheet both keep their work, and the later is told its new name", async () => {
    const { page, context } = await open(browser);
    await type(page, "totes.capacity", "280 gal");
    await page.getByText("Saved", { exact: true }).waitFor();
    const other = await context.newPage();
    await other.goto(inject("url"));
    await settled(other);
    await type(page, "totes.capacity", "290 gal");
    await page.waitForTimeout(1000);
    await type(other, "totes.capacity", "310 gal");
    await other.getByText("Another tab changed this worksheet too").waitFor();
    expect(await other.getByLabel("Name of this worksheet").inputValue()).toBe("Larkspur Bank (copy)");
    await other.reload();
    await settled(other);
    expect(await row(other, "totes.capacity").inputValue()).toContain("310");
    await other.getByRole("button", { name: "Worksheets" }).click();
    await other.getByRole("button", { name: /^Larkspur Bank \d/ }).click();
    await settled(other);
    expect(await row(other, "totes.capacity").inputValue()).toContain("290");
    await context.close();
  });

  test("a refused save is said, with the file as the way out", async () => {
    const { page, context } = await open(browser);
    await page.evaluate(() => {
      IDBObjectStore.prototype.put = () => {
        throw new DOMException("full", "QuotaExceededError");
      };
    });
    await type(page, "totes.capacity", "280 gal");
    await page.locator(".keeping [role=alert]").getByRole("button", { name: "Save as a file" }).waitFor();
    await context.close();
  });

  test("the page is killed in the middle of an edit: at most the last second is lost", async () => {
    const folder = mkdtempSync(join(tmpdir(), "eavesdrip-profile-"));
    const executablePath = await findBrowser();
    const start = () => chromium.launchPersistentContext(folder, { executablePath, args: LAUNCH_ARGUMENTS });
    const context = await start();
    const page = await context.newPage();
    await page.goto(inject("url"));
    await settled(page);
    await type(page, "totes.capacity", "444 gal");
    await page.waitForTimeout(1000);
    const field = row(page, "tub.capacity");
    await field.click();
    await field.pressSequentially("5");
    const crashed = page.waitForEvent("crash");
    await page.goto("chrome://crash").catch(() => undefined);
    await crashed;
    await context.close();
    const again = await start();
    const next = await again.newPage();
    await next.goto(inject("url"));
    await settled(next);
    expect(await row(next, "totes.capacity").inputValue()).toContain("444");
    await again.close();
  });
});

describe("with no network", () => {
  test("the page opens with the server gone, is edited, and what was edited is there when it is back", async () => {
    const folder = fileURLToPath(new URL("../../dist", import.meta.url));
    const first = await serve(0, folder);
    const port = Number(new URL(first.url).port);
    const context = await browser.newContext();
    const page = await context.newPage();
    await page.goto(first.url);
    await settled(page);
    await page.getByText("it opens with no network").waitFor();
    first.server.closeAllConnections();
    await new Promise((resolve) => first.server.close(resolve));
    await page.reload();
    await settled(page);
    await type(page, "totes.capacity", "333 gal");
    await page.getByText("Saved", { exact: true }).waitFor();
    await page.reload();
    await settled(page);
    expect(await row(page, "totes.capacity").inputValue()).toContain("333");
    const again = await serve(port, folder);
    await page.reload();
    await settled(page);
    expect(await row(page, "totes.capacity").inputValue()).toContain("333");
    expect(await page.locator(".foot").innerText()).toMatch(/Version \d+\.\d+\.\d+ \([\w-]+\)/);
    again.server.closeAllConnections();
    again.server.close();
    await context.close();
  });
});
