// Sunshine and warmth of each month from the daily record, on days with rain and days without.

import panels from "../../../shared/panels.json";
import { outcomes } from "../../graph/outcomes.ts";
import { numberOf, recordOf } from "../../graph/readers.ts";
import type { Model, ModelInput } from "../../graph/types.ts";
import { drySunWetSun, WET_DAY } from "../../physics/sky-radiation.ts";
import { clearSkyRadiation, extraterrestrialRadiation, solarFromTemperature } from "../../physics/sun.ts";
import type { DailyRecord } from "../../rainfall/record.ts";
import { calendarDate, dayOfYear } from "../../units/calendar.ts";

/** Hargreaves' coefficient away from the sea [K^-0.5]: FAO-56 Eq. 50. */
const INLAND = 0.16;
const MONTHS = 12;

/** Of each month, January first. */
export type MonthlySky = {
  /** Sunshine on the level of a day without and with rain [J/m2]. */
  readonly dry: readonly number[];
  readonly wet: readonly number[];
  /** Share of the days that are wet [-]. */
  readonly wetShare: readonly number[];
  /** Mean of the day's air, and mean daily low [K]. */
  readonly air: readonly number[];
  readonly low: readonly number[];
};

function sunOf(
  record: DailyRecord,
  index: number,
  place: { readonly latitude: number; readonly elevation: number },
): number {
  const measured = record.sun?.[index];
  const above = extraterrestrialRadiation(place.latitude, dayOfYear(record.firstDay + index));
  const clearSky = clearSkyRadiation(above, place.elevation);
  if (measured !== undefined && Number.isFinite(measured)) return Math.min(Math.max(0, measured), above);
  const range = (record.highest?.[index] ?? Number.NaN) - (record.lowest?.[index] ?? Number.NaN);
  if (!Number.isFinite(range)) return Number.NaN;
  return solarFromTemperature({
    range: Math.max(0, range),
    extraterrestrial: above,
    clearSky,
    adjustment: INLAND,
  });
}

const sums = () => ({ days: 0, wet: 0, seen: 0, sun: 0, warm: 0, air: 0, low: 0 });

function add(month: ReturnType<typeof sums>, record: DailyRecord, index: number, sun: number): void {
  const [high, low] = [record.highest?.[index] ?? Number.NaN, record.lowest?.[index] ?? Number.NaN];
  month.days++;
  if ((record.rain[index] ?? 0) >= WET_DAY) month.wet++;
  if (Number.isFinite(sun)) {
    month.seen++;
    month.sun += sun;
  }
  if (Number.isFinite(high + low)) {
    month.warm++;
    month.air += (high + low) / 2;
    month.low += low;
  }
}

function skyOf(
  record: DailyRecord,
  place: { readonly latitude: number; readonly elevation: number },
): MonthlySky | null {
  const months = Array.from({ length: MONTHS }, sums);
  for (let index = 0; index < record.rain.length; index++) {
    const month = months[calendarDate(record.firstDay + index).month - 1];
    if (month) add(month, record, index, sunOf(record, index, place));
  }
  if (months.some(({ seen, warm }) => seen === 0 || warm === 0)) return null;
  const split = months.map(({ sun, seen, wet, days }) =>
    drySunWetSun(sun / seen, wet / days, panels.wet_day_ratio.value),
  );
  return {
    dry: split.map(({ dry }) => dry),
    wet: split.map(({ wet }) => wet),
    wetShare: months.map(({ wet, days }) => wet / days),
    air: months.map(({ air, warm }) => air / warm),
    low: months.map(({ low, warm }) => low / warm),
  };
}

/** The sky over the place, month by month. */
export const monthlySky: Model = {
  name: "monthly_sky",
  takes: ["record_in_use", "site.latitude", "site.elevation"],
  record: "record_in_use",
  outputs: ["sky"],
  run: (input: ModelInput) =>
    outcomes(
      {
        sky: skyOf(recordOf(input), {
          latitude: numberOf(input, "site.latitude"),
          elevation: numberOf(input, "site.elevation"),
        }),
      },
      "the record has no temperatures and no sunshine in some month, so the sun cannot be worked out",
    ),
};
