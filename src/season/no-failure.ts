// How much storage would never have failed over the record, all tanks taken as one.

import { sequentPeak } from "../physics/storage-yield.ts";
import type { NoFailure } from "./answer.ts";
import type { Bed } from "./beds.ts";
import { neverRefused } from "./demand.ts";
import { dueOn } from "./draws.ts";
import { contentKey, keeper } from "./kept.ts";
import { OPEN_WATER } from "./losses.ts";
import { isByCalendar, mayAsk } from "./schedule.ts";
import { addTo, totalOf } from "./spans.ts";
import type { SeasonState } from "./state.ts";

/** What comes into the tanks and what is asked of them on each day [m3]. */
type WholeBalance = { readonly inflow: Float64Array; readonly demand: Float64Array };

/**
 * Smallest store that would have met every watering, every draw and every loss of a record, run through twice.
 *
 * @param state a run, before or after its days
 * @returns volume [m3], or why no volume does
 * @validity all tanks as one, every litre within reach, and a day's rain at hand for that day's watering
 * @source sequent peak method: Thomas and Burden 1963, as in Loucks and van Beek, table 11.2 (read in course notes)
 */
export function noFailureStorage(state: SeasonState): NoFailure {
  const { inflow, demand } = wholeBalance(state);
  const [comes, asked] = [totalOf(inflow), totalOf(demand)];
  if (asked === 0) return { none: "nothing is asked of the tanks" };
  if (asked > comes) return { none: "over the record less comes in than is asked: no tank is big enough" };
  return { volume: sequentPeak(inflow, demand).capacity };
}

/**
 * Supply and demand of all tanks together, were no watering ever refused.
 *
 * @param state a run, before or after its days
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
  for (const bed of state.beds)
    if (bed.sources.length > 0) addTo(demand, waterings(state, bed), bed.perDepth);
  return { inflow, demand };
}

const WATERINGS = keeper<Float64Array>(4);

/** What a bed asks for on each day when it always gets it [m]: kept with its days, which hold all else that this is told from. */
function waterings({ input, record, dayInSeason }: SeasonState, bed: Bed): Float64Array {
  const { rule, letGo } = bed.part;
  return WATERINGS(bed.days, contentKey([rule, letGo, input.start, input.end]), () =>
    neverRefused(bed.part, bed.days, (day, lack) => {
      const place = dayInSeason[day] as number;
      if (place === 0 || bed.letGo?.[day] === 1) return null;
      return wantsOf(bed, day, lack, mayAsk(rule, record.firstDay + day, place));
    }),
  );
}

/** What its rule asks for on a day in its season on which its root zone lacks so much [m]. */
function wantsOf({ part: { rule }, days, perDepth }: Bed, day: number, lack: number, isDue: boolean): number {
  if (!isDue) return 0;
  if (isByCalendar(rule)) return (rule.kind === "soil" ? 0 : (rule.volume ?? 0)) / perDepth;
  return rule.kind === "weekdays" || lack >= (days.trigger[day] as number) ? lack : 0;
}
