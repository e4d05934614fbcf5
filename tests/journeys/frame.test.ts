import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { isLong, tries } from "../tries.ts";
import { axe } from "./axe.ts";
import { DESK, launch, open, PHONE, row, settled, take, tool, type, unfold } from "./browser.ts";
import { openKept } from "./kept.ts";
import { lend } from "./pages.ts";
import { fileOf, STARTERS } from "./starters.ts";

const LONG = 600_000;
const WINDOWS = [
  ["a phone, and a window twice as wide", PHONE, { width: 800, height: 1000 }],
  ["a desk, and a wider one", DESK, { width: 1920, height: 1080 }],
] as const;

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(async () => {
  await browser.close();
});

/** What stands out of its part's right edge, or out of the window's; what scrolls sideways by itself may. */
const cutOff = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const part = document.querySelector(".zone-part");
    const edge = Math.min(innerWidth, part?.getBoundingClientRect().right ?? innerWidth) + 0.5;
    const out = [...(part?.querySelectorAll("*") ?? [])].filter((element) => {
      // What ends in an ellipsis is cut on purpose; its whole text is in its title.
      if (element.closest(".scrolls, .sideways, .unseen, .day-notes, svg")) return false;
      const { right, width } = element.getBoundingClientRect();
      return width > 0 && right > edge;
    });
    const page = document.documentElement.scrollWidth > innerWidth ? ["the page itself"] : [];
    return [
      ...page,
      ...out
        .slice(0, 3)
        .map(
          ({ tagName, className, parentElement, textContent }) =>
            `${parentElement?.className} > ${tagName} ${className}: ${textContent?.slice(0, 40)}`,
        ),
    ];
  });

/** Lines of the answers that are seen in part. */
function cutLines(): readonly string[] {
  const [zone, list] = [".zone-answers", ".answers > ul"].map((one) =>
    document.querySelector(one)?.getBoundingClientRect(),
  );
  if (!zone || !list) return ["There are no answers."];
  return [...document.querySelectorAll(".answers > ul > li")].flatMap((line) => {
    const { top, bottom, left } = line.getBoundingClientRect();
    const isSeen = left < list.right - 1 && top < zone.bottom - 1 && bottom > top;
    return isSeen && bottom > zone.bottom + 1 ? [line.textContent ?? ""] : [];
  });
}

/** How far the page itself could be scrolled [px]. */
const scrollable = (page: Page) =>
  page.evaluate(() => document.documentElement.scrollHeight - document.documentElement.clientHeight);

async function openTemplate(page: Page, name: string): Promise<readonly string[]> {
  const file = fileOf(name);
  await openKept(page, file);
  await expect.poll(() => page.getByLabel("Name of this worksheet").inputValue()).toContain(file.title);
  await settled(page);
  return file.cards.map(({ id }) => id);
}

/** Presses Tab until `isThere`, at most so often; how often it was, or null. */
async function tabs(page: Page, most: number, isThere: string): Promise<number | null> {
  for (let stops = 1; stops <= most; stops++) {
    await page.keyboard.press("Tab");
    if (await page.evaluate((where) => document.activeElement?.matches(where) ?? false, isThere))
      return stops;
  }
  return null;
}

