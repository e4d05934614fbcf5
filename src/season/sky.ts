// The sky over the beds: water that arrives, reference evapotranspiration, and the air where the record has it.

import { lowestHumidityFromTemperature, saturationVapourPressure } from "../physics/air.ts";
import { WIND_WHEN_UNKNOWN } from "../physics/reference-evapotranspiration.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { arrivingRain, type Lying } from "./arriving-rain.ts";
import { keeper, markOf, recordMark } from "./kept.ts";

/** Wind at 2 m [m/s] and lowest relative humidity [-] of each day; NaN where they cannot be told. */
export type Air = { readonly wind: Float64Array; readonly lowestHumidity: Float64Array };

/** Depths of each day [m], from the first day on [days since 1970-01-01]; the air, where the record has it. */
export type Sky = {
  readonly firstDay: number;
  readonly arriving: Float64Array;
  readonly eto: Float64Array;
  readonly air?: Air | null;
};

const SKIES = keeper<Sky>(4);

/**
 * The sky of a record, kept with it: the very same object for the same days.
 *
 * @param eto reference evapotranspiration of each day [m]
 * @param lying snow that lies on the morning of a day; left out: none [m]
 * @returns depths of each day [m] and the air
 * @source arrivingRain, airOf
 */
export function skyOf(record: DailyRecord, eto: Float64Array, rainScale: number, lying?: Lying): Sky {
  const key = [recordMark(record), markOf(eto), rainScale, lying?.day, lying?.snow].join(" ");
  return SKIES(record, key, () => ({
    ...skyAhead(record, eto.slice(), rainScale, lying),
    air: airOf(record),
  }));
}

/** The same of days that are run once, kept nowhere, and without their air: what that teaches is known of a longer record. */
export function skyAhead(record: DailyRecord, eto: Float64Array, rainScale: number, lying?: Lying): Sky {
  return { firstDay: record.firstDay, arriving: arrivingRain(record, rainScale, lying), eto };
}

/**
 * Wind and dryness of each day's air.
 *
 * @returns wind [m/s] and lowest relative humidity [-]; null where the record has neither wind nor vapour pressure
 * @validity without wind the world's mean of 2 m/s counts; without vapour pressure the air is taken to be saturated at the
 *   day's lowest temperature
 * @source FAO-56 Eq. 63 and 64, Table 4
 */
function airOf(record: DailyRecord): Air | null {
  const { wind, vapour, highest, lowest } = record;
  if (!wind && !vapour) return null;
  const length = record.rain.length;
  const humidity = (day: number) => {
    const [high, low, pressure] = [highest?.[day], lowest?.[day], vapour?.[day]];
    if (high === undefined || Number.isNaN(high)) return Number.NaN;
    if (pressure !== undefined && !Number.isNaN(pressure)) return pressure / saturationVapourPressure(high);
    return low === undefined || !(low <= high) ? Number.NaN : lowestHumidityFromTemperature(high, low);
  };
  return {
    wind: wind ?? new Float64Array(length).fill(WIND_WHEN_UNKNOWN),
    lowestHumidity: Float64Array.from({ length }, (_, day) => humidity(day)),
  };
}
