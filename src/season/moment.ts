// A morning of a season, whole: all that the days before it left behind and that the days after it lean on. A run that is
// stopped and gone on with from its moment is the run that was never stopped.

import type { DailyRecord } from "../rainfall/record.ts";
import { openAccount } from "./account.ts";
import { snowLying } from "./arriving-rain.ts";
import type { Bed, KnownBeds } from "./beds.ts";
import { type Before, dryBefore, flushBefore } from "./before.ts";
import { workingOn } from "./breaks.ts";
import { LATELY } from "./crop-days.ts";
import { copyOfGone, type Gone, putGone } from "./gone.ts";
import type { SeasonInput } from "./input.ts";
import { flushLeftOn } from "./roof-catch.ts";
import { type DrySpell, drySpellOn } from "./schedule.ts";
import type { Soil } from "./soil-step.ts";
import { readyState, type SeasonState, underWeather } from "./state.ts";
import type { Used } from "./used.ts";

/** A bed on a morning: its ground [m], and what answers for its last short watering. */
export type BedMoment = Pick<Bed, "lackBefore" | "bound" | "dryTank" | "shortBound"> & {
  readonly soil: Readonly<Soil>;
};

export type Moment = Omit<Before, "day"> & {
  /** The first day that has not been run [days since 1970-01-01]. */
  readonly date: number;
  /** Reference evapotranspiration of the days before it, a week at most, the last of them last [m]. */
  readonly lately: Float64Array;
  /** Water in each tank [m3], and charge of each battery and of a second one [J], by id. */
  readonly tanks: Readonly<Record<string, number>>;
  readonly batteries: Readonly<Record<string, { readonly charge: number; readonly spare: number }>>;
  readonly beds: Readonly<Record<string, BedMoment>>;
  /** What spilled and was lost in the year before. */
  readonly gone: Gone;
  /** What of its first day was used already; left out: nothing. */
  readonly used?: Used;
};

/**
 * The whole state on the morning after a day that has been run.
 *
 * @param state the run, in the evening of that day
 * @param day the first that has not been run [day of the record]
 */
export function momentOf(state: SeasonState, day: number): Moment {
  const { record, input } = state;
  return {
    date: record.firstDay + day,
    origin: record.firstDay - state.counted,
    lately: state.eto.slice(Math.max(0, day - LATELY), day),
    ...skyBefore(state, day),
    tanks: Object.fromEntries(
      state.tanks.parts.map(({ id }, place) => [id, state.tanks.volume[place] as number]),
    ),
    batteries: Object.fromEntries(
      state.batteries.parts.map(({ id }, place) => [
        id,
        {
          charge: state.batteries.charge[place] as number,
          spare: state.batteries.spare[place] as number,
        },
      ]),
    ),
    beds: Object.fromEntries(
      state.beds.map(({ part, soil, lackBefore, bound, dryTank, shortBound }) => [
        part.id,
        { soil: { ...soil }, lackBefore, bound, dryTank, shortBound },
      ]),
    ),
    snow: snowLying(record, input.rainScale, day, state.before ?? undefined),
    gone: copyOfGone(state.gone),
  };
}

/** What the rain before a day left: first flushes that are under way, and dry spells. */
function skyBefore(state: SeasonState, day: number): Pick<Moment, "flushLeft" | "dry"> {
  const { input, arriving, dayInSeason, record, before } = state;
  const { firstDay } = record;
  const dry: Record<string, DrySpell> = {};
  for (const { part } of state.beds) {
    if (!part.letGo) continue;
    const given = { firstDay, arriving, dayInSeason, ...dryBefore(before, part.id) };
    dry[part.id] = drySpellOn(part.letGo, given, day);
  }
  return {
    flushLeft: Object.fromEntries(
      input.roofs.map((roof) => [roof.id, flushLeftOn(roof, arriving, day, flushBefore(before, roof.id))]),
    ),
    dry,
  };
}

