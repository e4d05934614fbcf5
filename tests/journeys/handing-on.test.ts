import { readFileSync } from "node:fs";
import jsQR from "jsqr";
import type { Browser, Download, Locator, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { recordKey } from "../../src/rainfall/record-key.ts";
import { worksheetFromLink } from "../../src/storage/link.ts";
import { isLong, tries } from "../tries.ts";
import {
  enter,
  hand,
  launch,
  open,
  openAt,
  PHONE,
  savedFile,
  settled,
  shownValueOf,
  site,
  take,
  tool,
  type,
} from "./browser.ts";
import { bringIn } from "./rain-by-chance.ts";
import { DEMO_SEASONS } from "./starters.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(async () => {
  await browser.close();
});

const WATCHED = ["totes.days_of_autonomy", "season.share_met", "hose_down.refill_time"];

async function watched(page: Page): Promise<readonly string[]> {
  const seen: string[] = [];
  for (const id of WATCHED) seen.push(await shownValueOf(page, id));
  return seen;
}

type Said = { readonly from?: string };

/** Every number that a made-up place says, and where it says that it is from. */
function saidIn(template: string): readonly (readonly [id: string, from: string])[] {
  const { cards } = JSON.parse(readFileSync(`templates/${template}.json`, "utf8")) as {
    readonly cards: readonly ({ readonly id: string; readonly givens: Record<string, Said> } & Record<
      string,
      Said
    >)[];
  };
  return cards.flatMap(({ id, givens, price, life }) =>
    Object.entries({ ...givens, price, life }).flatMap(([row, said]) =>
      said ? [[`${id}.${row}`, said.from ?? "your own"] as const] : [],
    ),
  );
}

async function link(page: Page): Promise<string> {
  await tool(page, "Share");
  const field = page.getByLabel("The link", { exact: true });
  await field.waitFor();
  return field.inputValue();
}

/** The latitude that a link carries [deg]. */
async function latitudeIn(address: string): Promise<unknown> {
  const read = await worksheetFromLink(new URL(address).hash, recordKey);
  if (!read.ok) throw new Error("The link cannot be read.");
  return read.worksheet.cards.find(({ id }) => id === "site")?.givens["latitude"]?.value;
}

/** Greys as red, green, blue and cover. */
function fourFold(greys: Uint8Array): Uint8ClampedArray {
  const pixels = new Uint8ClampedArray(greys.length * 4);
  greys.forEach((grey, at) => {
    pixels.fill(grey, at * 4, at * 4 + 4);
  });
  return pixels;
}

/** What another phone reads off a picture on this one's glass, three device pixels to each of the page's. */
async function readOffGlass(picture: Locator): Promise<string | null> {
  const png = (await picture.screenshot({ scale: "device" })).toString("base64");
  const context = await browser.newContext();
  const bench = await context.newPage();
  const { width, height, greys } = await bench.evaluate(async (base64) => {
    const image = await createImageBitmap(await (await fetch(`data:image/png;base64,${base64}`)).blob());
    const canvas = new OffscreenCanvas(image.width, image.height);
    const pen = canvas.getContext("2d");
    pen?.drawImage(image, 0, 0);
    const pixels = pen?.getImageData(0, 0, image.width, image.height).data ?? new Uint8ClampedArray();
    // One letter for each pixel: millions of numbers would take a minute on their way.
    let letters = "";
    for (let at = 0; at < pixels.length; at += 4) letters += String.fromCharCode(pixels[at] ?? 0);
    return { width: image.width, height: image.height, greys: btoa(letters) };
  }, png);
  await context.close();
  return jsQR(fourFold(Buffer.from(greys, "base64")), width, height)?.data ?? null;
}

