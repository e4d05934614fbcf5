// The season's other pages, by keys and spoken names: how long it lasts and what one expects, what to water, the notes, the year;
// what a note changes is told where it changed, and where nothing can be told a page says what is missing and leads there.
import { readFileSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { isLong, tries } from "../tries.ts";
import { axe } from "./axe.ts";
import { launch, open, PHONE, row, savedFile, tool } from "./browser.ts";
import { AT_THE_BED, foot, LARKSPUR, opened, plain, turnTo } from "./noted-sheet.ts";
import { lend } from "./pages.ts";
import { fileOf } from "./starters.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(async () => {
  await browser.close();
});

/** Watered lately, so that no bed is short this morning. */
const LATELY = LARKSPUR.map((note) => (note.where === "long_bed" ? { ...note, day: "2020-07-18" } : note));
const LOW_TUB = LARKSPUR.map((note) => (note.where === "tub" ? { ...note, value: 1.5 } : note));

/** With enough years that usual weather and dry can be taken from them; with all of them for LONG=1. */
const larkspur = (years = tries(20, 6)) => fileOf("hillside-totes.json", years);

async function inSeason(name: string, notes = LOW_TUB, years?: number) {
  const { context, page } = await lend(browser, AT_THE_BED);
  await opened(page, larkspur(years), notes, name);
  return { context, page };
}

const body = async (page: Page): Promise<string> => plain(await page.locator(".field-body").innerText());
const press = (page: Page, name: RegExp | string) =>
  page.getByRole("dialog").last().getByRole("button", { name }).first().press("Enter");
const lasts = (page: Page) => page.locator(".lasts-lead:not(.working)").filter({ hasText: /^Lasts to/ });

describe("how long it lasts", () => {
  test("what one expects is typed, changes it, is there after the page was thrown away, and is taken back", async () => {
    // With all of its years: usual weather is wet enough for what is expected to change it.
    const { context, page } = await inSeason("lasts", LATELY, 20);
    await lasts(page).waitFor();
    const before = await lasts(page).innerText();
    // From made-up weather no odds, not even as a hint.
    expect(await body(page)).not.toMatch(/\d\s?%|(?<!the made-up )years/);
    await press(page, /^Tue.*nothing expected/);
    for (const hint of await page.locator(".expect-field input").all())
      expect(await hint.getAttribute("placeholder")).not.toMatch(/%|years/);
    expect(await axe(page)).toEqual([]);
    await page.getByRole("textbox", { name: "Rain" }).fill("2 in");
    await page.keyboard.press("Tab");
    await page.getByRole("button", { name: /^Tue.*2\sin expected/ }).waitFor();
    await expect.poll(() => lasts(page).innerText()).not.toBe(before);
    const expecting = await lasts(page).innerText();
    await page.getByText("What was assumed").press("Enter");
    await page.getByText(/Your own forecast stands for Jul 21: 2\sin in usual weather/).waitFor();
    await page.reload();
    await page.getByRole("button", { name: /^Tue.*2\sin expected/ }).waitFor();
    await expect.poll(() => lasts(page).innerText()).toBe(expecting);
    await press(page, /^Tue.*2\sin expected/);
    await press(page, "Expect nothing of this day");
    await expect.poll(() => lasts(page).innerText()).toBe(before);
    await context.close();
  });

  test("those who cannot look have the same as a table, and a day is read by keys", async () => {
    const { context, page } = await inSeason("lasts", LATELY);
    await lasts(page).waitFor();
    await page.getByText("The same as a table").press("Enter");
    const table = page.getByRole("table");
    await table.waitFor();
    expect(await table.getByRole("rowheader").allInnerTexts()).toEqual(["no rain", "usual weather"]);
    const day = page.getByRole("slider", { name: "Day that is read" });
    const said = await day.getAttribute("aria-valuetext");
    await day.press("ArrowLeft");
    await expect.poll(() => day.getAttribute("aria-valuetext")).not.toBe(said);
    expect(await axe(page)).toEqual([]);
    await context.close();
  });
});

