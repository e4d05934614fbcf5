// Rain as water that arrives: scaled by the worksheet's factor, with snow kept back until it thaws.

import type { DailyRecord } from "../rainfall/record.ts";
import { ZERO_CELSIUS } from "../units/constants.ts";

/**
 * Highest temperature of a day up to which snow stays where it fell [K]: sun and the warmth from below melt it on a roof
 * or a sheltered bed a little under freezing. Common practice, no source.
 */
const STAYS_FROZEN = ZERO_CELSIUS - 2;

/** Snow that lies on the morning of a day of a record [m of water]. */
export type Lying = { readonly day: number; readonly snow: number };

const staysFrozen = ({ highest }: DailyRecord, day: number): boolean =>
  (highest?.[day] ?? Number.NaN) <= STAYS_FROZEN;

/**
 * Water that the sky brings to a surface on each day.
 *
 * @param record the daily record; without highest temperatures everything is rain
 * @param lying snow that lies on the morning of a day of it, whatever fell before; left out: none lies on the first [m]
 * @returns depth of each day; NaN where the record has a gap [m]
 * @validity a day that stays 2 degrees Celsius under freezing keeps its snow; the next that does not brings all of it
 * @source common practice, no source
 */
export function arrivingRain(record: DailyRecord, scale: number, lying?: Lying): Float64Array {
  const arriving = new Float64Array(record.rain.length);
  let snow = 0;
  for (let day = 0; day < arriving.length; day++) {
    const depth = (record.rain[day] as number) * scale;
    if (lying?.day === day) snow = lying.snow;
    if (staysFrozen(record, day)) {
      snow += depth;
      continue;
    }
    arriving[day] = depth + snow;
    snow = 0;
  }
  return arriving;
}

/**
 * Snow that lies on the morning of a day.
 *
 * @param day of the record, its own snow not yet fallen [day]
 * @param lying what is known of an earlier morning; left out: none lay on the first [m]
 * @returns depth as water [m]
 * @source arrivingRain
 */
export function snowLying(record: DailyRecord, scale: number, day: number, lying?: Lying): number {
  const from = lying?.day ?? 0;
  let snow = 0;
  let before = day - 1;
  for (; before >= from && staysFrozen(record, before); before--)
    snow += (record.rain[before] as number) * scale;
  return before < from ? snow + (lying?.snow ?? 0) : snow;
}

/**
 * First day without a rain reading.
 *
 * @returns day number, or null where there is no gap [days since 1970-01-01]
 */
export function firstGap(record: DailyRecord): number | null {
  const { rain, firstDay } = record;
  for (let day = 0; day < rain.length; day++) if (!Number.isFinite(rain[day])) return firstDay + day;
  return null;
}