describe("a worksheet goes to a neighbour", () => {
  test("by link: a second profile shows the same answers, who made it, and what is still borrowed", async () => {
    const first = await open(browser, { used: true });
    await type(first.page, "totes.capacity", "300 gal");
    const answers = await watched(first.page);
    await first.page.getByRole("button", { name: "Share", exact: true }).click();
    await first.page.getByLabel("Made by").fill("Wren, a made-up neighbour");
    await first.page.getByLabel("Made by").press("Tab");
    const field = first.page.getByLabel("The link", { exact: true });
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
    await expect.poll(() => watched(second.page)).toEqual(answers);
    expect(new URL(second.page.url()).hash).toBe("");
    const borrowed = second.page.locator("details.told");
    await expect.poll(() => borrowed.innerText()).toContain("borrowed");
    const count = Number.parseInt(await borrowed.innerText(), 10);
    await type(second.page, "site.latitude", "44 deg");
    await expect.poll(async () => Number.parseInt(await borrowed.innerText(), 10)).toBe(count - 1);

    // Until it is said what is to become of it a reload asks again; then never more.
    const keep = second.page.getByRole("button", { name: "Keep this", exact: true });
    await second.page.reload();
    await settled(second.page);
    await keep.click();
    await second.page.reload();
    await settled(second.page);
    await borrowed.waitFor();
    expect(await keep.count()).toBe(0);

    await second.page.getByRole("button", { name: "Worksheets" }).click();
    await second.page.getByRole("button", { name: "Larkspur Bank (from Wren) open now" }).waitFor();
    await second.page.getByRole("button", { name: /^Larkspur Bank \d{4}-/ }).click();
    await settled(second.page);
    await expect.poll(() => shownValueOf(second.page, "totes.capacity")).toContain("111");
    expect([...first.complaints, ...second.complaints]).toEqual([]);
    await first.context.close();
    await second.context.close();
  });

  test("the same link opened twice says so, and shows what was made of it instead of a second copy", async () => {
    const first = await open(browser, { used: true });
    const address = await link(first.page);
    await first.context.close();
    const { page, context, complaints } = await openAt(browser, new URL(address).hash, { whole: false });
    for (const amount of ["310 gal", "320 gal"]) {
      await page.goto("about:blank");
      await page.goto(address);
      await enter(page, "totes.capacity", amount);
    }
    await page.locator(".keeping [role=alert]").getByText("This link was opened here before").waitFor();
    await page.getByText("Saved", { exact: true }).waitFor();
    // In the very tab that shows it, too.
    await page.evaluate((hash) => {
      location.hash = hash;
    }, new URL(address).hash);
    await expect.poll(() => new URL(page.url()).hash).toBe("");
    await page.locator(".keeping [role=alert]").getByText("This link was opened here before").waitFor();
    await expect.poll(() => shownValueOf(page, "totes.capacity")).toContain("320");
    await page.getByRole("button", { name: "Worksheets" }).click();
    await page
      .getByRole("button", { name: /^Throw away/ })
      .first()
      .waitFor();
    await expect.poll(() => page.getByRole("button", { name: /^Throw away/ }).count()).toBe(1);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("a title that runs from right to left, or turns the direction, turns nothing beside it", async () => {
    const { page, context } = await open(browser, { used: true });
    const name = page.getByLabel("Name of this Tank").first();
    await name.fill("\u202e\u05d7\u05d1\u05d9\u05ea 5");
    await name.press("Enter");
    await settled(page);
    const kept = "\u2068\u05d7\u05d1\u05d9\u05ea 5\u2069";
    await expect.poll(() => name.inputValue()).toBe("\u05d7\u05d1\u05d9\u05ea 5");
    const said = (apart: string) => {
      const texts: string[] = [];
      const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
      while (walk.nextNode()) texts.push(walk.currentNode.textContent ?? "");
      for (const element of document.querySelectorAll("[aria-label]"))
        texts.push(element.getAttribute("aria-label") ?? "");
      const told = texts.filter((text) => /\u05d7|\u202e/.test(text));
      return {
        told: told.length,
        loose: told.filter((text) => /[\u0590-\u05ff\u202e]/.test(text.replaceAll(apart, ""))),
      };
    };
    // The drawing, the open part and the strip of parts come one after the other.
    await expect.poll(async () => (await page.evaluate(said, kept)).told).toBeGreaterThan(3);
    expect((await page.evaluate(said, kept)).loose).toEqual([]);
    await context.close();
  });

  // With LONG=1; that the record stays and months travel instead is tried with the picture code below.
  test.runIf(isLong)(
    "a record too long for a link is left out and said so; its monthly figures travel instead, by code too",
    async () => {
      const { page, context } = await open(browser, { used: true });
      await bringIn(page, 14_600);
      await link(page);
      await expect
        .poll(() => page.locator(".share .wrong").last().innerText())
        .toContain("twelve monthly figures");
      // Without the record it is short enough for a code, too.
      await page.getByRole("img", { name: "The link as a picture code" }).waitFor();
      await context.close();
    },
  );

  test("the link tells the latitude to a tenth of a degree, and more only where that is asked for", async () => {
    const first = await open(browser, { used: true });
    await type(first.page, "site.latitude", "44.0567 deg");
    const rounded = await link(first.page);
    await first.page.getByRole("dialog").getByRole("checkbox").check();
    const field = first.page.getByLabel("The link", { exact: true });
    await expect.poll(() => field.inputValue()).not.toBe(rounded);
    const exact = await field.inputValue();
    expect([await latitudeIn(rounded), await latitudeIn(exact)]).toEqual([44.1, 44.0567]);
    // As a neighbor sees it; the other one, too, with LONG=1.
    const seen = [
      [rounded, "44.1"],
      [exact, "44.0567"],
    ] as const;
    for (const [address, latitude] of seen.slice(0, tries(2, 1))) {
      const second = await openAt(browser, new URL(address).hash, { whole: false });
      await second.page.locator("details.told").waitFor();
      await take(second.page, "site.latitude");
      await expect.poll(() => hand(second.page).inputValue()).toMatch(new RegExp(`^${latitude}\\b`));
      await second.context.close();
    }
    await first.context.close();
  });

  // With LONG=1; a picture code is read off the glass just below.
  test.runIf(isLong)(
    "the picture code is as wide as the page's own width allows and holds the very link",
    async () => {
      const { page, context } = await open(browser, { viewport: PHONE, glass: 3 });
      const address = await link(page);
      const picture = page.getByRole("img", { name: "The link as a picture code" });
      expect(await readOffGlass(picture)).toBe(address);
      const field = await page.getByLabel("The link", { exact: true }).boundingBox();
      expect((await picture.boundingBox())?.width).toBeGreaterThanOrEqual((field?.width ?? 0) - 1);
      await expect
        .poll(() => page.getByRole("dialog").innerText())
        .toContain("This link opens only on this computer.");
      await context.close();
    },
  );

  test("where one's own rain makes the code too long it is left out on the spot; read off the glass it stands on the fitted months, said so", async () => {
    const { page, context, complaints } = await open(browser, { viewport: PHONE, glass: 3 });
    await bringIn(page, 2000);
    const whole = await link(page);
    await page.getByText("With your rain record in it the link is too long for a picture code.").waitFor();
    await page.getByRole("button", { name: "Make a link and a code without the record" }).click();
    const picture = page.getByRole("img", { name: "The link as a picture code" });
    const address = (await readOffGlass(picture)) ?? "";
    await expect.poll(() => page.getByLabel("The link", { exact: true }).inputValue()).toBe(address);
    expect(address.length).toBeLessThan(whole.length);
    await expect
      .poll(() => page.locator(".share .wrong").last().innerText())
      .toBe(
        "Your rain record stays here and twelve monthly figures of it travel instead, so the answers will differ.",
      );
    const second = await openAt(browser, new URL(address).hash, { whole: false });
    await settled(second.page);
    await second.page
      .getByRole("alert")
      .getByText(
        "The maker's own rain record did not come with the link. This stands on twelve monthly figures",
      )
      .waitFor();
    await expect
      .poll(() => shownValueOf(second.page, "weather.record_kind"))
      .toBe("made up from monthly figures");
    // The rain by chance lies evenly between 0 and 1012 / 25 mm: 20.24 mm a day in the mean, 7.4 m a year, here in inches.
    const fitted = Number.parseFloat(await shownValueOf(second.page, "weather.mean_yearly_rain"));
    expect(Math.abs(fitted / ((20.24 * 365.25) / 25.4) - 1)).toBeLessThan(0.15);
    expect(complaints).toEqual([]);
    await context.close();
    await second.context.close();
  });

  test("by the device's own way: the link as an address, the file as a file with the record inside", async () => {
    const { page, context, complaints } = await open(browser, {
      before: () => {
        const passed: unknown[] = [];
        Object.assign(globalThis, { passed });
        Object.assign(Navigator.prototype, {
          canShare: () => true,
          share: async ({ url, files }: ShareData) => {
            passed.push(url ?? { name: files?.[0]?.name, text: await files?.[0]?.text() });
          },
        });
      },
    });
    await bringIn(page, 400);
    const address = await link(page);
    await page.getByRole("button", { name: "Pass the link on" }).click();
    await page.getByRole("button", { name: "Pass the file on" }).click();
    const passed = () => page.evaluate(() => (globalThis as unknown as { passed: unknown[] }).passed);
    await expect.poll(async () => (await passed()).length).toBe(2);
    const [url, file] = (await passed()) as [string, { name: string; text: string }];
    expect(url).toBe(address);
    expect(file.name).toBe("larkspur-bank.json");
    expect(JSON.parse(file.text).records).toHaveLength(1);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("a broken link opens nothing and says why", async () => {
    const { page, context, complaints } = await open(browser, { used: true });
    const told = (where: Page) => where.locator(".keeping [role=alert]");
    await page.goto(`${site()}#w1=AAAA`);
    await told(page).getByText("This link was cut off or changed on its way.").waitFor();
    const fresh = await context.newPage();
    await fresh.goto(`${site()}#w1=AAAA`);
    await settled(fresh);
    await told(fresh).getByText("This link was cut off or changed on its way.").waitFor();
    expect(new URL(fresh.url()).hash).toBe("");
    expect(complaints).toEqual([]);
    await context.close();
  });

  // With LONG=1; a file goes from page to page in given-away.test.ts, and a link just above.
  test.runIf(isLong)(
    "by file, to somebody with the other units: the same water, shown in theirs",
    async () => {
      const first = await open(browser, { used: true });
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
      await second.page.getByLabel("Worksheet file").setInputFiles(await savedFile(saved));
      await second.page.locator(".told").first().waitFor();
      await settled(second.page);
      await second.page.getByLabel("Units").selectOption("us");
      await settled(second.page);
      const gallons = Number.parseFloat(
        (await shownValueOf(second.page, "cistern.reachable")).replaceAll(",", ""),
      );
      // A US gallon is 3.785411784 L by definition; both are shown to the nearest ten at the coarsest, half of it off each.
      expect(Math.abs(gallons * 3.785411784 - litres)).toBeLessThanOrEqual(5 * 3.785411784 + 5);
      await first.context.close();
      await second.context.close();
    },
  );

  test("tables go out as CSV with no cell that runs, and charts as SVG", async () => {
    const { page, context, complaints } = await open(browser, { used: true });
    const name = page.getByLabel("Name of this Tank").first();
    await name.fill("=1+1");
    await name.press("Enter");
    await page.getByRole("button", { name: "Share", exact: true }).click();
    const take = async (button: string): Promise<string> => {
      const [saved] = await Promise.all([
        page.waitForEvent("download"),
        page.getByRole("button", { name: button }).click(),
      ]);
      return readFileSync(await savedFile(saved), "utf8");
    };
    const quantities = await take("Every quantity (CSV)");
    expect(quantities).toContain(",'=1+1,");
    expect(quantities).not.toMatch(/(^|,)[=+@]/m);
    const said = saidIn("hillside-totes").flatMap(([id, from]) => {
      const line = quantities.split("\r\n").find((one) => one.startsWith(`${id},`));
      return line === undefined ? [] : [[line.endsWith(`,${from}`), `${line} wants ${from}`]];
    });
    expect(said.filter(([isTrue]) => !isTrue)).toEqual([]);
    expect(said.length).toBeGreaterThan(70);
    expect(quantities).toMatch(/^totes\.price,.*,your own\r?$/m);
    const shopping = await take("The shopping list (CSV)");
    // The demo's five prices: 85, 120, 38, 42 and 15.
    expect(shopping).toMatch(/All together,,300(,|\r)/);
    const days = (await take("The season, day by day (CSV)")).trim().split("\r\n");
    expect(days[0]).toContain("water in all tanks (gal)");
    // From 2001 on every fourth calendar year is a leap year.
    expect(days.length - 1).toBe(DEMO_SEASONS * 365 + Math.floor(DEMO_SEASONS / 4));
    const saved: Download[] = [];
    page.on("download", (download) => saved.push(download));
    await page.getByRole("button", { name: "Drawings and charts (SVG)" }).click();
    // What has parts that are pressed or dragged is no picture to those who listen: the drawing, and the record's charts.
    const shown = 1 + (await page.locator("main svg[role=img]:visible, main .plot > svg:visible").count());
    // The place, the seasons and the year at the least; of the parts, only the open one is in the page.
    expect(shown).toBeGreaterThan(2);
    await expect.poll(() => saved.length).toBe(shown);
    for (const one of saved)
      expect(readFileSync(await savedFile(one), "utf8")).toMatch(
        /^<svg[^>]*xmlns="http:\/\/www.w3.org\/2000\/svg"/,
      );
    expect(complaints).toEqual([]);
    await context.close();
  });
});
