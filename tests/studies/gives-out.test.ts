// What gives out first: planted troubles are named, by themselves and in pairs; and what is said to be costed is, to the day.

import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { type Change, withChanges } from "../../src/document/changes.ts";
import { numberIn } from "../../src/graph/readers.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import type { Bound } from "../../src/network/bounds.ts";
import { recordKey } from "../../src/rainfall/record-key.ts";
import type { SeasonInput } from "../../src/season/input.ts";
import { boundsAtWork, freed, type GivesOut, shortDaysOf } from "../../src/season/relief.ts";
import { worksheetFromFileText } from "../../src/storage/file.ts";
import { ask, baseOf } from "../../src/studies/ask.ts";
import { givesOut, reliefBook, reliefStep } from "../../src/studies/gives-out.ts";
import { givesOutSaid } from "../../src/telling/gives-out.ts";
import {
  battery,
  bed,
  carry,
  crop,
  delivery,
  inputOf,
  LITRE,
  line,
  MM,
  ran,
  roof,
  seattle,
  steadyEto,
  sunny,
  tank,
} from "../season/made.ts";

/** The question over one input, run straight. */
function asked(input: SeasonInput): GivesOut {
  const book = reliefBook();
  const bounds = boundsAtWork(input);
  for (;;) {
    const step = reliefStep(book, bounds);
    if ("answer" in step) return step.answer;
    for (const run of step.ask) {
      const scaled = { ...input, rainScale: input.rainScale * run.rain };
      const short = shortDaysOf(ran(freed(scaled, run.bounds), seattle()).totals);
      if (short) book.put(run, short);
    }
  }
}

const named = (answer: GivesOut): readonly (readonly Bound[])[] =>
  answer.state === "first" || answer.state === "pair" ? answer.first.map(({ bounds }) => bounds) : [];

/** Plenty of everything: a big roof, a big tank, a wide line, a big tub, a quick pump on the mains, nobody in a hurry. */
function plenty(more: Partial<SeasonInput> = {}): SeasonInput {
  return inputOf({
    start: "04-15",
    end: "10-15",
    eto: steadyEto(4 * MM),
    roofs: [roof({ footprint: 800 })],
    tanks: [
      tank(200, { floor: 3, startShare: 1, vessel: { form: "upright", height: 2, volume: 200 } }),
      tank(3, { id: "tub", startShare: 1 }),
    ],
    lines: [line({ startHeight: 3, endHeight: 0.9, shutLevel: 0.95, bore: 0.05, opening: 1e-3 })],
    deliveries: [delivery({ from: "tub", battery: "battery" })],
    batteries: [battery()],
    beds: [
      bed({ area: 30, wateredBy: ["pump"], crops: [crop({ planted: "05-01" })] }),
      bed({ id: "later", area: 30, wateredBy: ["pump"], priority: 2, crops: [crop({ planted: "05-01" })] }),
    ],
    ...more,
  });
}

const bigTank = (more: object = {}) =>
  tank(200, { floor: 3, startShare: 1, vessel: { form: "upright", height: 2, volume: 200 }, ...more });
const smallTank = bigTank({ vessel: { form: "upright" as const, height: 2, volume: 6 } });
const leaking = bigTank({ leak: (400 * LITRE) / 3600 });
const goodTub = tank(3, { id: "tub", startShare: 1 });
const narrow = [line({ startHeight: 3, endHeight: 0.9, shutLevel: 0.95, bore: 0.05, opening: 1e-7 })];

describe("planted troubles are named", () => {
  test.each<[string, Bound, Partial<SeasonInput>]>([
    [
      "a bare roof",
      "rain",
      {
        roofs: [roof({ footprint: 4 })],
        tanks: [bigTank({ startShare: 0 }), tank(3, { id: "tub", startShare: 0 })],
      },
    ],
    [
      "no roof at all",
      "unroofed",
      { roofs: [], tanks: [bigTank({ startShare: 0 }), tank(3, { id: "tub", startShare: 0 })] },
    ],
    ["nothing to water with", "unwatered", { beds: plenty().beds.map((one) => ({ ...one, wateredBy: [] })) }],
    ["a panel after dark", "energy", { deliveries: [delivery({ from: "tub", sun: sunny([0], [0]) })] }],
    [
      "a tank too small",
      "storage",
      { tanks: [smallTank], lines: [], deliveries: [delivery({ battery: "battery" })] },
    ],
    ["a leak", "loss", { tanks: [leaking], lines: [], deliveries: [delivery({ battery: "battery" })] }],
    ["a tub too small", "tankful", { tanks: [bigTank(), tank(0.02, { id: "tub", startShare: 1 })] }],
    ["a valve too narrow", "refill", { lines: narrow }],
    ["a flat battery", "energy", { batteries: [battery({ usable: 3600, charged: "in_place" })] }],
    [
      "Mondays only",
      "rule",
      { beds: plenty().beds.map((one) => ({ ...one, rule: { kind: "weekdays", days: [1], volume: null } })) },
    ],
    [
      "beds given up in a dry spell",
      "given_up",
      { beds: plenty().beds.map((one) => ({ ...one, letGo: { from: "05-15", dryDays: 5 } })) },
    ],
    [
      "a line that cannot run",
      "line",
      {
        lines: [
          line({
            startHeight: 3,
            endHeight: 0.9,
            shutLevel: 0.95,
            bore: 0.05,
            opening: 1e-3,
            blocked: "a hump stops it",
          }),
        ],
        tanks: [bigTank(), tank(3, { id: "tub", startShare: 0.1 })],
      },
    ],
    [
      "no time to carry",
      "hands",
      {
        minutesPerDay: 120,
        carries: [carry({ from: "tub", roundTime: 600 })],
        deliveries: [],
        beds: plenty().beds.map((one) => ({ ...one, wateredBy: ["cans"] })),
      },
    ],
    [
      "a pump too slow",
      "pump_time",
      { deliveries: [delivery({ from: "tub", flows: [0.001 * LITRE], powers: [0.01] })] },
    ],
  ])("%s", (_, bound, more) => {
    const answer = asked(plenty(more));
    expect(answer).toMatchObject({ state: "first", rain: 1 });
    expect(named(answer)).toEqual([[bound]]);
  });

  test("two planted together, of which neither alone helps, are named as a pair", () => {
    const answer = asked(
      plenty({
        roofs: [roof({ footprint: 2 })],
        tanks: [bigTank({ startShare: 0 }), tank(3, { id: "tub", startShare: 0 })],
        batteries: [battery({ usable: 1, charged: "in_place", startShare: 0 })],
      }),
    );
    expect(answer.state).toBe("pair");
    expect(named(answer)).toEqual([["rain", "energy"]]);
  });

  test("without a short day it says so, and names what gives out with less rain, or nothing at all", () => {
    const well = asked(plenty());
    expect(well).toEqual({ state: "never" });
    expect(givesOutSaid(well, "battery")).toBe(
      "Nothing gives out: no day is short, not even with half of the rain.",
    );
    const middling = bigTank({ vessel: { form: "upright", height: 2, volume: 30 } });
    const tight = Array.from({ length: 12 }, (_, at) => 20 * 1.3 ** at)
      .map((footprint) => asked(plenty({ roofs: [roof({ footprint })], tanks: [middling, goodTub] })))
      .find((answer) => answer.state === "first" && answer.rain < 1);
    expect(tight).toMatchObject({ state: "first" });
    if (tight)
      expect(givesOutSaid(tight, "battery")).toMatch(
        /^No day is short; with (three quarters|half) of the rain, /,
      );
  });
});

