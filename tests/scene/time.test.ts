// The record in two charts: what is counted, where the year begins, and what is said of it.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { drawPlot } from "../../src/scene/plot.ts";
import {
  dayIn,
  dayOf,
  lowestIn,
  midSeason,
  type StoredSeries,
  shortRuns,
  yearAround,
} from "../../src/scene/stored-water.ts";
import {
  seasonsPlot,
  seasonsTable,
  seasonWords,
  shortSaid,
  yearPlotOf,
  yearsWritten,
} from "../../src/scene/time-plots.ts";
import { dayNumber, isoDate } from "../../src/units/calendar.ts";

const METRIC = { units: "metric", locale: "en-GB", currency: "EUR" } as const;
const plain = (text: string) => text.replaceAll("\u00a0", " ");
const FIRST = dayNumber(2001, 1, 1);

function seriesOf(years: number, short: readonly number[] = [], firstDay = FIRST): StoredSeries {
  const length = Math.round(years * 365.25);
  const stored = Float64Array.from({ length }, (_, day) => 1 + Math.sin(day / 58));
  const flags = new Uint8Array(length);
  for (const day of short) flags[day - firstDay] = 1;
  return { stored, short: flags, firstDay };
}

const season = (year: number, daysShort: number) => ({ year, daysShort, shareMet: 1 });

describe("the year around a season", () => {
  test("is the calendar year; where the season goes over the new year it begins in July", () => {
    const series = seriesOf(4);
    const north = yearAround(series, 2002, "05-01", "09-30");
    expect([isoDate(north.from), isoDate(north.to)]).toEqual(["2002-01-01", "2002-12-31"]);
    const south = yearAround(series, 2002, "10-01", "04-30");
    expect([isoDate(south.from), isoDate(south.to)]).toEqual(["2002-07-01", "2003-06-30"]);
  });

  test("goes no further than the record", () => {
    const series = seriesOf(1, [], dayNumber(2001, 3, 1));
    const { from, to } = yearAround(series, 2001, "05-01", "09-30");
    expect([isoDate(from), isoDate(to)]).toEqual(["2001-03-01", "2001-12-31"]);
  });

  test("its middle lies within the season, on either side of the equator", () => {
    const series = seriesOf(4);
    expect(isoDate(midSeason(series, 2002, "05-01", "09-30"))).toBe("2002-07-16");
    expect(isoDate(midSeason(series, 2002, "10-01", "03-31"))).toBe("2002-12-31");
  });

  test("any day of it leads to a day of the year and back", () => {
    const series = seriesOf(6);
    fc.assert(
      fc.property(
        fc.constantFrom(["05-01", "09-30"] as const, ["10-01", "04-30"] as const),
        fc.integer({ min: 0, max: 364 }),
        ([start, end], after) => {
          const year = yearAround(series, 2003, start, end);
          const day = Math.min(year.to, year.from + after);
          // A year with a February 29 and one without are a day apart after it.
          expect(Math.abs(dayIn(year, dayOf(day)) - day)).toBeLessThanOrEqual(1);
        },
      ),
    );
  });
});

