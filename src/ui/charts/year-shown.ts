// The season and the day that the drawing and the charts of the record show.

import { type Accessor, createMemo } from "solid-js";
import { isReady, shownIn, wordIn } from "../../graph/readers.ts";
import {
  dayIn,
  midSeason,
  type Season,
  type StoredSeries,
  seasonsIn,
  storedIn,
  type Year,
  yearAround,
  yearsOf,
} from "../../scene/stored-water.ts";
import type { Sheet } from "../sheet.ts";

export type YearShown = {
  readonly seasons: Accessor<readonly Season[]>;
  /** What was held, or null. */
  readonly heldSeasons: Accessor<readonly Season[] | null>;
  readonly heldSeries: Accessor<StoredSeries | null>;
  /** The chosen season, else the worst, else the last. */
  readonly year: Accessor<number | null>;
  readonly around: (year: number) => Year | null;
  readonly span: Accessor<Year | null>;
  /** Day of the record [days since 1970-01-01]; null where there is none. */
  readonly day: Accessor<number | null>;
  /** Some tank was dipped today, and nobody has chosen a day: the drawing shows today. */
  readonly asDipped: Accessor<boolean>;
  readonly dipped: Accessor<boolean>;
};

/** First and last day of the season, `MM-DD`. */
function datesOf(sheet: Sheet): readonly [start: string, end: string] {
  const of = (name: string): string => wordIn(sheet.result(`site.${name}`));
  return [of("season_start") || "05-01", of("season_end") || "09-30"];
}

/** While the next run is on the way the last one stays. */
function numberShown(sheet: Sheet, id: string): number | null {
  const value = shownIn(sheet.result(id));
  return typeof value === "number" ? value : null;
}

export function createYearShown(sheet: Sheet): YearShown {
  const { looking } = sheet;
  const seasons = createMemo(() => seasonsIn(sheet.result));
  const heldSeasons = createMemo(() => (sheet.held() ? seasonsIn(sheet.heldResult) : null));
  const numbered = (id: string) => numberShown(sheet, id);
  const worst = createMemo(() => numbered("season.worst_season"));
  const driest = () => numbered("weather.driest_year");
  const isCalm = () => numbered("season.worst_season_days_short") === 0;
  const year = createMemo<number | null>((before) => {
    const series = sheet.stored();
    const years = series ? yearsOf(series) : [];
    const wished = looking.year();
    if (wished !== null && years.includes(wished)) return wished;
    // The worst one may change with every step of a number that is turned.
    if (sheet.moving() && before != null && years.includes(before)) return before;
    // Where none is short any season is as bad as any other: the one that just was mended stays in sight, or the driest is shown.
    const calm = isCalm()
      ? [before, driest()].find((one) => typeof one === "number" && years.includes(one))
      : null;
    return calm ?? worst() ?? seasons().at(-1)?.year ?? years.at(-1) ?? null;
  });
  const around = (one: number): Year | null => {
    const series = sheet.stored();
    const [start, end] = datesOf(sheet);
    return series ? yearAround(series, one, start, end) : null;
  };
  const middle = (one: number): number | null => {
    const series = sheet.stored();
    const [start, end] = datesOf(sheet);
    return series ? midSeason(series, one, start, end) : null;
  };
  const span = createMemo<Year | null>(
    () => {
      const one = year();
      return one === null ? null : around(one);
    },
    null,
    { equals: (before, now) => before?.from === now?.from && before?.to === now?.to },
  );
  const dipped = createMemo(() =>
    sheet.worksheet().cards.some(({ id }) => isReady(sheet.result(`${id}.water_today`))),
  );
  return {
    seasons,
    heldSeasons,
    heldSeries: createMemo(() => (sheet.held() ? storedIn(sheet.heldResult) : null)),
    year,
    around,
    span,
    day: createMemo(() => {
      const [now, one] = [span(), year()];
      if (!now || one === null) return null;
      return looking.dayChosen() ? dayIn(now, looking.day()) : middle(one);
    }),
    dipped,
    asDipped: createMemo(() => dipped() && !looking.dayChosen() && looking.year() === null),
  };
}
