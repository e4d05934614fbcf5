// One's own forecast of the coming days, and how it is written down as one line of text, in SI units.

import { isoDate, parseIsoDate } from "../units/calendar.ts";

export { isMuchRain, muchRainSaid } from "../happened/much-rain.ts";

/** What is expected of a day: rain [m], its chance [-], the highest temperature [K]; null: not said. */
export type Expected = {
  readonly rain: number | null;
  readonly chance: number | null;
  readonly highest: number | null;
};

/** By day [days since 1970-01-01]. */
export type Forecast = Readonly<Record<number, Expected>>;

/** Days from today on that a forecast may speak of. */
export const FORECAST_DAYS = 7;

export const NO_FORECAST: Forecast = {};

/** What can be expected at all; anything else was never said. */
const LIMITS = { rain: [0, 2], chance: [0, 1], highest: [200, 340] } as const;
const PARTS = ["rain", "chance", "highest"] as const;

/** Whether there is such weather [m, -, K]. */
export function isExpectable(part: keyof Expected, value: number): boolean {
  const [least, most] = LIMITS[part];
  return value >= least && value <= most;
}

const NOT_SAID = "-";

/** A depth that falls here as the record would have it, whose rain is multiplied to be the site's [m]. */
export const asRecorded = (depth: number, rainScale: number): number =>
  depth / (rainScale > 0 ? rainScale : 1);

/** A forecast is of this place: its rain as the record would have it. */
export const recordedForecast = (forecast: Forecast, rainScale: number): Forecast =>
  Object.fromEntries(
    Object.entries(forecast).map(([day, { rain, ...rest }]) => [
      day,
      { ...rest, rain: rain === null ? null : asRecorded(rain, rainScale) },
    ]),
  );

/** "2026-07-01 0.005 0.4 304.15; ...": day, rain, chance, heat; "" where nothing is expected. */
export function forecastText(forecast: Forecast): string {
  return Object.entries(forecast)
    .map(([day, expected]) =>
      [isoDate(Number(day)), ...PARTS.map((part) => expected[part] ?? NOT_SAID)].join(" "),
    )
    .join("; ");
}

/** The forecast that a text speaks of, of today and the six days after it; what cannot be read is left out. */
export function readForecastText(text: string, today: number): Forecast {
  const days: Record<number, Expected> = {};
  for (const item of text.split("; ")) {
    const [date = "", ...said] = item.split(" ");
    const day = parseIsoDate(date);
    if (day === null || day < today || day >= today + FORECAST_DAYS) continue;
    const [rain, chance, highest] = PARTS.map((part, place) => {
      const value = Number(said[place] || Number.NaN);
      return isExpectable(part, value) ? value : null;
    }) as [number | null, number | null, number | null];
    days[day] = { rain, chance, highest };
  }
  return days;
}