const emptyTotes = async (page: Page): Promise<void> => {
  await page.getByRole("slider", { name: "Depth in Two totes" }).focus();
  for (let pages = 0; pages < 7; pages++) await page.keyboard.press("PageDown");
  await page.keyboard.press("Enter");
  await foot(page, /Noted on this phone: Two totes/);
};

// With LONG=1; what a dip changes at the bed is tried in at-the-bed.test.ts.
test.runIf(isLong)("a dip changes how long it lasts, and what it was stands beside it", async () => {
  const { context, page } = await inSeason("bed", LATELY);
  const lead = page.locator(".field-lasts:not(.working) .lead");
  await lead.filter({ hasText: /^Lasts to/ }).waitFor();
  await emptyTotes(page);
  await lead.filter({ hasText: / was / }).waitFor();
  await context.close();
});

test("a dip changes what today asks for, and each line says what it was", async () => {
  const { context, page } = await inSeason("bed");
  await page
    .locator(".field-bed", { hasText: "Long bed" })
    .getByText(/today \d+ of/)
    .waitFor();
  await emptyTotes(page);
  await page
    .locator(".field-bed", { hasText: "Long bed" })
    .getByText(/, was \d+ of/)
    .waitFor();
  await turnTo(page, "today");
  await page.locator(".today-lead:not(.working)").waitFor();
  await page
    .getByRole("dialog", { name: "Today" })
    .getByText(/ was \d+ of/)
    .first()
    .waitFor();
  expect(await axe(page)).toEqual([]);
  await context.close();
});

test("left open over night, the pages are of the new day in the morning, without being asked", async () => {
  const { context, page } = await inSeason("bed");
  const bed = page.locator(".field-bed", { hasText: "Long bed" });
  await bed.getByText(/today \d+ of/).waitFor();
  await page.getByText("Mon, Jul 20").waitFor();
  await page.getByRole("button", { name: /^Watered \d+ gal: Small tunnel/ }).press("Enter");
  await foot(page, /Noted on this phone: Small tunnel/);
  await page.getByText("✓ Watered").waitFor();
  await page.clock.setSystemTime("2020-07-21T07:00:00");
  await page.evaluate(() => document.dispatchEvent(new Event("visibilitychange")));
  await page.getByText("Tue, Jul 21").waitFor();
  // What was watered yesterday is so no more, and the foot has let go of it.
  await page.getByText("What you note stays here").waitFor();
  await expect.poll(() => page.getByText("✓ Watered").count()).toBe(0);
  await page.locator(".field-bed", { hasText: "Small tunnel" }).getByText("last Jul 20").waitFor();
  await turnTo(page, "today");
  await page.locator(".today-day", { hasText: "Tue, Jul 21" }).waitFor();
  // A week that is still worked out is shown as it was until then.
  await expect.poll(() => body(page)).not.toContain("Mon, Jul 20");
  await context.close();
});

test("what to water: what each choice loses is told, and what a bed is worth is changed by keys", async () => {
  const { context, page } = await inSeason("pour");
  await page.locator(".pour-choices").getByText("Water all").waitFor();
  expect(await axe(page)).toEqual([]);
  // One foot, whatever stands in it.
  expect(await page.locator(".field-foot").count()).toBe(1);
  const worth = page.getByRole("radiogroup", { name: "What Small tunnel is to you" });
  const now = worth.getByRole("radio", { checked: true });
  const before = await now.evaluate((radio) => radio.parentElement?.textContent);
  await now.focus();
  await page.keyboard.press("ArrowRight");
  await expect.poll(() => now.evaluate((radio) => radio.parentElement?.textContent)).not.toBe(before);
  await context.close();
});

