// The days from a soak until the end of the coming week: the record's own as far as they are known, usual ones after.

import type { DailyRecord } from "../rainfall/record.ts";
import { calendarDate, dayInYear } from "../units/calendar.ts";
import { isMeasured } from "./measured.ts";
import type { Weather } from "./moment.ts";
import { quantile } from "./quantile.ts";

/** How fast things will dry in days that no record holds: as in a usual year, or as in the hottest in ten. */
export type Drying = "usual" | "hot";

/** Days before and after a date that tell of it, and the quantile of the years that is called hot: our definition. */
const AROUND = 7;
const HOT = 0.9;

/** Rain [m] and reference evapotranspiration [m] of each day from the first on. */
export type ComingDays = { readonly record: DailyRecord; readonly eto: Float64Array };

/**
 * Days from the first to the last: before today the record's where it measured them, else usual and dry; from today on dry.
 *
 * @param eto its reference evapotranspiration of each day [m]
 * @param dates first day, today and last day, last included [days since 1970-01-01]
 * @param drying of days that the record does not hold
 * @returns a record of those days and their evapotranspiration [m]
 * @validity no rain is counted on from today: what comes is a gift
 */
export function comingDays(
  record: DailyRecord,
  eto: Float64Array,
  dates: { readonly first: number; readonly today: number; readonly last: number },
  drying: Drying,
): ComingDays {
  const length = dates.last - dates.first + 1;
  const rain = new Float64Array(length);
  const depths = new Float64Array(length);
  for (let day = 0; day < length; day++) {
    const date = dates.first + day;
    const place = date - record.firstDay;
    const known = date < dates.today && place < eto.length && isMeasured(record, date);
    rain[day] = known ? (record.rain[place] as number) : 0;
    depths[day] = known ? (eto[place] as number) : usualDrying(eto, record.firstDay, date, drying);
  }
  const none = { highest: null, lowest: null, wind: null, vapour: null, sun: null };
  return { record: { ...record, ...none, firstDay: dates.first, rain }, eto: depths };
}

/**
 * Days to come on which no rain falls and that are as warm as they usually are.
 *
 * @param eto reference evapotranspiration of the record's days [m]
 * @param days today and the last of them [days since 1970-01-01]
 */
export function dryWeather(
  record: DailyRecord,
  eto: Float64Array,
  { today, last }: { readonly today: number; readonly last: number },
  drying: Drying,
): Weather {
  const length = last - today + 1;
  const usual = (series: Float64Array, how: Drying) =>
    Float64Array.from({ length }, (_, day) => usualDrying(series, record.firstDay, today + day, how));
  return {
    rain: new Float64Array(length),
    highest: record.highest && usual(record.highest, "usual"),
    lowest: record.lowest && usual(record.lowest, "usual"),
    eto: usual(eto, drying),
  };
}

/**
 * Reference evapotranspiration to be reckoned with on a date that lies ahead.
 *
 * @param eto of each day of a record [m]
 * @param firstDay day of its element 0 [days since 1970-01-01]
 * @param date the day [days since 1970-01-01]
 * @param drying usual: the mean of the years; hot: what nine years in ten stay under
 * @returns of each year the mean of the fifteen days around the date, over the years [m]
 */
export function usualDrying(eto: Float64Array, firstDay: number, date: number, drying: Drying): number {
  const { month, day } = calendarDate(date);
  const text = `${String(month).padStart(2, "0")}-${String(day).padStart(2, "0")}`;
  const means: number[] = [];
  const lastYear = calendarDate(firstDay + eto.length - 1).year;
  for (let year = calendarDate(firstDay).year - 1; year <= lastYear + 1; year++) {
    const middle = (dayInYear(text, year) ?? 0) - firstDay;
    const days = eto.subarray(Math.max(0, middle - AROUND), Math.max(0, middle + AROUND + 1));
    if (days.length > 0) means.push(days.reduce((sum, depth) => sum + depth, 0) / days.length);
  }
  if (drying === "hot") return quantile(means, HOT);
  return means.length > 0 ? means.reduce((sum, mean) => sum + mean, 0) / means.length : 0;
}
