// One tank and two beds tried on years that no rule was tuned on: seven days kept, the tuned rule, the stick's marks, the
// advice day by day, and dynamic programming.

import { readRainCsv } from "../../src/rainfall/import-csv.ts";
import type { DailyRecord } from "../../src/rainfall/record.ts";
import { seededRandom } from "../../src/rainfall/seeded-random.ts";
import { weighedBy } from "../../src/season/advising.ts";
import type { Bed } from "../../src/season/beds.ts";
import { dryWeather } from "../../src/season/coming-days.ts";
import { STEPPING } from "../../src/season/gravity.ts";
import { countOrders, type HoldingRule, type Orders, order } from "../../src/season/holding.ts";
import { follow, memberOf, runMember } from "../../src/season/holding-runs.ts";
import type { SeasonInput } from "../../src/season/input.ts";
import { judgedByOdds } from "../../src/season/judging.ts";
import { tunedKeeping } from "../../src/season/keeping.ts";
import { momentOf, putBack, type Weather } from "../../src/season/moment.ts";
import { prepareSeason, runDays } from "../../src/season/run.ts";
import type { SeasonState } from "../../src/season/state.ts";
import { ruleOf, type StickRule, tunedStick } from "../../src/season/stick-rule.ts";
import { type Trial, trialsOf } from "../../src/season/trials.ts";
import {
  bookThirst,
  costADepth,
  noThirst,
  shareLost,
  shareOfWorth,
  worthOf,
} from "../../src/season/worth.ts";
import { yearsAhead } from "../../src/season/years-ahead.ts";
import { calendarDate, dayNumber, isoDate } from "../../src/units/calendar.ts";
import { bestChoice, type Program, type ProgramBed, solved } from "../oracles/two-bed-program.ts";
import { bed, carry, crop, inputOf, MM, roof, tank } from "../season/made.ts";

const FIRST_YEAR = 1901;
const YEARS = 100;

/** Chance that it rains after a dry and after a wet day, and mean depth of a wet day [mm], January first. */
const MONTHS: readonly (readonly [number, number, number])[] = [
  [0.35, 0.7, 6],
  [0.32, 0.68, 5.5],
  [0.3, 0.65, 5],
  [0.25, 0.58, 5],
  [0.2, 0.5, 5.5],
  [0.16, 0.45, 6],
  [0.1, 0.36, 6],
  [0.1, 0.38, 6],
  [0.15, 0.46, 6.5],
  [0.25, 0.6, 6.5],
  [0.35, 0.68, 7],
  [0.37, 0.7, 7],
];

/** A hundred years of a chain of wet and dry days with seasons, as the text of a file. */
export function longFile(seed: number): string {
  const next = seededRandom(seed);
  const lines = ["date,rain (mm)"];
  let [wet, year, mood] = [false, 0, 1];
  for (let day = dayNumber(FIRST_YEAR, 1, 1); day < dayNumber(FIRST_YEAR + YEARS, 1, 1); day++) {
    const date = calendarDate(day);
    if (date.year !== year) [year, mood] = [date.year, 0.55 + 0.9 * next()];
    const [begins, goesOn, depth] = MONTHS[date.month - 1] as readonly [number, number, number];
    wet = next() < (wet ? goesOn : begins * mood);
    const rain = wet ? -Math.log(1 - next()) * depth : 0;
    lines.push(`${isoDate(day)},${rain.toFixed(1)}`);
  }
  return `${lines.join("\n")}\n`;
}

/** The file brought in as the program does it. */
export function broughtIn(text: string): DailyRecord {
  const result = readRainCsv(text);
  if (!("record" in result)) throw new Error(JSON.stringify(result).slice(0, 300));
  return result.record as DailyRecord;
}

/** Half of a record's years. */
function half(record: DailyRecord, which: 0 | 1): DailyRecord {
  const years = YEARS / 2;
  const [from, until] = [which, which + 1].map(
    (part) => dayNumber(FIRST_YEAR + part * years, 1, 1) - record.firstDay,
  ) as [number, number];
  return {
    ...record,
    key: `${record.key} ${which}`,
    firstDay: record.firstDay + from,
    rain: record.rain.slice(from, until),
    highest: null,
    lowest: null,
  };
}

export type Place = { readonly volume: number; readonly roof: number; readonly lesser: number };

export const PLACES: readonly Place[] = [
  { volume: 2, roof: 40, lesser: 10 },
  { volume: 2, roof: 40, lesser: 3 },
  { volume: 4, roof: 60, lesser: 10 },
];

/** Drying of a day by month, January first [mm]. */
const DRYING = [0.5, 0.8, 1.5, 2.4, 3.6, 4.4, 4.9, 4.3, 2.9, 1.6, 0.8, 0.5];