test("what to water: a bed is held back by a key, today's list leaves it out, and a second key lets it be watered again", async () => {
  const { context, page } = await lend(browser, AT_THE_BED);
  const worths: Readonly<Record<string, string>> = { tunnel_bed: "must_live", long_bed: "may_go" };
  const file = fileOf("hillside-totes.json");
  const cards = file.cards.map((card) => {
    const value = worths[card.id];
    return value === undefined ? card : { ...card, givens: { ...card.givens, worth: { value, unit: "" } } };
  });
  await opened(page, { ...file, cards }, LOW_TUB, "pour");
  const dialog = page.getByRole("dialog").last();
  const hold = dialog.getByRole("button", { name: "Hold back today", exact: true });
  await hold.press("Enter");
  await foot(page, /Noted on this phone: .* held back today/);
  // It leads to today's list, which gives it nothing and says so.
  await page.getByRole("dialog", { name: "Today" }).waitFor();
  await page
    .getByText(/gets none of its/)
    .first()
    .waitFor();
  await page.evaluate(() => history.back());
  const held = page.getByRole("button", { name: "✓ Held back today" });
  await page.getByText(/Held back today, as you noted: /).waitFor();
  expect(await axe(page)).toEqual([]);
  await held.press("Enter");
  await foot(page, /watered as it asks/);
  await hold.waitFor();
  await page.getByText(/Held back today, as you noted: /).waitFor({ state: "detached" });
  await context.close();
});

test("a dip of an earlier day is noted from the list of notes, as of that day, by keys", async () => {
  const { context, page } = await inSeason("notes");
  await page.locator(".note-row").first().waitFor();
  await press(page, "Note something");
  await page.locator(".field-day input").fill("2020-07-18");
  await press(page, "Dipped");
  await press(page, "Two totes");
  await page.getByRole("textbox", { name: "How much" }).fill("22");
  await page.keyboard.press("Tab");
  await press(page, "Note it");
  await foot(page, /Noted on this phone: Two totes, 22.*dipped/);
  const day = page.locator(".notes section").filter({ hasText: /Jul\s18/ });
  await day.getByText(/dipped 22/).waitFor();
  // Of that day nobody knows the minute; the dip of today still counts, and stands above it.
  expect(await day.locator(".at").allInnerTexts()).toEqual([""]);
  expect(await page.locator(".note-row").first().innerText()).toContain("6:45");
  expect(await axe(page)).toEqual([]);
  await context.close();
});

test("notes are looked through by part, saved as a table, and taken back; one of a part that is gone says so", async () => {
  const { context, page } = await inSeason("notes", [
    ...LOW_TUB,
    { day: "2020-07-18", what: "dipped", where: "old_barrel", value: 5, unit: "in" },
  ]);
  const rows = page.locator(".note-row");
  await expect.poll(() => rows.count()).toBe(5);
  await rows
    .filter({ hasText: "old_barrel" })
    .getByText(/No such part is on the sheet/)
    .waitFor();
  expect(await axe(page)).toEqual([]);
  const saved = page.waitForEvent("download");
  await press(page, "Save as a table");
  const table = readFileSync(await savedFile(await saved), "utf8")
    .trim()
    .split(/\r?\n/);
  expect(table[0]).toBe("day,time,part,what,amount,unit,time taken,unit of time taken,by,words");
  expect(table).toHaveLength(6);
  expect(table).toContain("2020-07-20,06:45,Two totes,dipped,20,in,,,,");
  await page.getByRole("combobox", { name: "Notes of" }).selectOption({ label: "Two totes" });
  await expect.poll(() => rows.count()).toBe(1);
  await press(page, /^Take back: Two totes, dipped 20\sin/);
  await foot(page, /Noted on this phone: Two totes, dipped 20\sin: taken back/);
  await page.getByRole("combobox", { name: "Notes of" }).selectOption({ label: "All parts" });
  await expect.poll(() => rows.count()).toBe(4);
  await context.close();
});

