// Odds held against what came: of each year of long records the days told from the years before it, by the probability transform
// with ties split at random. LONG=1 asks 1,000 truths of 20 records, npm test fewer with wider bounds. The records are written here
// as files, by a chain of wet and dry days that is no part of the product, and brought in as any file is.

import { beforeAll, describe, expect, test } from "vitest";
import { readRainFile } from "../../src/rainfall/import-csv.ts";
import type { DailyRecord } from "../../src/rainfall/record.ts";
import { seededRandom } from "../../src/rainfall/seeded-random.ts";
import { type AheadGiven, fromToday, type Members } from "../../src/season/from-today.ts";
import { type Ahead, dayAtRank } from "../../src/season/odds.ts";
import { calendarDate, dayNumber, isoDate } from "../../src/units/calendar.ts";
import { DAY, INCH } from "../../src/units/constants.ts";
import { bed, carry, crop, inputOf, MM, roof, steadyEto, tank } from "./made.ts";

const TWENTY = 20;
const FIRST = 1900;
const LONG = process.env.LONG !== undefined;
const [RECORDS, TRUTHS] = LONG ? [20, 50] : [4, 20];
/** 80 truths tell a share of 80 % to 4.5 % only, one of 10 % to 3.4 %: twice that is left on either side of the bounds of 1,000. */
const SPARE = LONG ? 0 : 0.09;

/** A file of daily rain: years of their own moods, wet and dry spells, winters wetter than summers, storms among showers. */
function fileOf(seed: number): Blob {
  const next = seededRandom(seed);
  const start = dayNumber(FIRST, 1, 1);
  const days = dayNumber(FIRST + TWENTY + TRUTHS, 1, 1) - start;
  const rows: string[] = [];
  let [wet, year, mood] = [false, 0, 1];
  for (let day = 0; day < days; day++) {
    const date = calendarDate(start + day);
    if (date.year !== year) [year, mood] = [date.year, 0.5 + next()];
    const season = 1 + 0.4 * Math.cos((2 * Math.PI * (date.month - 1)) / 12);
    wet = next() < (wet ? 0.58 : 0.14 * mood * season);
    const depth = wet ? -Math.log(1 - next()) * (next() < 0.15 ? 16 : 4.5) : 0;
    rows.push(`${isoDate(start + day)},${depth.toFixed(1)}`);
  }
  return new Blob([`date,rain (mm)\n${rows.join("\n")}\n`]);
}

async function broughtIn(seed: number): Promise<DailyRecord> {
  const read = await readRainFile(fileOf(seed), { title: `record ${seed}` });
  if (read.state !== "ready" || read.record.madeUp)
    throw new Error(`not brought in: ${JSON.stringify(read)}`);
  return read.record;
}

/** Years of a record, its own key for each cut. */
function cut(record: DailyRecord, from: number, until: number): DailyRecord {
  const [first, end] = [dayNumber(from, 1, 1), dayNumber(until, 1, 1)];
  const rain = record.rain.subarray(first - record.firstDay, end - record.firstDay);
  return { ...record, key: `${record.key} ${from} ${until}`, firstDay: first, rain };
}

const MONTHS = [1, 1.4, 2.2, 3.1, 4, 4.8, 5.2, 4.7, 3.6, 2.3, 1.3, 0.9];
const HEIGHT = 1;
const plan = inputOf({
  start: "05-01",
  end: "09-15",
  eto: { ...steadyEto(0), months: MONTHS.map((depth) => (depth * MM) / DAY) },
  tanks: [tank(4, { vessel: { form: "upright", height: HEIGHT, volume: 4 } })],
  roofs: [roof({ footprint: 20 })],
  carries: [carry()],
  beds: [
    bed({
      area: 12,
      covered: true,
      crops: [crop({ planted: "05-01", stages: [20, 30, 60, 30], rootStart: 0.3 })],
    }),
  ],
});

function runsOf(record: DailyRecord, given: AheadGiven, members?: Members): readonly Ahead[] {
  const answer = fromToday(plan, record, given, members);
  if ("failed" in answer || answer.kind !== "odds") throw new Error("no odds");
  return answer.ahead;
}

