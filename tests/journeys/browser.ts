// A real browser for the journeys, and the few gestures they share.

import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core";
import { inject } from "vitest";
import { findBrowser, LAUNCH_ARGUMENTS } from "../browser.mjs";

export const PHONE = { width: 390, height: 844 };
export const DESK = { width: 1280, height: 800 };

/** A browser; close it when done. */
export async function launch(): Promise<Browser> {
  return chromium.launch({ executablePath: await findBrowser(), args: LAUNCH_ARGUMENTS });
}

export type Opened = {
  readonly context: BrowserContext;
  readonly page: Page;
  /** What the page complained of: errors and reports of the policy. */
  readonly complaints: string[];
};

/** A fresh profile with the page open and everything worked out. */
export async function open(
  browser: Browser,
  options: {
    readonly viewport?: { width: number; height: number };
    readonly colorScheme?: "light" | "dark";
    /** Device pixels to each of the page's, along a side. */
    readonly glass?: number;
    /** Runs in the page before anything of ours does. */
    readonly before?: () => void;
  } = {},
): Promise<Opened> {
  const context = await browser.newContext({
    viewport: options.viewport ?? DESK,
    colorScheme: options.colorScheme ?? "light",
    deviceScaleFactor: options.glass ?? 1,
  });
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
  if (options.before) await page.addInitScript(options.before);
  await page.goto(inject("url"));
  await settled(page);
  return { context, page, complaints };
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
