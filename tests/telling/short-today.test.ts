// Where a bed is short already: which one, since when, how long it lasts once it has had its water, and a line to look at.

import { describe, expect, test } from "vitest";
import type { Happened } from "../../src/happened/happened.ts";
import { fanPlot, lastsTable } from "../../src/scene/lasts-plot.ts";
import { fromToday } from "../../src/season/from-today.ts";
import { type FromToday, oddsOf } from "../../src/season/odds.ts";
import { emptySaid, lastsInShort, lastsSaid } from "../../src/telling/from-today.ts";
import { drawnOf } from "../../src/ui/field/lasts-drawn.ts";
import { calendarDate, dayNumber } from "../../src/units/calendar.ts";
import { bed, carry, crop, inputOf, MM, recordOf, roof, tank } from "../season/made.ts";

const FIRST = dayNumber(2001, 1, 1);
const TODAY = dayNumber(2021, 7, 1);
const TITLES: Readonly<Record<string, string>> = { tunnel: "Tunnel", long: "Long bed" };
const titleOf = (id: string) => TITLES[id] ?? id;

/** Twenty years that are dry from June on but for one shower, each year another day. */
function dryRecord(madeUp: boolean) {
  const rain = new Float64Array(dayNumber(2021, 1, 1) - FIRST);
  for (let day = 0; day < rain.length; day++) {
    const { year, month, day: of } = calendarDate(FIRST + day);
    if (month < 6 || (month === 8 && of === 1 + (year - 2001))) rain[day] = 5 * MM;
  }
  return recordOf(rain, FIRST, { madeUp });
}

const inputWith = (grown: ReturnType<typeof crop>) =>
  inputOf({
    start: "05-01",
    end: "09-15",
    roofs: [roof({ footprint: 30 })],
    tanks: [tank(4, { startShare: 1 })],
    carries: [carry()],
    beds: [
      bed({ id: "tunnel", area: 6, covered: true, crops: [grown] }),
      bed({ id: "long", area: 6, covered: true, priority: 2, crops: [grown] }),
    ],
  });

/** The long bed soaked so many days ago, and held back today: it is watered tomorrow. */
function asked(
  days: number,
  { madeUp = false, level = 1, grown = crop({ crop: "tomato" }) } = {},
): Exclude<FromToday, { kind: "out_of_season" }> {
  const said = (what: Happened["what"], where: string, date: number): Happened => ({
    date,
    minute: null,
    side: null,
    what,
    where,
    amount: what === "dipped" ? level : null,
    by: null,
  });
  const happened = [
    said("soaked", "long", TODAY - days),
    said("soaked", "tunnel", TODAY - 1),
    said("dipped", "tank", TODAY),
  ];
  const given = {
    today: TODAY,
    drying: "usual" as const,
    levels: {},
    charges: {},
    lastSoaked: {},
    happened,
    heldBack: ["long"],
  };
  const answer = fromToday(inputWith(grown), dryRecord(madeUp), given);
  if ("failed" in answer || answer.kind === "out_of_season") throw new Error(JSON.stringify(answer));
  return answer;
}

const shortRuns = (from: ReturnType<typeof asked>) =>
  (from.kind === "odds" ? from.ahead : [from.usual, from.dry]).filter(({ short }) => short === from.today);

describe.each([false, true])("a bed that is short already, weather made up %s", (madeUp) => {
  const from = asked(40, { madeUp });

  test("is named with the day since which it is, and none that is not", () => {
    expect(shortRuns(from).length).toBeGreaterThan(0);
    const since = from.since["long"] as number;
    expect(Object.keys(from.since)).toEqual(["long"]);
    expect([since > TODAY - 40, since < TODAY]).toEqual([true, true]);
    const { month, day } = calendarDate(since);
    expect([5, 6]).toContain(month);
    const said = lastsSaid(from, titleOf);
    expect(said).toMatch(
      new RegExp(`^Long bed \\(since ${month === 5 ? "May" : "Jun"} ${day}\\) is short today`),
    );
    expect(said).not.toContain("Tunnel");
    expect(lastsInShort(from, titleOf).said).toMatch(/^Long bed/);
  });

  test("soaked lately it is not short, and so since no day", () => {
    expect(asked(3, { madeUp }).since).toEqual({});
  });

  test("watered it lasts on, to the day that the runs have, and there is a line to look at", () => {
    for (const run of shortRuns(from)) {
      expect(run.beds["long"]).toBe(TODAY);
      expect(run.again === null || run.again > TODAY).toBe(true);
    }
    expect(lastsSaid(from, titleOf)).toMatch(/ Once it has its water, no bed is short again (until|before) /);
    const drawn = drawnOf(from, {});
    if (!drawn) throw new Error("nothing is drawn");
    const plot = fanPlot(drawn, 360, { units: "metric", locale: "en-US", currency: "USD" });
    const lines = plot.layers.flatMap((layer) => (layer.as === "line" ? [layer.points.length] : []));
    expect(Math.min(...lines)).toBeGreaterThan(2);
  });
});

