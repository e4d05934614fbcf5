import { readFileSync } from "node:fs";
import type { AddressInfo } from "node:net";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { serve } from "../../src/cli/serve.mjs";
import { findBrowser, LAUNCH_ARGUMENTS } from "../browser.mjs";
import { isLong } from "../tries.ts";
import { SHIPPED } from "./as-shipped.ts";
import { launch, open, savedFile, settled, shownValueOf, tool, type } from "./browser.ts";
import { listened } from "./pages.ts";
import { bringIn } from "./rain-by-chance.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(async () => {
  await browser.close();
});

describe("served to the house", () => {
  // A browser of its own, which opens it several times over: with LONG=1.
  test.runIf(isLong)(
    "over plain http, where a page has no means to keep itself, it works, and says what it needs to open again",
    async () => {
      const { server } = await serve(0, SHIPPED, { house: true });
      const own = await chromium.launch({
        executablePath: await findBrowser(),
        // An address of a house's network that leads here: one of this machine's own is trusted like https.
        args: [...LAUNCH_ARGUMENTS, "--host-resolver-rules=MAP 192.168.77.77 127.0.0.1"],
      });
      const { page, complaints } = await listened(await own.newContext());
      await page.goto(`http://192.168.77.77:${(server.address() as AddressInfo).port}/`);
      await settled(page);
      const means = () => [isSecureContext, typeof crypto.subtle, typeof navigator.serviceWorker];
      expect(await page.evaluate(means)).toEqual([false, "undefined", "undefined"]);
      await bringIn(page, 400);
      await type(page, "totes.capacity", "333 gal");
      await page.getByText("Saved", { exact: true }).waitFor();
      await page.reload();
      await settled(page);
      await expect.poll(() => shownValueOf(page, "totes.capacity")).toContain("333");
      await expect
        .poll(() => page.locator(".foot").innerText())
        .toContain("it opens only while the computer that serves it runs");
      await tool(page, "Share");
      await page.getByLabel("The link", { exact: true }).waitFor();
      await expect
        .poll(() => page.getByRole("dialog").innerText())
        .toContain("This link opens only in this house");
      expect(complaints).toEqual([]);
      await own.close();
      server.closeAllConnections();
      server.close();
    },
  );
});

/** What a button of the share dialog saves. */
async function saved(page: Page, button: string): Promise<string> {
  await tool(page, "Share");
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("dialog").getByRole("button", { name: button }).click(),
  ]);
  await page.getByRole("dialog").getByRole("button", { name: "Close" }).click();
  return savedFile(download);
}

/** Every quantity with its whole value, to the last bit; where a number is from differs for who receives it. */
async function answers(page: Page): Promise<readonly string[]> {
  const table = readFileSync(await saved(page, "Every quantity (CSV)"), "utf8")
    .trim()
    .split("\r\n");
  expect(table.length).toBeGreaterThan(200);
  return table.map((line) => line.replace(/,[^,]*$/, ""));
}

/** A page saved as one file, opened as by a double click, with no network and nothing kept from before. */
async function doubleClicked(path: string, before?: () => void) {
  const context = await browser.newContext({ offline: true });
  const { page, complaints } = await listened(context);
  if (before) await page.addInitScript(before);
  await page.goto(pathToFileURL(path).href);
  await settled(page);
  return { context, page, complaints };
}

/** What is done in a page from disk is there after a reload, and after another double click. */
async function goesOn(page: Page, context: BrowserContext): Promise<void> {
  await type(page, "totes.capacity", "222 gal");
  await page.getByText("Saved", { exact: true }).waitFor();
  await page.reload();
  await settled(page);
  await expect.poll(() => shownValueOf(page, "totes.capacity")).toContain("222");
  const again = await context.newPage();
  await again.goto(page.url());
  await again.getByText("This page was opened here before.").waitFor();
  await expect.poll(() => shownValueOf(again, "totes.capacity")).toContain("222");
}

