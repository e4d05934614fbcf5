// What draws from tanks for no bed: so much every so often, before any bed, all year round.

import { DAY } from "../units/constants.ts";
import { bookWater, boundOf } from "./blame.ts";
import { type Lacks, noLacks, WATER } from "./bounds.ts";
import type { DrawPart, LeftOut } from "./input.ts";
import { addWaterLacks } from "./lacks.ts";
import type { SeasonState } from "./state.ts";
import { count, newTally, type Tally } from "./tally.ts";
import type { Tanks } from "./tanks.ts";

export type DueDraw = {
  readonly id: string;
  readonly tank: number;
  readonly volume: number;
  /** Days between two draws; a fraction makes some days draw more often. */
  readonly every: number;
  readonly due: Tally;
  readonly given: Tally;
  readonly daysShort: Tally;
  readonly daysMet: { count: number };
  /** Of today: what each allowance alone would have kept from it [m3]. */
  readonly lacks: Lacks;
};

/**
 * Draws ready to run.
 *
 * @param parts sorted by id, units at the type's fields
 * @param tanks the tanks [-]
 * @param spans whole seasons and years [-]
 * @param leftOut gets a draw whose tank is gone [-]
 * @returns the draws [-]
 * @source definition
 */
export function readyDraws(
  parts: readonly DrawPart[],
  tanks: Tanks,
  spans: { readonly seasons: number; readonly years: number },
  leftOut: LeftOut[],
): readonly DueDraw[] {
  const tally = () => newTally(spans.seasons, spans.years);
  return parts.flatMap((part) => {
    const tank = tanks.placeOf.get(part.from);
    if (tank === undefined || !(part.every > 0)) {
      const reason =
        tank === undefined ? "the tank it draws from is not there" : "it has no time between draws";
      leftOut.push({ id: part.id, reason });
      return [];
    }
    const every = part.every / DAY;
    return [
      {
        id: part.id,
        tank,
        volume: part.volume,
        every,
        due: tally(),
        given: tally(),
        daysShort: tally(),
        daysMet: { count: 0 },
        lacks: noLacks(),
      },
    ];
  });
}

/**
 * What is due on a day, counted from the record's first day, on which the first is due.
 *
 * @param draw units at the type's fields
 * @param day of the record [day]
 * @returns volume [m3]
 * @source definition
 */
export function dueOn(draw: DueDraw, day: number): number {
  if (draw.every === 1) return draw.volume;
  return draw.volume * (Math.ceil((day + 1) / draw.every) - Math.ceil(day / draw.every));
}

/** Shortfall that is rounding rather than want [-]. */
const ROUNDING = 1e-9;

/**
 * Serves a draw what is due, as far as there is water.
 *
 * @param state the run [-]
 * @param draw units at the type's fields
 * @param day of the record [day]
 * @source definition
 */
export function serveDraw(state: SeasonState, draw: DueDraw, day: number): void {
  const due = dueOn(draw, day);
  if (due === 0) return;
  const { tanks, slots } = state;
  const held = tanks.volume[draw.tank] as number;
  const given = Math.min(due, Math.max(0, held - (tanks.dead[draw.tank] as number)));
  const short = due - given;
  const isShort = short > due * ROUNDING;
  if (isShort) bookShortDraw(state, draw, day, { due, short });
  tanks.volume[draw.tank] = held - given;
  tanks.drawn[draw.tank] = (tanks.drawn[draw.tank] as number) + given;
  state.ledger.waterOut += given;
  count(draw.due, slots, due);
  count(draw.given, slots, given);
  if (isShort) count(draw.daysShort, slots, 1);
  else draw.daysMet.count++;
}

/** What is due on a day and not there [m3]. */
type Shortfall = { readonly due: number; readonly short: number };

/** Books what a draw lacks, its tank as it stands before it, and by what. */
function bookShortDraw(state: SeasonState, draw: DueDraw, day: number, { due, short }: Shortfall): void {
  const { tank, lacks } = draw;
  lacks.fill(0);
  const under = state.tanks.dead[tank] as number;
  addWaterLacks(state, { tank, under }, { want: due, before: 0 }, lacks);
  const inSeason = state.slots.season < state.seasons.length;
  const litres = inSeason ? state.drawsUnmet : null;
  let bound = boundOf(state, lacks, { tank: -1, most: short });
  if (bound === WATER) bound = bookWater(state, litres, { tank, unmet: short, day });
  else if (litres) litres[bound] = (litres[bound] as number) + short;
  state.drawShort[day] = 1;
  if (inSeason) state.drawsShort[bound] = (state.drawsShort[bound] as number) + 1;
}
