// A real browser for the journeys, and the few gestures they share.

import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Browser, chromium, type Download, type Page } from "playwright-core";
import { inject } from "vitest";
import { lend, type Opened, type PageWish } from "./pages.ts";

export const PHONE = { width: 390, height: 844 };
export const DESK = { width: 1280, height: 800 };

let shared: Promise<Browser> | null = null;

async function connected(): Promise<Browser> {
  const browser = await chromium.connect(inject("browser"));
  // It is lent to all files of this process, with the pages that wait in it; the global setup ends it.
  browser.close = async () => undefined;
  return browser;
}

/** The one browser of all journeys. */
export async function launch(): Promise<Browser> {
  shared ??= connected();
  return shared;
}

/** The page open and everything worked out, with nothing kept from before; close its context when done. */
export async function open(
  browser: Browser,
  options: Partial<PageWish> & {
    /** Runs in the page before anything of ours does. */
    readonly before?: () => void;
  } = {},
): Promise<Opened> {
  const { viewport = DESK, colorScheme = "light", glass = 1 } = options;
  const lent = await lend(browser, { viewport, colorScheme, glass });
  if (options.before) await lent.page.addInitScript(options.before);
  await lent.page.goto(inject("url"));
  await settled(lent.page);
  return lent;
}

/** Waits until nothing is being worked out. */
export async function settled(page: Page): Promise<void> {
  await page.waitForSelector('.answers[aria-busy="false"] h1.lead');
}

/** The row of a quantity. */
export const row = (page: Page, id: string) => page.locator(`[id="${id}"]`);

/** Opens the card of a quantity where it is folded up, as on a phone. */
export async function unfold(page: Page, id: string): Promise<void> {
  const folded = page.locator(`[id="${id.split(".")[0] ?? id}"] > .folded`);
  if ((await folded.count()) > 0) await folded.click();
}

/** Types into a number field where it stands, and leaves it. */
export async function type(page: Page, id: string, text: string): Promise<void> {
  await unfold(page, id);
  const field = row(page, id);
  await field.click();
  await field.fill(text);
  await field.press("Enter");
  await settled(page);
}

/** Types into a number field and enters it, without waiting for what the season makes of it. */
export async function enter(page: Page, id: string, text: string): Promise<void> {
  await row(page, id).fill(text);
  await row(page, id).press("Enter");
}

/** Text of a result row's value. */
export async function shownValueOf(page: Page, id: string): Promise<string> {
  await unfold(page, id);
  const text = await row(page, id).locator(".value").first().innerText();
  return (
    text
      .replaceAll("\u00a0", " ")
      .split("\n")[0]
      ?.replace(/[▲▼].*$/, "")
      .trim() ?? ""
  );
}

/** A saved file on this side of the line to the shared browser, which keeps its own where it runs. */
export async function savedFile(saved: Download): Promise<string> {
  const path = join(mkdtempSync(join(tmpdir(), "eavesdrip-saved-")), saved.suggestedFilename());
  await saved.saveAs(path);
  return path;
}