test("without water nothing is promised, and the line goes on until nothing is left", () => {
  const from = asked(40, { level: 0 });
  expect(lastsSaid(from, titleOf)).toMatch(
    /^Long bed \(since \w+ \d+\) is short today, whatever the weather\. No day of the coming week is without a short bed in a middling year\.$/,
  );
  expect(shortRuns(from).every(({ again }) => again === TODAY)).toBe(true);
  expect(drawnOf(from, {})?.lines.length).toBeGreaterThan(0);
});

test("each bed's first short day is no sooner than the first of all, and one of them is it", () => {
  for (const days of [2, 12, 40]) {
    const from = asked(days);
    for (const { short, beds } of from.kind === "odds" ? from.ahead : []) {
      const first = Math.min(...Object.values(beds).map((day) => day ?? Infinity));
      expect(first).toBe(short ?? Infinity);
    }
  }
});

test("beds that nothing waters until their crops end stay short, and nothing is promised of the days after that", () => {
  // The crops end on Jul 20, weeks before the season does: from then on no bed is short any more.
  const from = asked(40, { level: 0, grown: crop({ crop: "tomato", stages: [20, 20, 20, 20] }) });
  expect(shortRuns(from).length).toBeGreaterThan(0);
  expect(new Set(shortRuns(from).map(({ again }) => again))).toEqual(new Set([TODAY]));
  expect(lastsSaid(from, titleOf)).toContain("No day of the coming week is without a short bed");
});

test("what is told of a run without rain is never later than what is told of a usual one", () => {
  const run = (again: number | null) => ({
    year: null,
    shift: 0,
    short: TODAY,
    beds: { long: TODAY },
    again,
    empty: null,
    water: new Float64Array(30),
  });
  const { assumed, now, last, heldBack } = asked(40, { madeUp: true });
  const told = (usual: number | null, dry: number | null) =>
    lastsSaid(
      {
        kind: "usual_and_dry",
        because: "made_up",
        today: TODAY,
        last,
        now,
        assumed,
        heldBack,
        since: {},
        usual: run(usual),
        dry: run(dry),
      },
      titleOf,
    );
  expect(told(TODAY + 30, TODAY + 10)).toMatch(/until Jul 31 in usual weather, until Jul 11 without rain\.$/);
  expect(told(TODAY + 30, null)).toMatch(/until Jul 31, in usual weather as without rain\.$/);
  expect(told(TODAY + 30, TODAY + 30)).toMatch(/until Jul 31, in usual weather as without rain\.$/);
  expect(told(null, TODAY)).toMatch(
    /before the season's end in usual weather; without rain some stay short\.$/,
  );
  expect(told(TODAY, null)).toMatch(/No day of the coming week is without a short bed in usual weather\.$/);
  expect(told(TODAY, TODAY)).toMatch(/No day of the coming week is without a short bed, rain or none\.$/);
});

test("the days that the sentence names stand in the table, run by run", () => {
  const from = asked(40);
  const drawn = drawnOf(from, {});
  if (!drawn) throw new Error("nothing is drawn");
  const { head, rows } = lastsTable(drawn, { units: "metric", locale: "en-US", currency: "USD" });
  const at = head.indexOf("Once watered, short again");
  expect(at).toBe(2);
  const named = /(until|before) ([A-Z]\w+ \d+|the season's end) in a middling year/.exec(
    lastsSaid(from, titleOf),
  );
  const wanted = named?.[2] === "the season's end" ? "not before the end" : named?.[2];
  expect(rows.map((row) => row[at])).toContain(wanted);
});

describe("beds that are short today in most of the runs and not in all", () => {
  const runOf = (short: number | null) => ({
    year: 2001,
    shift: 0,
    short,
    beds: { long: short },
    again: short === null ? null : TODAY + 14,
    empty: TODAY + 20,
    water: new Float64Array(30),
  });
  const of = (shorts: readonly (number | null)[], years: number): string => {
    const { assumed, now, last, heldBack } = asked(40);
    const since = { long: TODAY - 5 };
    const odds = oddsOf(shorts.map(runOf), years, 0);
    return lastsSaid({ assumed, now, last, heldBack, since, today: TODAY, ...odds }, titleOf);
  };
  const now = (count: number) => new Array<number>(count).fill(TODAY);

  test("are said to be so by the weather of so many past years, or runs where few years are known", () => {
    expect(of([...now(24), null], 25)).toContain(
      "Long bed (since Jun 26) is short today in the weather of 24 of 25 past years; in one of the 25 no bed is short before the end.",
    );
    expect(of([...now(18), TODAY + 3, null], 4)).toContain(
      "is short today in 18 of 20 runs of past weather; in one of the 20 no bed is short",
    );
  });

  test("and that the water ends where none goes short is no contradiction: rain and the ground do for them", () => {
    const told = (short: number | null) =>
      emptySaid({ ...asked(40), ...oddsOf([runOf(short), runOf(short), runOf(short)], 25, 0) });
    expect(told(null)).toMatch(
      / In a middling year rain, and what the ground holds, do for the beds after that\.$/,
    );
    expect(told(TODAY)).not.toContain("do for the beds");
  });
});
