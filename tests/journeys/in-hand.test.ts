// The number in hand, in a real browser: who changes it sees the answers, the place and the number meanwhile.

import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { tries } from "../tries.ts";
import { DESK, hand, launch, open, PHONE, row, settled, take, tool, unfold } from "./browser.ts";
import { fileOf, payloadOf } from "./starters.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(async () => {
  await browser.close();
});

const POWER = new URL("../fixtures/pump-and-power.json", import.meta.url);
const PANEL = "sun";

const LIST = { width: 800, height: 900 };
/** The others with LONG=1; what lies in the window at which width is tried of the frame, too. */
const WIDTHS = [PHONE, DESK, LIST].slice(0, tries(3, 1));

const value = async (page: Page) => (await hand(page).inputValue()).replaceAll("\u00a0", " ");
const slider = (page: Page) => page.locator(".in-hand-slider");
const undo = (page: Page) => page.getByRole("button", { name: /^Undo/ }).first();
const whole = (page: Page) => page.locator('.turning[aria-busy="false"]').waitFor();
const words = (page: Page) => page.locator(".axis-words span").allInnerTexts();

const SEEN = [".zone-answers", ".zone-place", ".in-hand-value", ".in-hand-slider", ".hand .over-axis"];

/** What of answers, place and number does not lie within the window, or is hidden in a zone that scrolls. */
async function outOfView(page: Page, names: readonly string[] = SEEN): Promise<readonly string[]> {
  const { width, height } = page.viewportSize() ?? DESK;
  const out: string[] = [];
  for (const name of names) {
    const box = await page.locator(name).first().boundingBox();
    const isIn =
      box !== null &&
      Math.min(box.x, box.y) >= -0.5 &&
      box.x + box.width <= width + 0.5 &&
      box.y + box.height <= height + 0.5 &&
      Math.min(box.width, box.height) > 10;
    if (!isIn) out.push(`${name}: ${JSON.stringify(box)} in ${width} x ${height}`);
  }
  const scrolled = await page.evaluate(() => scrollY);
  return scrolled === 0 ? out : [...out, `scrolled by ${scrolled}`];
}

/** The page comes to lie so, at the latest when all of it is fetched and drawn. */
const inView = (page: Page) => expect.poll(() => outOfView(page)).toEqual([]);

