// Everything one run holds, put together once from the input and the record; the days then change it in place.

import { passingBy } from "../network/beds.ts";
import { feedersOf, fillersOf, isRoofed } from "../network/feeds.ts";
import type { Network } from "../network/network.ts";
import { WET_DAY } from "../physics/sky-radiation.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { type Batteries, readyBatteries } from "./batteries.ts";
import { type Bed, type KnownBeds, layWeather, readyBeds } from "./beds.ts";
import type { Before } from "./before.ts";
import { noLacks } from "./bounds.ts";
import { byId } from "./by-id.ts";
import type { DayLog } from "./day-log.ts";
import { type DueDraw, readyDraws } from "./draws.ts";
import { type Gone, nothingGone, overflowPlace } from "./gone.ts";
import type { LeftOut, SeasonInput } from "./input.ts";
import { keeper } from "./kept.ts";
import { type Ledger, newLedger } from "./ledger.ts";
import type { NotedDay } from "./noted-day.ts";
import { type Pipes, readyPipes } from "./pipes.ts";
import { type RoofWater, roofsOf } from "./roof-water.ts";
import { skyAhead, skyOf } from "./sky.ts";
import { carried, pumped, pumpsOf, type Source } from "./sources.ts";
import {
  dayOfSeason,
  monthsOf,
  type SeasonDates,
  type Span,
  slotsOf,
  wholeSeasons,
  wholeYears,
} from "./spans.ts";
import { type Supply, supplyOf } from "./supply.ts";
import { newTally, type Slots, type Tally } from "./tally.ts";
import { readyTanks, type Tanks } from "./tanks.ts";
import type { Used } from "./used.ts";

export type SeasonState = RoofWater & {
  readonly input: SeasonInput;
  readonly record: DailyRecord;
  readonly length: number;
  /** Days that draws and carried charges had been counted for before the record's first. */
  readonly counted: number;
  /** Where it goes on from days that are over; null: it began on the record's first. */
  readonly before: Before | null;
  readonly arriving: Float64Array;
  readonly eto: Float64Array;
  readonly seasons: readonly Span[];
  readonly years: readonly Span[];
  /** Day of the season counted from 1, 0 outside; places of each day's whole season and year; its month from 0. */
  readonly dayInSeason: Int32Array;
  readonly seasonSlots: Int32Array;
  readonly yearSlots: Int32Array;
  readonly months: Uint8Array;
  /** 1 on days with so much rain that their sun is darker. */
  readonly wet: Uint8Array;
  readonly slots: Slots;
  readonly tanks: Tanks;
  readonly pipes: Pipes;
  readonly beds: readonly Bed[];
  /** In the order in which today's water goes to them. */
  turns: readonly Bed[];
  readonly draws: readonly DueDraw[];
  readonly sources: readonly Source[];
  readonly batteries: Batteries;
  /** Tanks whose water reaches each tank through lines, itself first; and those that fill it in any way. */
  readonly feeders: readonly (readonly number[])[];
  readonly fillers: readonly (readonly number[])[];
  /** Where the book of what spilled has water that a bigger tank would have kept for each tank. */
  readonly spills: readonly (readonly number[])[];
  /** Whether rain of any roof is to come to each tank. */
  readonly roofed: readonly boolean[];
  /** The water behind each tank, through lines. */
  readonly supply: readonly Supply[];
  /** What spilled and was lost in the year before. */
  readonly gone: Gone;
  /** Negative room asked for before rain under `use_first` [m3]. */
  readonly leeway: Float64Array;
  /** One person's time left today [s], and that of each pump. */
  readonly hands: { left: number };
  readonly pumpLeft: Float64Array;
  readonly spill: readonly Tally[];
  readonly passedOn: Float64Array;
  readonly lineMoved: readonly Tally[];
  /** Time each line ran after the watering on each day [s]. */
  readonly lineRan: readonly Float64Array[];
  /** Moved by each line from its start to its end on each day [m3]. */
  readonly lineMovedOn: readonly Float64Array[];
  readonly stored: readonly Float64Array[];
  readonly storedTotal: Float64Array;
  readonly shortDay: Uint8Array;
  /** 1 on each day on which a draw was short. */
  readonly drawShort: Uint8Array;
  /** Unmet water of draws in the whole seasons by bound [m3], and their short days. */
  readonly drawsUnmet: Float64Array;
  readonly drawsShort: Float64Array;
  readonly evaporated: Float64Array;
  readonly leaked: Float64Array;
  readonly ledger: Ledger;
  readonly leftOut: LeftOut[];
  /** Nobody reads what its days add up to or what a short one lacked: they book only what days lean on, and short days. */
  quiet: boolean;
  /** Notes what happens to each bed day by day, where someone wants to read it; null: nobody does. */
  log: DayLog | null;
  /** What is noted of the day that is run; null: it goes by its rules. */
  noted: NotedDay | null;
  /** What beds want of the first day that is run, whatever their rules say, by id [m3]; null: as they say. */
  owed: ReadonlyMap<string, number> | null;
  /** What of the first day was used before it is run, till then; null: nothing. */
  used: Used | null;
  /** Looks at each day in the evening, before its overflow is booked; null: nobody does. */
  watch: ((day: number) => void) | null;
};

