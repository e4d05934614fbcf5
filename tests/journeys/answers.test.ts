// The answers on top: each number leads to its working where it stands and carries what it was, at none that did not
// move; and what they say of a sheet that is empty, that lacks a number, that waits, or that somebody sent.

import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { enter, launch, open, PHONE, settled, tool, type } from "./browser.ts";

let browser: Awaited<ReturnType<typeof launch>>;

beforeAll(async () => {
  browser = await launch();
});

afterAll(async () => {
  await browser.close();
});

const plain = (text: string): string => text.replaceAll(" ", " ").replaceAll(/\s+/g, " ").trim();
const lead = async (page: Page): Promise<string> => plain(await page.locator("h1.lead").innerText());

/** The numbers of the lead in order, each with what it was: "7 of 20 | was 13". */
const numbers = (page: Page): Promise<readonly string[]> =>
  page
    .locator("h1.lead .together")
    .evaluateAll((all) =>
      all.map((one) =>
        [
          one.querySelector(".number")?.textContent ?? "",
          one.querySelector(".was")?.textContent?.trim() ?? "",
        ]
          .join(" | ")
          .replaceAll(" ", " "),
      ),
    );

test("a bigger tank: what moved says what it was beside itself, what did not says nothing", async () => {
  const { page, context, complaints } = await open(browser);
  const before = await numbers(page);
  expect(before.every((text) => text.endsWith("| "))).toBe(true);
  await type(page, "totes.capacity", "400 gal");
  const after = await numbers(page);
  // Behind its phrase, not in the middle of it.
  await expect.poll(() => lead(page)).toMatch(/^Short in \d+ of \d+ made-up seasons( was \d+)?[;:] /);
  expect(await lead(page)).toMatch(/last [\d.]+ days( without rain)? was [\d.]+\./);
  expect(after).toHaveLength(before.length);
  after.forEach((text, at) => {
    const [now = "", was = ""] = text.split(" | ");
    const [then = ""] = (before[at] ?? "").split(" | ");
    if (now === then) expect(was).toBe("");
    else expect(then.startsWith(was.replace(/^was /, "")) && was !== "").toBe(true);
  });
  expect(after.some((text) => !text.endsWith("| "))).toBe(true);
  await page.getByRole("button", { name: /^Undo/ }).click();
  await settled(page);
  await expect
    .poll(async () => (await numbers(page)).map((text) => text.split(" | ")[0]))
    .toEqual(before.map((text) => text.split(" | ")[0]));
  // A color is nothing that the answers hang on.
  await page.evaluate(() => getSelection()?.removeAllRanges());
  expect(complaints).toEqual([]);
  await context.close();
});

test("a number is pressed: its working opens where it stands, with share and driest year; Escape gives the focus back", async () => {
  // Of only a few years the driest is told in other words.
  const { page, context, complaints } = await open(browser, { whole: true });
  const number = page.locator("h1.lead .number").first();
  const place = await page.locator(".answers").boundingBox();
  await number.click();
  const working = page.locator(".answer-working");
  await working.waitFor();
  const box = await working.boundingBox();
  expect(Math.abs((box?.y ?? 0) - (place?.y ?? 0) - (place?.height ?? 0))).toBeLessThan(20);
  await expect
    .poll(async () => plain(await working.innerText()))
    .toMatch(/In the driest (made-up year|year on record), \d{4}, .*of what they would have used/);
  await expect.poll(() => number.getAttribute("aria-expanded")).toBe("true");
  await page.keyboard.press("Escape");
  await working.waitFor({ state: "detached" });
  await expect.poll(() => number.evaluate((element) => element === document.activeElement)).toBe(true);
  expect(complaints).toEqual([]);
  await context.close();
});

test("an empty sheet asks what there is, and takes a file", async () => {
  const { page, context, complaints } = await open(browser, { viewport: PHONE, used: true });
  await tool(page, "Worksheets");
  await page.getByRole("button", { name: /An empty one/ }).click();
  await settled(page);
  await expect.poll(() => lead(page)).toBe("Nothing is here yet. Say what there is, from the roof down.");
  await page.locator(".answers").getByRole("button", { name: "What is there?" }).waitFor();
  await page.locator(".answers").getByLabel("Open a file").waitFor({ state: "attached" });
  expect(complaints).toEqual([]);
  await context.close();
});

test("somebody new is told what it is about, until a number is changed", async () => {
  const { page, context, complaints } = await open(browser);
  const told = page.locator(".first-visit");
  await expect
    .poll(async () => plain(await told.innerText()))
    .toMatch(/^How long does roof rain carry the beds\? This is a made-up place\. Start my own/);
  await type(page, "totes.capacity", "300 gal");
  await told.waitFor({ state: "detached" });
  expect(complaints).toEqual([]);
  await context.close();
});

