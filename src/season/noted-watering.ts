// Waterings that were noted, in a run of the days on which they were: the ground gets what was said, the tank loses it.

import type { Happened } from "../happened/happened.ts";
import type { Bed } from "./beds.ts";
import { isWatering } from "./happened-days.ts";
import type { Left, NotedDay } from "./noted-day.ts";
import { drawdownOf } from "./run-pump.ts";
import { discharge } from "./serve.ts";
import { soakOf } from "./soil-step.ts";
import type { Source } from "./sources.ts";
import type { SeasonState } from "./state.ts";
import { setLevel } from "./tank-moves.ts";
import { useTime } from "./used-today.ts";

/** Shortfall that is rounding rather than want [m3]. */
const ROUNDING = 1e-12;

/** What a bed got by the notes: soaked, it is what its ground lacks unless a watering of the same day says how much. */
export function notedAsk(bed: Bed, day: number, { noon }: NotedDay): number {
  const own = noon.filter((one) => isWatering(one) && one.where === bed.part.id);
  const gave = own.filter(({ what }) => what === "gave");
  if (gave.length > 0 || own.length === 0) return gave.reduce((sum, { amount }) => sum + (amount ?? 0), 0);
  return own[0]?.amount ?? soakOf(bed.days, day, bed.soil) * bed.perDepth;
}

/** What waters a bed by a note: what it names, else all that the bed has, in order. */
function sourcesOf(state: SeasonState, bed: Bed, by: string | null): readonly Source[] {
  const named = by === null ? undefined : state.sources.find(({ id }) => id === by);
  return named ? [named] : bed.sources;
}

function draw(
  state: SeasonState,
  left: Left,
  mayDraw: (tank: number) => boolean,
  took: (source: Source, held: number, amount: number) => void = () => {},
): void {
  const { tanks } = state;
  for (const source of left.sources) {
    if (left.volume <= ROUNDING) return;
    if (!mayDraw(source.tank)) continue;
    const held = tanks.volume[source.tank] as number;
    const amount = Math.min(left.volume, held - source.under);
    if (!(amount > 0)) continue;
    tanks.volume[source.tank] = held - amount;
    tanks.drawn[source.tank] = (tanks.drawn[source.tank] as number) + amount;
    left.volume -= amount;
    took(source, held, amount);
    const { energy } = source.roundVolume > 0 ? { energy: 0 } : drawdownOf(source, held, amount);
    // Water that was seen to come is no proof of what a pump that by its figures lifts none took for it.
    if (energy < Infinity) discharge(state, source, energy);
  }
}

function waterOne(state: SeasonState, { what, where, amount, by }: Happened, noted: NotedDay): void {
  const bed = state.beds.find(({ part }) => part.id === where);
  if (!bed) return;
  // Of a soak beside which a watering stands, that says how much.
  const isTold = noted.noon.some((one) => one.what === "gave" && one.where === where);
  if (what === "soaked" && isTold) return;
  const left = {
    sources: sourcesOf(state, bed, by),
    volume: what === "gave" ? (amount ?? 0) : bed.asked,
  };
  const took = (source: Source, held: number, volume: number): void =>
    useTime(state, noted.used, source, held, volume);
  draw(state, left, () => true, took);
  if (left.volume <= ROUNDING) return;
  noted.left.push(left);
  // It was given, wherever it came from: its time is over too.
  const [first] = left.sources;
  if (first) took(first, state.tanks.volume[first.tank] as number, left.volume);
}

/** Whether a bed was soaked through on a day. */
const isSoaked = (bed: Bed, { noon }: NotedDay): boolean =>
  noon.some(({ what, where }) => what === "soaked" && where === bed.part.id);

/**
 * The noted waterings of a day, with what was seen between them.
 *
 * @param state the run, its draws served and its beds having asked
 * @param day of the record [day]
 * @validity the ground gets all that was noted, whatever the tanks are reckoned to hold
 */
export function waterNoted(state: SeasonState, day: number): void {
  const { noted } = state;
  if (!noted) return;
  for (const one of noted.noon) {
    noted.before?.(one);
    if (isWatering(one)) waterOne(state, one, noted);
    else setLevel(state, one);
  }
  for (const bed of state.beds) {
    if (!noted.beds.has(bed.part.id)) continue;
    const soaked = isSoaked(bed, noted);
    if (soaked) Object.assign(bed.soil, { depletion: 0, rest: 0, layer: 0 });
    bed.given[day] = soaked ? 0 : bed.asked;
    bed.asked = 0;
  }
}

/** Whether a noted watering took more than its tank held at once. */
export const wantsRest = ({ noted }: SeasonState): boolean =>
  noted?.left.some(({ volume }) => volume > ROUNDING) === true;

/** Takes the rest of the noted waterings from tanks that have filled again. */
export function drawRest(state: SeasonState, isRefilled: (tank: number) => boolean): void {
  for (const left of state.noted?.left ?? []) draw(state, left, isRefilled);
}
