// The page: what it loads first, when it first answers, and when it paints an edit; against an empty page of the same framework.

import { chromium } from "playwright-core";
import { findBrowser, LAUNCH_ARGUMENTS } from "../browser.mjs";
import type { Ratio } from "./measure.ts";
import { emptyPage, product } from "./page/built.ts";
import { editRows } from "./page/edits.ts";
import { firstAnswerRows } from "./page/first-answers.ts";
import { sizeRows } from "./page/sizes.ts";

export async function rows(): Promise<readonly Ratio[]> {
  const [page, empty] = [await product(), await emptyPage()];
  const browser = await chromium.launch({ executablePath: await findBrowser(), args: LAUNCH_ARGUMENTS });
  try {
    return [
      ...sizeRows(page.chunks),
      ...(await firstAnswerRows(browser, page.url, empty.url)),
      ...(await editRows(browser, page.url, empty.url)),
    ];
  } finally {
    await browser.close();
    page.close();
    empty.close();
  }
}
