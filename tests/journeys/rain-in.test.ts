import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { WITHIN_A_DAY } from "../rainfall/shapes/within-a-day.ts";
import { tries } from "../tries.ts";
import { launch, open, PHONE, row, settled, shownValueOf, tool, type, unfold } from "./browser.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(async () => {
  await browser.close();
});

/** Two whole years with 4 mm on every tenth day, but for ten days that are missing. */
function twoYears(): string {
  const rows = ["date,precipitation (mm)"];
  for (let at = 0; at < 730; at++) {
    const date = new Date(Date.UTC(2021, 0, 1 + at)).toISOString().slice(0, 10);
    if (at < 100 || at >= 110) rows.push(`${date},${at % 10 === 5 ? 4 : 0}`);
  }
  return `${rows.join("\n")}\n`;
}

const asFile = (text: string, name = "two-years.csv") => ({
  name,
  mimeType: "text/csv",
  buffer: Buffer.from(text),
});

/** Hands the page a file of so many bytes that it makes itself. */
function bringMuch(page: Page, bytes: number): Promise<void> {
  const rows = twoYears().slice(twoYears().indexOf("\n") + 1);
  return page.evaluate(
    ({ rows: each, times }) => {
      const file = new File(["date,precipitation (mm)\n", ...Array(times).fill(each)], "long.csv");
      const field = document.querySelector<HTMLInputElement>('[aria-label="Rain record file"]');
      const files = new DataTransfer();
      files.items.add(file);
      if (field) field.files = files.files;
      field?.dispatchEvent(new Event("change", { bubbles: true }));
    },
    { rows, times: Math.ceil(bytes / rows.length) },
  );
}

