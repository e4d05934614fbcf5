// The day that the drawing shows: today, or a day of the record that is chosen, or that a year plays through.

import { type Accessor, createMemo, createSignal, onCleanup } from "solid-js";
import { wordIn } from "../../graph/readers.ts";
import { yearsOf, yearWindow } from "../../scene/stored-water.ts";
import { calendarDate, dayInYear, dayNumber } from "../../units/calendar.ts";
import type { Sheet } from "../sheet.ts";

/** A year plays in about twenty seconds; where less motion is wished for, in weekly steps. */
const TICK = { milliseconds: 55, days: 1 };
const CALM_TICK = { milliseconds: 700, days: 7 };

export type DayPlayer = {
  /** Day shown [days since 1970-01-01]; null: as it stands today. */
  readonly day: Accessor<number | null>;
  readonly years: Accessor<readonly number[]>;
  readonly year: Accessor<number>;
  readonly ends: Accessor<{ readonly from: number; readonly to: number }>;
  /** Where the slider stands. */
  readonly place: Accessor<number>;
  readonly playing: Accessor<boolean>;
  readonly choose: (day: number | null) => void;
  readonly chooseYear: (year: number) => void;
  readonly toggle: () => void;
};

function wordOf(sheet: Sheet, id: string): string | null {
  const result = sheet.result(id);
  return wordIn(result) || null;
}

/** The middle of the season in a year. */
function midSeason(sheet: Sheet, year: number): number {
  const start = dayInYear(wordOf(sheet, "site.season_start") ?? "05-01", year) ?? dayNumber(year, 5, 1);
  const end = dayInYear(wordOf(sheet, "site.season_end") ?? "09-30", year) ?? dayNumber(year, 9, 30);
  return end > start ? Math.round((start + end) / 2) : start;
}

/** The day to begin with, the years, and the playing. */
export function createDayPlayer(sheet: Sheet, dipped: Accessor<boolean>): DayPlayer {
  const [chosen, setChosen] = createSignal<number | null>(null);
  const [playing, setPlaying] = createSignal(false);
  let timer: ReturnType<typeof setInterval> | undefined;

  const years = createMemo<readonly number[]>(() => {
    const series = sheet.stored();
    return series ? yearsOf(series) : [];
  });
  const usual = createMemo<number | null>(() => {
    const series = sheet.stored();
    const year = years()[years().length - 1];
    if (!series || year === undefined) return null;
    const last = series.firstDay + series.stored.length - 1;
    return Math.max(series.firstDay, Math.min(last, midSeason(sheet, year)));
  });
  const within = (day: number): number => {
    const series = sheet.stored();
    if (!series) return day;
    return Math.max(series.firstDay, Math.min(series.firstDay + series.stored.length - 1, day));
  };
  const place = createMemo(() => within(chosen() ?? usual() ?? 0));
  const year = createMemo(() => calendarDate(place()).year);
  const ends = createMemo(() => {
    const series = sheet.stored();
    return series ? yearWindow(series, year()) : { from: 0, to: 0 };
  });
  const stop = (): void => {
    clearInterval(timer);
    setPlaying(false);
  };
  const play = (): void => {
    const tick = matchMedia("(prefers-reduced-motion: reduce)").matches ? CALM_TICK : TICK;
    if (place() >= ends().to) setChosen(ends().from);
    setPlaying(true);
    timer = setInterval(() => {
      const next = Math.min(ends().to, place() + tick.days);
      setChosen(next);
      if (next >= ends().to) stop();
    }, tick.milliseconds);
  };
  onCleanup(stop);
  return {
    day: () => (chosen() === null && (dipped() || usual() === null) ? null : place()),
    years,
    year,
    ends,
    place,
    playing,
    choose: (day) => {
      stop();
      setChosen(day);
    },
    chooseYear: (wished) => {
      const { month, day } = calendarDate(place());
      stop();
      setChosen(within(dayNumber(wished, month, day)));
    },
    toggle: () => (playing() ? stop() : play()),
  };
}
