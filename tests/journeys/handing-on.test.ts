import { readFileSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { launch, open, row, settled, shownValueOf, type } from "./browser.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(async () => {
  await browser.close();
});

const WATCHED = ["totes.days_of_autonomy", "season.share_met", "hose_down.refill_time"];

async function watched(page: Page): Promise<readonly string[]> {
  return Promise.all(WATCHED.map((id) => shownValueOf(page, id)));
}

async function link(page: Page): Promise<string> {
  await page.getByRole("button", { name: "Share", exact: true }).click();
  const field = page.getByLabel("The link");
  await field.waitFor();
  return field.inputValue();
}

describe("a worksheet goes to a neighbour", () => {
  test("by link: a second profile shows the same answers, who made it, and what is still borrowed", async () => {
    const first = await open(browser);
    await type(first.page, "totes.capacity", "300 gal");
    const answers = await watched(first.page);
    await first.page.getByRole("button", { name: "Share", exact: true }).click();
    await first.page.getByLabel("Made by").fill("Wren, a made-up neighbour");
    await first.page.getByLabel("Made by").press("Tab");
    const field = first.page.getByLabel("The link");
    await field.waitFor();
    const address = await field.inputValue();

    const second = await open(browser);
    await type(second.page, "totes.capacity", "111 gal");
    await second.page.getByText("Saved", { exact: true }).waitFor();
    await second.page.evaluate((hash) => {
      location.hash = hash;
    }, new URL(address).hash);
    await second.page.getByText("Wren, a made-up neighbour").first().waitFor();
    await settled(second.page);
    expect(await watched(second.page)).toEqual(answers);
    expect(new URL(second.page.url()).hash).toBe("");
    const borrowed = second.page.locator("details.told");
    expect(await borrowed.innerText()).toContain("borrowed from another place");
    const count = Number.parseInt(await borrowed.innerText(), 10);
    await type(second.page, "site.latitude", "44 deg");
    await expect.poll(async () => Number.parseInt(await borrowed.innerText(), 10)).toBe(count - 1);

    await second.page.getByRole("button", { name: "Worksheets" }).click();
    await expect.poll(() => second.page.getByRole("button", { name: /^Throw away/ }).count()).toBe(2);
    await second.page
      .getByRole("button", { name: /^Larkspur/ })
      .last()
      .click();
    await settled(second.page);
    expect(await row(second.page, "totes.capacity").inputValue()).toContain("111");
    expect([...first.complaints, ...second.complaints]).toEqual([]);
    await first.context.close();
    await second.context.close();
  });

  test("a record too long for a link is left out and said so; its normals travel instead", async () => {
    const { page, context } = await open(browser);
    const rows = ["date,precipitation (mm)"];
    // By chance, so that packing makes little of it.
    let seed = 1;
    for (let at = 0; at < 14_600; at++) {
      const date = new Date(Date.UTC(1980, 0, 1 + at)).toISOString().slice(0, 10);
      seed = (seed * 16_807) % 2_147_483_647;
      rows.push(`${date},${(seed % 1013) / 25}`);
    }
    await page
      .getByLabel("Rain record file")
      .setInputFiles({ name: "long.csv", mimeType: "text/csv", buffer: Buffer.from(rows.join("\n")) });
    await page.getByRole("button", { name: "Take it" }).click();
    await settled(page);
    await link(page);
    expect(await page.locator(".share .wrong").innerText()).toContain("normals");
    await context.close();
  });

  test("a broken link opens nothing and says why", async () => {
    const { page, context, complaints } = await open(browser);
    const told = (where: Page) => where.locator(".keeping [role=alert]");
    await page.goto(`${inject("url")}#w1=AAAA`);
    await told(page).getByText("This link was cut off or changed on its way.").waitFor();
    const fresh = await context.newPage();
    await fresh.goto(`${inject("url")}#w1=AAAA`);
    await settled(fresh);
    await told(fresh).getByText("This link was cut off or changed on its way.").waitFor();
    expect(new URL(fresh.url()).hash).toBe("");
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("by file, to somebody with the other units: the same water, shown in theirs", async () => {
    const first = await open(browser);
    await first.page.getByRole("button", { name: "Worksheets" }).click();
    await first.page.getByRole("button", { name: /^Dry summer/ }).click();
    await settled(first.page);
    const litres = Number.parseFloat(
      (await shownValueOf(first.page, "cistern.reachable")).replaceAll(",", ""),
    );
    await first.page.getByRole("button", { name: "Share", exact: true }).click();
    const [saved] = await Promise.all([
      first.page.waitForEvent("download"),
      first.page.locator(".share").getByRole("button", { name: "Save as a file" }).click(),
    ]);
    const second = await open(browser);
    await second.page.getByRole("button", { name: "Worksheets" }).click();
    await second.page.getByLabel("Worksheet file").setInputFiles(await saved.path());
    await second.page.locator(".told").first().waitFor();
    await settled(second.page);
    await second.page.getByLabel("Units").selectOption("us");
    await settled(second.page);
    const gallons = Number.parseFloat(
      (await shownValueOf(second.page, "cistern.reachable")).replaceAll(",", ""),
    );
    // A US gallon is 3.785411784 L by definition; both are shown to four figures.
    expect(gallons * 3.785411784).toBeGreaterThan(litres * 0.999);
    expect(gallons * 3.785411784).toBeLessThan(litres * 1.001);
    await first.context.close();
    await second.context.close();
  });

  test("tables go out as CSV with no cell that runs, and charts as SVG", async () => {
    const { page, context, complaints } = await open(browser);
    const name = page.getByLabel("Name of this Tank").first();
    await name.fill("=1+1");
    await name.press("Enter");
    await page.getByRole("button", { name: "Share", exact: true }).click();
    const take = async (button: string): Promise<string> => {
      const [saved] = await Promise.all([
        page.waitForEvent("download"),
        page.getByRole("button", { name: button }).click(),
      ]);
      return readFileSync(await saved.path(), "utf8");
    };
    const quantities = await take("Every quantity (CSV)");
    expect(quantities).toContain(",'=1+1,");
    expect(quantities).not.toMatch(/(^|,)[=+@]/m);
    const shopping = await take("The shopping list (CSV)");
    // The demo's five prices: 85, 120, 38, 42 and 15.
    expect(shopping).toMatch(/All together,,300(,|\r)/);
    const days = (await take("The season, day by day (CSV)")).trim().split("\r\n");
    expect(days[0]).toContain("water in all tanks (gal)");
    expect(days.length - 1).toBe(20 * 365 + 5);
    expect(await take("Drawings and charts (SVG)")).toMatch(
      /^<svg[^>]*xmlns="http:\/\/www.w3.org\/2000\/svg"/,
    );
    expect(complaints).toEqual([]);
    await context.close();
  });
});
