// `--from-today` and `--forecast`: how long it lasts, and what to water today and in the week.

import { valueIn } from "../graph/readers.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import type { Ahead, FromToday, Ranks } from "../season/from-today.ts";
import { type Expected, FORECAST_DAYS, type Forecast } from "../season/years-ahead.ts";
import { type FromTodayAnswer, fromTodayOf } from "../studies/from-today.ts";
import type { Whole } from "../studies/work-out.ts";
import { lastsSaid, restsOn } from "../telling/from-today.ts";
import { isoDate, parseIsoDate } from "../units/calendar.ts";
import { readQuantity } from "../units/read.ts";
import { type TodayReport, todayReport, todayText, voiceOf } from "./today-lines.ts";
import { FileError, UsageError } from "./usage.ts";

type RankedDays = {
  readonly one_in_ten: string | null;
  readonly half: string | null;
  readonly nine_in_ten: string | null;
  readonly members: number;
};

type TwoDays = { readonly usual: string | null; readonly dry: string | null };

export type FromTodayReport = TodayReport & {
  readonly kind: FromToday["kind"];
  readonly short_from: RankedDays | TwoDays | null;
  readonly empty_from: RankedDays | TwoDays | null;
  readonly reaches_end: number | null;
  readonly season_end: string | null;
  /** Parts of which nothing was noted lately. */
  readonly assumed: readonly string[];
  readonly said: readonly string[];
};

/** One day of a forecast as it is typed: "5 mm 40 % 31 degC", in any order. */
function expectedOf(text: string): Expected {
  const parts = [...text.matchAll(/([-+]?\d*\.?\d+)\s*([^\s\d]+)/g)];
  const rest = text.replace(/([-+]?\d*\.?\d+)\s*([^\s\d]+)/g, "").trim();
  if (parts.length === 0 || rest !== "")
    throw new UsageError(`--forecast: "${text}" is no rain, chance or heat; like "5 mm 40 % 31 degC".`);
  let expected: Expected = { rain: null, chance: null, highest: null };
  for (const [word, number, unit] of parts) {
    if (unit === "%") expected = { ...expected, chance: chanceOf(Number(number)) };
    else expected = { ...expected, ...amountOf(word.replace(/(\d)([a-zA-Z])/, "$1 $2")) };
  }
  return expected;
}

function chanceOf(percent: number): number {
  if (!(percent >= 0 && percent <= 100)) throw new UsageError(`--forecast: ${percent} % is no chance.`);
  return percent / 100;
}

function amountOf(text: string): Partial<Expected> {
  const rain = readQuantity(text, { measure: "rain", locale: "en-US" });
  if (rain.ok && rain.si >= 0) return { rain: rain.si };
  const heat = readQuantity(text, { measure: "temperature", locale: "en-US" });
  if (heat.ok) return { highest: heat.si };
  throw new UsageError(`--forecast: "${text}" is neither rain, such as 5 mm, nor heat, such as 31 degC.`);
}

/** A forecast as it is typed: "2026-07-01=5 mm 40 % 31 degC,2026-07-02=0 mm". */
function readForecast(text: string | null, today: number): Forecast {
  const days = new Map<number, Expected>();
  for (const item of text?.split(",").map((part) => part.trim()) ?? []) {
    if (item === "") continue;
    const at = item.indexOf("=");
    const day = at < 0 ? null : parseIsoDate(item.slice(0, at).trim());
    if (day === null) throw new UsageError(`--forecast wants YYYY-MM-DD=..., not "${item}".`);
    if (day < today || day >= today + FORECAST_DAYS)
      throw new UsageError(
        `--forecast speaks of ${isoDate(today)} to ${isoDate(today + FORECAST_DAYS - 1)}, not of ${isoDate(day)}.`,
      );
    days.set(day, expectedOf(item.slice(at + 1).trim()));
  }
  return days;
}

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
export function fromTodayAnswer(
  whole: Whole,
  records: readonly DailyRecord[],
  forecast: string | null,
): FromTodayAnswer {
  const given = valueIn(whole.results.get("season.week_given")) as { readonly today: number } | null;
  const answer = fromTodayOf(whole, records, readForecast(forecast, given?.today ?? 0));
  if ("failed" in answer) throw new FileError(`How long it lasts cannot be told: ${answer.failed}`);
  return answer;
}

/** The answer as the command line gives it in JSON. */
export function fromTodayReport(whole: Whole, { lasting, week }: FromTodayAnswer): FromTodayReport {
  const { tanks, beds, batteries } = lasting.assumed;
  return {
    kind: lasting.kind,
    ...lastingReport(lasting),
    season_end: lasting.kind === "out_of_season" ? null : isoDate(lasting.last),
    ...todayReport(whole, week),
    assumed: [...tanks, ...beds, ...batteries],
    said: [lastsSaid(lasting), ...restsOn(lasting, voiceOf(whole).titleOf)],
  };
}

/** The answer as it is read. */
export function fromTodayText(whole: Whole, { lasting, week }: FromTodayAnswer): string {
  const said = [lastsSaid(lasting), ...restsOn(lasting, voiceOf(whole).titleOf)];
  return `${[...said, "", ...todayText(whole, week)].join("\n")}\n`;
}
