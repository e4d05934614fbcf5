import { mkdtempSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Browser, chromium } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { findBrowser, LAUNCH_ARGUMENTS } from "../browser.mjs";
import { isLong, tries } from "../tries.ts";
import {
  enter,
  hand,
  launch,
  open,
  row,
  savedFile,
  settled,
  shownValueOf,
  site,
  take,
  type,
  unfold,
} from "./browser.ts";
import { kept, openSmall, SMALL } from "./kept.ts";
import { PATIENCE } from "./pages.ts";
import { twoYears } from "./rain-by-chance.ts";

const EDITS = tries(30, 3);

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(async () => {
  await browser.close();
});

describe("worksheets are kept", () => {
  test(`${EDITS} edits are undone and redone, each to the same answers`, async () => {
    const { page, context, complaints } = await open(browser, { used: true });
    const seen: string[] = [await shownValueOf(page, "totes.reachable")];
    for (let step = 1; step <= EDITS; step++) {
      // What is watched needs no season, so none is waited for.
      await enter(page, "totes.capacity", `${275 + step * 10} gal`);
      // All that is turned until it is put down is one step.
      await page.getByRole("button", { name: "Done", exact: true }).click();
      seen.push(await shownValueOf(page, "totes.reachable"));
    }
    expect(new Set(seen).size).toBe(EDITS + 1);
    for (let step = EDITS - 1; step >= 0; step--) {
      await page.getByRole("button", { name: "Undo" }).click();
      await expect.poll(() => shownValueOf(page, "totes.reachable")).toBe(seen[step]);
    }
    for (let step = 1; step <= EDITS; step++) {
      await page.getByRole("button", { name: "Redo" }).click();
      await expect.poll(() => shownValueOf(page, "totes.reachable")).toBe(seen[step]);
    }
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("renamed, copied, thrown away and brought back", async () => {
    const { page, context, complaints } = await openSmall(browser);
    await type(page, "barrel.capacity", "280 gal");
    await page.getByText("Saved", { exact: true }).waitFor();
    await page.getByRole("button", { name: "Worksheets" }).click();
    await page.getByRole("button", { name: `Copy ${SMALL}` }).click();
    await page.getByRole("button", { name: `Rename ${SMALL} (copy)` }).click();
    const name = page.getByLabel(`New name of ${SMALL} (copy)`);
    await name.fill("With a third tote");
    await name.press("Enter");
    await page.getByRole("button", { name: "Throw away With a third tote" }).click();
    await expect.poll(() => page.getByRole("button", { name: /^Throw away/ }).count()).toBe(1);
    await page.getByRole("button", { name: "Bring it back" }).click();
    await page.getByRole("button", { name: "Throw away With a third tote" }).waitFor();
    await page.getByRole("button", { name: /^With a third tote/ }).click();
    await settled(page);
    await expect.poll(() => page.getByLabel("Name of this worksheet").inputValue()).toBe("With a third tote");
    await expect.poll(() => shownValueOf(page, "barrel.capacity")).toContain("280");
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("two tabs that change the same worksheet both keep their work, and the later is told its new name", async () => {
    const { page, context } = await openSmall(browser);
    await type(page, "barrel.capacity", "280 gal");
    await page.getByText("Saved", { exact: true }).waitFor();
    const other = await context.newPage();
    // It hears nothing of the first, as when both are changed within the same moment.
    await other.addInitScript(() => {
      Reflect.deleteProperty(globalThis, "BroadcastChannel");
    });
    await other.goto(site());
    await settled(other);
    await type(page, "barrel.capacity", "290 gal");
    await page.getByText("Saved", { exact: true }).waitFor();
    await type(other, "barrel.capacity", "310 gal");
    await other.getByText("Another tab changed this worksheet too").waitFor();
    await expect.poll(() => other.getByLabel("Name of this worksheet").inputValue()).toBe(`${SMALL} (copy)`);
    await other.reload();
    await settled(other);
    await expect.poll(() => shownValueOf(other, "barrel.capacity")).toContain("310");
    await other.getByRole("button", { name: "Worksheets" }).click();
    await other.getByRole("button", { name: new RegExp(`^${SMALL} \\d`) }).click();
    await settled(other);
    await expect.poll(() => shownValueOf(other, "barrel.capacity")).toContain("290");
    await context.close();
  });

  test("two fresh tabs on the demo make one sheet: the second goes on from what the first kept", async () => {
    const { page, context, complaints } = await open(browser);
    const other = await context.newPage();
    await other.goto(site());
    await row(other, "totes.capacity").waitFor();
    await enter(page, "totes.capacity", "290 gal");
    await page.getByText("Saved", { exact: true }).waitFor();
    await expect.poll(() => shownValueOf(other, "totes.capacity"), { timeout: 20_000 }).toContain("290");
    await enter(other, "tub.capacity", "31 gal");
    await other.getByText("Saved", { exact: true }).waitFor();
    await expect.poll(() => shownValueOf(page, "tub.capacity"), { timeout: 20_000 }).toContain("31");
    await expect.poll(() => shownValueOf(page, "totes.capacity")).toContain("290");
    await page.getByRole("button", { name: "Worksheets" }).click();
    await page.getByRole("button", { name: "Throw away Larkspur Bank" }).waitFor();
    await expect.poll(() => page.getByRole("button", { name: /^Throw away/ }).count()).toBe(1);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("undo after a drag of the slider: the field shows the number, and touching it brings nothing back", async () => {
    const { page, context } = await open(browser, { used: true });
    await take(page, "totes.capacity");
    const field = hand(page);
    // The slider runs over its scale from 0 to 1.
    await page.getByRole("slider", { name: "each holds, slider" }).fill("0.8");
    await expect.poll(() => field.inputValue()).not.toContain("275");
    await page.getByRole("button", { name: "Undo" }).click();
    await expect.poll(() => field.inputValue()).toContain("275");
    await field.click();
    await expect.poll(() => field.inputValue()).toContain("275");
    await field.press("Enter");
    await expect.poll(() => field.inputValue()).toContain("275");
    await expect.poll(() => page.getByRole("button", { name: "Undo" }).isDisabled()).toBe(true);
    await context.close();
  });

  test("undo while the field still has the focus takes back what is typed in it, and leaving it brings nothing back", async () => {
    const { page, context } = await open(browser, { used: true });
    await type(page, "totes.capacity", "300 gal");
    // Put down and taken again: all that is done in one hold is one step.
    await page.getByRole("button", { name: "Done", exact: true }).click();
    await take(page, "totes.capacity");
    const field = hand(page);
    await field.click();
    await field.fill("410 gal");
    // A button that does not take the focus, as in some browsers.
    await page.getByRole("button", { name: "Undo" }).evaluate((button) => (button as HTMLElement).click());
    await expect.poll(() => field.inputValue()).toContain("300");
    await field.press("Enter");
    await expect.poll(() => field.inputValue()).toContain("300");
    await context.close();
  });

  test("a refused save is said, with the file as the way out", async () => {
    const { page, context } = await open(browser, { used: true });
    await page.evaluate(() => {
      const { put } = IDBObjectStore.prototype;
      IDBObjectStore.prototype.put = () => {
        throw new DOMException("full", "QuotaExceededError");
      };
      window.addEventListener("room-again", () => {
        IDBObjectStore.prototype.put = put;
      });
    });
    await type(page, "totes.capacity", "280 gal");
    const told = page.locator(".keeping [role=alert]");
    await told.getByRole("button", { name: "Save as a file" }).waitFor();
    // There is room again: the next save succeeds, and nothing says any more that none does.
    await page.evaluate(() => window.dispatchEvent(new Event("room-again")));
    await type(page, "totes.capacity", "290 gal");
    await page.getByText("Saved", { exact: true }).waitFor();
    await expect.poll(() => told.count()).toBe(0);
    await context.close();
  });

  // A profile opened twice, with LONG=1; a tab that is killed is tried by nothing-lost.test.ts.
  test.runIf(isLong)(
    "the page is killed in the middle of an edit: at most the last second is lost",
    async () => {
      const folder = mkdtempSync(join(tmpdir(), "eavesdrip-profile-"));
      const executablePath = await findBrowser();
      const start = async () => {
        const own = await chromium.launchPersistentContext(folder, {
          executablePath,
          args: LAUNCH_ARGUMENTS,
        });
        own.setDefaultTimeout(PATIENCE);
        return own;
      };
      const context = await start();
      const page = await context.newPage();
      await page.goto(site());
      await settled(page);
      // Nothing is waited for but time, the page's own, and its store's: what the page says of saving is not asked.
      await enter(page, "totes.capacity", "444 gal");
      await page.evaluate(() => new Promise((done) => setTimeout(done, 1100)));
      await kept(page, "current");
      await take(page, "tub.capacity");
      await hand(page).pressSequentially("5");
      const crashed = page.waitForEvent("crash");
      await page.goto("chrome://crash").catch(() => undefined);
      await crashed;
      await context.close();
      const again = await start();
      const next = await again.newPage();
      await next.goto(site());
      await settled(next);
      await expect.poll(() => shownValueOf(next, "totes.capacity")).toContain("444");
      await again.close();
    },
  );
});

describe("a save that is no good", () => {
  test("a broken one is set aside whole and said, and can be had as a file", async () => {
    const { page, context } = await openSmall(browser);
    await type(page, "barrel.capacity", "280 gal");
    await page.getByText("Saved", { exact: true }).waitFor();
    const id = JSON.parse(await kept(page, "current"));
    await kept(
      page,
      `sheet:${id}`,
      JSON.stringify({ id, revision: 3, savedAt: 5, worksheet: { cards: "moth" } }),
    );
    await page.reload();
    await settled(page);
    await page.locator(".keeping [role=alert]").getByText("set aside whole").waitFor();
    await page.getByRole("button", { name: "Worksheets" }).click();
    const [saved] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Save number 1 as a file" }).click(),
    ]);
    expect(readFileSync(await savedFile(saved), "utf8")).toContain("moth");
    await context.close();
  });

  test("one of a newer version opens whole, says so, and no edit changes what is kept", async () => {
    const { page, context } = await openSmall(browser);
    await type(page, "barrel.capacity", "280 gal");
    await page.getByText("Saved", { exact: true }).waitFor();
    const id = JSON.parse(await kept(page, "current"));
    const sheet = JSON.parse(await kept(page, `sheet:${id}`));
    const newer = JSON.stringify({
      ...sheet,
      worksheet: { ...sheet.worksheet, version: 99, moon: "waxing" },
    });
    await kept(page, `sheet:${id}`, newer);
    await page.reload();
    await settled(page);
    await page.locator(".keeping [role=alert]").getByText("newer version").waitFor();
    await expect.poll(() => shownValueOf(page, "barrel.capacity")).toContain("280");
    await type(page, "barrel.capacity", "500 gal");
    await page.waitForTimeout(1000);
    expect(JSON.parse(await kept(page, `sheet:${id}`))).toEqual(JSON.parse(newer));
    await context.close();
  });

  test("a browser that keeps nothing says so at once, and the file is the way out", async () => {
    const { page, context } = await open(browser, {
      before: () => {
        IDBFactory.prototype.open = () => {
          throw new DOMException("private", "SecurityError");
        };
      },
    });
    const told = page.locator(".keeping [role=alert]");
    await told.getByText("does not let the page keep anything").waitFor();
    await type(page, "totes.capacity", "280 gal");
    const [saved] = await Promise.all([
      page.waitForEvent("download"),
      told.getByRole("button", { name: "Save as a file" }).click(),
    ]);
    const file = JSON.parse(readFileSync(await savedFile(saved), "utf8"));
    const totes = file.cards.find((card: { readonly id: string }) => card.id === "totes");
    expect(totes.givens.capacity).toMatchObject({ value: 280, unit: "gal" });
    await context.close();
  });

  // With LONG=1; the shelf of records is tried without a browser (storage/record-shelf.test.ts).
  test.runIf(isLong)(
    "a record that only undo names comes back with it, though another tab let it go",
    async () => {
      const { page, context } = await open(browser);
      await unfold(page, "weather");
      await page.getByLabel("Rain record file").setInputFiles(twoYears());
      await page.getByRole("button", { name: "Take it" }).click();
      await settled(page);
      await page.getByText("Saved", { exact: true }).waitFor();
      const id = JSON.parse(await kept(page, "current"));
      const cards = JSON.parse(await kept(page, `sheet:${id}`)).worksheet.cards;
      const key = cards.find((card: { id: string }) => card.id === "weather").givens.record.value;
      await page.getByRole("button", { name: "Back to made-up weather" }).click();
      await settled(page);
      await kept(page, `record:${key}`, "");
      await page.getByRole("button", { name: "Undo" }).click();
      await settled(page);
      await page.getByText("Saved", { exact: true }).waitFor();
      await expect.poll(() => kept(page, `record:${key}`)).not.toBe("null");
      await page.reload();
      await settled(page);
      await expect.poll(() => shownValueOf(page, "weather.days")).toBe("730");
      await context.close();
    },
  );
});
