import { cpSync, mkdtempSync } from "node:fs";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { serve } from "../../src/cli/serve.mjs";
import { launch, settled, shownValueOf, tool, type } from "./browser.ts";

const SHIPPED = fileURLToPath(new URL("../../dist", import.meta.url));

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(async () => {
  await browser.close();
});

/** A page of its own, with all that it complains of: errors, reports of the policy, what it could not fetch. */
async function listened(context: BrowserContext): Promise<{ page: Page; complaints: string[] }> {
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on("pageerror", (error) => complaints.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error" || message.type() === "warning") complaints.push(message.text());
  });
  await page.addInitScript(() => {
    document.addEventListener("securitypolicyviolation", (event) => {
      console.error(`policy: ${event.violatedDirective} ${event.blockedURI}`);
    });
  });
  return { page, complaints };
}

describe("dist/ on any host of plain files", () => {
  test("two folders deep it works, is kept under that path, and opens there with no network", async () => {
    const folder = mkdtempSync(join(tmpdir(), "eavesdrip-deep-"));
    cpSync(SHIPPED, join(folder, "garden", "rain"), { recursive: true });
    const { server, url } = await serve(0, folder);
    const address = `${url}garden/rain/`;
    const context = await browser.newContext();
    const { page, complaints } = await listened(context);
    await page.goto(address);
    await settled(page);
    await page.getByText("it opens with no network").waitFor();
    const kept = await page.evaluate(async () => {
      const registrations = await navigator.serviceWorker.getRegistrations();
      const manifest = await fetch(document.querySelector<HTMLLinkElement>("link[rel=manifest]")?.href ?? "");
      const { start_url, scope, icons } = await manifest.json();
      const icon = await fetch(new URL(icons[0].src, manifest.url));
      const font = [...document.fonts].some(({ status }) => status === "loaded");
      return {
        scopes: registrations.map((one) => one.scope),
        start: new URL(start_url, manifest.url).href,
        scope: new URL(scope, manifest.url).href,
        icon: icon.status,
        font,
      };
    });
    expect(kept).toEqual({ scopes: [address], start: address, scope: address, icon: 200, font: true });
    await tool(page, "Share");
    const link = page.getByLabel("The link", { exact: true });
    await link.waitFor();
    expect(await link.inputValue()).toContain(`${address}#`);
    await page.getByRole("button", { name: "Close" }).click();
    server.closeAllConnections();
    await new Promise((resolve) => server.close(resolve));
    await page.reload();
    await settled(page);
    await type(page, "totes.capacity", "333 gal");
    expect(await shownValueOf(page, "totes.capacity")).toContain("333");
    expect(complaints).toEqual([]);
    await context.close();
  });
});

describe("served to the house", () => {
  test("at another address than localhost the page works", async () => {
    const { server } = await serve(0, SHIPPED, { house: true });
    const context = await browser.newContext();
    const { page, complaints } = await listened(context);
    await page.goto(`http://127.0.0.2:${(server.address() as AddressInfo).port}/`);
    await settled(page);
    await type(page, "totes.capacity", "333 gal");
    await page.getByText("Saved", { exact: true }).waitFor();
    await page.reload();
    await settled(page);
    expect(await shownValueOf(page, "totes.capacity")).toContain("333");
    expect(complaints).toEqual([]);
    await context.close();
    server.closeAllConnections();
    server.close();
  });
});