/** A normal error by two chances (Box and Muller). */
const normal = (next: () => number): number =>
  Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());

type Way = { readonly years: number; readonly dipOff: number };

/** One truth: the share at which it lies among the members, and whether it came before the one in ten day. */
function truthOf(record: DailyRecord, truth: number, { years, dipOff }: Way, next: () => number) {
  const year = FIRST + TWENTY + truth;
  // The season that comes is told as one of a year more, so that it is no member of its own odds.
  const today = dayNumber(year + 1, 6, 1) + Math.floor(next() * 50);
  const stands = HEIGHT * (0.2 + 0.7 * next());
  const dipped = Math.min(HEIGHT, Math.max(0, stands + dipOff * normal(next)));
  const given = { today, drying: "usual" as const, charges: {}, lastSoaked: { bed: today - 2 } };
  const before = cut(record, year - years, year);
  const days = runsOf(before, { ...given, levels: { tank: dipped }, dipDoubt: dipOff }).map(
    ({ short }) => short,
  );
  // Of few years every one counts shifted; what came is the one year as it was.
  const own = runsOf(
    cut(record, year - TWENTY, year + 1),
    { ...given, levels: { tank: stands } },
    {
      from: TWENTY,
      every: TWENTY + 1,
    },
  );
  const came = own[0]?.short ?? Infinity;
  const sooner = days.filter((day) => (day ?? Infinity) < came).length;
  const ties = days.filter((day) => (day ?? Infinity) === came).length;
  return {
    rank: (sooner + (ties + 1) * next()) / (days.length + 1),
    isShort: came < Infinity,
    isEarly: came < (dayAtRank(days, 0.1) ?? Infinity),
  };
}

/** Over all records: the share of truths between 0.1 and 0.9, and of those before the one in ten day. */
function sharesOf(records: readonly DailyRecord[], way: Way) {
  const next = seededRandom(99);
  const truths = records.flatMap((record) =>
    Array.from({ length: TRUTHS }, (_, truth) => truthOf(record, truth, way, next)),
  );
  const share = (is: (one: (typeof truths)[number]) => boolean) => truths.filter(is).length / truths.length;
  const [within, early] = [share(({ rank }) => rank >= 0.1 && rank <= 0.9), share(({ isEarly }) => isEarly)];
  const short = share(({ isShort }) => isShort);
  const percent = (value: number) => `${(100 * value).toFixed(1)} %`;
  console.info(
    `${way.years} years, dips off by ${(way.dipOff / INCH).toFixed(1)} in: of ${truths.length} truths ${percent(within)} within, ${percent(early)} sooner than one in ten, ${percent(short)} short at all`,
  );
  return { within, early };
}

describe("of truths of long records brought in as files, by the probability transform", () => {
  let records: readonly DailyRecord[] = [];
  beforeAll(async () => {
    records = await Promise.all(Array.from({ length: RECORDS }, (_, place) => broughtIn(1000 + place)));
  }, 300_000);

  test.each([
    { dips: "with exact dips", dipOff: 0 },
    { dips: "with dips off by an inch, told", dipOff: INCH },
  ])(
    "75 to 88 in a hundred lie between 0.1 and 0.9 of twenty years, and at most 12 come before the one in ten day, $dips",
    ({ dipOff }) => {
      const { within, early } = sharesOf(records, { years: TWENTY, dipOff });
      expect(within).toBeGreaterThanOrEqual(0.75 - SPARE);
      expect(within).toBeLessThanOrEqual(0.88 + SPARE);
      expect(early).toBeLessThanOrEqual(0.12 + SPARE);
    },
    900_000,
  );

  test("70 to 93 in a hundred lie between them of four years, each also shifted", () => {
    const { within } = sharesOf(records, { years: 4, dipOff: 0 });
    expect(within).toBeGreaterThanOrEqual(0.7 - SPARE);
    expect(within).toBeLessThanOrEqual(0.93 + SPARE);
  }, 900_000);
});
