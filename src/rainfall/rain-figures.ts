// The figures that betray a misread file at a glance: mean yearly rain, wet days, the wettest day.
import { DAYS_A_YEAR, MILLIMETRE } from "../units/constants.ts";
import type { RainFigures } from "./import-result.ts";
import { WET_FROM, yearTotals } from "./statistics.ts";

/** Outside these a mean is questioned [m]: design, section 12. */
const LEAST_MEAN = 50 * MILLIMETRE;
const MOST_MEAN = 4000 * MILLIMETRE;

/** Mean over the days that have a reading, brought to a year; in the unit of the amounts, null without a reading. */
export function yearlyRate(rain: Float64Array): number | null {
  let [sum, days] = [0, 0];
  for (const value of rain) {
    if (Number.isNaN(value)) continue;
    sum += value;
    days++;
  }
  return days ? (sum / days) * DAYS_A_YEAR : null;
}

/** The mean of whole calendar years, else of the days that have a reading. */
function meanYearOf(record: { readonly firstDay: number; readonly rain: Float64Array }) {
  const whole = yearTotals(record).flatMap(({ rain }) => (rain === null ? [] : [rain]));
  const meanYear = whole.length
    ? whole.reduce((sum, rain) => sum + rain, 0) / whole.length
    : yearlyRate(record.rain);
  return { meanYear, wholeYears: whole.length };
}

/**
 * Figures of a daily record.
 *
 * @param record its first day and the rain of each day [m], NaN where missing
 */
export function rainFigures(record: { readonly firstDay: number; readonly rain: Float64Array }): RainFigures {
  const { firstDay, rain } = record;
  const { meanYear, wholeYears } = meanYearOf(record);
  let [wet, known, wettest] = [0, 0, 0];
  rain.forEach((value, at) => {
    if (Number.isNaN(value)) return;
    known++;
    if (value >= WET_FROM) wet++;
    if (value > (rain[wettest] ?? 0) || Number.isNaN(rain[wettest])) wettest = at;
  });
  return {
    meanYear,
    wholeYears,
    wetDays: known ? (wet / known) * DAYS_A_YEAR : 0,
    wettestRain: known ? (rain[wettest] ?? 0) : 0,
    wettestDay: firstDay + wettest,
    days: known,
    isDoubtful: meanYear !== null && (meanYear < LEAST_MEAN || meanYear > MOST_MEAN),
  };
}
