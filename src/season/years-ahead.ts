// Weathers that the days from today to the season's end may have: that of each year of the record from this calendar day on,
// with one's own forecast over its first days.

import { hargreaves } from "../physics/reference-evapotranspiration.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { calendarDate, dayNumber, daysInMonth } from "../units/calendar.ts";
import { FORECAST_DAYS, type Forecast } from "./forecast.ts";
import type { Weather } from "./moment.ts";
import { spreadOver } from "./spread-over.ts";

/** With fewer years than these days near the same one count too, and each weather shifted by these days: our definition. */
export const MANY_YEARS = 10;
const SHIFTS: readonly number[] = [-10, -5, 0, 5, 10];

/** A year's weather from today's calendar day on, shifted by some days. */
export type YearAhead = { readonly year: number; readonly shift: number; readonly weather: Weather };

type Days = { readonly today: number; readonly last: number };

/** The same calendar day of another year. */
function dayIn(year: number, date: number): number {
  const { month, day } = calendarDate(date);
  return dayNumber(year, month, Math.min(day, daysInMonth(year, month)));
}

/**
 * Every year's weather from today to the season's end, the season of today itself left out.
 *
 * @param eto reference evapotranspiration of the record's days [m]
 * @param days today and the season's last day [days since 1970-01-01]
 * @returns of each year of the record that reaches so far; of fewer than ten years each also shifted by up to ten days
 * @source Day 1985: the past years' weather from the present state on
 */
export function yearsAhead(
  record: DailyRecord,
  eto: Float64Array,
  days: Days,
): { readonly years: number; readonly ahead: readonly YearAhead[] } {
  const [from, until] = [record.firstDay, record.firstDay + record.rain.length - 1].map(
    (date) => calendarDate(date).year,
  ) as [number, number];
  const own = calendarDate(days.today).year;
  const all = Array.from({ length: until - from + 1 }, (_, place) => from + place);
  const take = (year: number, shift: number): readonly YearAhead[] => {
    const weather = weatherFrom(record, eto, dayIn(year, days.today) + shift, days.last - days.today + 1);
    return weather && year !== own ? [{ year, shift, weather }] : [];
  };
  const plain = all.flatMap((year) => take(year, 0));
  if (plain.length >= MANY_YEARS) return { years: plain.length, ahead: plain };
  const shifted = all.flatMap((year) => SHIFTS.flatMap((shift) => take(year, shift)));
  return { years: plain.length, ahead: shifted };
}

function weatherFrom(record: DailyRecord, eto: Float64Array, date: number, length: number): Weather | null {
  const first = date - record.firstDay;
  if (first < 0 || first + length > record.rain.length) return null;
  const part = (series: Float64Array) => series.slice(first, first + length);
  return {
    rain: part(record.rain),
    highest: record.highest && part(record.highest),
    lowest: record.lowest && part(record.lowest),
    eto: part(eto),
  };
}

/**
 * Where nobody said how likely rain is, it comes in half of all past years; of made-up ones, of which only the middling run is
 * told, in all: our definitions.
 */
const UNSAID = 0.5;
const UNSAID_MADE_UP = 1;

/** The weathers of the years ahead with the forecast over their first days, in their order. */
export const weathersAhead = (
  { madeUp }: Pick<DailyRecord, "madeUp">,
  ahead: readonly YearAhead[],
  forecast: Forecast,
  today: number,
): readonly Weather[] =>
  withForecast(
    ahead.map(({ weather }) => weather),
    forecast,
    today,
    madeUp ? UNSAID_MADE_UP : UNSAID,
  );

/**
 * Weathers with the forecast over their first days: its rain in so many of them as it is likely, none in the others.
 *
 * @param today first day of the weathers [days since 1970-01-01]
 * @param unsaid chance of rain of which none was said [-]
 */
export function withForecast(
  weathers: readonly Weather[],
  forecast: Forecast,
  today: number,
  unsaid = UNSAID,
): readonly Weather[] {
  const members = weathers.length;
  // Its chance of the members get the rain of a day, others on each day.
  const ranks = Array.from({ length: FORECAST_DAYS }, (_, day) => spreadOver(members, day));
  const wet = (day: number): number => Math.round((forecast[today + day]?.chance ?? unsaid) * members);
  return weathers.map((weather, member) =>
    expecting(weather, forecast, today, (day) => (ranks[day]?.[member] ?? members) < wet(day)),
  );
}

/** Whether a day's rain is to be reckoned with in a plan, which is one run and not many: likelier than not, or not said. */
export const isLikely = (forecast: Forecast, date: number): boolean => (forecast[date]?.chance ?? 1) >= 0.5;

/**
 * A weather with the forecast over its first days; `isWet` says on which its rain comes. Rain that is reckoned with is waited
 * for: on its day beds ask for what they want besides it.
 */
export function expecting(
  weather: Weather,
  forecast: Forecast,
  today: number,
  isWet: (day: number) => boolean,
): Weather {
  if (Object.keys(forecast).length === 0) return weather;
  const own = {
    ...weather,
    rain: weather.rain.slice(),
    highest: weather.highest?.slice() ?? null,
    lowest: weather.lowest?.slice() ?? null,
    eto: weather.eto.slice(),
    foretold: new Uint8Array(weather.rain.length),
  };
  for (let day = 0; day < Math.min(FORECAST_DAYS, own.rain.length); day++) {
    const { rain = null, highest = null } = forecast[today + day] ?? {};
    if (rain !== null) own.rain[day] = isWet(day) ? rain : 0;
    if (rain !== null && isLikely(forecast, today + day)) own.foretold[day] = 1;
    if (highest !== null) heat(own, day, highest);
  }
  return own;
}

/** Any: in the ratio of two days of the same date it falls out. */
const SAME_SUN = 4e7;

/**
 * Sets a day's highest temperature; its lowest goes along, and its drying as it would by temperatures alone.
 *
 * @source FAO-56 Eq. 52; that the day's range stays is our definition
 */
function heat({ highest, lowest, eto }: Weather, day: number, to: number): void {
  const [high, low] = [highest?.[day] ?? Number.NaN, lowest?.[day] ?? Number.NaN];
  if (!highest || !lowest || !(low <= high)) return;
  const dryingAt = (warmth: number) =>
    hargreaves({ highest: warmth, lowest: warmth - (high - low), extraterrestrial: SAME_SUN });
  const before = dryingAt(high);
  if (before > 0) eto[day] = ((eto[day] as number) * dryingAt(to)) / before;
  highest[day] = to;
  lowest[day] = to - (high - low);
}
