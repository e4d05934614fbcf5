import { mkdtempSync } from "node:fs";
import type { Server } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { serve } from "../../src/cli/serve.mjs";
import { isLong } from "../tries.ts";
import { buildAsShipped, laterVersion, SHIPPED } from "./as-shipped.ts";
import { launch, settled, shownValueOf, type } from "./browser.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(async () => {
  await browser.close();
});

async function gone(server: Server): Promise<void> {
  server.closeAllConnections();
  await new Promise((resolve) => server.close(resolve));
}

describe("with no network", () => {
  test("the page opens with the server gone, is edited, and what was edited is there when it is back", async () => {
    const first = await serve(0, SHIPPED);
    const port = Number(new URL(first.url).port);
    const context = await browser.newContext();
    const page = await context.newPage();
    await page.goto(first.url);
    await settled(page);
    await page.getByText("it opens with no network").waitFor();
    await gone(first.server);
    await page.reload();
    await settled(page);
    await type(page, "totes.capacity", "333 gal");
    await page.getByText("Saved", { exact: true }).waitFor();
    await page.reload();
    await settled(page);
    await expect.poll(() => shownValueOf(page, "totes.capacity")).toContain("333");
    const again = await serve(port, SHIPPED);
    await page.reload();
    await settled(page);
    await expect.poll(() => shownValueOf(page, "totes.capacity")).toContain("333");
    await expect.poll(() => page.locator(".foot").innerText()).toMatch(/Version \d+\.\d+\.\d+ \([\w-]+\)/);
    await gone(again.server);
    await context.close();
  });

  test("a new version waits until it is asked for, then runs with the work as it was, and says which it is", async () => {
    const newer = mkdtempSync(join(tmpdir(), "eavesdrip-newer-"));
    if (isLong)
      await buildAsShipped({
        define: { "import.meta.env.VITE_VERSION": JSON.stringify("77.0.0") },
        build: { outDir: newer, emptyOutDir: true },
      });
    else laterVersion("77.0.0", newer);
    const first = await serve(0, SHIPPED);
    const port = Number(new URL(first.url).port);
    const context = await browser.newContext();
    const page = await context.newPage();
    await page.goto(first.url);
    await settled(page);
    await page.getByText("it opens with no network").waitFor();
    await gone(first.server);
    const second = await serve(port, newer);
    await page.reload();
    const ready = page.locator(".told", { hasText: "A newer version lies ready" });
    await ready.waitFor();
    await settled(page);
    await expect.poll(() => page.locator(".foot").innerText()).not.toContain("77.0.0");
    await type(page, "totes.capacity", "345 gal");
    await ready.getByRole("button", { name: "Open it now" }).click();
    await page.getByText("Version 77.0.0").waitFor();
    await settled(page);
    await expect.poll(() => shownValueOf(page, "totes.capacity")).toContain("345");
    await expect.poll(() => ready.count()).toBe(0);
    await gone(second.server);
    await context.close();
    // With LONG=1 it builds the program a second time: against hanging alone.
  }, 600_000);
});