/**
 * A run ready for its first day.
 *
 * @param input the season's input; its parts are sorted by id, so that their order changes nothing
 * @param record the daily record, without a gap
 * @param eto reference evapotranspiration of each day [m]
 * @param known what a longer record taught of beds; left out where this is the record
 * @param before where the run goes on from days that are over; left out where it begins
 * @throws DomainError for a part outside its relations
 */
export function readyState(
  input: SeasonInput,
  record: DailyRecord,
  eto: Float64Array,
  known?: KnownBeds,
  before?: Before,
): SeasonState {
  const leftOut: LeftOut[] = [...input.leftOut];
  const sky = (before ? skyAhead : skyOf)(record, eto, input.rainScale, before);
  const length = eto.length;
  const dates: SeasonDates = { start: input.start, end: input.end };
  const own = () => daysOf(dates, record.firstDay, length);
  const days = before ? own() : DAYS(sky, `${dates.start} ${dates.end}`, own);
  const spans = { seasons: days.seasons.length, years: days.years.length };
  const tanks = readyTanks(byId(input.tanks), leftOut);
  const pipes = readyPipes(byId(input.lines), byId(input.tees), tanks, leftOut);
  const feeders = placesOf(input.network, tanks, feedersOf);
  const sources = readySources(input, tanks, spans, leftOut);
  const named = new Map(sources.map((source) => [source.id, source]));
  const ground = { sky, dates, sources: named, feeders, known, before, ...spans };
  const beds = readyBeds(input.beds, { ...ground, dayInSeason: days.dayInSeason }, leftOut);
  return {
    input,
    record,
    length,
    ...pastOf(record, before),
    arriving: sky.arriving,
    eto,
    ...days,
    wet: wetDays(record.rain),
    tanks,
    pipes,
    beds,
    turns: beds,
    draws: readyDraws(byId(input.draws), tanks, spans, leftOut),
    sources,
    batteries: readyBatteries(byId(input.batteries), { ...spans, length }),
    feeders,
    ...spillsBehind(input.network, tanks),
    roofed: tanks.parts.map(({ id }) => isRoofed(input.network, id)),
    ...roofsOf(input, tanks.placeOf, sky, before),
    leftOut,
    ...scratch(input, tanks, pipes, spans, length),
  };
}

/**
 * A run that goes on from days that are over, under other weather of the very same days; what it held before is lost.
 *
 * @param state its parts are those of the new one, as they stand
 * @param record as long as that of the state and from the same day on
 * @throws DomainError for a part outside its relations
 */
