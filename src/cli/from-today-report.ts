// `--from-today`: how long it lasts, and what to water today and in the week.

import { valueIn } from "../graph/readers.ts";
import type { Driver } from "../network/bounds.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import type { DayLine } from "../season/day-lines.ts";
import type { Ahead, FromToday, Ranks } from "../season/from-today.ts";
import { type FromTodayAnswer, fromTodayOf } from "../studies/from-today.ts";
import type { Whole } from "../studies/work-out.ts";
import { lastsSaid, restsOn } from "../telling/from-today.ts";
import { whyShort } from "../telling/words/bounds.ts";
import { isoDate } from "../units/calendar.ts";
import { showQuantity } from "../units/show.ts";
import { optionsOf } from "./report.ts";
import { FileError } from "./usage.ts";

type Line = Omit<DayLine, "day" | "asked" | "why"> & { readonly why: string };

type RankedDays = {
  readonly one_in_ten: string | null;
  readonly half: string | null;
  readonly nine_in_ten: string | null;
  readonly members: number;
};

type TwoDays = { readonly usual: string | null; readonly dry: string | null };

export type FromTodayReport = {
  readonly kind: FromToday["kind"];
  readonly short_from: RankedDays | TwoDays | null;
  readonly empty_from: RankedDays | TwoDays | null;
  readonly reaches_end: number | null;
  readonly season_end: string | null;
  readonly today: readonly Line[];
  readonly week: readonly (Line & { readonly day: string })[];
  /** Parts of which nothing was noted lately. */
  readonly assumed: readonly string[];
  readonly said: readonly string[];
};

const dateOf = (day: number | null): string | null => (day === null ? null : isoDate(day));

const ranked = ({ oneInTen, half, nineInTen }: Ranks, members: number): RankedDays => ({
  one_in_ten: dateOf(oneInTen),
  half: dateOf(half),
  nine_in_ten: dateOf(nineInTen),
  members,
});

function lastingReport(from: FromToday): Pick<FromTodayReport, "short_from" | "empty_from" | "reaches_end"> {
  if (from.kind === "out_of_season") return { short_from: null, empty_from: null, reaches_end: null };
  if (from.kind === "odds")
    return {
      short_from: ranked(from.short, from.members),
      empty_from: ranked(from.empty, from.members),
      reaches_end: from.reachesEnd,
    };
  const both = (of: (run: Ahead) => number | null): TwoDays => ({
    usual: dateOf(of(from.usual)),
    dry: dateOf(of(from.dry)),
  });
  return {
    short_from: both(({ short }) => short),
    empty_from: both(({ empty }) => empty),
    reaches_end: null,
  };
}

/** Asks a worked-out worksheet how long it lasts; a file error where it cannot be told. */
export function fromTodayAnswer(whole: Whole, records: readonly DailyRecord[]): FromTodayAnswer {
  const answer = fromTodayOf(whole, records);
  if ("failed" in answer) throw new FileError(`How long it lasts cannot be told: ${answer.failed}`);
  return answer;
}

const titlesOf = ({ worksheet }: Whole) => {
  const titles = new Map(worksheet.cards.map(({ id, title }) => [id, title]));
  return (id: string): string => titles.get(id) ?? id;
};

function showIn(whole: Whole) {
  const options = optionsOf(whole);
  return (si: number, measure: "volume" | "duration") => showQuantity(si, measure, options);
}

const driverIn = ({ results }: Whole): Driver =>
  (String(valueIn(results.get("season.binding_driver")) ?? "") || "either") as Driver;

function lineOf(whole: Whole, { bed, volume, by, time, trips, tankfuls, waits, asked, why }: DayLine): Line {
  const show = showIn(whole);
  const short =
    why === null ? "" : `It asks for ${show(asked, "volume")}: ${whyShort(why, driverIn(whole))}.`;
  return { bed, volume, by, time, trips, tankfuls, waits, why: short };
}

/** The answer as the command line gives it in JSON. */
export function fromTodayReport(whole: Whole, { lasting, lines }: FromTodayAnswer): FromTodayReport {
  const { tanks, beds, batteries } = lasting.assumed;
  return {
    kind: lasting.kind,
    ...lastingReport(lasting),
    season_end: lasting.kind === "out_of_season" ? null : isoDate(lasting.last),
    today: lines.filter(({ day }) => day === lasting.today).map((line) => lineOf(whole, line)),
    week: lines.map((line) => ({ day: isoDate(line.day), ...lineOf(whole, line) })),
    assumed: [...tanks, ...beds, ...batteries],
    said: [lastsSaid(lasting), ...restsOn(lasting, titlesOf(whole))],
  };
}

function lineText(
  whole: Whole,
  { day, bed, volume, by, time, trips, tankfuls, waits, why }: DayLine,
): string {
  const [show, titleOf] = [showIn(whole), titlesOf(whole)];
  const how = trips > 0 ? `${trips} rounds with ${titleOf(by)}` : `with ${titleOf(by)}`;
  const after = waits.map((wait) => `, the second tankful ${show(wait, "duration")} later`).join("");
  const short = why === null ? "" : ` (${whyShort(why, driverIn(whole))})`;
  const goes = tankfuls > 1 ? ` in ${tankfuls} goes` : "";
  return `${isoDate(day)}  ${titleOf(bed)}: ${show(volume, "volume")}${goes} ${how}, ${show(time, "duration")}${after}${short}`;
}

/** The answer as it is read. */
export function fromTodayText(whole: Whole, { lasting, lines }: FromTodayAnswer): string {
  const said = [lastsSaid(lasting), ...restsOn(lasting, titlesOf(whole))];
  const days =
    lines.length > 0 ? lines.map((line) => lineText(whole, line)) : ["Nothing to water in the coming week."];
  return `${[...said, "", ...days].join("\n")}\n`;
}
