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
import { enter, launch, open, unfold } from "./browser.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(async () => {
  await browser.close();
});

/** Milliseconds that no frame may be late: the whole curve takes many times as long, on a machine with much else to do. */
const LATEST_FRAME = 700;

const DEMO = new URL("../../templates/hillside-totes.json", import.meta.url);

function demo(): Worksheet {
  const read = worksheetFromFileText(readFileSync(DEMO, "utf8"), recordKey);
  if (!read.ok) throw new Error("The demo cannot be read.");
  return read.worksheet;
}

const plain = (text: string): string => text.replaceAll("\u00a0", " ").trim();

/** Share met and short days at half of today's size, today's and twice, as `--try` says them: two tanks of each size. */
function tried(sheet: Worksheet): readonly (readonly string[])[] {
  const answers = ["season.share_met", "season.days_short"];
  const range = "137.5 gal..550 gal";
  const { points } = triedReport(sheet, CARD_KINDS, [], { name: "totes.capacity", range, answers, steps: 4 });
  return ["275 gal", "550 gal (today)", "1,100 gal"].map((holds, at) => [
    holds,
    ...answers.map((id) => plain(points[[0, 1, 3][at] ?? 0]?.said[id] ?? "")),
  ]);
}

const sizes = (page: Page) => page.locator("#totes .sizes");

/** The same three sizes from the table under the whole curve. */
async function shown(page: Page): Promise<readonly (readonly string[])[]> {
  await sizes(page).locator("[aria-busy=false]").waitFor();
  const lines = await sizes(page)
    .locator("tbody tr")
    .evaluateAll((rows) => rows.map((line) => [...line.children].map((cell) => cell.textContent ?? "")));
  expect(lines).toHaveLength(17);
  const cells = lines.map((line) => line.slice(0, 3).map((cell) => plain(cell).replace(/ \(little.*/, "")));
  return cells.filter(([holds = ""]) => /^(275 gal|550 gal \(today\)|1,100 gal)$/.test(holds));
}

const wouldHelp = (page: Page) =>
  page.locator("#totes").getByRole("button", { name: "Would a bigger tank help?" }).click();

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
      if (seen.toDie === 0 || !message.wanted?.includes("season.spill")) return;
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
  const { page, context, complaints } = await open(browser, { before: witness });
  await page.evaluate(() => {
    (globalThis as unknown as Seen).seen.latest = 0;
  });
  await wouldHelp(page);
  await sizes(page).locator("[aria-busy=false]").waitFor();
  const latest = await page.evaluate(() => (globalThis as unknown as Seen).seen.latest);
  expect(await shown(page)).toEqual(tried(demo()));
  expect(latest).toBeGreaterThan(0);
  expect(latest).toBeLessThan(LATEST_FRAME);
  expect(complaints).toEqual([]);
  await context.close();
});

test("G9: an edit in the middle of the curve calls it off and begins anew: with a leak, every size leaks", async () => {
  const { page, context, complaints } = await open(browser);
  await unfold(page, "totes.leak");
  await wouldHelp(page);
  await sizes(page)
    .getByText(/^[1-9] of 17 sizes run/)
    .waitFor();
  await enter(page, "totes.leak", "20 L/day");
  await sizes(page)
    .getByText(/^0 of 17 sizes run/)
    .waitFor();
  const leaking = tried(setValue(demo(), CARD_KINDS, "totes.leak", "20 L/day"));
  expect(leaking).not.toEqual(tried(demo()));
  expect(await shown(page)).toEqual(leaking);
  expect(complaints).toEqual([]);
  await context.close();
});

test("workers that die in the middle of a run are replaced and the curve still comes whole", async () => {
  const { page, context, complaints } = await open(browser, { before: witness });
  await page.evaluate(() => {
    (globalThis as unknown as Seen).seen.toDie = 2;
  });
  await wouldHelp(page);
  expect(await shown(page)).toEqual(tried(demo()));
  const { made, toDie } = await page.evaluate(() => (globalThis as unknown as Seen).seen);
  expect(toDie).toBe(0);
  expect(made).toBeGreaterThan(2);
  expect(complaints).toEqual([]);
  await context.close();
});

test("what gives out first stands in the answers and with the drawing in words, as --gives-out says it", async () => {
  const { page, context, complaints } = await open(browser);
  const answer = givesOut(baseOf(demo(), CARD_KINDS));
  if ("failed" in answer) throw new Error(answer.failed);
  const said = givesOutSaid(answer, "battery");
  await page.locator(".answers li.gives-out").waitFor();
  const first = textOf(givesOutFirst(answer, "battery"), () => "");
  expect(plain(await page.locator(".answers li.gives-out").innerText())).toBe(first);
  expect(plain((await page.locator(".in-words .gives-out").textContent()) ?? "")).toBe(said);
  await enter(page, "totes.capacity", "1000 gal");
  await page.locator(".answers li.gives-out", { hasText: "No day is short" }).waitFor();
  expect(complaints).toEqual([]);
  await context.close();
});
