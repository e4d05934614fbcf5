// A real browser for the journeys, and the few gestures they share.

import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Browser, chromium, type Download, type Page } from "playwright-core";
import { inject } from "vitest";
import { LAUNCH_ARGUMENTS } from "../browser.mjs";
import { isLong } from "../tries.ts";
import { DESK, lend, lendUsed, type Opened, PATIENCE, type PageWish, PHONE } from "./pages.ts";

export { DESK, PHONE };

let shared: Promise<Browser> | null = null;

/**
 * Compiling for speed begins a hundred times later than usual, and what is no longer used is looked for by one thread alone. A
 * journey's page lives for seconds, and half of what its opening cost went into optimizing functions hardly called again. What
 * the page works out is the same.
 */
const FOR_SECONDS = [
  "--invocation-count-for-maglev=40000",
  "--invocation-count-for-maglev-osr=10000",
  "--invocation-count-for-turbofan=300000",
  "--invocation-count-for-osr=50000",
  "--single-threaded-gc",
];

async function started(): Promise<Browser> {
  const browser = await chromium.launch({
    executablePath: inject("browser"),
    args: [...LAUNCH_ARGUMENTS, `--js-flags=${FOR_SECONDS.join(",")}`],
  });
  // It is lent to all files of this process, with the pages that wait in it, and ends with the process. To share one with the
  // other process, all that is said to it would go through a third.
  browser.close = async () => undefined;
  const usual = browser.newContext.bind(browser);
  browser.newContext = async (options) => {
    const context = await usual(options);
    context.setDefaultTimeout(PATIENCE);
    return context;
  };
  return browser;
}

/** The one browser of all journeys of this process. */
export async function launch(): Promise<Browser> {
  shared ??= started();
  return shared;
}

type Wish = Partial<PageWish> & {
  /** The demo with all of its twenty seasons; else it has five, but for LONG=1. */
  readonly whole?: boolean;
  /** Runs in the page before anything of ours does. */
  readonly before?: () => void;
  /**
   * A page will do that another journey used, if all that was changed in it can be undone; another part may be open in it, it
   * is kept already, and until an edit it says what its numbers were. With LONG=1 each has one of its own.
   */
  readonly used?: boolean;
};

/** Address of the page that `open` opens. */
export const site = (whole = false): string => inject(whole ? "url" : "brief");

const wishOf = ({ before: _, whole: __, used: ___, asks = isLong, ...wish }: Wish): PageWish => ({
  viewport: DESK,
  colorScheme: "light",
  glass: 1,
  ...wish,
  asks,
});

/** The page of the whole demo just gone to, with nothing kept from before; close its context when done. */
export async function openAt(browser: Browser, hash: string, options: Wish = {}): Promise<Opened> {
  const { before, whole = true } = options;
  const lent = await lend(browser, wishOf(options));
  if (before) await lent.page.addInitScript(before);
  await lent.page.goto(`${site(whole)}${hash}`);
  return lent;
}

/** What the page of the demo that nobody changed looks like, by its address and size. */
const looks = new Map<string, string>();

/** Numbers of the sentence on top, and what is set at the head of the page; nothing is held, and no rain is being looked at. */
const lookOf = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const fields = [...document.querySelectorAll<HTMLInputElement>("header.top :is(input, select)")];
    const marks = document.querySelectorAll(".moved-list, .held, .preview, .import [role=alert]").length;
    // What it was before the last edit stands beside each number, in fewer words.
    const lead = document.querySelector("h1.lead")?.cloneNode(true) as Element;
    for (const was of lead.querySelectorAll(".was")) was.remove();
    return JSON.stringify([lead.textContent?.match(/\d+/g), marks, fields.map(({ value }) => value)]);
  });

/** Puts down what is in hand and undoes all; false where that cannot be done. */
export async function undoAll(page: Page): Promise<boolean> {
  if ((await page.locator("dialog[open]").count()) > 0) return false;
  const done = page.getByRole("button", { name: "Done", exact: true });
  if ((await done.count()) === 1) await done.click();
  const undo = page.getByRole("button", { name: /^Undo/ }).first();
  if ((await undo.count()) === 0) return false;
  for (let step = 0; step < 9 && (await undo.isEnabled()); step++) await undo.click();
  await settled(page);
  return undo.isDisabled();
}

