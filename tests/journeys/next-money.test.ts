// What to buy next, and working back from an answer: said, priced on the spot, kept beside, put on the sheet; what was said
// is what the sheet then says.

import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { tries } from "../tries.ts";
import { axe } from "./axe.ts";
import { DESK, launch, open, PHONE, settled, shownValueOf, tool } from "./browser.ts";
import { DEMO_SEASONS } from "./starters.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(async () => {
  await browser.close();
});

const plain = (text: string): string => text.replaceAll("\u00a0", " ").replaceAll(/\s+/g, " ").trim();
const press = (page: Page, name: string | RegExp) => page.getByRole("button", { name }).first().click();

/** The sentences of the best buys, once they are worked out. */
async function buys(page: Page): Promise<readonly string[]> {
  await page.locator('.next-money .found[aria-busy="false"]').waitFor();
  return (await page.locator(".next-money ol > li > p:first-child").allInnerTexts()).map(plain);
}

async function price(page: Page, what: string, text: string): Promise<void> {
  await page.getByLabel(`Price: ${what}`, { exact: true }).fill(text);
  await page.keyboard.press("Enter");
}

/** Short days of the mean season as the sheet has them. */
const daysShort = async (page: Page) => Number(await shownValueOf(page, "season.days_short"));

/** On a desk, too, with LONG=1. */
const WHERE = [
  ["a phone", PHONE],
  ["a desk", DESK],
] as const;

describe.each(WHERE.slice(0, tries(2, 1)))("on %s", (_where, viewport) => {
  test("next 100 of money: what it buys, priced on the spot, kept beside and put on the sheet", async () => {
    const { page, context, complaints } = await open(browser, { viewport, asks: true });
    await page.locator(".gives-out .number").click();
    await page.locator(".answer-working").getByRole("button", { name: "Next money" }).click();
    await expect
      .poll(() => buys(page))
      .toEqual([
        expect.stringMatching(
          new RegExp(
            `^Next \\$60: one more of Two totes, \\d+ of \\d+ short days fewer in ${DEMO_SEASONS} seasons\\.$`,
          ),
        ),
      ]);
    await price(page, "a lid for Tub by the tunnel", "fifteen");
    await page.locator(".next-money .wrong").waitFor();
    await price(page, "a lid for Tub by the tunnel", "15");
    await page.locator(".next-money ol > li > p:first-child", { hasText: /^Next\s\$75/ }).waitFor();
    const [first = "", ...others] = await buys(page);
    expect(first).toMatch(/^Next \$75: one more of Two totes and a lid for Tub by the tunnel, /);
    expect(others.some((said) => said.startsWith("Next $15: a lid"))).toBe(true);
    const [, fewer, all] = /(\d+) of (\d+) short days/.exec(first) ?? [];
    expect(await axe(page)).toEqual([]);
    await press(page, /^Keep beside: Next \$75/);
    await page.locator(".plans-beside table").waitFor();
    await expect
      .poll(async () => plain(await page.locator(".plans-beside thead").innerText()))
      .toContain("One more of Two totes and a lid for Tub by the tunnel");
    await expect
      .poll(async () => plain(await page.locator(".plans-beside thead .price").last().innerText()))
      .toContain("$75");
    await tool(page, "Next money");
    await buys(page);
    await press(page, /^Put it on the sheet: Next \$75/);
    await settled(page);
    // The mean is shown to half a day.
    const left = (Number(all) - Number(fewer)) / DEMO_SEASONS;
    await expect.poll(async () => Math.abs((await daysShort(page)) - left)).toBeLessThanOrEqual(0.5);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("work back: full tanks are to last thirty days, by turning what the totes hold", async () => {
    const { page, context, complaints } = await open(browser, { viewport, asks: true });
    await page.locator("h1.lead .number").last().click();
    const back = page.locator(".work-back");
    await back.getByLabel(/^Wished/).fill("30 days");
    await back.getByLabel("The number to turn for it").selectOption("totes.capacity");
    await back.getByRole("button", { name: "Work it out" }).click();
    await back.locator("li").first().waitFor();
    const said = plain(await back.locator("li span").first().innerText());
    const [, gallons = "", days = ""] = /^([\d.]+) gal does it: (\d+) days\.$/.exec(said) ?? [];
    expect(Number(gallons)).toBeGreaterThan(275);
    // A step of the hand, which is never less than what was wished.
    expect(Number(gallons) % 25).toBe(0);
    expect(Number(days)).toBeGreaterThanOrEqual(30);
    expect(await axe(page)).toEqual([]);
    await back.getByRole("button", { name: `Set it to ${gallons} gal` }).click();
    await settled(page);
    await expect
      .poll(async () => plain(await page.locator("h1.lead").innerText()))
      .toMatch(new RegExp(`last ${days} days`));
    await back.getByRole("button", { name: "Work it out" }).click();
    await back.getByText(`It is so already: ${days} days.`).waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });
});

/** Whether all of it is seen: within the window, within the working, and over what stands at its foot. */
const isSeen = (page: Page, selector: string) =>
  page.locator(selector).evaluate((element) => {
    const box = element.getBoundingClientRect();
    const around = element.closest(".answer-working")?.getBoundingClientRect();
    const low = document.elementFromPoint(box.left + box.width / 2, box.bottom - 2);
    return (
      box.height > 0 &&
      box.top >= (around?.top ?? 0) &&
      box.bottom <= Math.min(around?.bottom ?? 0, innerHeight) &&
      low !== null &&
      element.contains(low)
    );
  });

test.each([PHONE, DESK])(
  "work back is in sight at %o, and so is what it comes to; it begins with what gives out first",
  async (viewport) => {
    const { page, context, complaints } = await open(browser, { viewport, asks: true });
    await page.locator(".gives-out .number").waitFor();
    await page.locator("h1.lead .number", { hasText: "days" }).first().click();
    const back = page.locator(".work-back");
    await back.waitFor();
    expect(await isSeen(page, ".work-back")).toBe(true);
    const number = back.getByLabel("The number to turn for it");
    await expect.poll(() => number.inputValue()).toBe("totes.capacity");
    await back.getByLabel(/^Wished/).fill("10 days");
    await back.getByRole("button", { name: "Work it out" }).click();
    await back.locator("li").first().waitFor();
    await expect.poll(() => isSeen(page, ".work-back [role=status]")).toBe(true);
    // What moves nothing is said after what does.
    await expect.poll(() => number.locator("optgroup option").count()).toBeGreaterThan(0);
    expect(await number.locator("> option").count()).toBeGreaterThan(0);
    expect(await number.locator('optgroup option[value="totes.capacity"]').count()).toBe(0);
    await page.keyboard.press("Escape");
    await page.locator(".answers li .number", { hasText: /times?$/ }).click();
    await back.waitFor();
    await expect.poll(() => back.getByLabel("At most or at least").inputValue()).toBe("at least");
    await expect.poll(() => number.inputValue()).toMatch(/\.rated_capacity$/);
    expect(complaints).toEqual([]);
    await context.close();
  },
);