/** Days to come: their rain and warmth, the first that of the moment, and their reference evapotranspiration [m]. */
export type Weather = {
  readonly rain: Float64Array;
  readonly highest: Float64Array | null;
  readonly lowest: Float64Array | null;
  readonly eto: Float64Array;
  /** 1 on each day whose rain is waited for, by one's own forecast; left out: on none. */
  readonly foretold?: Uint8Array;
};

/** A run that stands on a morning, ready for its first day; those of its record before it are over. */
export type GoingOn = { readonly state: SeasonState; readonly first: number };

/**
 * A run that goes on from a moment under days to come, without what is broken then.
 *
 * @param known what the whole record taught of its beds
 * @throws DomainError for a part outside its relations
 */
export function goingOn(input: SeasonInput, moment: Moment, weather: Weather, known: KnownBeds): GoingOn {
  const working = workingOn(input, moment.date);
  const first = moment.lately.length;
  const record = recordFrom(moment, weather);
  const eto = joined(moment.lately, weather.eto);
  const state = readyState(working, record, eto, known, { ...moment, day: first });
  foretell(state, weather, first);
  putBack(state, moment);
  openAccount(state);
  return { state, first };
}

/**
 * A run that goes on from another morning of the same day under other days to come, as many of them.
 *
 * @param going a run that is over: what it held is written over, its parts are those of the new one
 * @throws DomainError for a part outside its relations
 */
export function goingOnAgain({ state: over, first }: GoingOn, moment: Moment, weather: Weather): GoingOn {
  const record = recordFrom(moment, weather);
  const state = underWeather(over, record, joined(moment.lately, weather.eto), { ...moment, day: first });
  foretell(state, weather, first);
  windBack(state, moment);
  openAccount(state);
  return { state, first };
}

function foretell({ beds, length }: SeasonState, { foretold }: Weather, first: number): void {
  const days = foretold ? new Uint8Array(length) : null;
  if (foretold) days?.set(foretold, first);
  for (const bed of beds) bed.foretold = days;
}

/** Winds a run back to its moment: all that its days lean on, and all that is read of them. */
export function windBack(state: SeasonState, moment: Moment): void {
  putBack(state, moment);
  for (const series of [state.shortDay, state.drawShort, ...state.lineRan, ...state.lineMovedOn])
    series.fill(0);
  for (const bed of state.beds) {
    for (const series of [bed.given, bed.lacked, bed.lastBy, bed.unfilled]) series.fill(0);
    bed.firstShort.fill(-1);
  }
}

function joined(before: Float64Array, after: Float64Array): Float64Array {
  const all = new Float64Array(before.length + after.length);
  all.set(before);
  all.set(after, before.length);
  return all;
}

/** A record of the days of late, of which nothing but the use of water is asked any more, and of those to come. */
function recordFrom({ date, lately }: Moment, { rain, highest, lowest }: Weather): DailyRecord {
  const over = new Float64Array(lately.length);
  const unknown = over.slice().fill(Number.NaN);
  return {
    key: "",
    title: "",
    source: "",
    madeUp: false,
    firstDay: date - lately.length,
    rain: joined(over, rain),
    highest: highest && joined(unknown, highest),
    lowest: lowest && joined(unknown, lowest),
    wind: null,
    vapour: null,
    sun: null,
  };
}

export function putBack(state: SeasonState, moment: Moment): void {
  const { tanks, batteries } = state;
  tanks.parts.forEach(({ id }, place) => {
    tanks.volume[place] = moment.tanks[id] ?? (tanks.volume[place] as number);
  });
  batteries.parts.forEach(({ id }, place) => {
    const held = moment.batteries[id];
    if (!held) return;
    batteries.charge[place] = held.charge;
    batteries.spare[place] = held.spare;
    batteries.lowest[place] = held.charge;
  });
  for (const bed of state.beds) {
    const { soil, ...rest } = moment.beds[bed.part.id] ?? {};
    Object.assign(bed, rest);
    if (soil) Object.assign(bed.soil, soil);
  }
  putGone(state.gone, moment.gone);
  state.used = moment.used ?? null;
}
