// `--from-today`: how long it lasts, and what to water today and in the week.

import type { DailyRecord } from "../rainfall/record.ts";
import type { Ahead, FromToday, Ranks } from "../season/odds.ts";
import { adviceOf } from "../studies/advice.ts";
import { type FromTodayAnswer, fromTodayOf } from "../studies/from-today.ts";
import type { Whole } from "../studies/work-out.ts";
import { lastsSaid, restsOn } from "../telling/from-today.ts";
import { isoDate } from "../units/calendar.ts";
import { type AdviceAnswer, type AdviceReport, adviceReport, adviceText } from "./advice-report.ts";
import { type TodayReport, todayReport, todayText, voiceOf } from "./today-lines.ts";
import { FileError } from "./usage.ts";

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
  readonly advice: AdviceReport;
};

type Answer = FromTodayAnswer & { readonly advice: AdviceAnswer };

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
export function fromTodayAnswer(whole: Whole, records: readonly DailyRecord[]): Answer {
  const answer = fromTodayOf(whole, records);
  if ("failed" in answer) throw new FileError(`How long it lasts cannot be told: ${answer.failed}`);
  return { ...answer, advice: adviceOf(whole, records) };
}

/** The answer as the command line gives it in JSON. */
export function fromTodayReport(whole: Whole, { lasting, week, advice }: Answer): FromTodayReport {
  const { tanks, beds, batteries } = lasting.assumed;
  return {
    kind: lasting.kind,
    ...lastingReport(lasting),
    season_end: lasting.kind === "out_of_season" ? null : isoDate(lasting.last),
    ...todayReport(whole, week),
    assumed: [...tanks, ...beds, ...batteries],
    said: [lastsSaid(lasting), ...restsOn(lasting, voiceOf(whole).titleOf)],
    advice: adviceReport(advice),
  };
}

/** The answer as it is read. */
export function fromTodayText(whole: Whole, { lasting, week, advice }: Answer): string {
  const said = [lastsSaid(lasting), ...restsOn(lasting, voiceOf(whole).titleOf)];
  return `${[...said, "", ...adviceText(whole, advice), ...todayText(whole, week)].join("\n")}\n`;
}
