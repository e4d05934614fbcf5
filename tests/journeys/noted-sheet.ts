// A worksheet with notes in it, opened on a morning of July, and the gestures of the season's pages.

import type { Page } from "playwright-core";
import type { Note } from "../../src/document/worksheet.ts";
import { PHONE } from "./browser.ts";
import { openKept } from "./kept.ts";
import type { File } from "./starters.ts";

const DAY = "2020-07-20";
const MORNING = `${DAY}T08:00:00`;

export const AT_THE_BED = {
  viewport: PHONE,
  colorScheme: "light",
  glass: 1,
  clock: MORNING,
  asks: true,
} as const;

const note = (place: number, content: Omit<Note, "id">): Note => ({
  id: String(place).padStart(32, "0"),
  ...content,
});

/** Opens a worksheet with notes in it at one of the season's pages, as on a phone that has had it before. */
export async function opened(
  page: Page,
  file: File,
  notes: readonly Omit<Note, "id">[],
  name: string,
): Promise<void> {
  await openKept(page, { ...file, notes: notes.map((one, place) => note(place + 1, one)) }, `#${name}`);
  await page.locator(".field-body").waitFor();
}

export async function turnTo(page: Page, name: string): Promise<void> {
  await page.evaluate((hash) => {
    location.hash = hash;
  }, name);
}

export const foot = (page: Page, said: RegExp) =>
  page.getByRole("status").filter({ hasText: said }).waitFor();
export const plain = (text: string): string => text.replaceAll("\u00a0", " ");

export const LARKSPUR: readonly Omit<Note, "id">[] = [
  { day: "2020-07-10", what: "soaked", where: "long_bed" },
  { day: "2020-07-19", what: "soaked", where: "tunnel_bed" },
  { day: DAY, minute: 405, what: "dipped", where: "totes", value: 20, unit: "in" },
  { day: DAY, minute: 405, what: "dipped", where: "tub", value: 24, unit: "in" },
];
