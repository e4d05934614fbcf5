// What is due to a draw is taken from its tank, and what it lacks is booked.

import { bookWater, boundOf } from "./blame.ts";
import { clearLacks, WATER } from "./bounds.ts";
import { type DueDraw, dueOn } from "./draws.ts";
import { addWaterLacks } from "./lacks.ts";
import type { SeasonState } from "./state.ts";
import { count } from "./tally.ts";

/** Shortfall that is rounding rather than want [-]. */
const ROUNDING = 1e-9;

/**
 * Serves a draw what is due, as far as there is water.
 *
 * @param day of the record [day]
 */
export function serveDraw(state: SeasonState, draw: DueDraw, day: number): void {
  const due = dueOn(draw, day + state.counted);
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
  clearLacks(lacks);
  const under = state.tanks.dead[tank] as number;
  addWaterLacks(state, { tank, under }, { want: due, before: 0, day }, lacks);
  const inSeason = state.slots.season < state.seasons.length;
  const litres = inSeason ? state.drawsUnmet : null;
  let bound = boundOf(state, lacks, -1, short);
  if (bound === WATER) bound = bookWater(state, litres, { tank, unmet: short, day });
  else if (litres) litres[bound] = (litres[bound] as number) + short;
  state.drawShort[day] = 1;
  if (inSeason) state.drawsShort[bound] = (state.drawsShort[bound] as number) + 1;
}