function inputFor({ volume, roof: footprint, lesser }: Place, holdDays = 7): SeasonInput {
  const crops = [
    crop({ crop: "tomato", planted: "05-10", rootStart: 0.4, rootEnd: 0.4, stages: [30, 40, 45, 20] }),
  ];
  const one = {
    area: 6,
    covered: true,
    crops,
    availableWater: 0.14,
    rootLimit: 0.4,
    efficiency: 0.9,
  };
  return inputOf({
    start: "05-01",
    end: "09-30",
    holdDays,
    eto: { ...inputOf().eto, months: DRYING.map((depth) => (depth * MM) / 86_400) } as SeasonInput["eto"],
    roofs: [roof({ footprint, runoffCoefficient: 0.85 })],
    tanks: [tank(volume, { startShare: 1 })],
    carries: [carry()],
    beds: [
      bed({ ...one, id: "first", worth: 10 }),
      bed({ ...one, id: "second", priority: 2, worth: lesser }),
    ],
  });
}

const NOTHING_KEPT: HoldingRule = { kept: new Map(), above: 0 };

/** Says each morning what is to be done about the beds that ask; null: let the rule decide. */
type Decide = (state: SeasonState, day: number) => Orders | null;

/** A season run day by day under decisions; what it loses of all worth. */
function lossUnder({ member, before }: Trial, decide: Decide): number {
  const { state, stakes, potential, moment, first } = member;
  putBack(state, moment);
  for (const one of state.beds)
    for (const series of [one.given, one.lacked, one.lastBy, one.unfilled]) series.fill(0);
  follow(member, NOTHING_KEPT);
  const thirst = noThirst(stakes);
  state.watch = (day) => {
    bookThirst(stakes, thirst, day);
    countOrders(state.beds);
  };
  for (let day = first; day < state.length; day++) {
    order(state.beds, decide(state, day) ?? new Map());
    runDays(state, STEPPING, { first: day, last: day });
  }
  state.watch = null;
  const lost = stakes.map((stake, place) =>
    shareLost(stake, thirst.lacked[place] as Float64Array, [
      before[place] as Float64Array,
      potential[place] as Float64Array,
    ]),
  );
  return shareOfWorth(
    state.beds.map(({ part }) => worthOf(part)),
    Float64Array.from(lost),
  );
}

const asksOn = (one: Bed, day: number): boolean =>
  (one.days.total[day] as number) > 0 &&
  one.soil.depletion > 0 &&
  one.soil.depletion >= (one.days.trigger[day] as number);

/** Evenly so many of a list. */
function someOf<Item>(items: readonly Item[], most: number): readonly Item[] {
  if (items.length <= most) return items;
  return Array.from({ length: most }, (_, at) => items[Math.floor((at * items.length) / most)] as Item);
}

/**
 * The program's advice of each morning on which a bed asks, by the past years of the tuning half: its members are made once and
 * stood on each morning.
 *
 * @param most of those years that it looks at
 */
function adviser(input: SeasonInput, tuning: SeasonState, rule: HoldingRule, most = Infinity) {
  return ({ member: { moment: start, days }, before }: Trial): Decide => {
    const season = { start: start.date, end: start.date + days - 1 };
    const span = { today: season.start, last: season.end };
    const ahead = someOf(yearsAhead(tuning.record, tuning.eto, span).ahead, most);
    const member = (weather: Weather) => memberOf(input, start, weather, tuning, season);
    const members = ahead.map(({ weather }) => member(weather));
    const dry = member(dryWeather(tuning.record, tuning.eto, span, "usual"));
    const from = dry.first;
    return (state, day) => {
      if (!state.beds.some((one) => asksOn(one, day))) return null;
      const moment = momentOf(state, day);
      for (const one of [...members, dry])
        Object.assign(one, { moment, first: from + moment.date - season.start });
      return judgedByOdds(weighedBy({ members, dry, before }, rule), members.length).advised.orders;
    };
  };
}