/** Keeps every height that the answers have from the first frame on. */
function keepHeights(): void {
  const heights: number[] = [];
  Object.assign(globalThis, { heights });
  const look = (): void => {
    const zone = document.querySelector(".zone-answers");
    if (zone) heights.push(Math.round(zone.getBoundingClientRect().height));
    requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
}

describe("the frame", () => {
  test.each([
    [1280, 800],
    [1024, 768],
    [1600, 900],
  ])(
    "on a first visit at %i the answers are 140 high from the first paint on, the lead in two lines",
    async (width, height) => {
      const { page, context } = await open(browser, { viewport: { width, height }, before: keepHeights });
      await page.locator(".first-visit").waitFor();
      const seen = await page.evaluate(() => (globalThis as unknown as { heights: number[] }).heights);
      expect([...new Set(seen)]).toEqual([140]);
      const lines = await page.locator("h1.lead").evaluate((lead) => {
        const { lineHeight } = getComputedStyle(lead);
        return lead.getBoundingClientRect().height / Number.parseFloat(lineHeight);
      });
      expect(lines).toBeLessThan(2.2);
      expect(await page.evaluate(cutLines)).toEqual([]);
      await context.close();
    },
  );

  test("on a phone what moved since holding is one press away in the window, also in hand; the chip lets go of nothing by itself; at 320 px all of the header is in it", async () => {
    const { page, context } = await open(browser, { viewport: PHONE });
    await tool(page, "Hold");
    await type(page, "totes.capacity", "500 gal");
    const chip = page.locator(".tools .pill");
    await chip.click();
    const list = page.locator(".menu-panel.held .moved-list");
    await expect.poll(() => list.locator(".changed").innerText()).toContain("500");
    const box = await list.boundingBox();
    expect(box?.y).toBeGreaterThanOrEqual(44);
    expect(box?.y).toBeLessThan(100);
    expect(box?.x).toBeGreaterThanOrEqual(12);
    await chip.click();
    await list.waitFor({ state: "detached" });
    await page.setViewportSize({ width: 320, height: 640 });
    const right = async (): Promise<number> => {
      const menu = await page.getByRole("button", { name: "Menu", exact: true }).boundingBox();
      return (menu?.x ?? 999) + (menu?.width ?? 0);
    };
    await expect.poll(right).toBeLessThanOrEqual(320);
    await chip.click();
    await list.getByRole("button", { name: "Let go" }).click();
    await chip.waitFor({ state: "detached" });
    await context.close();
  });

  test("on a tablet three presses at one place are three steps: what is told goes when a number is taken in hand", async () => {
    const { page, context } = await open(browser, { viewport: { width: 800, height: 1100 } });
    await page.locator(".first-visit").waitFor();
    await take(page, "totes.capacity");
    const step = page.getByRole("button", { name: /^A step up/ });
    const { x, y, width, height } = (await step.boundingBox()) ?? { x: 0, y: 0, width: 0, height: 0 };
    for (let press = 0; press < 3; press++) {
      await page.mouse.click(x + width / 2, y + height / 2);
      await page.waitForTimeout(250);
    }
    await expect.poll(() => page.locator(".in-hand-value").inputValue()).toMatch(/^350/);
    await context.close();
  });

  test("on a phone every part of every template (LONG=1; else of two with all kinds) opens, one after the other by the key ], and nothing is cut off", {
    timeout: LONG,
  }, async () => {
    const { page, context, complaints } = await lend(browser, {
      viewport: PHONE,
      colorScheme: "light",
      glass: 1,
      asks: isLong,
    });
    const cut: string[] = [];
    for (const name of STARTERS) {
      const cards = await openTemplate(page, name);
      const seen = new Set<string>();
      for (const _ of cards) {
        await page.keyboard.press("]");
        const id = (await page.locator("article.card").getAttribute("id")) ?? "";
        seen.add(id);
        const more = page.locator("article.card details.minor > summary");
        if ((await more.count()) > 0) await more.click();
        for (const what of await cutOff(page)) cut.push(`${name} ${id}: ${what}`);
      }
      expect([...seen].sort()).toEqual([...cards].sort());
    }
    expect(cut).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("at 1280 the page itself never scrolls, whatever part is open and whatever is in hand", async () => {
    const { page, context } = await open(browser, { used: true });
    await expect.poll(() => scrollable(page)).toBe(0);
    await take(page, "totes.capacity");
    await expect.poll(() => scrollable(page)).toBe(0);
    for (const card of ["weather", "long_bed", "hose_down"]) {
      await unfold(page, card);
      await expect.poll(() => scrollable(page)).toBe(0);
    }
    await context.close();
  });

  // On a desk, too, with LONG=1.
  test.each(WINDOWS.slice(0, tries(2, 1)))(
    "with a number in hand on %s, answers, place and the number are in the window, and axe finds nothing",
    async (_, ...windows) => {
      const { page, context } = await open(browser, { viewport: windows[0], used: true });
      await take(page, "totes.capacity");
      expect(await axe(page)).toEqual([]);
      for (const { width, height } of windows) {
        await page.setViewportSize({ width, height });
        for (const zone of ["h1.lead", ".zone-place", ".in-hand-value", '[id="totes.capacity"]']) {
          const box = await page.locator(zone).first().boundingBox();
          const at = `${zone} at ${width}`;
          expect(`${at} ${box !== null && box.y >= 0 && box.y + box.height <= height + 1}`).toBe(
            `${at} true`,
          );
          expect(box?.x, at).toBeGreaterThanOrEqual(0);
          expect((box?.x ?? 0) + (box?.width ?? 0), at).toBeLessThanOrEqual(width + 1);
        }
        await page.getByRole("button", { name: "Undo" }).waitFor();
      }
      await context.close();
    },
  );

  test("the first tank's size is within 25 stops of the top, on a desk and, by its group, on a phone", async () => {
    const desk = await open(browser);
    expect(await tabs(desk.page, 25, '[id="totes.capacity"]')).not.toBeNull();
    await desk.context.close();
    const tablet = await open(browser, { viewport: { width: 800, height: 1100 } });
    expect(await tabs(tablet.page, 25, '[id="totes.capacity"]')).not.toBeNull();
    await tablet.context.close();
    const { page, context } = await open(browser, { viewport: PHONE });
    const strip = await tabs(page, 20, ".zone-strip button");
    expect(strip).not.toBeNull();
    await page.keyboard.press("ArrowRight");
    await page.keyboard.press("ArrowRight");
    await page.keyboard.press("Enter");
    await row(page, "totes.capacity").waitFor();
    const rest = await tabs(page, 25, '[id="totes.capacity"]');
    expect((strip ?? 99) + 3 + (rest ?? 99)).toBeLessThanOrEqual(25);
    await context.close();
  });

  test("the first stop leads past everything to the open part", async () => {
    const { page, context } = await open(browser);
    await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe("part");
    // Where one stands is seen.
    expect(await page.locator("#part").evaluate((part) => getComputedStyle(part).outlineStyle)).not.toBe(
      "none",
    );
    await context.close();
  });

  test("holds at 320 px, at a desk at twice the size, on a phone on its side and in a window of 300 px: nothing is cut off, the open part can be reached", async () => {
    const [narrow, ...others] = [
      { width: 320, height: 640 },
      { width: 640, height: 400 },
      { width: 844, height: 390 },
      { width: 1280, height: 300 },
    ] as const;
    const { page, context } = await open(browser, { viewport: narrow });
    for (const viewport of [narrow, ...others]) {
      await page.setViewportSize(viewport);
      const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      expect(over, `${viewport.width}`).toBeLessThanOrEqual(0);
      await take(page, "totes.capacity");
      expect(await cutOff(page), `${viewport.width}`).toEqual([]);
      await page.getByRole("button", { name: "Done", exact: true }).click();
    }
    await context.close();
  });

  test("in a short window, on a phone on its side and at twice the size answers, place, number and axis are in the window; with less motion nothing glides", async () => {
    const [first, ...others] = [
      { width: 1280, height: 500 },
      { width: 844, height: 390 },
      { width: 640, height: 400 },
    ] as const;
    const { page, context } = await open(browser, { viewport: first });
    await take(page, "totes.capacity");
    for (const viewport of [first, ...others]) {
      await page.setViewportSize(viewport);
      const { width, height } = viewport;
      for (const zone of ["h1.lead", ".zone-place", ".in-hand-value", ".in-hand-slider"]) {
        const isIn = async (): Promise<boolean> => {
          const box = await page.locator(zone).boundingBox();
          if (!box) return false;
          return box.x >= 0 && box.y >= 0 && box.x + box.width <= width && box.y + box.height <= height;
        };
        await expect.poll(isIn, { message: `${zone} at ${width}` }).toBe(true);
      }
      const cut = () =>
        page.evaluate(() => {
          const [zone, lead] = [".zone-answers", "h1.lead"].map((one) =>
            document.querySelector(one)?.getBoundingClientRect(),
          );
          return (lead?.bottom ?? 0) - (zone?.bottom ?? 0);
        });
      await expect.poll(cut, { message: `the lead at ${width}` }).toBeLessThanOrEqual(0.5);
      expect(await page.evaluate(cutLines), `answers at ${width}`).toEqual([]);
      // Nothing lies over the axis.
      const isFree = () =>
        page.locator(".in-hand-slider").evaluate((slider) => {
          const { x, y, width: wide, height: high } = slider.getBoundingClientRect();
          return document.elementFromPoint(x + wide / 2, y + high / 2) === slider;
        });
      await expect.poll(isFree, { message: `the axis at ${width}` }).toBe(true);
    }
    const gliding = () =>
      page.evaluate(
        () =>
          [...document.querySelectorAll("body *")].filter((one) =>
            getComputedStyle(one)
              .transitionDuration.split(",")
              .some((time) => Number.parseFloat(time) > 0),
          ).length,
      );
    // Nothing glides while a number is in hand either, so it is put down first.
    await page.getByRole("button", { name: "Done", exact: true }).click();
    await page.emulateMedia({ reducedMotion: "no-preference" });
    await expect.poll(gliding).toBeGreaterThan(0);
    await page.emulateMedia({ reducedMotion: "reduce" });
    await expect.poll(gliding).toBe(0);
    await context.close();
  });

  test("axe finds nothing with something wrong, in the menu, in what it opens and on an empty sheet, nor (LONG=1) in a part of every group", async () => {
    const { page, context } = await open(browser, { viewport: PHONE });
    const groups = page.locator(".zone-strip button");
    for (let at = tries(0, 99); at < (await groups.count()); at++) {
      await groups.nth(at).click();
      await page.locator("article.card").waitFor();
      expect([at, await axe(page)]).toEqual([at, []]);
    }
    await page.setViewportSize(DESK);
    await type(page, "long_bed.length", "0 ft");
    await page.locator("h1.lead", { hasText: "Without Long bed" }).waitFor();
    expect(await axe(page)).toEqual([]);
    await page.getByRole("button", { name: "Menu", exact: true }).click();
    await page.locator(".menu-panel").waitFor();
    expect(await axe(page)).toEqual([]);
    await page.keyboard.press("Escape");
    for (const name of ["Share", "This week"]) {
      await tool(page, name);
      await page.locator("dialog[open] button").first().waitFor();
      expect([name, await axe(page)]).toEqual([name, []]);
      await page.keyboard.press("Escape");
      await page.locator("dialog[open]").waitFor({ state: "detached" });
    }
    await tool(page, "Worksheets");
    await page.locator("dialog[open] button").first().waitFor();
    expect(await axe(page)).toEqual([]);
    await page.getByRole("button", { name: /An empty one/ }).click();
    await page.locator("h1.lead", { hasText: "Nothing is here yet" }).waitFor();
    expect(await axe(page)).toEqual([]);
    await context.close();
  });

  test("what can kill stands open beside its number until it is read once; then it is named at the foot", async () => {
    const { page, context } = await open(browser);
    const beside = page.locator("article.card .row .caution", { hasText: "Never climb into a tank" });
    await beside.getByRole("button", { name: "I have read this" }).click();
    await beside.waitFor({ state: "detached" });
    await page.reload();
    await settled(page);
    await expect.poll(() => beside.count()).toBe(0);
    const foot = page.locator("details.cautions");
    await foot.locator("summary").click();
    await foot.getByText("Never climb into a tank").waitFor();
    await context.close();
  });
});
