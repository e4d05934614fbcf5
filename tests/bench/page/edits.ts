// When an edit is painted: its own number with all that needs no season, and what the season makes of it.

import type { Browser, BrowserContext, Page } from "playwright-core";
import { type Ratio, shownTime } from "../measure.ts";
import { momentsOf, watchMoments } from "./moments.ts";
import { sixtyCards } from "./sixty-cards.ts";
import { DESK, middle } from "./visits.ts";

/** How much slower the page is made, and the worker's time counted. */
const SLOWED = 4;
const EDITS = 40;
/** What a screen shows at most of any edit: one frame in sixty of a second [ms]. */
const FRAME = 1000 / 60;
const SHARE = 0.95;

type Opened = { readonly page: Page; readonly slow: (rate: number) => Promise<void> };

async function opened(context: BrowserContext, url: string): Promise<Opened> {
  const page = await context.newPage();
  await watchMoments(page);
  await page.goto(url);
  await page.waitForFunction(() => window.moments.first !== null);
  const devtools = await context.newCDPSession(page);
  const slow = async (rate: number): Promise<void> => {
    await devtools.send("Emulation.setCPUThrottlingRate", { rate });
  };
  return { page, slow };
}

const REST = '.answers[aria-busy="true"], .turning[aria-busy="true"]';

const atRest = async (page: Page): Promise<void> => {
  await page.waitForFunction((busy) => !document.querySelector(busy), REST);
  await page.waitForTimeout(30);
};

async function takeSize(page: Page): Promise<void> {
  await page.locator('[id="totes.capacity"]').click();
  await page.locator(".hand .in-hand-slider").waitFor();
  await atRest(page);
}

type Times = { readonly edited: number; readonly answered: number; readonly worked: number };

/** Steps the number in hand up and down again. */
async function edits({ page, slow }: Opened, rate: number): Promise<Times> {
  await slow(rate);
  await page.locator(".in-hand-value").focus();
  const before = await momentsOf(page);
  for (let edit = 0; edit < EDITS + 2; edit++) {
    await page.keyboard.press(edit % 8 < 4 ? "ArrowUp" : "ArrowDown");
    await atRest(page);
  }
  await slow(1);
  const after = await momentsOf(page);
  const since = (which: "edited" | "answered" | "worked") => after[which].slice(before[which].length + 2);
  return {
    edited: middle(since("edited"), SHARE),
    answered: middle(since("answered"), SHARE),
    worked: middle(since("worked")),
  };
}

async function withSheet(page: Page, text: string): Promise<void> {
  await page.getByRole("button", { name: "Worksheets", exact: true }).click();
  await page.locator("dialog input[type=file]").setInputFiles({
    name: "sixty.json",
    mimeType: "application/json",
    buffer: Buffer.from(text),
  });
  await page.waitForFunction(() => document.querySelector("dialog[open]") === null);
  await atRest(page);
}

type Sheet = {
  readonly name: string;
  readonly sheet: string | null;
  readonly wanted: readonly [number, number];
};

/** What is wanted of the 95th of a hundred edits: at the machine's pace, and slowed [ms]. */
const SHEETS: readonly Sheet[] = [
  { name: "the demo", sheet: null, wanted: [50, 200] },
  { name: "sixty cards", sheet: sixtyCards(), wanted: [100, 200] },
];

function rowOf(name: string, wanted: number, times: Times, empty: Times, worker: number): Ratio {
  const season = times.answered + worker;
  return {
    name: `an edit's paint on ${name}, against a frame or an empty page's`,
    ratio: times.edited / Math.max(FRAME, empty.edited),
    atMost: wanted / FRAME,
    detail: `${shownTime(times.edited)} (${wanted} ms wanted), empty ${shownTime(empty.edited)}; the season's by ${shownTime(season)}, the worker's time in it ${shownTime(times.worked + worker)}`,
  };
}

export async function editRows(browser: Browser, url: string, emptyUrl: string): Promise<readonly Ratio[]> {
  const context = await browser.newContext({ viewport: DESK });
  const empty = await opened(context, emptyUrl);
  const bare = [await edits(empty, 1), await edits(empty, SLOWED)];
  await empty.page.close();
  const rows: Ratio[] = [];
  for (const { name, sheet, wanted } of SHEETS) {
    const ours = await opened(context, url);
    if (sheet !== null) await withSheet(ours.page, sheet);
    await takeSize(ours.page);
    const [plain, slowed] = [await edits(ours, 1), await edits(ours, SLOWED)];
    const [first, second] = bare;
    if (!first || !second) throw new Error("The empty page was not measured.");
    rows.push(rowOf(name, wanted[0], plain, first, 0));
    const more = (SLOWED - 1) * plain.worked;
    rows.push(
      rowOf(`${name}, slowed four times`, wanted[1], { ...slowed, worked: plain.worked }, second, more),
    );
    await ours.page.close();
  }
  await context.close();
  return rows;
}
