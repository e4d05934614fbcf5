// First frosts: the day before which it freezes in no more than one winter in ten, against counting winter by winter.

import { describe, expect, test } from "vitest";
import { firstFrosts } from "../../src/season/first-frost.ts";
import { calendarDate, dayNumber, parseMonthDay } from "../../src/units/calendar.ts";
import { recordOf, seattle } from "./made.ts";

const WARM = 285;
const COLD = 270;
const NORTH = 0.8;

/** A record of whole years from 2001 on that freezes on these days only. */
function freezing(years: number, days: readonly number[]) {
  const firstDay = dayNumber(2001, 1, 1);
  const length = dayNumber(2001 + years, 1, 1) - firstDay;
  const lowest = new Float64Array(length).fill(WARM);
  for (const day of days) lowest[day - firstDay] = COLD;
  return recordOf(new Float64Array(length), firstDay, { lowest, highest: lowest });
}

/** In the year `y` on October 1 and as many days later as its place. */
const octobers = (years: number) =>
  Array.from({ length: years }, (_, place) => dayNumber(2001 + place, 10, 1 + place));

describe("first frost", () => {
  test("of nineteen winters one may freeze sooner than the day that is told", () => {
    // Rank 2 of 20 / 10; the last winter is cut off after its frost, which is known all the same.
    const found = firstFrosts(freezing(19, octobers(19)), NORTH);
    expect(found).toEqual({ winters: 19, frozen: 19, sooner: 1, oneInTen: "10-02" });
  });

  test("of few winters it is the soonest of all", () => {
    expect(firstFrosts(freezing(4, octobers(4)), NORTH)).toEqual({
      winters: 4,
      frozen: 4,
      sooner: 0,
      oneInTen: "10-01",
    });
  });

  test("a winter without frost counts as one, and one that is cut off before its frost does not", () => {
    const record = freezing(3, [dayNumber(2001, 11, 5)]);
    expect(firstFrosts(record, NORTH)).toMatchObject({ winters: 2, frozen: 1 });
    record.lowest?.fill(Number.NaN, dayNumber(2002, 8, 1) - record.firstDay);
    expect(firstFrosts(record, NORTH)).toMatchObject({ winters: 1, frozen: 1, oneInTen: "11-05" });
  });

  test("spring frosts belong to the winter before; in the south the winter lies in the middle of the year", () => {
    const days = [dayNumber(2002, 4, 20), dayNumber(2003, 4, 20)];
    expect(firstFrosts(freezing(4, days), NORTH)?.oneInTen).toBe("04-20");
    expect(firstFrosts(freezing(4, [dayNumber(2002, 6, 3), dayNumber(2003, 6, 9)]), -NORTH)).toMatchObject({
      winters: 4,
      frozen: 2,
      oneInTen: "06-03",
    });
  });

  test("of Seattle it is the soonest frost after any July that a search day by day finds", () => {
    const record = seattle();
    const soonest = Array.from(record.lowest ?? []).flatMap((lowest, place) => {
      const { month, day } = calendarDate(record.firstDay + place);
      return lowest < 273.15 && month >= 7 ? [month * 100 + day] : [];
    });
    const found = parseMonthDay(firstFrosts(record, NORTH)?.oneInTen ?? "");
    expect((found?.month ?? 0) * 100 + (found?.day ?? 0)).toBe(Math.min(...soonest));
  });

  test("says nothing without temperatures", () => {
    expect(firstFrosts(recordOf(new Float64Array(800), dayNumber(2001, 1, 1)), NORTH)).toBeNull();
  });
});