/** The page open and everything worked out, with nothing kept from before; close its context when done. */
export async function open(browser: Browser, options: Wish = {}): Promise<Opened> {
  const { whole = false, used = false, before } = options;
  const key = JSON.stringify([whole, options.viewport ?? DESK]);
  if (used && !isLong) {
    const isThere = async (page: Page): Promise<boolean> =>
      page.url() === site(whole) && (await undoAll(page)) && (await lookOf(page)) === looks.get(key);
    const lent = await lendUsed(browser, wishOf(options), isThere);
    if (lent) return lent;
  }
  const lent = await openAt(browser, "", { ...options, whole });
  await settled(lent.page);
  if (!before) looks.set(key, await lookOf(lent.page));
  return lent;
}

/** Waits until nothing is being worked out. */
export async function settled(page: Page): Promise<void> {
  await page.waitForSelector('.answers[aria-busy="false"] h1.lead');
}

/** The row of a quantity: of a number that is given its button, of any other its field or the whole row. */
export const row = (page: Page, id: string) => page.locator(`[id="${id}"]`);

/** The field of the number in hand. */
export const hand = (page: Page) => page.locator(".in-hand-value");

/** Opens the part of a quantity, and what is folded around its row. */
export async function unfold(page: Page, id: string): Promise<void> {
  const card = id.split(".")[0] ?? id;
  const part = page.locator(`article.card[id="${card}"]`);
  // A page may only just have been gone to.
  await page.locator("main.bench").waitFor();
  if ((await part.count()) === 0) {
    const line = page.locator(`.list [data-card="${card}"]`);
    if ((await line.count()) === 0) {
      // On a phone the hand stands before the groups of parts.
      if ((await page.locator(".zone-strip").count()) === 0)
        await page.getByRole("button", { name: "Done", exact: true }).click();
      const open = page.locator('.zone-strip [aria-pressed="true"]');
      await open.click();
    }
    await line.click();
    await part.waitFor();
  }
  if (!id.includes(".") || (await row(page, id).count()) > 0) return;
  const more = part.locator("details.minor > summary");
  if ((await more.count()) > 0 && (await part.locator("details.minor").getAttribute("open")) === null)
    await more.click();
}

/** Opens a tool at the head of the page, or in its menu where the line is too narrow for it. */
export async function tool(page: Page, name: string): Promise<void> {
  // In the menu what it does may stand behind its name.
  const inLine = page.locator(".tools").getByRole("button", { name: new RegExp(`^${name}(?: |$)`) });
  if ((await inLine.count()) === 0) await page.getByRole("button", { name: "Menu", exact: true }).click();
  await inLine.click();
}

/** Takes a number in hand. */
export async function take(page: Page, id: string): Promise<void> {
  await unfold(page, id);
  if ((await row(page, id).getAttribute("aria-pressed")) !== "true") await row(page, id).click();
  await hand(page).waitFor();
}

/** Types a number in hand, and enters it. */
export async function type(page: Page, id: string, text: string): Promise<void> {
  await enter(page, id, text);
  await settled(page);
}

/** Types a number in hand and enters it, without waiting for what the season makes of it. */
export async function enter(page: Page, id: string, text: string): Promise<void> {
  await take(page, id);
  await hand(page).fill(text);
  await hand(page).press("Enter");
}

/** Text of a row's value, given or worked out. */
export async function shownValueOf(page: Page, id: string): Promise<string> {
  await unfold(page, id);
  const text = await row(page, id).locator(".value").first().innerText();
  return text.replaceAll("\u00a0", " ").replaceAll("\n", "").trim();
}

/** Path of a saved file that is there still when its page is gone, under the name that it was given. */
export async function savedFile(saved: Download): Promise<string> {
  const path = join(mkdtempSync(join(tmpdir(), "eavesdrip-saved-")), saved.suggestedFilename());
  await saved.saveAs(path);
  return path;
}