test("the year: a frost job is noted as done by keys and taken back, and a hose's first filling is read", async () => {
  const { context, page } = await inSeason("year");
  const job = page.locator(".year-jobs button").first();
  await job.waitFor();
  await job.press("Enter");
  await foot(page, /Noted on this phone: .*ready for frost/);
  await expect.poll(() => job.getAttribute("aria-pressed")).toBe("true");
  await job.press("Enter");
  await foot(page, /Noted on this phone: .*not ready yet/);
  await expect.poll(() => job.getAttribute("aria-pressed")).toBe("false");
  // What is unfolded stays so while all is worked out anew, and what is pressed keeps the focus.
  expect(await job.evaluate((button) => button === document.activeElement)).toBe(true);
  await page.locator(".year-part summary").first().press("Enter");
  await page.locator(".year-part ol li").first().waitFor();
  await job.press("Enter");
  await expect.poll(() => job.getAttribute("aria-pressed")).toBe("true");
  await page.locator('.field-body[aria-busy="false"]').waitFor();
  await page.locator(".year-part ol li").first().waitFor();
  expect(await axe(page)).toEqual([]);
  await context.close();
});

test("on an empty sheet each page says what is missing and leads there", async () => {
  const { context, page } = await open(browser, { viewport: PHONE, used: true });
  await tool(page, "Worksheets");
  await page.getByRole("button", { name: /An empty one/ }).click();
  await row(page, "totes.capacity").waitFor({ state: "detached" });
  for (const name of ["bed", "today", "lasts", "pour", "notes", "year"]) {
    await turnTo(page, name);
    await page.getByText("Nothing stands on the sheet yet").waitFor();
    await page.getByRole("button", { name: "Say what there is" }).waitFor();
    // They say it by one and the same part of the page: on each it is asked whether it can be used, with LONG=1.
    if (isLong || name === "bed") expect(await axe(page)).toEqual([]);
  }
  await press(page, "Say what there is");
  await page.getByRole("heading", { name: "What is there?" }).waitFor();
  await context.close();
});

test("with eight beds it is said how many are below, and at 320 nothing is wider than the screen", async () => {
  const file = larkspur();
  const bed = file.cards.find(({ id }) => id === "long_bed");
  const more = Array.from({ length: 6 }, (_, at) => ({
    ...bed,
    id: `bed_${at}`,
    kind: "bed",
    title: `Bed ${at}`,
  }));
  const { context, page } = await lend(browser, AT_THE_BED);
  await opened(page, { ...file, cards: [...file.cards, ...more] }, LOW_TUB, "bed");
  const below = page.getByRole("button", { name: /more beds?/ });
  await below.waitFor();
  const first = Number.parseInt(await below.innerText(), 10);
  await below.press("Enter");
  await expect.poll(async () => Number.parseInt(await below.innerText(), 10)).toBeLessThan(first);
  await page.setViewportSize({ width: 320, height: 640 });
  for (const name of ["bed", "today", "lasts", "pour", "notes", "year"]) {
    await turnTo(page, name);
    await page.locator(".field-body").waitFor();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
    expect(await page.locator(".field-head").evaluate((head) => head.clientHeight)).toBeLessThanOrEqual(56);
  }
  await context.close();
});

// With LONG=1; a dip of an earlier day is noted above.
test.runIf(isLong)(
  "a soak of an earlier day is noted as of that day, without a minute that nobody knows",
  async () => {
    const { context, page } = await inSeason("bed");
    await press(page, /^More/);
    await page.getByLabel("On", { exact: true }).fill("2020-07-18");
    await press(page, "Soaked through");
    await press(page, "Long bed");
    await foot(page, /Noted on this phone: Long bed, soaked through, Jul\s18/);
    await page
      .locator(".field-bed", { hasText: "Long bed" })
      .getByText(/last Jul\s18/)
      .waitFor();
    await press(page, /^More/);
    expect(await axe(page)).toEqual([]);
    await context.close();
  },
);