describe("what is said to be costed is, to the day, by an edit", () => {
  const FOLDER = new URL("../../templates/", import.meta.url);
  const template = (name: string) => {
    const read = worksheetFromFileText(readFileSync(new URL(name, FOLDER), "utf8"), recordKey);
    if (!read.ok) throw new Error(name);
    return read.worksheet;
  };

  test.each(["hillside-totes.json", "one-barrel.json", "three-roofs-two-tunnels.json"])(
    "storage of %s: ten times the tank with the same litres at the start",
    (name) => {
      const sheet = template(name);
      const base = baseOf(sheet, CARD_KINDS);
      const answer = givesOut(base);
      if ("failed" in answer || answer.state !== "first")
        throw new Error(`${name}: ${JSON.stringify(answer)}`);
      expect(named(answer)).toEqual([["storage"]]);
      const input = base.whole.results.get("season.plan");
      const lines = input?.state === "ready" ? (input.value as SeasonInput).lines : [];
      const changes = sheet.cards
        .filter(({ kind, id }) => kind === "tank" && !lines.some(({ to }) => to === id))
        .flatMap(({ id }): Change[] => {
          const volume = numberIn(base.whole.results.get(`${id}.capacity`)) ?? 0;
          const share = numberIn(base.whole.results.get(`${id}.start_share`)) ?? 0;
          return [
            { card: id, part: "givens", row: "capacity", entry: { value: volume * 10, unit: "m3" } },
            { card: id, part: "givens", row: "start_share", entry: { value: share / 10, unit: "1" } },
          ];
        });
      const wanted = ["season.days_short"];
      const days = (list: readonly Change[]) =>
        numberIn(ask(base, list, wanted)["season.days_short"]) ?? Number.NaN;
      expect(withChanges(sheet, changes)).not.toBe(sheet);
      const { seasons } = answer.short;
      expect((days([]) - days(changes)) * seasons).toBeCloseTo(answer.first[0]?.saved ?? Number.NaN, 6);
    },
  );
});

test("one day is one day, and a handful of days has no tenth", () => {
  const first = [{ bounds: ["loss" as const], saved: 1, savedInWorst: 1 }];
  const of = (days: number, seasons: number) => ({ days, seasons, bySeason: [days], worst: 0 });
  const said = (days: number, seasons: number) =>
    givesOutSaid({ state: "first", rain: 1, short: of(days, seasons), first }, "battery");
  expect(said(1, 20)).toBe(
    "What leaks and dries away gives out first: it costs the only short day in 20 seasons.",
  );
  expect(said(1, 1)).toBe(
    "What leaks and dries away gives out first: it costs the only short day in this one season.",
  );
  expect(said(3, 2)).toBe(
    "What leaks and dries away gives out first: it costs 1 of 3 short days in 2 seasons.",
  );
  const several = (days: number, rain: number) =>
    givesOutSaid({ state: "several", rain, short: of(days, 20) }, "battery");
  expect(several(1, 1)).toBe(
    "Several things give out at once: mending one or two of them does not take away the only short day.",
  );
  expect(several(7, 1)).toBe(
    "Several things give out at once: mending one or two of them takes away none of 7 short days.",
  );
  expect(several(70, 0.5)).toBe(
    "No day is short; with half of the rain, several things give out at once: mending one or two of them takes away less than a tenth of 70 short days.",
  );
});

test("each bound set free leaves the input it was given as it was, and all else of it alone", () => {
  const input = plenty({ minutesPerDay: 60 });
  const text = JSON.stringify(input);
  for (const bound of boundsAtWork(input)) freed(input, [bound]);
  expect(JSON.stringify(input)).toBe(text);
  expect(freed(input, ["hands"])).toEqual({ ...input, minutesPerDay: null });
  expect(boundsAtWork(plenty({ lines: [] }))).not.toContain("refill");
});
