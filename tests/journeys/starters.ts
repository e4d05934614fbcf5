// Which starters a journey opens that is made for each of them.

import { readdirSync, readFileSync } from "node:fs";
import { tries } from "../tries.ts";

/** Seasons of the demo that `open` opens: few of them, little of the work, but for LONG=1. */
export const DEMO_SEASONS = tries(20, 3);

const TEMPLATES = new URL("../../templates/", import.meta.url);

const ALL = readdirSync(TEMPLATES);
const ofAll = (few: readonly string[]): readonly string[] =>
  tries(ALL.length, few.length) === ALL.length ? ALL : few;

/** File names: all of them with LONG=1, else two that have every kind of part among them. */
export const STARTERS = ofAll(["hillside-totes.json", "panel-alone-metric.json"]);

/** For what must find room: all of them with LONG=1, else the two with most to print. */
export const FULLEST = ofAll(["southern-dry-summer-metric.json", "three-roofs-two-tunnels.json"]);

type Card = {
  readonly id: string;
  readonly kind: string;
  readonly givens?: Readonly<Record<string, unknown>>;
};
export type File = { readonly title: string; readonly cards: readonly Card[] };

/** A starter, or a worksheet elsewhere, whose made-up record is as long as that of the demo, or so many years. */
export function fileOf(name: string | URL, years = DEMO_SEASONS): File {
  const file = JSON.parse(readFileSync(new URL(name, TEMPLATES), "utf8"));
  const weather = file.cards.find(({ kind }: Card) => kind === "weather");
  // As it is written it has twenty.
  if (years < 20) weather.givens = { ...weather.givens, years: { value: years, unit: "1" } };
  return file;
}

/** The same as a file that is handed to the page. */
export const payloadOf = (file: File) => ({
  name: "sheet.json",
  mimeType: "application/json",
  buffer: Buffer.from(JSON.stringify(file)),
});
