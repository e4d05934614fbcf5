// Whoever goes by keys alone: the focus is never lost, and whoever hears the page is told once what a step came to.

import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { launch, open, PHONE, settled, take, tool, unfold } from "./browser.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(async () => {
  await browser.close();
});

/** What has the focus: the nearest of these around it, and its words. */
const focus = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const here = document.activeElement;
    if (!here || here === document.body) return "lost";
    const around = here.closest(
      "dialog, .hand, article.card, .moved-list, .top, .answers, .zone-place, .zone-time, main",
    );
    const name = here.getAttribute("aria-label") ?? here.textContent ?? "";
    return `${around?.className || around?.localName}: ${name.trim().slice(0, 40)}`;
  });

/** Presses Enter on a button by its words, as a reader who came to it by Tab. */
async function enter(page: Page, within: string, name: RegExp | string): Promise<void> {
  const button = page.locator(within).getByRole("button", { name }).first();
  await button.focus();
  await page.keyboard.press("Enter");
}

/** The focus once it no longer moves: what goes may go with the answers. */
async function focusAfter(page: Page): Promise<string> {
  await settled(page);
  await page.waitForTimeout(300);
  return focus(page);
}

async function partMenu(page: Page, act: string): Promise<void> {
  await page.locator(".more-menu > summary").focus();
  await page.keyboard.press("Enter");
  await enter(page, ".more-menu", act);
}

describe("by keys", () => {
  test("on a desk the focus is kept by what goes when it is pressed: a part's menu, what is read once, Undo, an end of a span, a part that is added and undone", async () => {
    const { page, context } = await open(browser);
    const card = "totes";
    await unfold(page, card);
    for (let left = await page.getByRole("button", { name: "I have read this" }).count(); left > 0; left--) {
      await enter(page, "article.card", "I have read this");
      expect(await focusAfter(page)).toMatch(/^card: /);
    }
    await partMenu(page, "Move down");
    expect(await focusAfter(page)).toMatch(/^card: More for/);
    // What it brings stands open.
    await partMenu(page, "Make a copy");
    expect(await focusAfter(page)).toMatch(/^card: .*\(copy\)/);
    await partMenu(page, "Take it out");
    expect(await focusAfter(page)).toMatch(/^card: /);

    const undo = page.getByRole("button", { name: "Undo" });
    await undo.focus();
    while (await undo.isEnabled()) await page.keyboard.press("Enter");
    expect(await focusAfter(page)).toBe("top: Undo");

    await take(page, `${card}.capacity`);
    await enter(page, ".hand", "Not sure");
    await page.getByLabel("Each holds, at least").focus();
    await page.keyboard.press("Escape");
    expect(await focusAfter(page)).toMatch(/^hand: /);
    await page.keyboard.press("Escape");
    expect(await focusAfter(page)).toMatch(/^card: /);

    await enter(page, "article.card", "+ Tank");
    await expect.poll(() => focus(page)).toBe("card: Tank");
    await page.keyboard.press("Control+z");
    expect(await focusAfter(page)).toMatch(/^card: /);

    await tool(page, "Next money");
    await page.locator(".next-money table").waitFor();
    await enter(page, ".next-money", "Back to the year");
    expect(await focusAfter(page)).toMatch(/^zone-time: /);
    await context.close();
  });

  test("one key leads from a number of the answers into its working, and Escape back", async () => {
    const { page, context } = await open(browser, { used: true });
    const number = page.locator(".lead .number").first();
    await number.focus();
    await page.keyboard.press("Enter");
    await page.locator(".answer-working").waitFor();
    await page.keyboard.press("Tab");
    expect(await focus(page)).toBe("answer-working: Close".replace("answer-working", "answers"));
    await page.keyboard.press("Shift+Tab");
    expect(await number.evaluate((one) => one === document.activeElement)).toBe(true);
    // Every stop of the answers is met once, and Tab leads out of them.
    const met: string[] = [];
    for (let at = 0; at < 60; at++) {
      await page.keyboard.press("Tab");
      const now = await page.evaluate(() => {
        const here = document.activeElement;
        return here?.closest(".answers")
          ? [...(here.closest(".answers")?.querySelectorAll("*") ?? [])].indexOf(here)
          : -1;
      });
      if (now < 0) break;
      met.push(String(now));
    }
    expect(new Set(met).size).toBe(met.length);
    const stops = await page
      .locator(".answers :is(button, select, input, summary):visible:not(:disabled)")
      .count();
    // The number it began on, and what stands before it, are not met again.
    expect(met.length).toBeGreaterThanOrEqual(stops - 2);
    await number.focus();
    await page.keyboard.press("Tab");
    await page.keyboard.press("Escape");
    await page.locator(".answer-working").waitFor({ state: "detached" });
    expect(await number.evaluate((one) => one === document.activeElement)).toBe(true);
    await context.close();
  });

  test("counting a part down to none stays in the dialog, and what is pressed on a phone's place or let go of loses nothing", async () => {
    const { page, context } = await open(browser, { viewport: PHONE });
    await page.locator(".drawing g.part[aria-label*='totes' i]").first().focus();
    await page.keyboard.press("Enter");
    await page.locator("article.card").waitFor();
    expect(await focusAfter(page)).toMatch(/^card: /);
    await tool(page, "Hold");
    await enter(page, ".tools", /^Held/);
    await enter(page, ".menu-panel", /^Let go/);
    expect(await focusAfter(page)).toMatch(/^top: /);

    await tool(page, "Start my own");
    await enter(page, "dialog[open]", /^One less: Tank/);
    expect(await focusAfter(page)).toMatch(/^begin: One more: Tank/);
    await page.keyboard.press("Enter");
    await page.getByRole("button", { name: /^One less: Tank/ }).waitFor();
    await context.close();
  });

  test("a step says once what it came to, and nothing of keeping it; a tank that keys raise says its height and what moved", async () => {
    const { page, context } = await open(browser);
    await page.evaluate(() => {
      const said: string[] = [];
      Object.assign(globalThis, { said });
      const regions = "[role=status], [role=alert], [aria-live]";
      new MutationObserver((changes) => {
        const changed = new Set(
          changes.flatMap(({ target }) => {
            const element = target instanceof Element ? target : target.parentElement;
            return element?.closest(regions) ?? [];
          }),
        );
        for (const region of changed)
          if (region.textContent) said.push(region.textContent.replaceAll(/\s+/g, " "));
      }).observe(document.body, { subtree: true, childList: true, characterData: true });
    });
    const heard = async (): Promise<readonly string[]> => {
      await settled(page);
      // A number counts as moving for half a second.
      await page.waitForTimeout(900);
      await settled(page);
      await page.waitForTimeout(300);
      return page.evaluate(() => (globalThis as unknown as { said: string[] }).said.splice(0));
    };
    await take(page, "totes.capacity");
    await heard();
    await page.keyboard.press("ArrowUp");
    const step = await heard();
    expect(step.length, step.join(" | ")).toBe(1);
    expect(step[0]).toMatch(/^300.gal\. .*[Ss]hort in/);
    await page.getByRole("button", { name: "Done", exact: true }).click();

    await page.locator(".drawing g.part.movable").first().focus();
    await heard();
    await page.keyboard.press("ArrowUp");
    const raised = await heard();
    expect(raised.length, raised.join(" | ")).toBe(2);
    expect(raised.join(" | ")).toMatch(/floor .*was/s);
    await context.close();
  });
});

