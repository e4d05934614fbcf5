// How long it lasts in a sentence, against runs made by chance: every day and count in it is one of the runs'.

import { describe, expect, test } from "vitest";
import { type Ahead, type FromToday, oddsOf } from "../../src/season/odds.ts";
import {
  emptySaid,
  lastsInShort,
  lastsSaid,
  restsOn,
  ruleSaid,
  undippedSaid,
} from "../../src/telling/from-today.ts";
import { calendarDate, dayNumber } from "../../src/units/calendar.ts";
import { dice } from "../sweep/dice.ts";

const TODAY = dayNumber(2021, 7, 1);
const LAST = dayNumber(2021, 9, 15);
const MONTHS = ["", "", "", "", "", "", "Jun", "Jul", "Aug", "Sep"];
const COUNTS = ["none", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"];

const run = (short: number | null): Ahead => ({
  year: 2000,
  shift: 0,
  short,
  beds: {},
  again: short,
  empty: short,
  water: new Float64Array(1),
});

function dayText(date: number): string {
  const { month, day } = calendarDate(date);
  return `${MONTHS[month]} ${day}`;
}

/** Runs of a place that is tight, easy, or anything between. */
function days(seed: number): readonly (number | null)[] {
  const d = dice(seed);
  const [reach, now] = [d.pick([0, 0.1, 0.5, 0.9]), d.pick([0, 0, 0.3, 0.8])];
  return Array.from({ length: d.whole(1, 100) }, () => {
    if (d.chance(reach)) return null;
    return d.chance(now) ? TODAY : d.whole(TODAY, LAST - 1);
  });
}

const ofDays = (shorts: readonly (number | null)[]): FromToday => ({
  today: TODAY,
  last: LAST,
  now: 1,
  assumed: { tanks: [], beds: [], batteries: [], leftOut: [], broken: [], rain: null },
  heldBack: [],
  since: {},
  ...oddsOf(shorts.map(run), shorts.length, 0),
});

/** Runs that are short on a day or before it. */
function shortUpTo(shorts: readonly (number | null)[], text: string): { on: number; before: number } {
  const date = Array.from({ length: LAST - TODAY + 1 }, (_, at) => TODAY + at).find(
    (one) => dayText(one) === text,
  );
  const own = shorts.filter((day) => day !== null && date !== undefined && day <= date);
  return { on: own.length, before: own.filter((day) => day !== date).length };
}

const countOf = (word: string): number => (COUNTS.includes(word) ? COUNTS.indexOf(word) : Number(word));

describe("how long it lasts, in a sentence", () => {
  test("says when nothing is left in reach by the runs' own days, over 200 sets of runs", () => {
    for (let seed = 1; seed <= 200; seed++) {
      const shorts = days(seed);
      const said = emptySaid(ofDays(shorts));
      const never = shorts.filter((day) => day === null).length;
      expect([seed, said, /in every year/.test(said)]).toEqual([seed, said, never === shorts.length]);
      const middle = /^No water is left in reach of the beds by (\w+ \d+) in a middling year/.exec(said)?.[1];
      if (middle) {
        const { on, before } = shortUpTo(shorts, middle);
        const rank = Math.floor((shorts.length + 1) / 2);
        expect([seed, said, before < rank, on >= rank]).toEqual([seed, said, true, true]);
      }
      const worst = /in the (?:(\w+) )?worst of \d+ (?:none is left )?by (\w+ \d+)/.exec(said);
      if (worst) {
        const rank = worst[1] === undefined ? 1 : countOf(worst[1]);
        const { on, before } = shortUpTo(shorts, worst[2] as string);
        expect([seed, said, on >= rank, before < rank]).toEqual([seed, said, true, true]);
      }
      const some = /in (\d+) of \d+ it does not/.exec(said);
      if (some) expect([seed, Number(some[1])]).toEqual([seed, shorts.length - never]);
    }
  });

  test("names the beds that are held back today, and what was taken for rain that nobody measured", () => {
    const beds = [
      { title: "Tunnel", when: "its soil asks" },
      { title: "Long bed", when: "its soil asks" },
    ];
    expect(ruleSaid(beds, 0, ["Long bed"])).toMatch(/ Held back today, as you noted: Long bed\.$/);
    expect(ruleSaid(beds, 0, [])).not.toContain("noted");
    const spell = (first: number, last: number) => ({ first, last });
    const rain = { spells: [spell(TODAY - 9, TODAY - 1)], year: 2009, madeUp: false };
    const from = ofDays([null]);
    const rests = (more: object) =>
      restsOn({ ...from, assumed: { ...from.assumed, rain: { ...rain, ...more } } }, (id) => id).join(" ");
    expect(rests({})).toContain(
      "No rain of Jun 22 to Jun 30 was measured or noted: taken as in 2009, a middling year for those days.",
    );
    expect(rests({ madeUp: true })).toContain("taken as in a middling year of the made-up weather.");
    expect(rests({ year: null, spells: [spell(TODAY - 1, TODAY - 1)] })).toContain(
      "No rain of Jun 30 was measured or noted: taken as dry.",
    );
    expect(rests({ spells: [spell(TODAY - 9, TODAY - 7), spell(TODAY - 2, TODAY - 1)] })).toContain(
      "No rain of Jun 22 to Jun 24 and Jun 29 to Jun 30 was measured",
    );
  });

  test("outside the season says nothing of what was not noted", () => {
    const assumed = { tanks: ["totes"], beds: ["bed"], batteries: [], leftOut: [], broken: [], rain: null };
    const out = {
      today: TODAY,
      last: TODAY,
      now: 0,
      assumed,
      heldBack: [],
      since: {},
      kind: "out_of_season",
      dates: { start: "09-01", end: "12-01" },
    } as const;
    expect(restsOn(out, (id) => id)).toEqual([]);
    expect(emptySaid(out)).toBe("");
  });

  test("names the middle day, the worst by their rank, and how many reach the end, over 500 sets of runs", () => {
    const kinds = new Map<string, number>();
    const seen = (kind: string) => kinds.set(kind, (kinds.get(kind) ?? 0) + 1);
    for (let seed = 1; seed <= 500; seed++) {
      const shorts = days(seed);
      const from = ofDays(shorts);
      const said = lastsSaid(from, String);
      const count = shorts.length;
      const ends = shorts.filter((day) => day === null).length;
      const now = shorts.filter((day) => day === TODAY).length;
      const middle = /^Lasts to (\w+ \d+) in a middling year/.exec(said)?.[1];
      if (middle) {
        seen("a middle day");
        // At most half are short before it, and with it at least as many as its rank.
        const { on, before } = shortUpTo(shorts, middle);
        expect([seed, said, before < Math.floor((count + 1) / 2), on >= Math.floor((count + 1) / 2)]).toEqual(
          [seed, said, true, true],
        );
      }
      const worst = /In the (?:(\w+) )?worst of (\d+) to (\w+ \d+)/.exec(said);
      if (worst) {
        seen("the worst");
        const rank = worst[1] === undefined ? 1 : countOf(worst[1]);
        expect([seed, worst[2], rank]).toEqual([
          seed,
          String(count),
          Math.max(1, Math.floor((count + 1) / 10)),
        ]);
        // So many are short by that day, and not so many before it.
        const { on, before } = shortUpTo(shorts, worst[3] as string);
        expect([seed, said, on >= rank, before < rank]).toEqual([seed, said, true, true]);
      }
      const not = /In (\d+) of (\d+) it does not/.exec(said);
      if (not) {
        seen("some do not");
        expect([seed, said, Number(not[1]), Number(not[2])]).toEqual([seed, said, count - ends, count]);
      }
      const end = /in (\w+) (?:to the end|of the \d+ no bed is short before the end)/.exec(said);
      expect([seed, said, end ? countOf(end[1] as string) : 0]).toEqual([
        seed,
        said,
        /every year/.test(said) ? 0 : ends,
      ]);
      const today =
        /A bed is short today in (?:the weather of )?(\d+) of (\d+) (?:past years|runs of past weather)/.exec(
          said,
        );
      if (today) {
        seen("today in some");
        expect([seed, Number(today[1]), Number(today[2])]).toEqual([seed, now, count]);
      }
      expect([seed, said, /whatever the weather/.test(said)]).toEqual([seed, said, now === count]);
      expect([seed, said, /every year/.test(said)]).toEqual([seed, said, ends === count]);
      // At a glance it is the same.
      const { said: head, day, more } = lastsInShort(from, String);
      if (day !== "") expect([seed, said.startsWith(`${head} ${day}`)]).toEqual([seed, true]);
      if (day !== "" && ends < count) expect([seed, said.endsWith(more)]).toEqual([seed, true]);
    }
    for (const kind of ["a middle day", "the worst", "some do not", "today in some"])
      expect([kind, (kinds.get(kind) ?? 0) > 20]).toEqual([kind, true]);
  });
});

describe("a usual run and one without rain", () => {
  const by = (usual: number | null, dry: number | null): FromToday => {
    const without = run(dry);
    return {
      ...ofDays([null]),
      kind: "usual_and_dry",
      because: "made_up",
      usual: usual === dry ? { ...without } : run(usual),
      dry: without,
    } as FromToday;
  };
  const times = (text: string, day: number) => text.split(dayText(day)).length - 1;

  test("that end on one day tell that day once", () => {
    for (const from of [by(LAST - 9, LAST - 9), by(TODAY, TODAY), by(TODAY + 1, TODAY + 1)]) {
      const { said, day, more } = lastsInShort(from, (id) => id);
      const day0 = from.kind === "usual_and_dry" ? (from.dry.short as number) : 0;
      for (const text of [lastsSaid(from, (id) => id), `${said} ${day} ${more}`])
        expect(times(text, day0)).toBeLessThanOrEqual(1);
    }
    expect(lastsSaid(by(LAST - 9, LAST - 9), (id) => id)).toBe(
      `Lasts to ${dayText(LAST - 9)}, in usual weather as without rain.`,
    );
  });

  test("that end on two tell both", () => {
    expect(lastsSaid(by(LAST - 3, LAST - 9), (id) => id)).toBe(
      `Lasts to about ${dayText(LAST - 3)} in usual weather, to ${dayText(LAST - 9)} without rain.`,
    );
  });

  test("of which there is but the one without rain speak of no usual weather", () => {
    const dry = run(LAST - 9);
    const from = { ...by(null, null), because: "too_short", usual: dry, dry } as FromToday;
    const { said, day, more } = lastsInShort(from, (id) => id);
    expect(`${said} ${day}. ${more} ${lastsSaid(from, (id) => id)}`).not.toContain("usual");
  });
});

test("tanks that nobody dipped are named beside it, and none where all were", () => {
  const from = ofDays([TODAY + 5, null]);
  const without = (...tanks: string[]): FromToday => ({ ...from, assumed: { ...from.assumed, tanks } });
  const titleOf = (id: string): string => `The ${id}`;
  expect(undippedSaid(from, titleOf)).toBe("");
  expect(undippedSaid(without("tub"), titleOf)).toBe(
    "The tub: not dipped lately, taken as in a middling year.",
  );
  expect(undippedSaid(without("tub", "totes"), titleOf)).toMatch(/^The tub and The totes: not dipped lately/);
});