/** Drags the slider's thumb sideways, looking at every place it comes to. */
async function drag(page: Page, by: number, look: () => Promise<void>): Promise<void> {
  const box = await slider(page).boundingBox();
  const at = await slider(page).evaluate((input: HTMLInputElement) => input.valueAsNumber);
  if (!box) throw new Error("There is no slider.");
  const thumb = 34;
  const [x, y] = [box.x + thumb / 2 + at * (box.width - thumb), box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (const share of [0.2, 0.5, 1]) {
    await page.mouse.move(x + by * share, y);
    await look();
  }
  await page.mouse.up();
}

describe("a tank's size", () => {
  test.each(WIDTHS)(
    "by arrows, slider and typing at $width: all in view throughout, and one step of undo",
    async (viewport) => {
      const { page, context, complaints } = await open(browser, { viewport, used: true });
      await take(page, "totes.capacity");
      await inView(page);
      const ends = async () => {
        const all = await words(page);
        return [all.includes("20"), all.includes("5,000")];
      };
      await expect.poll(ends).toEqual([true, true]);

      await hand(page).press("ArrowUp");
      await expect.poll(() => value(page)).toBe("300 gal");
      await hand(page).press("Shift+ArrowUp");
      await expect.poll(() => value(page)).toBe("550 gal");
      await hand(page).press("ArrowDown");
      await expect.poll(() => value(page)).toBe("525 gal");
      await inView(page);
      await page.locator(".hand .step").last().click();
      await expect.poll(() => value(page)).toBe("550 gal");

      // A drag of 300 px stays on the scale it began with, and every value on the way is round.
      await drag(page, 300, async () => {
        const gallons = Number.parseFloat(await value(page));
        expect(gallons).toBeLessThanOrEqual(5000);
        expect(gallons % 25).toBe(0);

        expect(await ends()).toEqual([true, true]);
      });
      await inView(page);
      await drag(page, -300, async () => {
        expect(Number.parseFloat(await value(page))).toBeGreaterThanOrEqual(20);
      });

      // Typed in any unit, or as a sum; Enter keeps the focus.
      await hand(page).fill("2 m3");
      await hand(page).press("Enter");
      await expect.poll(() => value(page)).toBe("2 m3");
      await expect.poll(() => hand(page).evaluate((field) => field === document.activeElement)).toBe(true);
      await hand(page).fill("300 gal + 2 * 55 gal");
      await hand(page).press("Enter");
      await expect.poll(() => value(page)).toBe("410 gal");
      await settled(page);
      await inView(page);

      // All of it was one number in hand: one step.
      await undo(page).click();
      await expect.poll(() => value(page)).toBe("275 gal");
      await settled(page);
      await inView(page);
      expect(complaints).toEqual([]);
      await context.close();
    },
  );

  test("Escape puts back what was there and leaves nothing behind; once more, it puts the number down", async () => {
    const { page, context, complaints } = await open(browser, { used: true });
    await take(page, "totes.capacity");
    await hand(page).press("Shift+ArrowUp");
    await hand(page).press("ArrowUp");
    await hand(page).fill("not a number");
    await hand(page).press("Enter");
    await expect.poll(() => page.locator(".hand .wrong").innerText()).toContain("not a number");
    await hand(page).press("Escape");
    await expect.poll(() => value(page)).toBe("275 gal");
    await expect.poll(() => page.locator(".hand .wrong").count()).toBe(0);
    await expect.poll(() => undo(page).isDisabled()).toBe(true);
    await hand(page).press("Escape");
    await expect.poll(() => page.locator(".hand").count()).toBe(0);
    await expect
      .poll(() => row(page, "totes.capacity").evaluate((button) => button === document.activeElement))
      .toBe(true);

    // From the keyboard alone: an arrow takes it and steps, a digit takes it and begins to type.
    await page.keyboard.press("ArrowUp");
    await expect.poll(() => value(page)).toBe("300 gal");
    await page.keyboard.press("Escape");
    await page.keyboard.press("Escape");
    await page.keyboard.type("9");
    await page.keyboard.type("00 gal");
    await page.keyboard.press("Enter");
    await expect.poll(() => value(page)).toBe("900 gal");
    await slider(page).press("ArrowLeft");
    await expect.poll(() => value(page)).toBe("875 gal");
    await slider(page).press("PageDown");
    await expect.poll(() => value(page)).toBe("625 gal");
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("a roof of 20 x 30 ft is typed as such", async () => {
    const { page, context, complaints } = await open(browser, { used: true });
    await take(page, "barn_roof.footprint");
    await hand(page).fill("20 x 30 ft");
    await hand(page).press("Enter");
    await expect.poll(() => value(page)).toMatch(/^600 ft(2|²)$/);
    await hand(page).fill("20 ft * 15 ft + 3 ft2");
    await hand(page).press("Enter");
    await expect.poll(() => value(page)).toMatch(/^303 ft(2|²)$/);
    expect(complaints).toEqual([]);
    await context.close();
  });
});

describe("the curve", () => {
  test("of a hose's bore, a bed's mulch and a panel's tilt shows the answer all along; a second answer stands over the same axis", async () => {
    const { page, context, complaints } = await open(browser, { asks: true });
    await take(page, "totes.capacity");
    await whole(page);
    await expect
      .poll(() => page.locator(".hand .caption select").inputValue())
      .toBe("season.worst_season_days_short");
    await expect.poll(async () => (await words(page)).join()).toContain("enough from");
    // What is said to be enough is, and a step less is not.
    const enough = (await words(page)).find((word) => word.startsWith("enough from")) ?? "";
    const size = Number.parseFloat(enough.replaceAll(/[^\d.]/g, ""));
    expect(size).toBeGreaterThan(275);
    const days = page.locator(".hand .caption b:not(.old)").first();
    for (const [gallons, said] of [
      [size, /^0$/],
      // A step of the hand at such sizes.
      [size - 25, /^[1-9]/],
    ] as const) {
      await hand(page).fill(`${gallons} gal`);
      await hand(page).press("Enter");
      await settled(page);
      await expect.poll(() => days.innerText(), { message: `${gallons} gal` }).toMatch(said);
    }
    await undo(page).click();
    await settled(page);
    await whole(page);
    await expect.poll(() => page.locator(".hand .plot-line").count()).toBe(1);
    await page.locator(".hand .another").selectOption("season.days_of_autonomy");
    await whole(page);
    await expect.poll(() => page.locator(".hand .plot-line").count()).toBe(2);
    await expect.poll(() => slider(page).count()).toBe(1);

    // Turning it begins nothing anew: the axis and its curve stand still.
    const line = await page.locator(".hand .plot-line").first().getAttribute("d");
    await hand(page).press("ArrowUp");
    await settled(page);
    await whole(page);
    await expect.poll(() => page.locator(".hand .plot-dots").first().getAttribute("d")).not.toBe("");
    await expect.poll(() => page.locator(".hand .plot-line").first().getAttribute("d")).toBe(line);

    await take(page, "hose_down.bore");
    await whole(page);
    await expect.poll(() => page.locator(".hand .plot-line").first().getAttribute("d")).toMatch(/^M.*L/);
    // That it changes nothing is said where all of its answers are one, and nowhere else.
    const behind = page.locator(".hand .plot-table");
    await behind.locator("summary").click();
    await expect.poll(() => behind.locator("tbody tr").count()).toBeGreaterThan(9);
    const tried = await behind.locator("tbody tr td:last-child").allInnerTexts();
    await behind.locator("summary").click();
    const isFlat = new Set(tried).size === 1;
    await expect
      .poll(async () =>
        /changes (next to )?nothing here/.test(
          (await page.locator(".hand .plot text").allTextContents()).join(" "),
        ),
      )
      .toBe(isFlat);
    await page.locator(".hand .caption select").first().selectOption("hose_down.refill_time");
    await whole(page);
    const before = await page.locator(".hand .caption b").first().innerText();
    await slider(page).press("PageDown");
    await settled(page);
    await expect.poll(() => page.locator(".hand .caption b").first().innerText()).not.toBe(before);
    await expect.poll(() => page.locator(".hand .caption .was").first().innerText()).toBe(`was ${before}`);

    // A choice is a row of dots on the same axis, one for each word.
    await unfold(page, "long_bed.mulch");
    await page.getByRole("button", { name: "Mulch", exact: true }).click();
    await whole(page);
    const mulches = await page.locator("select.in-hand-value option").count();
    expect(mulches).toBeGreaterThan(2);
    await expect.poll(() => page.locator(".hand .plot-line").count()).toBe(0);
    const dots = (await page.locator(".hand .plot-dots").first().getAttribute("d")) ?? "";
    expect(dots.match(/M/g)).toHaveLength(mulches);
    // Each of them is named, and what it is called stands whole where it is chosen.
    const labels = await page.locator("select.in-hand-value option").allInnerTexts();
    const named = async () => (await words(page)).map((word) => word.replace(/: best$/, "")).sort();
    await expect.poll(named).toEqual([...labels].sort());
    // It comes out from under the hand, and from over the cautions at the part's foot.
    const mulchRow = page.locator(".row.held");
    const free = () =>
      mulchRow.evaluate((one) => {
        const { x, y, width, height } = one.getBoundingClientRect();
        return [2, height - 2].every((down) => {
          const at = document.elementFromPoint(x + width / 2, y + down);
          return at !== null && one.contains(at);
        });
      });
    await expect.poll(free).toBe(true);
    const shown = page.locator(".in-hand-word > span");
    expect(await shown.evaluate((one) => one.scrollWidth <= one.parentElement!.clientWidth)).toBe(true);
    const mulch = await page.locator("select.in-hand-value").inputValue();
    await slider(page).press("ArrowLeft");
    await expect.poll(() => page.locator("select.in-hand-value").inputValue()).not.toBe(mulch);
    await undo(page).click();
    await expect.poll(() => page.locator("select.in-hand-value").inputValue()).toBe(mulch);

    await page.getByRole("button", { name: "Worksheets" }).click();
    await page.locator("dialog input[type=file]").setInputFiles(payloadOf(fileOf(POWER)));
    await page.locator('article.card[id="tub"]').waitFor();
    await settled(page);
    await take(page, `${PANEL}.tilt`);
    await whole(page);
    await expect.poll(() => page.locator(".hand .plot-line").first().getAttribute("d")).toMatch(/^M.*L/);
    expect(complaints).toEqual([]);
    await context.close();
  });
});

describe("a number in hand on a phone", () => {
  test("says where it is from, and takes another word for that", async () => {
    const { page, context, complaints } = await open(browser, { viewport: PHONE, used: true });
    await take(page, "totes.capacity");
    const from = page.getByLabel("Where the number comes from");
    const box = await from.boundingBox();
    expect(box?.height).toBeGreaterThanOrEqual(44);
    expect((box?.x ?? 0) + (box?.width ?? 999)).toBeLessThanOrEqual(PHONE.width);
    await from.selectOption("measured");
    const said = () => row(page, "totes.capacity").innerText();
    await expect.poll(said).toContain("measured");
    await inView(page);
    // No other number was measured; what was measured comes back as such.
    await page.getByRole("button", { name: "Done", exact: true }).click();
    await take(page, "totes.capacity");
    await page.locator(".hand .step").last().click();
    await expect.poll(() => value(page)).toBe("300 gal");
    expect(await from.inputValue()).toBe("");
    await expect.poll(said).not.toContain("measured");
    await hand(page).press("Escape");
    await expect.poll(() => value(page)).toBe("275 gal");
    await expect.poll(() => from.inputValue()).toBe("measured");
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("keeps its dock with two answers over a choice, and no word of one lies on the other's", async () => {
    const { page, context } = await open(browser, { viewport: PHONE, asks: true });
    await unfold(page, "tunnel_bed.mulch");
    await page.getByRole("button", { name: "Mulch", exact: true }).click();
    await whole(page);
    await page.locator(".hand .another").selectOption("season.days_of_autonomy");
    await whole(page);
    await expect.poll(() => page.locator(".hand .caption").count()).toBe(2);
    expect(await page.locator(".hand").evaluate((one) => one.scrollHeight)).toBe(249);
    await expect
      .poll(() =>
        page.evaluate(() => {
          const second = document.querySelectorAll(".hand .caption")[1]?.getBoundingClientRect();
          return [...document.querySelectorAll(".hand .plot text")].flatMap((one) => {
            const { bottom, top, width } = one.getBoundingClientRect();
            const isOver = second && width > 0 && top < second.bottom - 1 && bottom > second.top + 1;
            return isOver ? [one.textContent] : [];
          });
        }),
      )
      .toEqual([]);
    await context.close();
  });

  test("with a keyboard on the screen the place goes; answers, name, value and unit stand above it", async () => {
    const { page, context } = await open(browser, { viewport: PHONE, used: true });
    await take(page, "totes.capacity");
    const left = PHONE.height - 336;
    // No browser without a screen brings up a keyboard; what the page hears of one is the same.
    await page.evaluate((height) => {
      Object.defineProperty(visualViewport, "height", { configurable: true, get: () => height });
      visualViewport?.dispatchEvent(new Event("resize"));
    }, left);
    await page.locator(".hand.bare").waitFor();
    await expect.poll(() => page.locator(".zone-place").isVisible()).toBe(false);
    await expect.poll(() => slider(page).count()).toBe(0);
    for (const name of [".zone-answers", ".hand .what", ".in-hand-value"]) {
      const box = await page.locator(name).first().boundingBox();
      expect(box?.y, name).toBeGreaterThanOrEqual(0);
      expect((box?.y ?? 999) + (box?.height ?? 0), name).toBeLessThanOrEqual(left);
    }
    await page.evaluate(() => {
      Object.defineProperty(visualViewport, "height", { configurable: true, get: () => innerHeight });
      visualViewport?.dispatchEvent(new Event("resize"));
    });
    await page.locator(".hand:not(.bare)").waitFor();
    await inView(page);
    await context.close();
  });

  test("a finger drawn across the rows, and [ and ], go to the part before and after", async () => {
    const { page, context } = await open(browser, { viewport: PHONE, used: true });
    await unfold(page, "totes");
    const part = () => page.locator("article.card").getAttribute("id");
    await page.keyboard.press("]");
    await expect.poll(part).not.toBe("totes");
    const after = await part();
    await page.keyboard.press("[");
    await expect.poll(() => part()).toBe("totes");
    const devtools = await context.newCDPSession(page);
    const touch = (type: "touchStart" | "touchMove" | "touchEnd", x: number | null) =>
      devtools.send("Input.dispatchTouchEvent", { type, touchPoints: x === null ? [] : [{ x, y: 560 }] });
    const draw = async (from: number, to: number) => {
      await touch("touchStart", from);
      for (let step = 1; step <= 6; step++) await touch("touchMove", from + ((to - from) * step) / 6);
      await touch("touchEnd", null);
    };
    await draw(300, 120);
    await expect.poll(part).toBe(after);
    await draw(120, 300);
    await expect.poll(part).toBe("totes");
    await context.close();
  });
});

test("Undo by the keyboard takes back what was typed, and the number stays in hand", async () => {
  const { page, context } = await open(browser, { used: true });
  await take(page, "totes.capacity");
  const before = await value(page);
  await hand(page).fill("500 gal");
  await hand(page).press("Enter");
  await expect.poll(() => value(page)).toBe("500 gal");
  await hand(page).press("Control+z");
  await expect.poll(() => value(page)).toBe(before);
  await expect.poll(() => page.evaluate(() => document.activeElement?.className)).toContain("in-hand-value");
  // What is only typed counts as entered, so that it is what is undone.
  await hand(page).fill("700 gal");
  await hand(page).press("Control+z");
  await expect.poll(() => value(page)).toBe(before);
  await hand(page).press("Control+Shift+z");
  await expect.poll(() => value(page)).toBe("700 gal");
  await context.close();
});

/** What of the hand cannot be pressed in its middle, since something lies over it there or it is out of the window. */
const covered = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll(".hand :is(button, select, input, summary):not(.plot-table *)")].flatMap(
      (one) => {
        const { x, y, width, height } = one.getBoundingClientRect();
        const at = document.elementFromPoint(x + width / 2, y + height / 2);
        return at === one || one.contains(at) ? [] : [`${one.className} under ${at?.className ?? "nothing"}`];
      },
    ),
  );

describe("a number in hand in a low window", () => {
  /** Two pages on one screen leave no room for the place. */
  const NO_PLACE = { width: 390, height: 480 };
  const LOW = [
    { width: 844, height: 390 },
    { width: 667, height: 375 },
    NO_PLACE,
    { width: 640, height: 600 },
    { width: 800, height: 700 },
    { width: 1280, height: 540 },
  ];

  test("value, curve, slider and steps are in the window together, and each can be pressed", async () => {
    const { page, context } = await open(browser, { viewport: LOW[0] ?? DESK });
    await take(page, "totes.capacity");
    for (const viewport of LOW) {
      await page.setViewportSize(viewport);
      const seen = SEEN.filter((name) => viewport !== NO_PLACE || name !== ".zone-place");
      const all = [...seen, ".hand .step", ".hand .step + .step", ".hand .done"];
      const at = { message: `${viewport.width} x ${viewport.height}` };
      await expect.poll(() => outOfView(page, all), at).toEqual([]);
      await expect.poll(() => covered(page), at).toEqual([]);
      // The dock is as high as on a phone that stands upright.
      const high = () => page.locator(".hand").evaluate((one) => one.getBoundingClientRect().height);
      await expect.poll(high, at).toBe(249);
    }
    await page.locator(".hand .step").last().click();
    await expect.poll(() => value(page)).toBe("300 gal");
    await context.close();
  });

  test("and on a tablet all that is pressed has 44 for a finger, with a name and a price of any length", async () => {
    const { page, context } = await open(browser, { viewport: { width: 800, height: 1100 } });
    const devtools = await context.newCDPSession(page);
    await devtools.send("Emulation.setTouchEmulationEnabled", { enabled: true });
    await take(page, "totes.capacity");
    expect(await page.evaluate(() => matchMedia("(pointer: coarse)").matches)).toBe(true);
    const small = () =>
      page.evaluate(() =>
        [...document.querySelectorAll(".hand :is(button, select, input, summary), .beside button")].flatMap(
          (one) => {
            const { width, height } = one.getBoundingClientRect();
            return width <= 1 || Math.min(width, height) >= 44
              ? []
              : [`${one.className} ${one.textContent?.slice(0, 20)}: ${width} x ${height}`];
          },
        ),
      );
    await page.getByLabel("Where the number comes from").selectOption("borrowed");
    for (const viewport of [
      { width: 800, height: 1100 },
      { width: 844, height: 390 },
      { width: 1024, height: 768 },
    ]) {
      await page.setViewportSize(viewport);
      const at = { message: `${viewport.width} x ${viewport.height}` };
      await expect.poll(small, at).toEqual([]);
      await expect.poll(() => covered(page), at).toEqual([]);
    }
    await devtools.send("Emulation.setTouchEmulationEnabled", { enabled: false });
    await context.close();
  });
});

describe("for those who cannot look or point", () => {
  test("the curve's table is in a phone's dock, too, with the number in hand and what was held; Escape folds it", async () => {
    const { page, context, complaints } = await open(browser, { viewport: PHONE, asks: true });
    await tool(page, "Hold");
    await take(page, "totes.capacity");
    await whole(page);
    await page.locator(".hand .step").last().click();
    await settled(page);
    await whole(page);
    const summary = page.locator(".hand .plot-table summary");
    // Folded, it takes no room of the dock's.
    expect(await page.locator(".hand").evaluate((one) => one.getBoundingClientRect().height)).toBe(249);
    await summary.focus();
    await page.keyboard.press("Enter");
    const rows = page.locator(".hand .plot-table tbody tr");
    await expect.poll(() => rows.count()).toBeGreaterThan(9);
    const cells = async (first: RegExp) => {
      const all = await rows.evaluateAll((list) =>
        list.map((one) => [...one.children].map((cell) => cell.textContent?.replaceAll("\u00a0", " ") ?? "")),
      );
      return all.filter(([name]) => first.test(name ?? ""));
    };
    const days = await page.locator(".hand .caption b").first().innerText();
    const was = (await page.locator(".hand .caption .was").first().innerText()).replace("was ", "");
    expect(await cells(/in hand/)).toEqual([["300 gal, in hand", days]]);
    expect(await cells(/held/)).toEqual([["held 275", was]]);
    await inView(page);
    await page.keyboard.press("Escape");
    await expect.poll(() => rows.count()).toBe(0);
    await expect.poll(() => summary.evaluate((one) => one === document.activeElement)).toBe(true);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("on a desk the table scrolls by itself: steps and rows of the part stay where they can be pressed", async () => {
    const { page, context } = await open(browser, { asks: true });
    await take(page, "totes.capacity");
    await whole(page);
    await page.locator(".hand .plot-table summary").click();
    await expect.poll(() => page.locator(".hand .plot-table tbody tr").count()).toBeGreaterThan(9);
    await expect.poll(() => outOfView(page, [".hand .step", ".hand .step + .step"])).toEqual([]);
    await row(page, "totes.count").click();
    await expect.poll(() => page.locator(".hand .what").innerText()).toContain("joined");
    await context.close();
  });

  test("a choice in hand has the focus, is turned by arrows, put back by Escape and put down by the next", async () => {
    const { page, context, complaints } = await open(browser, { used: true });
    await unfold(page, "totes.shape");
    const chosen = () => page.locator("select.in-hand-value").inputValue();
    await page.getByRole("button", { name: "Shape", exact: true }).focus();
    await page.keyboard.press("Enter");
    const isInHand = () => page.evaluate(() => document.activeElement?.matches("select.in-hand-value"));
    await expect.poll(isInHand).toBe(true);
    const before = await chosen();
    await page.keyboard.press("ArrowRight");
    await expect.poll(chosen).not.toBe(before);
    await page.keyboard.press("ArrowUp");
    await expect.poll(chosen).toBe(before);
    await page.keyboard.press("ArrowDown");
    await expect.poll(chosen).not.toBe(before);
    await page.keyboard.press("Escape");
    await expect.poll(chosen).toBe(before);
    await expect.poll(isInHand).toBe(true);
    await page.keyboard.press("Escape");
    await expect.poll(() => page.locator(".hand").count()).toBe(0);
    await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe("totes.shape");
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("each end of a number that is not sure says itself with its unit, and has a thumb clear of the other's", async () => {
    const { page, context } = await open(browser, { viewport: PHONE, used: true });
    await take(page, "totes.capacity");
    const ends = () =>
      page
        .locator(".two-thumbs input")
        .evaluateAll((list) => list.map((one) => one.getAttribute("aria-valuetext")));
    const enter = async (text: string) => {
      await hand(page).fill(text);
      await hand(page).press("Enter");
    };
    await enter("625 gal");
    await expect.poll(() => slider(page).getAttribute("aria-valuetext")).toBe("625 gal");
    for (const [low, high] of [
      ["425", "625"],
      ["290", "300"],
      ["20", "22"],
      ["4900", "5000"],
    ]) {
      await enter(`${low} to ${high} gal`);
      await expect.poll(ends, { message: `${low}` }).toEqual([`${low} gal`, `${high} gal`]);
      const { apart, hit } = await page.locator(".two-thumbs input").evaluateAll((list) => {
        const thumb = 40;
        const at = (list as HTMLInputElement[]).map((one) => {
          const { x, y, width, height } = one.getBoundingClientRect();
          return [x + thumb / 2 + one.valueAsNumber * (width - thumb), y + height / 2] as const;
        });
        const [one, other] = at;
        return {
          apart: (other?.[0] ?? 0) - (one?.[0] ?? 0),
          hit: at.map(([x, y], which) => document.elementFromPoint(x, y) === list[which]),
        };
      });
      expect(hit, `${low} to ${high}`).toEqual([true, true]);
      expect(apart).toBeGreaterThanOrEqual(39.5);
    }
    // Drawn along and back, an end is where it was, however near the other it stands.
    await enter("290 to 300 gal");
    const [x, y] = await page.locator(".two-thumbs .high").evaluate((one: HTMLInputElement) => {
      const box = one.getBoundingClientRect();
      return [box.x + 20 + one.valueAsNumber * (box.width - 40), box.y + box.height / 2] as const;
    });
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (const by of [20, 60]) await page.mouse.move(x + by, y);
    await expect.poll(() => value(page)).not.toBe("290 to 300 gal");
    await page.mouse.move(x + 20, y);
    await page.mouse.move(x, y);
    await expect.poll(() => value(page)).toBe("290 to 300 gal");
    await page.mouse.up();
    await page.getByRole("button", { name: "Sure of it", exact: true }).click();
    await context.close();
  });
});

describe("what is held", () => {
  test("is marked on the axis, listed with what is looked for first, and can be gone back to in one step", async () => {
    const { page, context, complaints } = await open(browser, { used: true });
    await page.getByRole("button", { name: "Hold", exact: true }).click();
    await take(page, "totes.capacity");
    await hand(page).fill("500 gal");
    await hand(page).press("Enter");
    await settled(page);
    await expect.poll(() => words(page)).toContain("held 275");
    await page.locator(".hand .done").click();
    const list = page.locator(".moved-list");
    await expect
      .poll(() => list.locator(".changed").innerText())
      .toMatch(/Each holds:\s275\sgal →\s500\sgal/);
    // What the lead says is first, once the season's numbers are there, and the list says how the rest is sorted.
    const first = () => list.locator("ul:not(.changed) li button").allInnerTexts();
    await expect
      .poll(async () => (await first()).slice(0, 3))
      .toEqual(["Seasons with a short day", "Short days, worst season", "Full tanks last"]);
    expect(await list.innerText()).toContain("then what moved furthest");
    // The ways that are drawn get no longer from row to row.
    const ways = () => list.locator("li .way").evaluateAll((all) => all.map((one) => one.clientWidth));
    const isSorted = async () => {
      const rest = (await ways()).slice(3);
      return rest.length > 3 && rest.every((way, at) => way <= (rest[at - 1] ?? way));
    };
    await expect.poll(isSorted).toBe(true);
    await list.getByRole("button", { name: "Go back" }).click();
    await settled(page);
    await expect.poll(() => row(page, "totes.capacity").innerText()).toContain("275");
    await expect.poll(() => list.locator("ul:not(.changed) li").count()).toBe(0);
    await undo(page).click();
    await expect.poll(() => row(page, "totes.capacity").innerText()).toContain("500");
    await list.getByRole("button", { name: "Let go" }).click();
    await expect.poll(() => list.count()).toBe(0);
    expect(complaints).toEqual([]);
    await context.close();
  });
});