/** A page from a page: the next who gets it sees the same answers and goes on with it. */
async function isWhole(path: string, answered: readonly string[]): Promise<void> {
  const next = await doubleClicked(path);
  await expect.poll(() => next.page.getByLabel("Name of this worksheet").inputValue()).toContain(HOSTILE);
  expect(await answers(next.page)).toEqual(answered);
  await expect.poll(() => next.page.title()).toBe("Eavesdrip");
  // A reload goes on with what was done in it, and so does another double click.
  await goesOn(next.page, next.context);
  expect(next.complaints).toEqual([]);
  await next.context.close();
}

/** The worksheet in a page in one file. */
const HELD = /<script type="application\/json" id="worksheet">(.*?)<\/script>/s;
const HOSTILE = "</script><!--<script>alert(1)//$&";

describe("the page in one file", () => {
  test("opened from disk it has the demo's answers to the bit, takes an edit, brings in rain, saves its file, and goes on to the next", async () => {
    const host = await open(browser);
    const demo = await answers(host.page);
    const given = await doubleClicked(await saved(host.page, "Save the page"));
    await given.page.getByText("Sent to you, made by").waitFor();
    expect(await answers(given.page)).toEqual(demo);
    await given.page.getByText("in one file: it opens with no network").waitFor();

    await type(given.page, "totes.capacity", "333 gal");
    await bringIn(given.page, 900);
    await given.page.getByLabel("Name of this worksheet").fill(HOSTILE);
    await given.page.getByLabel("Name of this worksheet").press("Enter");
    await given.page.getByText("Saved", { exact: true }).waitFor();
    const file = JSON.parse(readFileSync(await saved(given.page, "Save as a file"), "utf8"));
    expect([file.title, file.records.length]).toEqual([HOSTILE, 1]);
    const mine = await answers(given.page);
    expect(mine).not.toEqual(demo);

    const path = await saved(given.page, "Save the page");
    const [, held = ""] = HELD.exec(readFileSync(path, "utf8")) ?? [];
    expect(JSON.parse(held)).toEqual(file);
    // It opens as the one before did: each profile compiles the program anew, so that it is seen with LONG=1.
    if (isLong) await isWhole(path, mine);
    expect([...host.complaints, ...given.complaints]).toEqual([]);
    for (const { context } of [host, given]) await context.close();
  }, 300_000);

  // With LONG=1; that a browser keeps nothing is tried of the served page (keeping.test.ts).
  test.runIf(isLong)(
    "a browser that keeps nothing for a file loses the answers of none, and says that a file must be saved",
    async () => {
      const host = await open(browser);
      const path = await saved(host.page, "Save the page");
      await host.context.close();
      const { page, context, complaints } = await doubleClicked(path, () => {
        for (const name of ["indexedDB", "localStorage", "sessionStorage"])
          Object.defineProperty(globalThis, name, {
            get: () => {
              throw new DOMException("Not for a file.", "SecurityError");
            },
          });
      });
      await type(page, "totes.capacity", "333 gal");
      await page.getByText("This browser does not let the page keep anything.").waitFor();
      const file = JSON.parse(readFileSync(await saved(page, "Save as a file"), "utf8"));
      const totes = file.cards.find((card: { readonly id: string }) => card.id === "totes");
      expect(totes.givens.capacity).toMatchObject({ value: 333, unit: "gal" });
      expect(complaints).toEqual([]);
      await context.close();
    },
  );

  test("the page without a worksheet opens on the demo, and says that no link leads to it", async () => {
    const { page, context, complaints } = await doubleClicked(join(SHIPPED, "eavesdrip.html"));
    await page.getByText("This is a made-up place.").waitFor();
    await tool(page, "Share");
    await page.getByText("A link to this page opens only on this computer, where the file lies.").waitFor();
    await expect.poll(() => page.getByLabel("The link", { exact: true }).count()).toBe(0);
    expect(complaints).toEqual([]);
    await context.close();
  });
});
