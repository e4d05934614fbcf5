// A record to twelve normals, and to the chain and amounts that are its own rather than a general relation's.

import { calendarDate } from "../units/calendar.ts";
import { MONTH_NAMES } from "../units/calendar-names.ts";
import type { Normals } from "./made-up.ts";
import { MEAN_MONTH_DAYS, type RainMonth } from "./rain-model.ts";
import type { DailyRecord } from "./record.ts";
import { WET_FROM } from "./statistics.ts";

type FittedMonth = RainMonth & {
  /** Days with a reading, and wet ones of them. */
  readonly days: number;
  readonly wetDays: number;
  /** Mean rain of a wet day [m]. */
  readonly meanWetDay: number;
};

export type FittedNormals = Required<Normals> & {
  readonly chain: readonly FittedMonth[];
  readonly notes: readonly string[];
};

type Sums = {
  days: number;
  wet: number;
  rain: number;
  logs: number;
  afterDry: number;
  wetAfterDry: number;
  afterWet: number;
  wetAfterWet: number;
  high: number;
  highs: number;
  low: number;
  lows: number;
};

function emptySums(): Sums {
  return {
    days: 0,
    wet: 0,
    rain: 0,
    logs: 0,
    afterDry: 0,
    wetAfterDry: 0,
    afterWet: 0,
    wetAfterWet: 0,
    high: 0,
    highs: 0,
    low: 0,
    lows: 0,
  };
}

function isWet(rain: number): boolean {
  // A tenth of a millimetre read from a file may lie a last bit under it.
  return rain >= WET_FROM * (1 - 1e-9);
}

function addRain(sums: Sums, today: number, yesterday: number): void {
  if (Number.isNaN(today)) return;
  sums.days++;
  const wet = isWet(today);
  if (wet) {
    sums.wet++;
    sums.rain += today;
    sums.logs += Math.log(today);
  }
  if (Number.isNaN(yesterday)) return;
  if (isWet(yesterday)) {
    sums.afterWet++;
    if (wet) sums.wetAfterWet++;
  } else {
    sums.afterDry++;
    if (wet) sums.wetAfterDry++;
  }
}

function sumsByMonth(record: DailyRecord): Sums[] {
  const months = Array.from({ length: 12 }, emptySums);
  for (let at = 0; at < record.rain.length; at++) {
    const sums = months[calendarDate(record.firstDay + at).month - 1];
    if (!sums) continue;
    addRain(sums, record.rain[at] ?? Number.NaN, record.rain[at - 1] ?? Number.NaN);
    const [high, low] = [record.highest?.[at] ?? Number.NaN, record.lowest?.[at] ?? Number.NaN];
    if (!Number.isNaN(high)) {
      sums.high += high;
      sums.highs++;
    }
    if (!Number.isNaN(low)) {
      sums.low += low;
      sums.lows++;
    }
  }
  return months;
}

/**
 * Shape of a gamma distribution from the mean and the mean logarithm: A = ln(mean) - mean(ln); (1 + sqrt(1 + 4A/3)) / 4A.
 * @param mean mean of the amounts, any unit
 * @param meanLog mean of their natural logarithms, same unit
 * @returns shape [-]; 1 where the amounts do not differ
 * @source Thom 1958, A note on the gamma distribution, Monthly Weather Review 86:117-122 (from memory)
 */
export function gammaShape(mean: number, meanLog: number): number {
  const spread = Math.log(mean) - meanLog;
  return spread > 1e-9 ? (1 + Math.sqrt(1 + (4 * spread) / 3)) / (4 * spread) : 1;
}

function fittedMonth(sums: Sums): FittedMonth {
  const share = sums.days ? sums.wet / sums.days : 0;
  const meanWetDay = sums.wet ? sums.rain / sums.wet : 0;
  const shape = sums.wet ? gammaShape(meanWetDay, sums.logs / sums.wet) : 0;
  return {
    days: sums.days,
    wetDays: sums.wet,
    meanWetDay,
    wetAfterDry: sums.afterDry ? sums.wetAfterDry / sums.afterDry : share,
    wetAfterWet: sums.afterWet ? sums.wetAfterWet / sums.afterWet : share,
    shape,
    scale: shape > 0 ? meanWetDay / shape : 0,
  };
}

function meansOf(
  months: readonly Sums[],
  sum: "high" | "low",
  count: "highs" | "lows",
): readonly number[] | null {
  return months.every((month) => month[count] > 0) ? months.map((month) => month[sum] / month[count]) : null;
}

/**
 * Normals of a record, a wet day having at least 0.1 mm, and its own chain and amounts by month.
 * @returns rain [m] and wet days of a mean month, highs and lows [K] or null, and the fit; a month without a reading is dry
 */
export function fitNormals(record: DailyRecord): FittedNormals {
  const months = sumsByMonth(record);
  const chain = months.map(fittedMonth);
  const perMonth = (value: (month: FittedMonth) => number) =>
    chain.map((month, at) => (month.days ? (value(month) / month.days) * (MEAN_MONTH_DAYS[at] ?? 30) : 0));
  const notes = chain.flatMap((month, at) =>
    month.days === 0 ? [`${MONTH_NAMES[at]} has no reading and is taken as dry.`] : [],
  );
  return {
    rain: perMonth((month) => month.meanWetDay * month.wetDays),
    wetDays: perMonth((month) => month.wetDays),
    highs: meansOf(months, "high", "highs"),
    lows: meansOf(months, "low", "lows"),
    chain,
    notes,
  };
}
