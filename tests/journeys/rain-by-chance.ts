// Rain of one's own, as journeys bring it in.

import type { Page } from "playwright-core";
import { settled, unfold } from "./browser.ts";

/** Two years of a shower each tenth day, as a file. */
export function twoYears() {
  const rows = Array.from({ length: 730 }, (_, at) => {
    const date = new Date(Date.UTC(2021, 0, 1 + at)).toISOString().slice(0, 10);
    return `${date},${at % 10 === 5 ? 4 : 0}`;
  });
  const text = `date,precipitation (mm)\n${rows.join("\n")}\n`;
  return { name: "two-years.csv", mimeType: "text/csv", buffer: Buffer.from(text) };
}

/** Brings in and takes a record by chance, so that packing makes little of it. */
export async function bringIn(page: Page, days: number): Promise<void> {
  const rows = ["date,precipitation (mm)"];
  let seed = 1;
  for (let at = 0; at < days; at++) {
    const date = new Date(Date.UTC(1980, 0, 1 + at)).toISOString().slice(0, 10);
    seed = (seed * 16_807) % 2_147_483_647;
    rows.push(`${date},${(seed % 1013) / 25}`);
  }
  await unfold(page, "weather");
  await page
    .getByLabel("Rain record file")
    .setInputFiles({ name: "long.csv", mimeType: "text/csv", buffer: Buffer.from(rows.join("\n")) });
  await page.getByRole("button", { name: "Take it" }).click();
  await settled(page);
}