describe("rain comes in as the reader says", () => {
  test("nothing changes until it is taken; an overridden unit and a filled gap move the totals", async () => {
    const { page, context, complaints } = await open(browser, { used: true });
    await page.getByLabel("Units").selectOption("metric");
    const before = await shownValueOf(page, "weather.days");
    await unfold(page, "weather");
    await page.getByLabel("Rain record file").setInputFiles(asFile(twoYears()));
    const preview = page.locator(".preview");
    await preview.waitFor();
    await expect.poll(() => preview.innerText()).toContain("10 days missing");
    await expect.poll(() => preview.locator(".strip .part").count()).toBe(1);
    await expect.poll(() => shownValueOf(page, "weather.days")).toBe(before);

    await preview.getByLabel("Missing days").selectOption("zero");
    await expect.poll(() => preview.locator(".strip .part").count()).toBe(0);
    await preview.getByText("Change what was assumed").click();
    await preview.getByLabel("Rain is in").selectOption("cm");
    await expect.poll(() => preview.innerText()).toContain("centimetres");
    await page.getByRole("button", { name: "Take it" }).click();
    await settled(page);
    // 36 and 37 wet days in the two years less the one in the gap, 4 cm each: from counting, not from the program.
    await expect.poll(() => shownValueOf(page, "weather.days")).toBe("730");
    const wet = Array.from({ length: 730 }, (_, at) => at).filter((at) => at % 10 === 5 && at !== 105).length;
    await expect
      .poll(() => shownValueOf(page, "weather.mean_yearly_rain"))
      .toBe(`${((wet * 40) / 2).toLocaleString("en-US", { maximumSignificantDigits: 4 })} mm`);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("readings stand side by side with their yearly rain, the likeliest chosen: one touch takes the true one", async () => {
    const { page, context, complaints } = await open(browser, { used: true });
    await page.getByLabel("Units").selectOption("metric");
    for (const name of [
      "a row a tip, to the second",
      "hourly rows that are a 24th of the day",
      "a counter over the year, a row a day",
    ]) {
      const shape = WITHIN_A_DAY.find((each) => each.name === name);
      if (!shape) throw new Error(name);
      await unfold(page, "weather");
      await page.getByLabel("Rain record file").setInputFiles(asFile(shape.text, "log.csv"));
      const readings = page.locator(".preview .reading label");
      await readings.nth(1).waitFor();
      for (const text of await readings.allInnerTexts()) expect(text).toMatch(/\d\s*mm a year/);
      await page.getByRole("button", { name: "Take it" }).click();
      await settled(page);
      await page.locator("#weather .minor > summary").waitFor();
      await expect.poll(() => page.locator(".import summary").first().innerText()).toContain("came in");
    }
    // The last of them has whole years, 2016 to 2019: their mean by adding up.
    const shape = WITHIN_A_DAY.find(({ name }) => name === "a counter over the year, a row a day");
    const shown = Number((await shownValueOf(page, "weather.mean_yearly_rain")).replace(/[^\d.]/g, ""));
    expect(Math.abs(shown / (shape?.yearly ?? 0) - 1)).toBeLessThan(0.01);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("a year of local rain comes in, and its drier versions stand beside it", async () => {
    const { page, context, complaints } = await open(browser, { asks: true });
    const shape = WITHIN_A_DAY.find(({ name }) => name === "a total of the day that its header tells");
    await unfold(page, "weather");
    await page.getByLabel("Rain record file").setInputFiles(asFile(shape?.text ?? "", "local.csv"));
    await page.locator(".preview .drier").waitFor();
    await expect.poll(() => page.locator(".preview .drier").innerText()).toContain("One year cannot tell");
    await page.getByRole("button", { name: "Take it" }).click();
    await settled(page);
    const drier = page.getByLabel("The same record with less rain");
    await drier.waitFor();
    await expect
      .poll(() => drier.innerText())
      .toMatch(/As it is.*days short[\s\S]*quarter less rain.*days short[\s\S]*half less rain.*days short/);
    await expect.poll(() => page.locator("main").innerText()).not.toContain("driest year on record");
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("the drier versions of a record stand beside it as it is, worst season beside worst", async () => {
    const { page, context, complaints } = await open(browser, { asks: true });
    await unfold(page, "weather");
    await page.getByLabel("Rain record file").setInputFiles("tests/fixtures/seattle-weather.csv");
    await page.getByRole("button", { name: "Take it" }).click();
    await settled(page);
    // Of another whole what it was is said whole.
    await expect
      .poll(async () => (await page.locator("h1.lead").innerText()).replaceAll("\u00a0", " "))
      .toMatch(/ of 4 seasons was \d+ of (?!4\b)\d+/);
    const drier = page.getByLabel("The same record with less rain");
    await drier.waitFor();
    const days = [...(await drier.innerText()).matchAll(/: ([\d.]+) days? short/g)].map(([, said]) =>
      Number(said),
    );
    expect(days).toHaveLength(3);
    expect(days).toEqual([...days].sort((a, b) => a - b));
    const worst = await page.locator('h1.lead [data-tone="trouble"]').last().innerText();
    expect(worst.replaceAll("\u00a0", " ")).toBe(`${days[0]} days`);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("a mean that few places have is questioned; a rain file given for a worksheet is offered as rain", async () => {
    const { page, context, complaints } = await open(browser, { used: true });
    const rows = twoYears().replaceAll(",4\n", ",0.4\n");
    await tool(page, "Worksheets");
    await page.getByLabel("Worksheet file").setInputFiles(asFile(rows, "dry.csv"));
    await page.locator(".preview").getByText("dry.csv").waitFor();
    await page.getByRole("button", { name: "Take it anyway" }).waitFor();
    await expect.poll(() => page.locator(".preview .take").innerText()).toContain("Few places have that");
    // Ten days of a likely rain are no year, and that is said in red beside what they are stretched to.
    await page
      .getByLabel("Rain record file")
      .setInputFiles(asFile(twoYears().split("\n", 11).join("\n"), "ten.csv"));
    await page.locator(".preview").getByText("ten.csv").waitFor();
    const take = page.locator(".preview .take");
    await expect.poll(() => take.innerText()).toMatch(/Stretched from 10 days, a year would come to/);
    await expect
      .poll(() => take.getByRole("alert").allInnerTexts())
      .toEqual([expect.stringContaining("10 days cannot tell")]);
    await page.getByRole("button", { name: "Take it anyway" }).waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("a rain file dropped on Open a file is offered as rain; where to get a record is said beside it", async () => {
    const { page, context, complaints } = await open(browser, { used: true });
    const before = await shownValueOf(page, "weather.days");
    await page.getByRole("button", { name: "Worksheets" }).click();
    const target = page.locator("dialog[open] label", { hasText: "Open a file" });
    await target.evaluate((label, text) => {
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([text], "dropped.csv"));
      label.dispatchEvent(new DragEvent("drop", { dataTransfer, bubbles: true, cancelable: true }));
    }, twoYears());
    await page.locator(".preview").getByText("dropped.csv").waitFor();
    await expect.poll(() => page.locator("dialog[open]").count()).toBe(0);
    await page.getByText("dropped.csv is no worksheet. It may be rain").waitFor();
    await expect.poll(() => shownValueOf(page, "weather.days")).toBe(before);
    await expect
      .poll(() => page.locator(".import").innerText())
      .toContain("A national weather service, an airport or a neighbor's gauge has daily rain to bring in.");
    await page.getByRole("button", { name: "Take it" }).click();
    await settled(page);
    await expect.poll(() => shownValueOf(page, "weather.days")).toBe("730");
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("own readings are typed, what they leave open is asked, and they join the record in use", async () => {
    const { page, context, complaints } = await open(browser, { used: true });
    await unfold(page, "weather");
    await page.getByLabel("Rain record file").setInputFiles(asFile(twoYears()));
    await page.getByRole("button", { name: "Take it" }).click();
    await settled(page);
    await page.getByText("Type or paste your own gauge").click();
    await page.getByLabel("Readings, one a line").fill("2021-04-11 6 mm\n2023-01-02 8 mm");
    await page.getByRole("button", { name: "Look at these readings" }).click();
    await page.getByRole("button", { name: /no rain fell/ }).click();
    const joining = page.locator(".preview").getByLabel("This record");
    await joining.selectOption({ index: 2 });
    await page.getByRole("button", { name: "Take it" }).click();
    await settled(page);
    await expect.poll(() => shownValueOf(page, "weather.days")).toBe("732");
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("a file that is dropped and a table that is pasted come in like one that is picked", async () => {
    const { page, context, complaints } = await open(browser);
    await unfold(page, "weather");
    await page.evaluate((text) => {
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([text], "dropped.csv"));
      const drop = new DragEvent("drop", { dataTransfer, bubbles: true, cancelable: true });
      document.querySelector(".import .pick")?.dispatchEvent(drop);
    }, twoYears());
    await page.locator(".preview").getByText("dropped.csv").waitFor();
    await page.getByRole("button", { name: "Leave it" }).click();
    await page.getByText("Type or paste your own gauge's readings").click();
    await page.getByLabel("Readings, one a line").fill(twoYears());
    await page.getByRole("button", { name: "Look at these readings" }).click();
    await page.getByRole("button", { name: "Take it" }).click();
    await settled(page);
    await expect.poll(() => shownValueOf(page, "weather.days")).toBe("730");
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("a gap can still be filled in a record that was taken long ago, and undo opens it again", async () => {
    const { page, context, complaints } = await open(browser);
    await unfold(page, "weather");
    await page.getByLabel("Rain record file").setInputFiles(asFile(twoYears()));
    await page.getByRole("button", { name: "Take it" }).click();
    await settled(page);
    await page.getByText("Saved", { exact: true }).waitFor();
    await page.reload();
    await settled(page);
    await expect.poll(() => shownValueOf(page, "weather.missing_days")).toBe("10");
    await page.getByRole("button", { name: "Look at this record again" }).click();
    const preview = page.locator(".preview");
    await preview.getByLabel("Missing days").selectOption("zero");
    await page.getByRole("button", { name: "Take it" }).click();
    await settled(page);
    await expect.poll(() => shownValueOf(page, "weather.missing_days")).toBe("0");
    await page.getByRole("button", { name: "Undo" }).click();
    await settled(page);
    await expect.poll(() => shownValueOf(page, "weather.missing_days")).toBe("10");
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("an answer that cannot be read is said, and the file need not be brought in again", async () => {
    const { page, context, complaints } = await open(browser, { used: true });
    await unfold(page, "weather");
    await page.getByLabel("Rain record file").setInputFiles(asFile("rain (mm)\n1\n0\n2.5\n", "no-dates.csv"));
    const preview = page.locator(".preview");
    const first = preview.getByRole("group").getByRole("textbox");
    await first.fill("last Tuesday");
    await first.press("Tab");
    await preview.getByText("such as 2024-03-12").waitFor();
    await first.fill("2022-05-01");
    await first.press("Tab");
    await page.getByRole("button", { name: "Take it" }).click();
    await settled(page);
    await expect.poll(() => shownValueOf(page, "weather.days")).toBe("3");
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("a record is made up from normals as many years long as asked, and is said to be made up", async () => {
    const { page, context, complaints } = await open(browser, { used: true });
    const before = await shownValueOf(page, "weather.mean_yearly_rain");
    const years = tries(30, 6);
    await type(page, "weather.years", `${years}`);
    // From 2001 on every fourth calendar year is a leap year: of 30 those from 2004 to 2028, of six 2004 alone.
    const days = years * 365 + Math.floor(years / 4);
    await expect.poll(() => shownValueOf(page, "weather.days")).toBe(days.toLocaleString("en-US"));
    await unfold(page, "weather.normal_rain");
    const months = row(page, "weather.normal_rain");
    await months.locator("summary").click();
    const january = months.locator("input").first();
    // A US sheet asks no metric figure, and takes one all the same: 254 mm are ten inches.
    await expect.poll(() => months.locator("summary").innerText()).toBe("Rain of each month, in");
    await expect
      .poll(() => row(page, "weather.normal_highs").locator("summary").innerText())
      .toBe("Warm of each month, °F");
    const march = await months.locator("input").nth(2).inputValue();
    await january.fill("254 mm");
    await january.press("Enter");
    await settled(page);
    await expect.poll(() => january.inputValue()).toBe("10");
    await expect.poll(() => months.locator("input").nth(2).inputValue()).toBe(march);
    await january.fill("20");
    await january.press("Enter");
    await settled(page);
    await expect.poll(() => shownValueOf(page, "weather.mean_yearly_rain")).not.toBe(before);
    await expect.poll(() => page.locator(".madeup").innerText()).toContain("made-up weather");
    await unfold(page, "weather.record_kind");
    await expect.poll(() => row(page, "weather.record_kind").innerText()).toContain("made up");
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("the strip of a single year is no taller than a third of a phone", async () => {
    const { page, context } = await open(browser, { viewport: PHONE, used: true });
    await unfold(page, "weather");
    await page.getByLabel("Rain record file").setInputFiles({
      name: "march.csv",
      mimeType: "text/csv",
      buffer: Buffer.from("date,precipitation (mm)\n2020-03-01,2\n2020-03-02,0\n2020-03-03,4\n"),
    });
    const strip = page.locator(".preview .strip");
    await strip.waitFor();
    const box = await strip.boundingBox();
    expect(box?.height).toBeGreaterThan(100);
    expect(box?.height).toBeLessThan(PHONE.height / 3);
    await context.close();
  });

  test("fifty megabytes come in with progress, the page answers meanwhile, and it can be left", async () => {
    const { page, context, complaints } = await open(browser, { used: true });
    const progress = page.locator(".import progress");
    await unfold(page, "weather");
    // A machine that reads them before the page has answered reads three times as many, and thrice of that.
    for (const bytes of [50_000_000, 150_000_000, 450_000_000]) {
      await bringMuch(page, bytes);
      await progress.waitFor();
      // Answered to the end while the file is still being read: a number of seconds would try the machine alone.
      await type(page, "totes.capacity", `${bytes / 1_000_000} gal`);
      await unfold(page, "weather");
      if ((await progress.count()) === 1) break;
      await page.getByRole("button", { name: "Leave it" }).click();
    }
    await expect.poll(() => progress.count()).toBe(1);
    await page.getByRole("button", { name: "Leave it" }).click();
    await progress.waitFor({ state: "detached" });
    await expect.poll(() => page.locator(".preview").count()).toBe(0);
    expect(complaints).toEqual([]);
    await context.close();
  });
});
