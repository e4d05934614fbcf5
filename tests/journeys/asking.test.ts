// Asking the whole worksheet in a real browser: the page's answers are the command line's, an edit begins them anew, a
// worker that dies is replaced, and the page goes on drawing meanwhile.

import { readFileSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { setValue } from "../../src/cli/set-value.ts";
import { triedReport } from "../../src/cli/try-report.ts";
import type { Worksheet } from "../../src/document/worksheet.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { recordKey } from "../../src/rainfall/record-key.ts";
import { worksheetFromFileText } from "../../src/storage/file.ts";
import { baseOf } from "../../src/studies/ask.ts";
import { givesOut } from "../../src/studies/gives-out.ts";
import { textOf } from "../../src/telling/asked.ts";
import { givesOutFirst, givesOutSaid } from "../../src/telling/gives-out.ts";
import { enter, launch, open, take } from "./browser.ts";
import { DEMO_SEASONS } from "./starters.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(async () => {
  await browser.close();
});

/** So long may a frame be late anyway [ms]; on a machine with much else to do it may be a share of what the whole curve takes. */
const LATEST_FRAME = 700;
const SHARE = 0.4;

const DEMO = new URL("../../templates/hillside-totes.json", import.meta.url);

function demo(seasons = 20): Worksheet {
  const read = worksheetFromFileText(readFileSync(DEMO, "utf8"), recordKey);
  if (!read.ok) throw new Error("The demo cannot be read.");
  return setValue(read.worksheet, CARD_KINDS, "weather.years", String(seasons));
}

const plain = (text: string): string => text.replaceAll("\u00a0", " ").trim();

const ANSWER = "season.worst_season_days_short";

/** What `--try` says of the answer at two of the sizes. */
function tried(sheet: Worksheet, sizes: readonly string[]): readonly (readonly string[])[] {
  const [low = "", high = ""] = sizes;
  const range = `${low}..${high}`;
  const wish = { name: "totes.capacity", range, answers: [ANSWER], steps: 2 };
  const { points } = triedReport(sheet, CARD_KINDS, [], wish);
  return points.map(({ said }, at) => [sizes[at] ?? "", plain(said[ANSWER] ?? "")]);
}

const curve = (page: Page) => page.locator(".hand .turning");

/** Two sizes of the table behind the whole curve: one with short days, and the next but two. */
async function shown(page: Page): Promise<readonly (readonly string[])[]> {
  await curve(page).and(page.locator("[aria-busy=false]")).waitFor();
  if ((await curve(page).locator("details").getAttribute("open")) === null)
    await curve(page).locator("summary").click();
  // What was folded is laid out once it is opened.
  await expect.poll(() => curve(page).locator("tbody tr").count()).toBeGreaterThanOrEqual(25);
  const lines = await curve(page)
    .locator("tbody tr")
    .evaluateAll((rows) => rows.map((line) => [...line.children].map((cell) => cell.textContent ?? "")));
  return [8, 11].map((at) => (lines[at] ?? []).map((cell) => plain(cell).replace(",", "")));
}

const sizesOf = (lines: readonly (readonly string[])[]) => lines.map(([size = ""]) => size);

/** Counts the workers that are asked, ends as many as it is told to in the middle of a run of the curve, and keeps the longest wait for a frame. */
function witness(): void {
  const seen = { made: 0, toDie: 0, latest: 0 };
  Object.assign(globalThis, { seen });
  const Made = globalThis.Worker;
  globalThis.Worker = class extends Made {
    constructor(url: string | URL, options?: WorkerOptions) {
      super(url, options);
      if (String(url).includes("asking")) seen.made += 1;
    }
    override postMessage(message: { readonly wanted?: readonly string[] }): void {
      super.postMessage(message);
      if (seen.toDie === 0 || !message.wanted?.includes("season.worst_season_days_short")) return;
      seen.toDie -= 1;
      this.terminate();
      setTimeout(() => this.dispatchEvent(new Event("error")));
    }
  };
  let last = 0;
  const frame = (now: number): void => {
    if (last > 0) seen.latest = Math.max(seen.latest, now - last);
    last = now;
    requestAnimationFrame(frame);
  };
  requestAnimationFrame(frame);
}