/** The program's tables from the tuning years, in the beds' own numbers. */
function programFor(trial: Trial, tuning: SeasonState): Program {
  const { member, before } = trial;
  const { state, stakes, potential, first } = member;
  const days = state.length - first;
  const cut = (series: Float64Array) => series.slice(first);
  const beds = stakes.map(({ bed: one }, place): ProgramBed => {
    const all = [before[place] as Float64Array, potential[place] as Float64Array];
    const cost = Float64Array.from({ length: days }, (_, day) =>
      state.dayInSeason[first + day] === 0
        ? 0
        : worthOf(one.part) * costADepth(stakes[place] as never, first + day, all),
    );
    return {
      perDepth: one.perDepth,
      trigger: cut(one.days.trigger),
      potential: cut(one.days.potential),
      total: cut(one.days.total),
      readily: cut(one.days.readily),
      cost,
    };
  });
  const roofWater = tuning.roofWater[0] as Float64Array;
  const inflows = Array.from({ length: days }, (_, day) =>
    levels(
      tuning.seasons.flatMap((span) =>
        [-3, -2, -1, 0, 1, 2, 3].map((near) => roofWater[span.first + day + near] ?? 0),
      ),
    ),
  );
  return {
    capacity: state.tanks.capacity[0] as number,
    days,
    inflows,
    beds: beds as [ProgramBed, ProgramBed],
  };
}

/** A dozen values, each the mean of an equal part of some. */
function levels(values: readonly number[]): readonly number[] {
  const sorted = [...values].sort((a, b) => a - b);
  const parts = 12;
  return Array.from({ length: parts }, (_, part) => {
    const own = sorted.slice(
      Math.floor((part * sorted.length) / parts),
      Math.floor(((part + 1) * sorted.length) / parts),
    );
    return own.reduce((sum, value) => sum + value, 0) / own.length;
  });
}

function programmer(program: Program, losses: readonly Float64Array[]) {
  return ({ member }: Trial): Decide =>
    (state, day) => {
      const soils = state.beds.map(({ soil }) => soil.depletion) as unknown as readonly [number, number];
      const choice = bestChoice(program, losses, day - member.first, state.tanks.volume[0] as number, soils);
      return new Map(
        state.beds.map(({ part }, place) => [part.id, choice[place] ? { served: 1 } : { refused: 1 }]),
      );
    };
}

function prepared(input: SeasonInput, record: DailyRecord): SeasonState {
  const state = prepareSeason(input, record);
  if ("failed" in state) throw new Error(state.failed);
  return state;
}

/** What each way loses of all worth in the driest of the tried years, by the roof's rain of the season. */
export type Fold = {
  readonly years: readonly number[];
  /** Seven days kept for the beds before; the tuned rule by itself; the printed stick. */
  readonly seven: readonly number[];
  readonly rule: readonly number[];
  readonly stick: readonly number[];
  readonly advice: readonly number[];
  /** Dynamic programming. */
  readonly best: readonly number[];
};

type Size = {
  /** Of the driest tried years so many, at most a third; and of the tuning years so many that the advice looks at. */
  readonly most: number;
  readonly members: number;
  readonly withBest: boolean;
};

const WHOLE: Size = { most: Infinity, members: Infinity, withBest: true };

/** A place tuned on one half of a record and tried on the other. */
export function fold(place: Place, record: DailyRecord, tunedOn: 0 | 1, size: Size = WHOLE): Fold {
  const input = inputFor(place);
  const [tuning, tried] = [half(record, tunedOn), half(record, tunedOn === 0 ? 1 : 0)];
  const known = prepared(input, tuning);
  const trials = trialsOf(input, prepared(input, tried));
  const rainOf = ({ member: { state, first } }: Trial) =>
    state.arriving.subarray(first).reduce((sum, depth) => sum + depth, 0);
  const driest = [...trials]
    .sort((a, b) => rainOf(a) - rainOf(b))
    .slice(0, Math.min(size.most, Math.ceil(trials.length / 3)));
  const rule = tunedKeeping(input, tuning)?.rule as HoldingRule;
  const stick = tunedStick(input, tuning) as StickRule;
  const by = (one: HoldingRule | null) => driest.map((trial) => lossBy(trial, one));
  const under = (decide: (trial: Trial) => Decide) => driest.map((one) => lossUnder(one, decide(one)));
  const program = programFor(driest[0] as Trial, known);
  return {
    years: driest.map(({ year }) => year),
    seven: by(null),
    rule: by(rule),
    stick: by(ruleOf(known, stick)),
    advice: under(adviser(input, known, rule, size.members)),
    best: size.withBest ? under(programmer(program, solved(program))) : [],
  };
}

const lossBy = ({ member, before }: Trial, rule: HoldingRule | null): number =>
  shareOfWorth(
    member.state.beds.map(({ part }) => worthOf(part)),
    runMember(member, rule, before).lost,
  );

/** The numbers of the beds that dynamic programming goes by, taken from some of the tried years. */
export function knownToProgram(place: Place, record: DailyRecord): readonly Program["beds"][] {
  const input = inputFor(place);
  const known = prepared(input, half(record, 0));
  const trials = trialsOf(input, prepared(input, half(record, 1)));
  return someOf(trials, 3).map((trial) => programFor(trial, known).beds);
}