describe("short days", () => {
  const days = [100, 101, 102, 110, 300].map((day) => FIRST + day);
  const series = seriesOf(2, days);

  test("in runs are as many as in the record, whatever falls short", () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.integer({ min: 0, max: 729 })), (short) => {
        const any = seriesOf(
          2,
          short.map((day) => FIRST + day),
        );
        const runs = shortRuns(any, { from: FIRST, to: FIRST + 729 });
        expect(runs.reduce((sum, { from, to }) => sum + to - from + 1, 0)).toBe(short.length);
        for (const [index, run] of runs.slice(1).entries())
          expect(run.from).toBeGreaterThan((runs[index]?.to ?? 0) + 1);
      }),
    );
  });

  test("stand red along the foot of their year, with how many there are and were", () => {
    const year = { from: FIRST, to: FIRST + 364 };
    const plot = yearPlotOf({ series: { now: series, held: null }, year }, 800, METRIC);
    const bars = plot.layers.filter(({ as, tone }) => as === "bars" && tone === "trouble");
    expect(bars).toHaveLength(1);
    // How many is said over the chart: no line runs through a word.
    expect(plot.marks).toEqual([]);
    expect(plain(shortSaid({ now: 5, held: 34 }))).toBe("short 5 days, were 34");
    expect(plain(shortSaid({ now: 1, held: null }))).toBe("short 1 day");
    expect([shortSaid({ now: 0, held: 34 }), shortSaid({ now: null, held: 3 })]).toEqual(["", ""]);
  });

  test("what was held is dashed beside what is", () => {
    const year = { from: FIRST, to: FIRST + 364 };
    const shown = { series: { now: series, held: seriesOf(2) }, year, days: { now: 5, held: 0 } };
    const looks = drawPlot(yearPlotOf(shown, 800, METRIC), { width: 800, height: 80 }).shapes.map(
      ({ look }) => look,
    );
    expect(looks.filter((look) => look.includes("held"))).toHaveLength(2);
  });
});

describe("the strip of seasons", () => {
  const seasons = [season(2001, 0), season(2002, 8), season(2003, 34)];

  test("a bar is as high as its short days, a season that met all has none", () => {
    const drawn = drawPlot(seasonsPlot({ now: seasons, held: null }), { width: 300, height: 34 });
    const heights = [...(drawn.shapes[0]?.d ?? "").matchAll(/v(\d+(?:\.\d+)?)/g)].map(([, px]) => Number(px));
    expect(heights).toEqual([8, 34]);
  });

  test("one short day of a good record does not fill the strip", () => {
    const drawn = drawPlot(seasonsPlot({ now: [season(2001, 1)], held: null }), { width: 300, height: 40 });
    expect(drawn.shapes[0]?.d).toContain("v10h");
  });

  test("what it was is said where it was another", () => {
    expect(plain(seasonWords(season(2002, 8), season(2002, 34)))).toBe("2002: short on 8 days, were 34");
    expect(plain(seasonWords(season(2002, 1), null))).toBe("2002: short on 1 day");
    expect(plain(seasonWords(season(2002, 0), season(2002, 0)))).toBe("2002: never short");
  });

  test("years are written so far apart that none touch, the chosen one always", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        fc.nat(59),
        fc.integer({ min: 320, max: 1400 }),
        (count, at, width) => {
          const list = Array.from({ length: count }, (_, index) => season(2001 + index, 0));
          const chosen = at % count;
          const written = yearsWritten(list, 2001 + chosen, width);
          expect(written[chosen]).toBe(true);
          const places = written.flatMap((is, place) => (is ? [place] : []));
          for (const [index, place] of places.slice(1).entries()) {
            const before = places[index] ?? 0;
            // Four figures of the chosen one, two of the others, 12 px each.
            const apart = before === chosen || place === chosen ? 30 : 20;
            expect(((place - before) * width) / count).toBeGreaterThanOrEqual(apart);
          }
        },
      ),
    );
  });

  test("its table has a row a season, with what it was and the lowest evening", () => {
    const series = seriesOf(3);
    const around = (year: number) => yearAround(series, year, "05-01", "09-30");
    const held = [season(2001, 2), season(2002, 8)];
    const { head, rows } = seasonsTable({ now: seasons, held }, series, around, METRIC);
    expect(head).toEqual(["Season", "Short days", "As held", "Lowest evening", "On"]);
    expect(rows.map((row) => row.slice(0, 3))).toEqual([
      ["2001", "0", "2"],
      ["2002", "8", "8"],
      ["2003", "34", "–"],
    ]);
    const { volume, day } = lowestIn(series, around(2001));
    expect(series.stored[day - FIRST]).toBe(volume);
    expect(Math.min(...series.stored.slice(0, 365))).toBe(volume);
  });
});