type Seen = { readonly seen: { readonly made: number; toDie: number; latest: number } };

test("the demo's curve for a tank is what --try says, and the page keeps its frames while it comes", async () => {
  const { page, context, complaints } = await open(browser, { before: witness, whole: true, asks: true });
  await page.evaluate(() => {
    (globalThis as unknown as Seen).seen.latest = 0;
  });
  const from = performance.now();
  await take(page, "totes.capacity");
  await curve(page).and(page.locator("[aria-busy=false]")).waitFor();
  const whole = performance.now() - from;
  const latest = await page.evaluate(() => (globalThis as unknown as Seen).seen.latest);
  const lines = await shown(page);
  expect(lines).toEqual(tried(demo(), sizesOf(lines)));
  expect(latest).toBeGreaterThan(0);
  // Worked out on the page itself, the curve would keep one frame waiting for all of it.
  expect(latest).toBeLessThan(Math.max(LATEST_FRAME, SHARE * whole));
  expect(complaints).toEqual([]);
  await context.close();
});

test("G9: an edit in the middle of the curve calls it off and begins anew: without the leak, no size leaks", async () => {
  const { page, context, complaints } = await open(browser, { asks: true });
  await enter(page, "totes.leak", "20 L/day");
  await take(page, "totes.capacity");
  const leaking = await shown(page);
  expect(leaking).toEqual(
    tried(setValue(demo(DEMO_SEASONS), CARD_KINDS, "totes.leak", "20 L/day"), sizesOf(leaking)),
  );
  // The curve of before stays, marked old, until there is a new one.
  const old = curve(page).locator(".plot .old").first().waitFor({ state: "attached" });
  await page.getByRole("button", { name: "Undo" }).click();
  await old;
  const tight = await shown(page);
  expect(tight).not.toEqual(leaking);
  expect(tight).toEqual(tried(demo(DEMO_SEASONS), sizesOf(tight)));
  expect(complaints).toEqual([]);
  await context.close();
});

test("workers that die in the middle of a run are replaced and the curve still comes whole", async () => {
  const { page, context, complaints } = await open(browser, { before: witness, asks: true });
  await page.evaluate(() => {
    (globalThis as unknown as Seen).seen.toDie = 2;
  });
  await take(page, "totes.capacity");
  const lines = await shown(page);
  expect(lines).toEqual(tried(demo(DEMO_SEASONS), sizesOf(lines)));
  const { made, toDie } = await page.evaluate(() => (globalThis as unknown as Seen).seen);
  expect(toDie).toBe(0);
  expect(made).toBeGreaterThan(2);
  expect(complaints).toEqual([]);
  await context.close();
});

test("what gives out first stands in the answers and with the drawing in words, as --gives-out says it", async () => {
  const { page, context, complaints } = await open(browser, { asks: true });
  const answer = givesOut(baseOf(demo(DEMO_SEASONS), CARD_KINDS));
  if ("failed" in answer) throw new Error(answer.failed);
  const said = givesOutSaid(answer, "battery");
  await page.locator(".answers li.gives-out").waitFor();
  const first = textOf(givesOutFirst(answer, "battery"), () => "");
  await expect.poll(async () => plain(await page.locator(".answers li.gives-out").innerText())).toBe(first);
  expect(plain((await page.locator(".in-words .gives-out").textContent()) ?? "")).toBe(said);
  await enter(page, "totes.capacity", "1000 gal");
  await page.locator(".answers li.gives-out", { hasText: "No day is short" }).waitFor();
  expect(complaints).toEqual([]);
  await context.close();
});
