// A season's own days written down as notes, and the morning that follows from the notes alone.

import type { Happened, HappenedWord } from "../../src/happened/happened.ts";
import type { DailyRecord } from "../../src/rainfall/record.ts";
import { newLog } from "../../src/season/day-log.ts";
import { STEPPING } from "../../src/season/gravity.ts";
import type { SeasonInput } from "../../src/season/input.ts";
import { goingOn, type Moment, momentOf } from "../../src/season/moment.ts";
import { knownBeds, momentToday, type TodayGiven } from "../../src/season/moment-today.ts";
import { prepareSeason, runDays } from "../../src/season/run.ts";
import { moveRoots } from "../../src/season/soil-step.ts";
import type { SeasonState } from "../../src/season/state.ts";
import { usualMorning } from "../../src/season/usual-morning.ts";

export const happening = (
  what: HappenedWord,
  where: string,
  date: number,
  amount: number | null = null,
  more: Partial<Happened> = {},
): Happened => ({ date, minute: null, side: null, what, where, amount, by: null, ...more });

function prepared(input: SeasonInput, record: DailyRecord): SeasonState {
  const state = prepareSeason(input, record);
  if ("failed" in state) throw new Error(state.failed);
  return state;
}

/** The state of a morning as it follows from notes. */
export function morning(
  input: SeasonInput,
  record: DailyRecord,
  today: number,
  happened: readonly Happened[],
  more: Partial<TodayGiven> = {},
): Moment {
  const given = {
    today,
    drying: "usual" as const,
    levels: {},
    charges: {},
    lastSoaked: {},
    happened,
    ...more,
  };
  return momentToday(prepared(input, record), given, (date) => usualMorning(input, record, date));
}

/** What is known of the first morning of a run: every tank dipped, every bed soaked, every battery read. */
export type First = {
  readonly date: number;
  readonly levels: readonly number[];
  readonly shares: readonly number[];
};

function seenFirst(input: SeasonInput, { date, levels, shares }: First): readonly Happened[] {
  const before = { side: "before" } as const;
  return [
    ...input.tanks.map(({ id, vessel }, place) =>
      happening("dipped", id, date, vessel.height * (levels[place] as number), before),
    ),
    ...input.batteries.map(({ id }, place) =>
      happening("charged", id, date, shares[place] as number, before),
    ),
    ...input.beds.map(({ id }) => happening("soaked", id, date, 0)),
  ];
}

/** A run by its rules, and all that happened in it as notes; stopped before a day on which a bed got a second tankful. */
function ranFrom(input: SeasonInput, record: DailyRecord, first: First, days: number) {
  const whole = prepared(input, record);
  const seen = seenFirst(input, first);
  const start = morning(input, record, first.date, seen);
  const from = first.date - record.firstDay;
  const part = (series: Float64Array | null) => series?.slice(from, from + days + 1) ?? null;
  const { rain, highest, lowest } = record;
  const weather = { rain: rain.slice(from, from + days + 1), highest: part(highest), lowest: part(lowest) };
  const going = goingOn(
    input,
    start,
    { ...weather, eto: whole.eto.slice(from, from + days + 1) },
    knownBeds(whole),
  );
  const { state } = going;
  state.log = newLog();
  runDays(state, STEPPING, { first: going.first, last: going.first + days - 1 });
  // A morning's roots may have moved or not: the day to come moves them, once.
  for (const bed of state.beds) moveRoots(bed.days, going.first + days, bed.soil);
  const notes: Happened[] = [...seen];
  for (let day = 0; day < days; day++) {
    state.beds.forEach(({ part: { id } }, place) => {
      for (const { id: by, volume } of state.log?.days.get(id)?.[day]?.from ?? [])
        notes.push(happening("gave", id, first.date + day, volume, { minute: 600 + place, by }));
    });
    notes.push(happening("rain", "site", first.date + day, (rain[from + day] as number) * input.rainScale));
  }
  const again = state.beds.some(({ part: { id } }) =>
    state.log?.days.get(id)?.some(({ from }) => from.some(({ wait }) => wait > 0)),
  );
  return { moment: momentOf(state, going.first + days), notes, again };
}

const apart = (one: number, other: number): boolean =>
  !(Math.abs(one - other) <= 1e-9 * Math.max(1, Math.abs(one), Math.abs(other)));

/** Where two mornings differ by more than 1e-9, in words. */
function differing(is: unknown, was: unknown, path = ""): string | null {
  if (typeof is === "number" && typeof was === "number")
    return apart(is, was) ? `${path} is ${is} instead of ${was}` : null;
  if (typeof is !== "object" || typeof was !== "object" || is === null || was === null)
    return is === was ? null : `${path} is ${String(is)} instead of ${String(was)}`;
  for (const key of Object.keys(was)) {
    const said = differing(
      (is as Record<string, unknown>)[key],
      (was as Record<string, unknown>)[key],
      `${path}.${key}`,
    );
    if (said) return said;
  }
  return null;
}

const stateOf = ({ tanks, batteries, beds, dry, snow, flushLeft }: Moment) => ({
  tanks,
  batteries,
  soils: Object.fromEntries(Object.entries(beds).map(([id, { soil }]) => [id, soil])),
  dry,
  snow,
  flushLeft,
});

/**
 * What differs between a run by its rules and the morning that its own waterings, written as notes, and a gauge read every
 * day give, where the record knows of no rain in those days; null: nothing. "again": a bed got a second tankful.
 */
export function carriedDiffers(
  input: SeasonInput,
  weather: DailyRecord,
  first: First,
  days: number,
): string | null {
  // Of made-up weather nothing counts as having fallen.
  const record = { ...weather, madeUp: false };
  const { moment, notes, again } = ranFrom(input, record, first, days);
  if (again) return null;
  const from = first.date - record.firstDay;
  const rain = record.rain.map((depth, day) => (day >= from && day < from + days ? 0 : depth));
  const carried = morning(input, { ...record, rain }, first.date + days, notes);
  return differing(stateOf(carried), stateOf(moment));
}
