// How much storage would never have failed over the record, all tanks taken as one.

import { sequentPeak } from "../physics/storage-yield.ts";
import type { NoFailure } from "./answer.ts";
import type { Bed } from "./beds.ts";
import { neverRefused } from "./demand.ts";
import { dueOn } from "./draws.ts";
import { OPEN_WATER } from "./losses.ts";
import { isByCalendar, mayAsk } from "./schedule.ts";
import type { SeasonState } from "./state.ts";

/** What comes into the tanks and what is asked of them on each day [m3]. */
type WholeBalance = { readonly inflow: Float64Array; readonly demand: Float64Array };

/**
 * Smallest store that would have met every watering, every draw and every loss of a record, run through twice.
 *
 * @param state a run, before or after its days [-]
 * @returns volume [m3], or why no volume does
 * @validity all tanks as one, every litre within reach, and a day's rain at hand for that day's watering
 * @source sequent peak method: Thomas and Burden 1963, as in Loucks and van Beek, table 11.2 (read in course notes)
 */
export function noFailureStorage(state: SeasonState): NoFailure {
  const { inflow, demand } = wholeBalance(state);
  const [comes, asked] = [sumOf(inflow), sumOf(demand)];
  if (asked === 0) return { none: "nothing is asked of the tanks" };
  if (asked > comes) return { none: "over the record less comes in than is asked: no tank is big enough" };
  return { volume: sequentPeak(inflow, demand).capacity };
}

/**
 * Supply and demand of all tanks together, were no watering ever refused.
 *
 * @param state a run, before or after its days [-]
 * @returns volumes of each day [m3]
 */
function wholeBalance(state: SeasonState): WholeBalance {
  const { tanks, length, arriving, eto } = state;
  const inflow = new Float64Array(length);
  for (const water of state.roofWater) if (water) addTo(inflow, water, 1);
  const demand = new Float64Array(length);
  const open = tanks.openArea.reduce((sum, area) => sum + area, 0);
  const leak = tanks.leak.reduce((sum, volume) => sum + volume, 0);
  addTo(inflow, arriving, open);
  for (let day = 0; day < length; day++) {
    demand[day] = leak + open * OPEN_WATER * (eto[day] as number);
    for (const draw of state.draws) demand[day] = (demand[day] as number) + dueOn(draw, day);
  }
  for (const bed of state.beds) addTo(demand, waterings(state, bed), 1);
  return { inflow, demand };
}

/** What a bed asks for on each day when it always gets it [m3]; nothing where nobody waters it. */
function waterings(state: SeasonState, bed: Bed): Float64Array {
  const { dayInSeason, length, record } = state;
  const { rule } = bed.part;
  if (bed.sources.length === 0) return new Float64Array(length);
  const wants = (day: number, lack: number): number | null => {
    const place = dayInSeason[day] as number;
    if (place === 0 || bed.letGo?.[day] === 1) return null;
    if (!mayAsk(rule, record.firstDay + day, place)) return 0;
    if (isByCalendar(rule)) return (rule.kind === "soil" ? 0 : (rule.volume ?? 0)) / bed.perDepth;
    return rule.kind === "weekdays" || lack >= (bed.days.trigger[day] as number) ? lack : 0;
  };
  return neverRefused(bed.part, bed.days, wants).map((depth) => depth * bed.perDepth);
}

function addTo(sum: Float64Array, series: Float64Array, factor: number): void {
  for (let day = 0; day < sum.length; day++)
    sum[day] = (sum[day] as number) + (series[day] as number) * factor;
}

function sumOf(series: Float64Array): number {
  return series.reduce((sum, volume) => sum + volume, 0);
}
