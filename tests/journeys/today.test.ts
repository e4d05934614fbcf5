// Today and the week at the bed: what a dip changes, a line ticked and taken back by keys, the week on one page of paper.
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { tries } from "../tries.ts";
import { axe } from "./axe.ts";
import { launch } from "./browser.ts";
import { AT_THE_BED, foot, LARKSPUR, opened, plain, turnTo } from "./noted-sheet.ts";
import { lend } from "./pages.ts";
import { FULLEST, fileOf } from "./starters.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(async () => {
  await browser.close();
});

const pagesOf = (pdf: Buffer): number => pdf.toString("latin1").match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;

test("a dip changes today's lines; a line is ticked by keys, stays so, and is taken back; the week goes on one page", async () => {
  const { context, page } = await lend(browser, AT_THE_BED);
  await opened(page, fileOf("hillside-totes.json", tries(20, 6)), LARKSPUR, "today");
  const today = page.getByRole("dialog", { name: "Today" });
  const hose = today.getByRole("button", { name: /Open Hose to the tub/ });
  await today.getByText(/^Today Long bed, /).waitFor();
  // The tub is full: no hose is to be opened.
  await expect.poll(() => hose.count()).toBe(0);

  // Nearly empty it is, first of all: by evening it has filled again.
  await turnTo(page, "bed");
  const tub = page.getByRole("slider", { name: "Depth in Tub by the tunnel" });
  await tub.focus();
  for (let pages = 0; pages < 8; pages++) await page.keyboard.press("PageDown");
  await page.keyboard.press("Enter");
  await foot(page, /Noted.*Tub by the tunnel/);
  await turnTo(page, "today");
  await hose.waitFor();
  await hose.press("Enter");
  await foot(page, /Noted on this phone: Hose to the tub opened/);
  await expect.poll(() => hose.getAttribute("aria-pressed")).toBe("true");
  const bed = today.getByRole("button", { name: /Long bed \d+/ }).first();
  const amount = /Long bed (\d+)/.exec(plain(await bed.innerText()))?.[1];
  await bed.press("Enter");
  // It was dipped this very minute: so much can only have come out of it later.
  await foot(page, /Tub by the tunnel was dipped at .* How did/);
  await today.getByRole("button", { name: "More came in meanwhile" }).press("Enter");
  await foot(page, new RegExp(`Noted on this phone: Long bed, ${amount}`));
  const done = today.getByRole("button", { name: new RegExp(`Long bed ${amount}`), pressed: true });
  await done.waitFor();
  await page.reload();
  await done.waitFor();
  await page.evaluate(() => {
    const look = () => {
      const lead = document.querySelector(".today-lead")?.textContent ?? "";
      if (lead.startsWith("Dip a tank")) document.documentElement.dataset["asked"] = "once";
    };
    new MutationObserver(look).observe(document.body, {
      subtree: true,
      childList: true,
      characterData: true,
    });
  });
  expect(await axe(page)).toEqual([]);
  await done.press("Enter");
  await today.getByRole("button", { name: "Undo" }).press("Enter");
  await foot(page, /Taken back: Long bed/);
  await expect.poll(() => done.count()).toBe(0);
  // The sheet beneath is not made before somebody looks at it.
  await today.locator(".today-lead:not(.working)").waitFor();
  // While it was worked out anew the plan from before stood there, and nobody was asked for what is noted.
  expect(await page.evaluate(() => document.documentElement.dataset["asked"] ?? "never")).toBe("never");

  for (const format of ["A4", "Letter"]) expect(pagesOf(await page.pdf({ format }))).toBe(1);
  await page.setViewportSize({ width: 320, height: 640 });
  await expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
  await context.close();
});

test("the week of every starter (LONG=1; else of the two with most to print) is one page, on A4 and on letter paper, with boxes to tick and what was assumed", async () => {
  const { context, page } = await lend(browser, AT_THE_BED);
  for (const name of FULLEST) {
    const file = fileOf(name);
    const soaks = file.cards
      .filter(({ kind }) => kind === "bed")
      .map(({ id }) => ({ day: "2020-07-12", what: "soaked", where: id }));
    await opened(page, file, soaks, "today");
    const paper = page.locator(".today-paper");
    await paper.waitFor({ state: "attached" });
    for (const format of ["A4", "Letter"])
      expect(`${name}: ${pagesOf(await page.pdf({ format }))}`).toBe(`${name}: 1`);
    const said = plain((await paper.textContent()) ?? "");
    expect(said).toContain("Roof water goes on the soil");
    if (file.cards.some(({ kind }) => kind === "tank")) expect(said).toMatch(/not dipped: taken as full/);
    await page.goto("about:blank");
  }
  await context.close();
});
