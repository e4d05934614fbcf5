// What the season says of the whole: all beds and tanks together.

import type { SeasonTotals } from "./answer.ts";
import { type Autonomy, lasting } from "./autonomy.ts";
import type { Bed } from "./beds.ts";
import { handsOf } from "./hands.ts";
import { BOUNDS, type Bound } from "./input.ts";
import { driestOf } from "./roof-catch.ts";
import type { Span } from "./spans.ts";
import type { SeasonState } from "./state.ts";
import { meanOf, sumOfWhole, type Tally } from "./tally.ts";

/**
 * The bound with the most unmet water, the first of equals.
 *
 * @param unmet by bound [m3]
 * @returns the bound, or null where nothing was unmet [-]
 * @source definition
 */
export function bindingOf(unmet: Float64Array): Bound | null {
  let most = 0;
  let binding: Bound | null = null;
  for (const [place, bound] of BOUNDS.entries()) {
    const amount = unmet[place] as number;
    if (amount > most) {
      most = amount;
      binding = bound;
    }
  }
  return binding;
}

/**
 * Totals of a finished run.
 *
 * @param state the run after its last day [-]
 * @param autonomy how long full tanks last [s]
 * @param errors of the water and energy accounts [-]
 * @returns totals, units at the type's fields
 * @source definition
 */
export function totalsOf(
  state: SeasonState,
  autonomy: Autonomy,
  errors: { readonly water: number; readonly energy: number },
): SeasonTotals {
  const { beds, seasons } = state;
  const unmet = unmetOf(state);
  const driest = driestOf(state.record.rain, state.years);
  const season = seasons.findIndex(({ year }) => year === driest?.year);
  const potential = beds.reduce((sum, bed) => sum + sumOfWhole(bed.potential.seasons), 0);
  const use = beds.reduce((sum, bed) => sum + sumOfWhole(bed.use.seasons), 0);
  return {
    daysOfAutonomy: lasting(autonomy),
    soilAutonomy: autonomy.soil,
    worstDate: autonomy.worst?.date ?? null,
    worstDateLasts: autonomy.worst?.lasts ?? null,
    need: beds.reduce((sum, { demand }) => sum + (demand?.seasonNeed ?? 0), 0),
    met: meanSum(beds.map(({ met }) => met)),
    shareMet: potential > 0 ? use / potential : null,
    daysShort: beds.length > 0 ? meanShort(state.shortDay, seasons) : null,
    longestShortRun: longestRun(state.shortDay),
    spill: meanSum(state.spill),
    balanceError: errors.water,
    energyBalanceError: errors.energy,
    binding: bindingOf(unmet),
    unmetByBound: byBound(unmet),
    driestYear: driest?.year ?? null,
    driestYearShareMet: shareIn(state, season),
    driestYearDaysShort: season < 0 || beds.length === 0 ? null : shortIn(state.shortDay, seasons[season]),
    driestYearShortFirst: shortFirst(state, season),
    hands: handsOf(state),
    seasons: seasons.length,
    years: state.years.length,
  };
}

/**
 * Unmet water under the names of its bounds.
 *
 * @param unmet by bound [m3]
 * @returns the same, by name [m3]
 * @source definition
 */
export function byBound(unmet: Float64Array): Record<Bound, number> {
  const of = (bound: Bound) => unmet[BOUNDS.indexOf(bound)] as number;
  return {
    rain: of("rain"),
    storage: of("storage"),
    transfer: of("transfer"),
    pump_time: of("pump_time"),
    energy: of("energy"),
    hands: of("hands"),
    held_back: of("held_back"),
  };
}

function unmetOf(state: SeasonState): Float64Array {
  const beds = state.beds.map(unmetOfBed);
  return state.drawsUnmet.map((amount, bound) =>
    beds.reduce((sum, unmet) => sum + (unmet[bound] as number), amount),
  );
}

/**
 * What a bed went without in the whole seasons.
 *
 * @param bed the bed [-]
 * @returns unmet water by bound [m3]
 * @source definition
 */
export function unmetOfBed(bed: Bed): Float64Array {
  const sum = new Float64Array(BOUNDS.length);
  for (const unmet of bed.unmet.slice(0, -1))
    unmet.forEach((amount, bound) => {
      sum[bound] = (sum[bound] as number) + amount;
    });
  return sum;
}

function meanSum(tallies: readonly Tally[]): number {
  return tallies.reduce((sum, tally) => sum + (meanOf(tally.seasons) ?? 0), 0);
}

function shareIn(state: SeasonState, season: number): number | null {
  if (season < 0) return null;
  const sum = (of: "use" | "potential") =>
    state.beds.reduce((total, bed) => total + (bed[of].seasons[season] as number), 0);
  const potential = sum("potential");
  return potential > 0 ? sum("use") / potential : null;
}

/** Beds stand in the order of their priority, so that of equals the one meant to be served first is told. */
function shortFirst(state: SeasonState, season: number): SeasonTotals["driestYearShortFirst"] {
  let first: SeasonTotals["driestYearShortFirst"] = null;
  for (const bed of season < 0 ? [] : state.beds) {
    const day = bed.firstShort[season] as number;
    const date = state.record.firstDay + day;
    if (day >= 0 && (!first || date < first.date)) first = { id: bed.part.id, date };
  }
  return first;
}

function shortIn(shortDay: Uint8Array, span: Span | undefined): number {
  let days = 0;
  if (span) for (let day = span.first; day <= span.last; day++) days += shortDay[day] as number;
  return days;
}

function meanShort(shortDay: Uint8Array, seasons: readonly Span[]): number {
  return seasons.reduce((sum, span) => sum + shortIn(shortDay, span), 0) / Math.max(1, seasons.length);
}

function longestRun(shortDay: Uint8Array): number {
  let [run, longest] = [0, 0];
  for (const short of shortDay) {
    run = short === 1 ? run + 1 : 0;
    longest = Math.max(longest, run);
  }
  return longest;
}
