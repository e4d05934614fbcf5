// What the season says of the whole: all beds and tanks together.

import { BOUNDS, type Bound } from "../network/bounds.ts";
import type { SeasonShort, SeasonTotals, WorstSeason } from "./answer.ts";
import { type Autonomy, lasting } from "./autonomy.ts";
import { needs } from "./bed-need.ts";
import { noLacks } from "./bounds.ts";
import { handsOf } from "./hands.ts";
import { driestOf } from "./roof-catch.ts";
import type { Span } from "./spans.ts";
import type { SeasonState } from "./state.ts";
import { meanOf, sumOfWhole, type Tally } from "./tally.ts";

const NOTHING = Object.fromEntries(BOUNDS.map((bound) => [bound, 0])) as Record<Bound, number>;

/**
 * The bound with the most, the first of equals.
 *
 * @param sums by bound: short days, or unmet water [any]
 * @returns the bound, or null where there is nothing
 */
export function bindingOf(sums: Float64Array): Bound | null {
  let binding = -1;
  for (let place = 0; place < sums.length; place++)
    if ((sums[place] as number) > (binding < 0 ? 0 : (sums[binding] as number))) binding = place;
  return BOUNDS[binding] ?? null;
}

/**
 * Totals of a finished run.
 *
 * @param state the run after its last day
 * @param autonomy how long full tanks last [s]
 * @param errors of the water and energy accounts
 */
export function totalsOf(
  state: SeasonState,
  autonomy: Autonomy,
  errors: { readonly water: number; readonly energy: number },
): SeasonTotals {
  const { beds, seasons } = state;
  const unmet = sumOfBeds(state, "unmet");
  addTo(unmet, state.drawsUnmet);
  const short = sumOfBeds(state, "shortBy");
  const driest = driestOf(state.record.rain, state.years);
  const season = seasons.findIndex(({ year }) => year === driest?.year);
  const potential = beds.reduce((sum, bed) => sum + sumOfWhole(bed.potential.seasons), 0);
  const use = beds.reduce((sum, bed) => sum + sumOfWhole(bed.use.seasons), 0);
  const bySeason = bySeasonOf(state);
  return {
    daysOfAutonomy: lasting(autonomy),
    soilAutonomy: autonomy.soil,
    worstDate: autonomy.worst?.date ?? null,
    worstDateLasts: autonomy.worst?.lasts ?? null,
    need: beds.reduce((sum, bed) => sum + (meanOf(needs(bed)) ?? 0), 0),
    got: meanSum(beds.map(({ got }) => got)),
    pastRoots: meanSum(beds.map(({ met }) => met)) - meanSum(beds.map(({ got }) => got)),
    shareMet: potential > 0 ? use / potential : null,
    daysShort: beds.length > 0 ? meanShort(state.shortDay, seasons) : null,
    longestShortRun: longestRun(beds.length > 0 ? state.shortDay : state.drawShort),
    spill: meanSum(state.spill),
    balanceError: errors.water,
    energyBalanceError: errors.energy,
    binding: bindingOf(short) ?? bindingOf(state.drawsShort),
    shortDaysByBound: byBound(short),
    drawsShortByBound: byBound(state.drawsShort),
    unmetByBound: byBound(unmet),
    driestYear: driest?.year ?? null,
    driestYearShareMet: shareIn(beds, season),
    driestYearDaysShort: season < 0 || beds.length === 0 ? null : shortIn(state.shortDay, seasons[season]),
    driestYearShortFirst: shortFirst(state, season),
    hands: handsOf(state),
    worstSeason: worstOf(bySeason),
    seasonsShort: bySeason.filter(({ daysShort }) => daysShort > 0).length,
    bySeason,
    seasons: seasons.length,
    years: state.years.length,
  };
}

/**
 * Sums under the names of their bounds.
 *
 * @param sums by bound [any]
 * @returns the same, by name [any]
 */
export function byBound(sums: Float64Array): Record<Bound, number> {
  const named = { ...NOTHING };
  for (let place = 0; place < BOUNDS.length; place++) named[BOUNDS[place] as Bound] = sums[place] as number;
  return named;
}

/**
 * A bed's sums of the whole seasons.
 *
 * @param seasons by season, the last for days outside, and within it by bound [any]
 * @returns by bound [any]
 */
export function sumOfSeasons(seasons: readonly Float64Array[]): Float64Array {
  const sum = noLacks();
  for (const season of seasons.slice(0, -1)) addTo(sum, season);
  return sum;
}

/** Of all beds together. */
function sumOfBeds(state: SeasonState, of: "unmet" | "shortBy"): Float64Array {
  const sum = noLacks();
  for (const bed of state.beds) addTo(sum, sumOfSeasons(bed[of]));
  return sum;
}

function addTo(sum: Float64Array, more: Float64Array): void {
  for (let place = 0; place < sum.length; place++)
    sum[place] = (sum[place] as number) + (more[place] as number);
}

function meanSum(tallies: readonly Tally[]): number {
  return tallies.reduce((sum, tally) => sum + (meanOf(tally.seasons) ?? 0), 0);
}

function shareIn(beds: SeasonState["beds"], season: number): number | null {
  if (season < 0) return null;
  const sum = (of: "use" | "potential") =>
    beds.reduce((total, bed) => total + (bed[of].seasons[season] as number), 0);
  const potential = sum("potential");
  return potential > 0 ? sum("use") / potential : null;
}

/** What each season was for the beds. */
function bySeasonOf({ beds, seasons, shortDay }: SeasonState): readonly SeasonShort[] {
  return seasons.map((span, place) => ({
    year: span.year,
    shareMet: shareIn(beds, place),
    daysShort: shortIn(shortDay, span),
  }));
}

/** Whether a season was worse for the beds than an earlier one: more short days; of equals less of their thirst met. */
const isWorse = (season: WorstSeason, than: WorstSeason): boolean =>
  season.daysShort > than.daysShort ||
  (season.daysShort === than.daysShort && season.shareMet < than.shareMet);

/** The season that was worst for the beds, of those in which a crop stands. */
function worstOf(seasons: readonly SeasonShort[]): WorstSeason | null {
  let worst: WorstSeason | null = null;
  for (const { year, shareMet, daysShort } of seasons) {
    if (shareMet === null) continue;
    const season = { year, shareMet, daysShort };
    if (!worst || isWorse(season, worst)) worst = season;
  }
  return worst;
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