export function underWeather(
  state: SeasonState,
  record: DailyRecord,
  eto: Float64Array,
  before: Before,
): SeasonState {
  const { input, tanks, beds, dayInSeason } = state;
  const sky = skyAhead(record, eto, input.rainScale, before);
  layWeather(beds, { sky, dayInSeason, before });
  const { arriving } = sky;
  const weather = { record, before, arriving, eto, wet: wetDays(record.rain) };
  return { ...state, ...weather, ...roofsOf(input, tanks.placeOf, sky, before) };
}

/** Where the run stands to the days before it. */
const pastOf = ({ firstDay }: DailyRecord, before: Before | undefined) => ({
  before: before ?? null,
  counted: before ? firstDay - before.origin : 0,
});

const DAYS = keeper<ReturnType<typeof daysOf>>(4);

function wetDays(rain: Float64Array): Uint8Array {
  const wet = new Uint8Array(rain.length);
  for (let day = 0; day < wet.length; day++) wet[day] = (rain[day] as number) >= WET_DAY ? 1 : 0;
  return wet;
}

/** For each tank the places of the tanks that the network names for it. */
function placesOf(
  network: Network,
  tanks: Tanks,
  ask: (network: Network, tank: string) => readonly string[],
): readonly (readonly number[])[] {
  return tanks.parts.map(({ id }) => ask(network, id).flatMap((other) => tanks.placeOf.get(other) ?? []));
}

function spillsBehind(network: Network, tanks: Tanks): Pick<SeasonState, "fillers" | "spills"> {
  const fillers = placesOf(network, tanks, fillersOf);
  const passing = placesOf(network, tanks, passingBy);
  const count = tanks.parts.length;
  const spills = fillers.map((own, tank) => [
    ...own,
    ...(passing[tank] ?? []).map((other) => overflowPlace(count, other)),
  ]);
  return { fillers, spills };
}

type Spans = { readonly seasons: number; readonly years: number };

function scratch(input: SeasonInput, tanks: Tanks, pipes: Pipes, spans: Spans, length: number) {
  const perTank = () => new Float64Array(tanks.parts.length);
  const tally = () => newTally(spans.seasons, spans.years);
  return {
    slots: { season: 0, year: 0 },
    quiet: false,
    log: null,
    noted: null,
    owed: null,
    used: null,
    watch: null,
    gone: nothingGone(tanks.parts.length),
    supply: supplyOf(input, tanks),
    leeway: perTank(),
    hands: { left: 0 },
    pumpLeft: new Float64Array(pumpsOf(input).length),
    spill: tanks.parts.map(tally),
    passedOn: perTank(),
    lineMoved: pipes.lines.map(tally),
    lineRan: pipes.lines.map(() => new Float64Array(length)),
    lineMovedOn: pipes.lines.map(() => new Float64Array(length)),
    stored: tanks.parts.map(() => new Float64Array(length)),
    storedTotal: new Float64Array(length),
    shortDay: new Uint8Array(length),
    drawShort: new Uint8Array(length),
    drawsUnmet: noLacks(),
    drawsShort: noLacks(),
    evaporated: perTank(),
    leaked: perTank(),
    ledger: newLedger(),
  };
}

function readySources(input: SeasonInput, tanks: Tanks, spans: Spans, leftOut: LeftOut[]): readonly Source[] {
  const places = { pumps: pumpsOf(input), batteries: byId(input.batteries) };
  const made = [
    ...byId(input.deliveries).map((part) => ({ part, source: pumped(part, tanks, places, spans) })),
    ...byId(input.carries).map((part) => ({ part, source: carried(part, tanks, spans) })),
  ];
  return made.flatMap(({ part, source }) => {
    if (source) return [source];
    leftOut.push({ id: part.id, reason: "the tank it draws from is not there" });
    return [];
  });
}

function daysOf(dates: SeasonDates, firstDay: number, length: number) {
  const seasons = wholeSeasons(dates, firstDay, length);
  const years = wholeYears(firstDay, length);
  return {
    seasons,
    years,
    dayInSeason: dayOfSeason(dates, firstDay, length),
    seasonSlots: slotsOf(seasons, length),
    yearSlots: slotsOf(years, length),
    months: monthsOf(firstDay, length),
  };
}
