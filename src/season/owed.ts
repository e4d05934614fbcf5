// What beds that got some water today still want of what they asked for this morning.

import type { Happened } from "../happened/happened.ts";
import { askOf } from "./decide.ts";
import { isWatering } from "./happened-days.ts";
import { goingOn, type Weather } from "./moment.ts";
import { knownBeds, momentToday, type TodayGiven, type Usual } from "./moment-today.ts";
import { moveRoots } from "./soil-step.ts";
import type { SeasonState } from "./state.ts";

/** Less than this share of what was asked for is not asked for again: our definition. */
const LEAST = 1 / 20;

/** How things were before anything was watered today. */
function beforeWatering(given: TodayGiven, watered: readonly Happened[]): TodayGiven {
  const { today, happened = [], lastSoaked } = given;
  const soaked = Object.entries(lastSoaked).filter(([, day]) => day !== today);
  return {
    ...given,
    happened: happened.filter((one) => !watered.includes(one)),
    lastSoaked: Object.fromEntries(soaked),
  };
}

/**
 * What each bed that was watered today still wants: this morning's asking less what it got, whatever its rule would ask of
 * the ground as it is now.
 *
 * @param weather of the days from today on
 * @returns by id [m3]; a bed that was soaked through wants nothing
 */
export function owedToday(
  whole: SeasonState,
  given: TodayGiven,
  usual: Usual,
  weather: Weather,
): ReadonlyMap<string, number> {
  const watered = (given.happened ?? []).filter((one) => one.date === given.today && isWatering(one));
  const ids = new Set(watered.map(({ where }) => where));
  if (ids.size === 0) return new Map();
  const moment = momentToday(whole, beforeWatering(given, watered), usual);
  const { state, first } = goingOn(whole.input, moment, weather, knownBeds(whole));
  const place = state.dayInSeason[first] as number;
  return new Map(
    state.beds
      .filter(({ part }) => ids.has(part.id))
      .map((bed): [string, number] => {
        const own = watered.filter(({ where }) => where === bed.part.id);
        if (place === 0 || own.some(({ what }) => what === "soaked")) return [bed.part.id, 0];
        moveRoots(bed.days, first, bed.soil);
        const asked = askOf(bed, first, place, given.today);
        const left = asked - own.reduce((sum, { amount }) => sum + (amount ?? 0), 0);
        return [bed.part.id, left > asked * LEAST ? left : 0];
      }),
  );
}
