// `--forecast`: rain, its chance and heat of the coming days, as they are typed.

import { type Expected, FORECAST_DAYS, forecastText, isExpectable } from "../season/forecast.ts";
import { isoDate, parseIsoDate } from "../units/calendar.ts";
import { readQuantity } from "../units/read.ts";
import { UsageError } from "./usage.ts";

/** One day of it: "5 mm 40 % 31 degC", in any order. */
function expectedOf(text: string): Expected {
  const parts = [...text.matchAll(/([-+]?\d*\.?\d+)\s*([^\s\d]+)/g)];
  const rest = text.replace(/([-+]?\d*\.?\d+)\s*([^\s\d]+)/g, "").trim();
  if (parts.length === 0 || rest !== "")
    throw new UsageError(`--forecast: "${text}" is no rain, chance or heat; like "5 mm 40 % 31 degC".`);
  let expected: Expected = { rain: null, chance: null, highest: null };
  for (const [word, number, unit] of parts) {
    const said =
      unit === "%" ? { chance: chanceOf(Number(number)) } : amountOf(word.replace(/(\d)([a-zA-Z])/, "$1 $2"));
    for (const part of Object.keys(said) as (keyof Expected)[])
      if (expected[part] !== null)
        throw new UsageError(`--forecast: "${text}" says ${NAMES[part]} twice; say it once.`);
    expected = { ...expected, ...said };
  }
  if (expected.rain === null && expected.highest === null)
    throw new UsageError(`--forecast: "${text}" is a chance of no rain that was said; like "5 mm 40 %".`);
  return expected;
}

const NAMES: Readonly<Record<keyof Expected, string>> = {
  rain: "rain",
  chance: "its chance",
  highest: "heat",
};

function chanceOf(percent: number): number {
  if (!(percent >= 0 && percent <= 100)) throw new UsageError(`--forecast: ${percent} % is no chance.`);
  return percent / 100;
}

function amountOf(text: string): Partial<Expected> {
  const rain = readQuantity(text, { measure: "rain", locale: "en-US" });
  if (rain.ok && isExpectable("rain", rain.si)) return { rain: rain.si };
  const heat = readQuantity(text, { measure: "temperature", locale: "en-US" });
  if (heat.ok && isExpectable("highest", heat.si)) return { highest: heat.si };
  if (rain.ok || heat.ok) throw new UsageError(`--forecast: no weather is like "${text}".`);
  throw new UsageError(`--forecast: "${text}" is neither rain, such as 5 mm, nor heat, such as 31 degC.`);
}

/**
 * A forecast as it is typed, "2026-07-01=5 mm 40 % 31 degC,2026-07-02=0 mm", as the text that is laid over the worksheet.
 *
 * @throws UsageError for what is none, and for days that it cannot speak of
 */
export function typedForecast(text: string, from: string): string {
  const today = parseIsoDate(from) ?? 0;
  const days: Record<number, Expected> = {};
  for (const item of text.split(",").map((part) => part.trim())) {
    if (item === "") continue;
    const at = item.indexOf("=");
    const day = at < 0 ? null : parseIsoDate(item.slice(0, at).trim());
    if (day === null) throw new UsageError(`--forecast wants YYYY-MM-DD=..., not "${item}".`);
    if (day < today || day >= today + FORECAST_DAYS)
      throw new UsageError(
        `--forecast speaks of ${isoDate(today)} to ${isoDate(today + FORECAST_DAYS - 1)}, not of ${isoDate(day)}.`,
      );
    if (days[day])
      throw new UsageError(
        `--forecast has ${isoDate(day)} twice, the second time as "${item}"; leave one out.`,
      );
    days[day] = expectedOf(item.slice(at + 1).trim());
  }
  return forecastText(days);
}