test("the answers go on without a bed that has no length: the lead says which and leads there, and it is wrong in one place", async () => {
  const { page, context, complaints } = await open(browser, { used: true });
  await type(page, "long_bed.length", "0 ft");
  await expect
    .poll(() => lead(page))
    .toMatch(/^Without Long bed, beds (never )?go short in .* seasons.* Full tanks last/);
  // The lead has named it: what is wrong stands under it once, and nowhere else among the answers.
  await page.locator(".answers li", { hasText: /^Length: / }).waitFor();
  expect(await page.locator(".answers .ill").count()).toBe(0);
  // Of other beds than before nothing is said to have been more or less.
  await page
    .locator(".answers li", { hasText: "Not compared with before, when Long bed was in it" })
    .waitFor();
  expect(await page.locator("h1.lead .was").count()).toBe(0);
  await page.locator(".answers .acts .act", { hasText: "Change it: Length" }).click();
  await expect
    .poll(() => page.evaluate(() => document.activeElement?.closest("[id]")?.id ?? ""))
    .toContain("long_bed");
  await page.getByRole("button", { name: /^Undo/ }).click();
  await page
    .locator(".answers li", { hasText: "Not compared with before, when Long bed was not in it" })
    .waitFor();
  expect(complaints).toEqual([]);
  await context.close();
});

test("a hose too short for its route: the same beds are compared, the number to change is named and red in its row, the answers keep their height", async () => {
  const { page, context, complaints } = await open(browser, { used: true });
  const high = async (): Promise<number> => (await page.locator(".zone-answers").boundingBox())?.height ?? 0;
  const before = await high();
  await type(page, "hose_down.length", "50 ft");
  await expect.poll(() => lead(page)).toMatch(/^Without Hose to the tub, short in/);
  await expect
    .poll(async () => (await numbers(page)).filter((text) => / \| was \d/.test(text)).length)
    .toBeGreaterThanOrEqual(2);
  expect(await high()).toBe(before);
  await page.locator(".zone-part .wrong", { hasText: "The route is longer than the line" }).first().waitFor();
  // With the number in hand it is said there, else in its row.
  await page.getByRole("button", { name: "Done", exact: true }).click();
  const inRow = page.locator(".row:has([id='hose_down.length']) .wrong");
  await expect.poll(() => inRow.innerText()).toContain("The route is longer than the line");
  await page.locator(".answers .act", { hasText: "Change it: Length" }).click();
  await type(page, "totes.capacity", "1e9 gal");
  await page.locator(".answers .act", { hasText: "Change it: Each holds" }).waitFor();
  expect(await high()).toBe(before);
  expect(complaints).toEqual([]);
  await context.close();
});

test("what gives out first keeps its line until it is known, and says what it was after a change", async () => {
  const { page, context, complaints } = await open(browser, { asks: true });
  const line = page.locator(".answers li.gives-out");
  await expect
    .poll(async () => plain(await line.innerText()))
    .toMatch(/^Storage gives out first: all \d+ days$/);
  const days = (text: string): string => /all (\d+)/.exec(text)?.[1] ?? "";
  const then = days(await line.innerText());
  await type(page, "totes.capacity", "300 gal");
  await expect.poll(async () => plain(await line.innerText())).toMatch(/^Storage .* was /);
  expect(plain(await line.innerText())).toMatch(new RegExp(`: all \\d+ days was all ${then}$`));
  expect(complaints).toEqual([]);
  await context.close();
});

type Held = { held?: (() => void)[] | undefined };

test("while the season is run anew the sentence keeps its place, with soft numbers", async () => {
  const { page, context, complaints } = await open(browser, {
    before: () => {
      // Workers are asked nothing until it is said, as on a slow machine.
      const say = Worker.prototype.postMessage;
      const state = globalThis as unknown as Held;
      Worker.prototype.postMessage = function (
        this: Worker,
        message: unknown,
        more?: StructuredSerializeOptions,
      ) {
        const go = () => say.call(this, message, more);
        if (state.held) state.held.push(go);
        else go();
      } as typeof say;
    },
  });
  const before = await lead(page);
  await page.evaluate(() => {
    (globalThis as unknown as Held).held = [];
  });
  await enter(page, "totes.capacity", "400 gal");
  await page.locator("h1.lead .number.old").first().waitFor();
  const words = (text: string): string =>
    text
      .replaceAll(/\d[\d.,]*\d|\d|was/g, "")
      .replaceAll(/\s+/g, " ")
      // What a number was stands before the stop that ends its phrase.
      .replaceAll(/ (?=[.,;:])/g, "");
  await expect
    .poll(async () => words(await lead(page)).replace(/^Short/, "Beds go short"))
    .toBe(words(before));
  // How long full tanks last is worked out on the page itself, and is new at once.
  await expect.poll(() => page.locator("h1.lead .number").last().getAttribute("class")).not.toContain("old");
  await page.evaluate(() => {
    const state = globalThis as unknown as Held;
    const { held = [] } = state;
    state.held = undefined;
    for (const go of held) go();
  });
  await settled(page);
  await expect.poll(() => page.locator("h1.lead .number.old").count()).toBe(0);
  expect(complaints).toEqual([]);
  await context.close();
});