/** What is pressed and has less than 44 of height for a finger: as far as it is found by one, up and down of its middle. */
const lowTargets = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const FINGER = 44;
    const isHit = (one: Element, x: number, y: number): boolean => {
      const there = document.elementFromPoint(x, y);
      return there !== null && (one.contains(there) || (there.localName === "label" && there.contains(one)));
    };
    const reach = (one: Element, x: number, y: number, by: 1 | -1): number => {
      let far = 0;
      while (far < FINGER && isHit(one, x, y + by * (far + 1))) far++;
      return far;
    };
    // Numbers, and what the first visit offers, stand in sentences; the hand has a journey of its own.
    const pressed = document.querySelectorAll(
      "button:not(.number, .told .act, .hand *), select:not(.hand *), summary, .top input",
    );
    return [...pressed].flatMap((one) => {
      const { x, y, width, height } = one.getBoundingClientRect();
      const [middle, line] = [x + width / 2, y + height / 2];
      // What lies half out of its zone, or under another, is scrolled first.
      const isWhole = y >= 3 && y + Math.max(height, FINGER) <= innerHeight && isHit(one, middle, line);
      if (width < 2 || !isWhole || one.closest(".zone-part, .zone-list")?.scrollTop) return [];
      const zone = one.closest(".zone-part, .zone-list")?.getBoundingClientRect();
      if (zone && (y < zone.top || y + FINGER > zone.bottom)) return [];
      const high = reach(one, middle, line, -1) + 1 + reach(one, middle, line, 1);
      return high < FINGER - 1 ? [`${one.textContent?.trim().slice(0, 24)}: ${high}`] : [];
    });
  });

test("whatever is pressed outside the hand has 44 under a finger, on a tablet and on a phone on either side", async () => {
  const { page, context } = await open(browser, { viewport: { width: 800, height: 1100 } });
  const devtools = await context.newCDPSession(page);
  await devtools.send("Emulation.setTouchEmulationEnabled", { enabled: true });
  expect(await page.evaluate(() => matchMedia("(pointer: coarse)").matches)).toBe(true);
  const sizes = [
    [800, 1100],
    [844, 390],
    [390, 844],
    [1024, 768],
  ] as const;
  for (const [width, height] of sizes) {
    await page.setViewportSize({ width, height });
    await expect.poll(() => lowTargets(page), { message: `${width} x ${height}`, timeout: 8000 }).toEqual([]);
  }
  await devtools.send("Emulation.setTouchEmulationEnabled", { enabled: false });
  await context.close();
});
