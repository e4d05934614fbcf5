// A made-up record: twelve normals, a seed, and as many years as asked. The same seed gives the same days.
import { randomGamma, randomNormal } from "d3-random";
import { calendarDate, dayNumber } from "../units/calendar.ts";
import { daysByMonthMeans } from "./month-curve.ts";
import { MEAN_MONTH_DAYS, type RainMonth, rainMonth, wetShare } from "./rain-model.ts";
import type { DailyRecord } from "./record.ts";
import { makeRecord } from "./record-key.ts";
import { seededRandom } from "./seeded-random.ts";

export type Normals = {
  /** Mean rain of each month [m], January first. */
  readonly rain: readonly number[];
  /** Mean wet days of each month [-]. */
  readonly wetDays: readonly number[];
  /** Mean highest and lowest air temperature of each month [K]; null without temperatures. */
  readonly highs?: readonly number[] | null;
  readonly lows?: readonly number[] | null;
};

export type MadeUpWish = Normals & {
  readonly years: number;
  readonly seed: number;
  /** First calendar year of the record; 2001 unless given. */
  readonly firstYear?: number;
  /** Chain and amounts fitted to a record, in place of those that follow from the normals. */
  readonly chain?: readonly RainMonth[] | null;
  /** Scales each calendar month so that its mean over all years is the normal to the last bit that matters. */
  readonly rescale?: boolean;
  readonly title?: string;
};

const FIRST_YEAR = 2001;
const MOST_YEARS = 1000;
/** Scatter of a day's warmth about its normal [K] and how much of it lasts to the next day [-]: common practice, no source. */
const WARMTH_SPREAD = 2.5;
const WARMTH_MEMORY = 0.65;

function monthOfEachDay(firstDay: number, days: number): Uint8Array {
  const months = new Uint8Array(days);
  for (let at = 0; at < days; at++) months[at] = calendarDate(firstDay + at).month - 1;
  return months;
}

const NEVER: RainMonth = { wetAfterDry: 0, wetAfterWet: 0, shape: 0, scale: 0 };

function rainOfDays(chain: readonly RainMonth[], months: Uint8Array, seed: number): Float64Array {
  const chance = seededRandom(seed, 1);
  const amount = randomGamma.source(seededRandom(seed, 2));
  const draws = chain.map(({ shape, scale }) => (shape > 0 && scale > 0 ? amount(shape, scale) : () => 0));
  const rain = new Float64Array(months.length);
  let wet = chance() < wetShare(chain[months[0] ?? 0] ?? NEVER);
  for (let at = 0; at < months.length; at++) {
    const month = chain[months[at] ?? 0] ?? NEVER;
    if (at > 0) wet = chance() < (wet ? month.wetAfterWet : month.wetAfterDry);
    if (wet && month.shape > 0) rain[at] = draws[months[at] ?? 0]?.() ?? 0;
  }
  return rain;
}

/** Scales each calendar month's rain so that its mean over the years is the normal; a month that stayed dry stays. */
function rescaled(
  rain: Float64Array,
  months: Uint8Array,
  normal: readonly number[],
  years: number,
): Float64Array {
  const sums = new Float64Array(12);
  rain.forEach((value, at) => {
    const month = months[at] ?? 0;
    sums[month] = (sums[month] ?? 0) + value;
  });
  return rain.map((value, at) => {
    const month = months[at] ?? 0;
    const sum = sums[month] ?? 0;
    return sum > 0 ? (value * (normal[month] ?? 0) * years) / sum : value;
  });
}

type Warmth = { readonly highest: Float64Array; readonly lowest: Float64Array };

/** Highs and lows by a curve that keeps each month's mean, moved together by a lasting, seeded scatter. */
function warmthOfDays(
  highs: readonly number[],
  lows: readonly number[],
  firstDay: number,
  days: number,
  seed: number,
): Warmth {
  const draw = randomNormal.source(seededRandom(seed, 3))(0, 1);
  const fresh = WARMTH_SPREAD * Math.sqrt(1 - WARMTH_MEMORY ** 2);
  const highest = daysByMonthMeans(highs, firstDay, days);
  const lowest = daysByMonthMeans(lows, firstDay, days);
  let shift = WARMTH_SPREAD * draw();
  for (let at = 0; at < days; at++) {
    // Where a month's two means are nearly alike their curves may cross between months.
    const [high, low] = [highest[at] ?? 0, lowest[at] ?? 0];
    highest[at] = Math.max(high, low) + shift;
    lowest[at] = Math.min(high, low) + shift;
    shift = WARMTH_MEMORY * shift + fresh * draw();
  }
  return { highest, lowest };
}

function isTwelve(values: readonly number[] | null | undefined): values is readonly number[] {
  return !!values && values.length === 12 && values.every((value) => Number.isFinite(value));
}

/**
 * A made-up daily record from twelve normals: a two-state chain decides wet days, gamma amounts fill them; highs and
 * lows follow the months' means with a lasting scatter of 2.5 K that moves both alike. Parameters are held through
 * each month, so that the months' means come out as they were given.
 * @param wish normals, years (1 to 1000, whole), seed
 * @throws RangeError when a list is not of twelve numbers, or the years are none
 * @source Geng, Penning de Vries, Supit 1986, Agric. For. Meteorol. 36:363-376
 */
export function recordFromNormals(wish: MadeUpWish): DailyRecord {
  if (!isTwelve(wish.rain) || !isTwelve(wish.wetDays))
    throw new RangeError("Twelve months of rain and wet days are needed.");
  const years = Math.floor(wish.years);
  if (!(years >= 1 && years <= MOST_YEARS))
    throw new RangeError(`Years from 1 to ${MOST_YEARS} can be made up.`);
  const firstYear = wish.firstYear ?? FIRST_YEAR;
  const firstDay = dayNumber(firstYear, 1, 1);
  const days = dayNumber(firstYear + years, 1, 1) - firstDay;
  const months = monthOfEachDay(firstDay, days);
  const normal = wish.rain;
  const chain =
    wish.chain ??
    normal.map((rain, month) => rainMonth(rain, wish.wetDays[month] ?? 0, MEAN_MONTH_DAYS[month] ?? 30));
  const drawn = rainOfDays(chain, months, wish.seed);
  const rain = wish.rescale ? rescaled(drawn, months, normal, years) : drawn;
  const warm = isTwelve(wish.highs) && isTwelve(wish.lows);
  const warmth = warm ? warmthOfDays(wish.highs ?? [], wish.lows ?? [], firstDay, days, wish.seed) : null;
  return makeRecord({
    title: wish.title ?? `Made-up weather, ${years} ${years === 1 ? "year" : "years"}`,
    source: `Made up from ${wish.chain ? "a record's own fit" : "twelve monthly means"}, seed ${wish.seed}`,
    madeUp: true,
    firstDay,
    rain,
    ...(warmth ?? {}),
  });
}
