// When a visitor who was never here sees the first answers.

import type { Browser } from "playwright-core";
import { type Ratio, shownTime } from "../measure.ts";
import { firstPainted, momentsOf, watchMoments } from "./moments.ts";
import { DESK, middle } from "./visits.ts";

const ROUNDS = 9;

type Visit = {
  readonly first: number;
  readonly numbers: number;
  readonly all: number;
  readonly longest: number;
};

async function visit(browser: Browser, url: string): Promise<Visit> {
  const context = await browser.newContext({ viewport: DESK });
  const page = await context.newPage();
  await watchMoments(page);
  await page.addInitScript(() => {
    const open = window as Window & { longest?: number };
    open.longest = 0;
    new PerformanceObserver((list) => {
      for (const { duration } of list.getEntries()) open.longest = Math.max(open.longest ?? 0, duration);
    }).observe({ type: "longtask", buffered: true });
  });
  const painted = firstPainted(page);
  await page.goto(url);
  await painted;
  await page.waitForFunction(() => !document.querySelector('.answers[aria-busy="true"]'));
  const { first, numbers } = await momentsOf(page);
  const [all, longest] = await page.evaluate(() => [
    performance.now(),
    (window as Window & { longest?: number }).longest ?? 0,
  ]);
  await context.close();
  return {
    first: first ?? Number.NaN,
    numbers: numbers ?? Number.NaN,
    all: all ?? Number.NaN,
    longest: longest ?? Number.NaN,
  };
}

export async function firstAnswerRows(
  browser: Browser,
  url: string,
  empty: string,
): Promise<readonly Ratio[]> {
  const [ours, bare]: [Visit[], Visit[]] = [[], []];
  // The first round warms the browser up.
  for (let round = 0; round <= ROUNDS; round++) {
    const [one, other] = [await visit(browser, url), await visit(browser, empty)];
    if (round === 0) continue;
    ours.push(one);
    bare.push(other);
  }
  const time = (visits: readonly Visit[], which: keyof Visit) => middle(visits.map((one) => one[which]));
  return [
    {
      name: "the first answers, against an empty page of the same framework",
      ratio: time(ours, "first") / time(bare, "first"),
      atMost: 4,
      detail: `${shownTime(time(ours, "first"))}, empty ${shownTime(time(bare, "first"))}; the open part's numbers by ${shownTime(time(ours, "numbers"))}, the season's by ${shownTime(time(ours, "all"))}; longest task ${shownTime(time(ours, "longest"))}`,
    },
  ];
}
