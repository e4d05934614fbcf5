// Every day of every part of a run, so that anybody can add them up: what came, what went, and what was there in the evening.

import { DomainError } from "../physics/domain-error.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import type { SeasonFailure } from "./answer.ts";
import type { ChargeBook } from "./batteries.ts";
import { type BedDay, newLog } from "./day-log.ts";
import type { SeasonInput } from "./input.ts";
import { prepareSeason, runDays } from "./run.ts";
import type { SeasonState } from "./state.ts";

/** One number of a part on each day of the record. */
export type DayColumn = {
  readonly part: string;
  readonly name: string;
  readonly unit: "m3" | "J" | "s" | "m";
  readonly values: Float64Array;
};

export type DaySeries = { readonly firstDay: number; readonly columns: readonly DayColumn[] };

/** What a tank's day is made of: the evening's water is that of the evening before, and all of these added. */
const TANK_DAY = ["from_roofs", "rain", "overflow_in", "lines"] as const;
/** And these taken off. */
const TANK_LOSS = ["overflow_out", "spilled", "drawn", "evaporated", "leaked"] as const;
type TankDays = Record<(typeof TANK_DAY)[number] | (typeof TANK_LOSS)[number], Float64Array>;

/**
 * Every day of a run.
 * The same run as runSeason, watched in the evening of each day.
 *
 * @param input units at the type's fields
 * @param record the daily record
 * @returns columns of all parts, by kind and id, or why there are none
 */
export function daySeries(input: SeasonInput, record: DailyRecord): DaySeries | SeasonFailure {
  const state = prepareSeason(input, record);
  if ("failed" in state) return state;
  const tanks = watchTanks(state);
  const draws = watchDraws(state);
  state.log = newLog();
  try {
    runDays(state);
  } catch (error) {
    if (error instanceof DomainError) return { failed: error.message, at: null };
    throw error;
  }
  return {
    firstDay: state.record.firstDay,
    columns: [
      column("weather", "rain", state.arriving, "m"),
      column("weather", "reference_evapotranspiration", state.eto, "m"),
      ...state.tanks.parts.flatMap(({ id }, place) => tankColumns(state, id, place, tanks[place])),
      ...state.pipes.lines.flatMap(({ id }, place) => [
        column(id, "moved", state.lineMovedOn[place] ?? NOTHING),
        column(id, "ran", state.lineRan[place] ?? NOTHING, "s"),
      ]),
      ...state.draws.map(({ id }, place) => column(id, "given", draws[place] ?? NOTHING)),
      ...[...state.beds]
        .sort((a, b) => (a.part.id < b.part.id ? -1 : 1))
        .flatMap((bed) => bedColumns(bed, state.log?.days.get(bed.part.id) ?? [])),
      ...state.batteries.parts.flatMap(({ id }, place) => batteryColumns(id, state.batteries.books[place])),
    ],
  };
}

const NOTHING = new Float64Array(0);

const column = (
  part: string,
  name: string,
  values: Float64Array,
  unit: DayColumn["unit"] = "m3",
): DayColumn => ({ part, name, unit, values });

/** Sees to it that each evening is noted of every tank; gets each tank's days. */
function watchTanks(state: SeasonState): readonly TankDays[] {
  const { tanks, length } = state;
  const days = tanks.parts.map(
    () =>
      Object.fromEntries(
        [...TANK_DAY, ...TANK_LOSS].map((name) => [name, new Float64Array(length)]),
      ) as TankDays,
  );
  const before = { evaporated: state.evaporated.slice(), leaked: state.leaked.slice() };
  state.watch = (day) => {
    for (const [place, tank] of days.entries()) noteTank(state, { tank, place, day, before });
    for (const [place, tank] of days.entries()) {
      const next = days[tanks.overflowsTo[place] as number];
      if (next)
        next.overflow_in[day] = (next.overflow_in[day] as number) + (tank.overflow_out[day] as number);
    }
    before.evaporated.set(state.evaporated);
    before.leaked.set(state.leaked);
  };
  return days;
}

type Noting = {
  readonly tank: TankDays;
  readonly place: number;
  readonly day: number;
  readonly before: Pick<SeasonState, "evaporated" | "leaked">;
};

function noteTank(state: SeasonState, { tank, place, day, before }: Noting): void {
  const { tanks, pipes } = state;
  tank.from_roofs[day] = state.roofWater[place]?.[day] ?? 0;
  tank.rain[day] = tanks.rained[place] as number;
  tank.overflow_out[day] = tanks.passedOn[place] as number;
  tank.spilled[day] = tanks.spilled[place] as number;
  tank.drawn[day] = tanks.drawn[place] as number;
  tank.evaporated[day] = (state.evaporated[place] as number) - (before.evaporated[place] as number);
  tank.leaked[day] = (state.leaked[place] as number) - (before.leaked[place] as number);
  let lines = 0;
  for (const [i, { from, to }] of pipes.lines.entries()) {
    const moved = state.lineMovedOn[i]?.[day] as number;
    if (to?.place === place && !to.isTee) lines += moved;
    if (from.place === place && !from.isTee) lines -= moved;
  }
  tank.lines[day] = lines;
}

function tankColumns(
  state: SeasonState,
  id: string,
  place: number,
  days: TankDays | undefined,
): readonly DayColumn[] {
  const flows = [...TANK_DAY, ...TANK_LOSS].map((name) => column(id, name, days?.[name] ?? NOTHING));
  return [column(id, "stored", state.stored[place] ?? NOTHING), ...flows];
}

/** What each draw was given, day by day: its sums before and after. */
function watchDraws(state: SeasonState): readonly Float64Array[] {
  const days = state.draws.map(() => new Float64Array(state.length));
  const given = ({ given: { years } }: SeasonState["draws"][number]) =>
    years.reduce((sum, amount) => sum + amount, 0);
  const before = state.draws.map(given);
  const { watch } = state;
  state.watch = (day) => {
    watch?.(day);
    for (const [place, draw] of state.draws.entries()) {
      const now = given(draw);
      (days[place] as Float64Array)[day] = now - (before[place] as number);
      before[place] = now;
    }
  };
  return days;
}

/** What its ground lacks in the evening is what it lacked before, less what it kept, and what was used and dried added. */
function bedColumns(bed: SeasonState["beds"][number], days: readonly BedDay[]): readonly DayColumn[] {
  const { id } = bed.part;
  const of = (name: string, value: (day: BedDay) => number) =>
    column(id, name, Float64Array.from(days, value));
  const volume = (name: string, depth: (day: BedDay) => number) => of(name, (day) => depth(day) * bed.ground);
  return [
    of("asked", ({ asked }) => asked),
    of("given", ({ given }) => given),
    volume("kept", ({ kept }) => kept),
    volume("rain_kept", ({ rain }) => rain),
    volume("used", ({ use }) => use),
    volume("could_use", ({ potential }) => potential),
    volume("dried_bare", ({ dried }) => dried),
    volume("lacks_roots", ({ depletion }) => depletion),
    volume("lacks_below", ({ rest }) => rest),
  ];
}

function batteryColumns(id: string, book: ChargeBook | undefined): readonly DayColumn[] {
  if (!book) return [];
  const { stored, entered, used, lost } = book;
  return Object.entries({ stored, entered, used, lost }).map(([name, values]) =>
    column(id, name, values, "J"),
  );
}
