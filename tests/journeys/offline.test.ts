// What ships, as somebody's host of plain files serves it: at any address and under any path it works and is kept, so that it
// opens with no network; a later version waits until it is asked for. Both go on in one profile, which keeps all of it once.

import { mkdtempSync } from "node:fs";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { serve } from "../../src/cli/serve.mjs";
import { isLong } from "../tries.ts";
import { buildAsShipped, demoOf, laterVersion, withDemoOf } from "./as-shipped.ts";
import { launch, settled, shownValueOf, tool, type } from "./browser.ts";
import { askNothing, listened } from "./pages.ts";
import { DEMO_SEASONS } from "./starters.ts";

const PATH = "garden/rain/";
const inFolder = (folder: string): string => join(folder, ...PATH.split("/"));

/** Serves a folder to the house, at a port once it is known. */
async function hosted(folder: string, port = 0) {
  const { server } = await serve(port, folder, { house: true });
  return {
    port: (server.address() as AddressInfo).port,
    gone: async (): Promise<void> => {
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}

type Kept = Awaited<ReturnType<typeof listened>> & {
  readonly address: string;
  readonly folder: string;
  host: Awaited<ReturnType<typeof hosted>>;
};

let browser: Browser;
/** What the test before left, if it came to its end. */
let left: Kept | null = null;

/** The page in a profile of its own, two folders deep, all of it kept. */
async function opened(): Promise<Kept> {
  const folder = mkdtempSync(join(tmpdir(), "eavesdrip-deep-"));
  withDemoOf(DEMO_SEASONS, inFolder(folder));
  const host = await hosted(folder);
  const address = `http://127.0.0.2:${host.port}/${PATH}`;
  const { page, complaints } = await listened(await browser.newContext());
  if (!isLong) await page.addInitScript(askNothing);
  await page.goto(address);
  await settled(page);
  await page.getByText("it opens with no network").waitFor();
  return { page, complaints, address, folder, host };
}

/** Goes on where the test before came to its end, else from the beginning. */
async function going(on: (here: Kept) => Promise<void>): Promise<void> {
  const here = left ?? (await opened());
  left = null;
  await on(here);
  left = here;
}

beforeAll(async () => {
  browser = await launch();
});
afterAll(async () => {
  await left?.page.context().close();
  await left?.host.gone();
  await browser.close();
});

/** What the page keeps of itself, and where it says it starts. */
const keeping = (page: Page) =>
  page.evaluate(async () => {
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

describe("served two folders deep, at another address than localhost", () => {
  test("it is kept under that path, opens with the server gone, is edited, and what was edited is there when it is back", () =>
    going(async (here) => {
      const { page, complaints, address, folder, host } = here;
      expect(await keeping(page)).toEqual({
        scopes: [address],
        start: `${address}#bed`,
        scope: address,
        icon: 200,
        font: true,
      });
      await tool(page, "Share");
      const link = page.getByLabel("The link", { exact: true });
      await link.waitFor();
      await expect.poll(() => link.inputValue()).toContain(`${address}#`);
      await page.getByRole("button", { name: "Close" }).click();
      await host.gone();
      await page.reload();
      await settled(page);
      await type(page, "totes.capacity", "333 gal");
      await page.getByText("Saved", { exact: true }).waitFor();
      await page.reload();
      await settled(page);
      await expect.poll(() => shownValueOf(page, "totes.capacity")).toContain("333");
      expect(complaints).toEqual([]);
      here.host = await hosted(folder, host.port);
      await page.reload();
      await settled(page);
      await expect.poll(() => shownValueOf(page, "totes.capacity")).toContain("333");
      await expect.poll(() => page.locator(".foot").innerText()).toMatch(/Version \d+\.\d+\.\d+ \([\w-]+\)/);
    }));

  test(
    "a new version waits until it is asked for, then runs with the work as it was, and says which it is",
    () =>
      going(async (here) => {
        const { page, host } = here;
        const newer = mkdtempSync(join(tmpdir(), "eavesdrip-newer-"));
        if (isLong)
          await buildAsShipped({
            define: { "import.meta.env.VITE_VERSION": JSON.stringify("77.0.0") },
            build: { outDir: inFolder(newer), emptyOutDir: true },
          });
        else laterVersion("77.0.0", inFolder(newer));
        demoOf(DEMO_SEASONS, inFolder(newer));
        await host.gone();
        here.host = await hosted(newer, host.port);
        await page.reload();
        const ready = page.locator(".told", { hasText: "A newer version lies ready" });
        await ready.waitFor();
        await settled(page);
        await expect.poll(() => page.locator(".foot").innerText()).not.toContain("77.0.0");
        await type(page, "totes.capacity", "345 gal");
        // What is told waits while a number is in hand.
        await page.getByRole("button", { name: "Done", exact: true }).click();
        await ready.getByRole("button", { name: "Open it now" }).click();
        await page.getByText("Version 77.0.0").waitFor();
        await settled(page);
        await expect.poll(() => shownValueOf(page, "totes.capacity")).toContain("345");
        await expect.poll(() => ready.count()).toBe(0);
        // With LONG=1 it builds the program a second time: against hanging alone.
      }),
    600_000,
  );
});
