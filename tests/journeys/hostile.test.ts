import { readdirSync, readFileSync } from "node:fs";
import { deflateSync } from "node:zlib";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { seededRandom } from "../../src/rainfall/seeded-random.ts";
import { CANARY, hostileTexts } from "../hostile.ts";
import { tries } from "../tries.ts";
import { launch, open, settled, shownValueOf, tool } from "./browser.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(async () => {
  await browser.close();
});

const SEED = Number(process.env.FUZZ_SEED ?? 20_261_125);
/** Hundreds of files, each opened whole, are slow on a busy machine; a hang is told by `neverHangs`. */
const LONG = { timeout: 900_000 };
const [FILES, RAINS, LINKS] = [tries(60, 8), tries(70, 8), tries(60, 8)];
const RAIN = new URL("../fixtures/rain/", import.meta.url);

/** What the page may be after it was handed something: whole, with the worksheet from before or another one. */
async function whole(page: Page): Promise<{ title: string; said: string }> {
  // Another worksheet's page stands a task after its frame: until its lead is there, nothing is to be said of it.
  const seen = await page.waitForFunction((canary) => {
    const leads = document.querySelectorAll("h1.lead");
    if (leads.length === 0) return null;
    return {
      run: canary in window,
      leads: leads.length,
      lead: leads[0]?.textContent ?? "",
      title: document.querySelector<HTMLInputElement>("input.title")?.value ?? null,
      said: document.querySelector(".keeping [role=alert]")?.textContent ?? "",
      intruders: document.querySelectorAll(
        "main script, main img, main iframe, main [onload], main [onerror]",
      ).length,
    };
  }, CANARY);
  const state = await seen.jsonValue();
  if (!state) throw new Error("The page has no lead.");
  expect(state).toMatchObject({ run: false, leads: 1, intruders: 0 });
  expect(state.lead).not.toMatch(/undefined|NaN|\[object/);
  expect(state.title).not.toBeNull();
  return { title: state.title ?? "", said: state.said };
}

/** Seconds that the page's own thread works at something, whatever else the machine does meanwhile. */
async function work(page: Page, doing: () => Promise<void>): Promise<number> {
  const devtools = await page.context().newCDPSession(page);
  await devtools.send("Performance.enable", { timeDomain: "threadTicks" });
  const spent = async () => {
    const { metrics } = await devtools.send("Performance.getMetrics");
    return metrics.find(({ name }) => name === "TaskDuration")?.value ?? Number.NaN;
  };
  const before = await spent();
  await doing();
  const seconds = (await spent()) - before;
  await devtools.detach();
  return seconds;
}

/** Does it again where the page worked for over a second in all: a hang repeats itself, a page warming up does not. */
async function neverHangs(page: Page, doing: () => Promise<void>): Promise<void> {
  let seconds = 0;
  for (let attempt = 0; attempt < 3; attempt++) {
    seconds = await work(page, doing);
    if (seconds < 1) return;
  }
  expect(seconds).toBeLessThan(1);
}

async function openFile(page: Page, name: string, text: string): Promise<void> {
  await page.evaluate(() => document.querySelector("header.top")?.setAttribute("data-before", ""));
  if ((await page.locator("dialog[open]").count()) === 0) await tool(page, "Worksheets");
  await page
    .getByLabel("Worksheet file")
    .setInputFiles({ name, mimeType: "application/json", buffer: Buffer.from(text) });
  // Either another worksheet stands there, or the one from before with a word about the file.
  await page.waitForFunction(
    (file) =>
      document.querySelector("header.top")?.hasAttribute("data-before") === false ||
      document.querySelector(".keeping [role=alert]")?.textContent?.includes(file),
    name,
  );
}

const PIECES = [
  ",",
  ";",
  "\n",
  '"',
  `<img src=x onerror=${CANARY}=1>`,
  `=cmd|'/c calc'!A0`,
  `javascript:${CANARY}=1`,
  "\u0000",
  "1e309",
  "9999-12-31",
  "-9999",
];

function hostileRain(seed: number): () => string {
  const good = readdirSync(RAIN).map((name) => readFileSync(new URL(name, RAIN), "utf8").slice(0, 3000));
  const chance = seededRandom(seed);
  const below = (limit: number) => Math.floor(chance() * limit);
  return () => {
    let text = good[below(good.length)] ?? "";
    for (let edit = below(5); edit >= 0; edit--) {
      const at = below(text.length + 1);
      text = `${text.slice(0, at)}${PIECES[below(PIECES.length)]}${text.slice(at + below(3))}`;
    }
    return text;
  };
}

const letters = (bytes: Uint8Array): string => Buffer.from(bytes).toString("base64url");

describe("hostile things handed to the page never crash it, hang it, run code or leave it half read", () => {
  test(
    `${FILES} worksheet files: another worksheet opens whole, or the one from before stays and the file is named`,
    LONG,
    async () => {
      const { page, context, complaints } = await open(browser);
      const next = hostileTexts(SEED);
      let refused = 0;
      for (let run = 0; run < FILES; run++) {
        const text = next();
        const before = await whole(page);
        await neverHangs(page, () => openFile(page, `file-${run}.json`, text));
        const after = await whole(page);
        if (after.said.includes(`file-${run}.json`)) {
          refused += 1;
          expect(after.title).toBe(before.title);
        }
      }
      expect(refused).toBeGreaterThan(FILES / 12);
      expect(refused).toBeLessThan(FILES - FILES / 12);
      expect(complaints).toEqual([]);
      await context.close();
    },
  );

  test(
    `${RAINS} rain files: each is asked about, shown or refused with a reason, and the weather stays until it is taken`,
    LONG,
    async () => {
      const { page, context, complaints } = await open(browser, { used: true });
      const next = hostileRain(SEED);
      const rain = await shownValueOf(page, "weather.mean_yearly_rain");
      const ends = new Set<string>();
      for (let run = 0; run < RAINS; run++) {
        const text = next();
        await neverHangs(page, async () => {
          await page
            .getByLabel("Rain record file")
            .setInputFiles({ name: `rain-${run}.csv`, mimeType: "text/csv", buffer: Buffer.from(text) });
          await page.waitForFunction(() => !document.querySelector(".import progress"));
          await page.locator(".import :is(fieldset, [role=alert], .options button)").first().waitFor();
        });
        await whole(page);
        const refused = page.locator(".import > [role=alert]");
        const isRefused = (await refused.count()) > 0;
        ends.add(isRefused ? "refused" : "asked or shown");
        if (isRefused) await expect.poll(async () => (await refused.innerText()).length).toBeGreaterThan(10);
        else await page.getByRole("button", { name: "Leave it" }).first().click();
      }
      expect(ends.size).toBe(2);
      await settled(page);
      await expect.poll(() => shownValueOf(page, "weather.mean_yearly_rain")).toBe(rain);
      expect(complaints).toEqual([]);
      await context.close();
    },
  );

  test(
    `${LINKS} links: whatever stands behind the # in the address, the page stays whole`,
    LONG,
    async () => {
      const { page, context, complaints } = await open(browser, { used: true });
      const next = hostileTexts(SEED + 2);
      const chance = seededRandom(SEED + 3);
      for (let run = 0; run < LINKS; run++) {
        const good = `w1=${letters(deflateSync(next()))}`;
        const at = Math.floor(chance() * good.length);
        const noise = [
          good,
          good,
          good.slice(0, at),
          `${good.slice(0, at)}${PIECES[run % PIECES.length]}${good.slice(at)}`,
        ];
        const fragment = noise[run % noise.length] ?? "";
        await neverHangs(page, async () => {
          await page.evaluate((hash) => {
            location.hash = hash;
          }, fragment);
          // Unpacking is done in turns; two frames on, all of them had theirs.
          await page.evaluate(() => new Promise((done) => setTimeout(() => requestAnimationFrame(done), 30)));
          await page.locator("h1.lead").waitFor();
        });
        await whole(page);
      }
      expect(complaints).toEqual([]);
      await context.close();
    },
  );
});
