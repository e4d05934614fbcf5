// What a header says: which column is the day, the rain, the warmth, and in which unit.
import { windAtTwoMetres } from "../physics/air.ts";
import { DAY, HOUR, MEGAJOULE, MILE } from "../units/constants.ts";
import type { RainUnit } from "./import-result.ts";

const RAIN =
  /precip|rain|prcp|pluie|pluvio|niederschlag|neerslag|lluvia|pioggia|chuva|^rr$|^rrr?24$|^ppt$|^pcp$|^rsk$|^rd$|^rh$|nedb[oø]r/i;
const NOT_RAIN =
  /flag|attribute|quality|qual\b|code|rate|intensity|snow|days?\b.*rain|rain days|period|hours?$|duration|prob|chance|type|indicator|source|max|month|year|week|event|storm/i;
const DATE =
  /^(date|day|datum|dato|fecha|data|timestamp|date ?time|datetime|date time.*|local date|obs? date|valid|yyyymmdd|aaaammjj|mess datum|time)$/i;
const TIME = /^(time|hour|hhmm|clock|local time|obs time|hour of day)\b/i;

/** A header cell as plain words: marks become blanks. */
export function headerWords(cell: string): string {
  return cell
    .replace(/([a-z])([A-Z])/g, "$1 $2")
    .replace(/[_\-()[\]{}/:;,#"']+/g, " ")
    .replace(/\s+/g, " ")
    .trim()
    .toLowerCase();
}

/** Whether a header names the day of a reading. */
export function namesDate(cell: string): boolean {
  return DATE.test(headerWords(cell));
}

/** Whether a header names the time of day alone. */
export function namesTime(cell: string): boolean {
  return TIME.test(headerWords(cell));
}

/** Whether a header names an amount of rain. */
export function namesRain(cell: string): boolean {
  const words = headerWords(cell);
  return RAIN.test(words) && !NOT_RAIN.test(words);
}

/** Whether a header names an amount that runs up through the day and starts again at midnight. */
export function namesRunningTotal(cell: string): boolean {
  const words = headerWords(cell);
  return namesRain(cell) && /\b(daily|today|day)\b/.test(words);
}

/** Whether a header names an amount of one hour. */
export function namesHourlyRain(cell: string): boolean {
  return /hourly|1 ?h\b|last hour/.test(headerWords(cell));
}

/** The unit of rain that a header tells, or null. A rate is no amount. */
export function rainUnitOf(cell: string): RainUnit | null {
  if (/(mm|in|inch|inches|cm)\s*(\/|\s?per\s?)\s*(h|hr|hour|min)/i.test(cell)) return null;
  const text = cell.toLowerCase();
  const words = headerWords(cell);
  if (/(0[.,]1|1\/10|tenths?( of)?( a)?)\s*-?(mm|milli)/.test(text)) return "tenth_mm";
  if (/(0[.,]01|1\/100|hundredths?( of)?( an)?)\s*-?(in|")/.test(text)) return "hundredth_in";
  if (/\bmm\b|millimet|\d ?mm\b|mm$/.test(words)) return "mm";
  if (/\bcm\b|centimet/.test(words)) return "cm";
  return /\b(in|ins|inch|inches)\b|inches$/.test(words) || /\d?"\s*\)?$/.test(text.trim()) ? "in" : null;
}

/** Which end of the day's warmth a header names, or null. */
export function temperatureEnd(cell: string): "highest" | "lowest" | null {
  const words = headerWords(cell);
  const warmth =
    /temp|\bt ?max|\bt ?min|\btx|\btn|\bhigh\b|\blow\b|max(imum)?$|min(imum)?$|\bmax\b|\bmin\b/.test(words);
  if (
    !warmth ||
    /flag|attribute|time|wind|gust|hum|rh|dew|press|soil|ground|quality|mean|avg|rain|precip/.test(words)
  ) {
    return null;
  }
  if (/max|high|\btx/.test(words)) return "highest";
  return /min|low|\btn/.test(words) ? "lowest" : null;
}

/** The unit of warmth that a header tells, or null. */
export function temperatureUnitOf(cell: string): "C" | "F" | null {
  const words = cell.replace(/[_\-()[\]/]+/g, " ");
  if (/°\s*f\b|\bdeg\.?\s*f\b|\bfahrenheit|\bf\s*$/i.test(words)) return "F";
  return /°\s*c\b|\bdeg\.?\s*c\b|celsius|centigrade|\bc\s*$/i.test(words) ? "C" : null;
}

/** Height in metres that a header tells for a wind, or null. */
function windHeight(words: string): number | null {
  const match = /\b(?:at )?(\d{1,2}(?:\.\d)?) ?m\b(?! ?s)/.exec(words);
  return match ? Number(match[1]) : null;
}

const WIND_UNITS: readonly (readonly [RegExp, number])[] = [
  [/\bkm ?h\b|\bkmh\b|\bkph\b/, 1000 / HOUR],
  [/\bmph\b|\bmi ?h\b/, MILE / HOUR],
  [/\bm s\b|\bmps\b|\bm s 1\b/, 1],
];

/**
 * Factor from a wind column to metres a second at 2 m, or null where the header leaves unit or height open.
 * @source FAO Irrigation and Drainage Paper 56, Allen et al. 1998, equation 47.
 */
export function windFactor(cell: string): number | null {
  const words = headerWords(cell);
  if (!/wind/.test(words) || /dir|gust|max|flag/.test(words)) return null;
  const height = windHeight(words);
  const unit = WIND_UNITS.find(([pattern]) => pattern.test(words));
  if (!unit || height === null || height < 0.5 || height > 50) return null;
  const atTwoMetres = height === 2 ? 1 : windAtTwoMetres(1, height);
  return unit[1] * atTwoMetres;
}

/** Factor from a vapour pressure column to pascals, or null. */
export function vapourFactor(cell: string): number | null {
  const words = headerWords(cell);
  if (!/vapou?r/.test(words) || /deficit|vpd|flag/.test(words)) return null;
  if (/\bkpa\b/.test(words)) return 1000;
  if (/\bhpa\b|\bmbar\b|\bmb\b/.test(words)) return 100;
  return /\bpa\b/.test(words) ? 1 : null;
}

/** Factor from a daily solar radiation column to joules a square metre, or null. */
export function sunFactor(cell: string): number | null {
  const words = headerWords(cell).replace(/²/g, "2");
  if (!/solar|radiation|\bsun\b|sunshine energy/.test(words) || /flag|max|hours/.test(words)) return null;
  if (/\bmj ?m ?2?/.test(words)) return MEGAJOULE;
  if (/\bkwh ?m ?2?/.test(words)) return 1000 * HOUR;
  if (/\bwh ?m ?2?/.test(words)) return HOUR;
  return /\bw ?m ?2?\b/.test(words) ? DAY : null;
}
