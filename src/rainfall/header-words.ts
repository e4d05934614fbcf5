// What a header says: which column is the day, the rain, the warmth, and in which unit.
import { windAtTwoMetres } from "../physics/air.ts";
import { DAY, HOUR, MEGAJOULE, MILE } from "../units/constants.ts";
import type { RainUnit, RowsTold } from "./import-result.ts";

const RAIN =
  /pr[eé]cip|(?<!\b[dtgb]|\bst|ter)rain|prcp|pluie|pluvio|niederschlag|neerslag|lluvia|pioggia|chuva|^rr$|^rrr?24$|^ppt$|^pcp$|^rsk$|^rd$|nedb[oø]r|regen|\bregn|nederb|opad|deszcz/i;
/** What a column holds that is no amount of rain, whatever its unit. */
const OTHER =
  /evap|\bet ?[0op]?\b|\bpan\b|snow|pressure|\bbaro|\blevel|\bstage\b|rate\b|intensity|temp|wind|gust|humid|soil|moisture|solar|radiat|discharge|dew|visib|cloud|\belev|\blat\b|\blon|flag|attribute|quality|qual\b|code|prob|chance|battery|volt|\bdrain|\btips\b|\bpulses?\b/i;
/** An amount to the hour or minute. */
const RATE = /(mm|in|inch|inches|cm)\s*(\/|\s?per\s?)\s*(h|hr|hour|min)/i;
const NOT_RAIN =
  /days?\b.*rain|rain days|period|hours?$|duration|type|indicator|source|max|month|year|annual|week|event|storm/i;
/** Names that tell nothing but that something was measured. */
const VAGUE =
  /^(value|values|amount|amounts|obs|observed|observation|reading|readings|total|daily total|data|measurement|measured|sum)?$/;
const UNIT_WORDS = /\b(mm|cm|in|ins|inch|inches|millimet(re|er)s?|tenths?|hundredths?|of|a|an|\d+)\b/g;
const DATE =
  /^(date|day|datum|dato|fecha|data|timestamp|date ?time|datetime|date time.*|local date|obs? date|valid|yyyymmdd|aaaammjj|mess datum|time)$/i;
const TIME = /^(time|hour|hours|hr|hrs|hh|hhmm|hh mm|clock|local time|obs time|hour of day|utc)\b/i;
/** Units that are written with capitals within them. */
const CAPITALS = /\b(kpa|hpa|mbar|kwh|mj)(?![a-z])/gi;

/** A header cell as plain words: marks become blanks. */
export function headerWords(cell: string): string {
  return cell
    .replace(CAPITALS, (unit) => unit.toLowerCase())
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
  return RAIN.test(words) && !NOT_RAIN.test(words) && !OTHER.test(words) && !RATE.test(cell);
}

/** Whether a header names something else than an amount of rain. */
export function namesOther(cell: string): boolean {
  const words = headerWords(cell);
  return OTHER.test(words) || RATE.test(cell) || (!RAIN.test(words) && NOT_RAIN.test(words));
}

/** Whether a header tells nothing of what was measured, beside its unit. */
export function isVague(cell: string): boolean {
  return VAGUE.test(
    headerWords(cell)
      .replace(UNIT_WORDS, "")
      .replace(/[^a-z ]/g, "")
      .trim(),
  );
}

/** Whether a header names the station that a row is of. */
export function namesStation(cell: string): boolean {
  return /^(station|stn|site|location|gauge|gage)( (id|name|no|number|code))?$|^(name|id|staid)$/.test(
    headerWords(cell),
  );
}

/** Whether a header names an amount that runs up through the day and starts again at midnight. */
export function namesRunningTotal(cell: string): boolean {
  const words = headerWords(cell);
  return namesRain(cell) && /\b(daily|today|day)\b/.test(words);
}

/** An amount over a day or two, which overlaps that of the next row where rows stand closer. */
const WINDOW = /\b(48|24) ?h(r|rs|ours?)?\b/;
/** An amount over some hours of a day. */
const HOURS = /\b(\d{1,2}) ?h(?:r|rs|ours?|ourly)?\b/;
const LONG_TOTAL = /\b(monthly|month|mtd|yearly|annual|year|ytd|to date)\b/;
const OPEN_TOTAL =
  /\b(cumulative|cumulated|accumulated|accumulation|accum|counter|running total|total count)\b/;

/** Whether a header names a total over a month or a year: rain only as a counter. */
export function namesCounter(cell: string): boolean {
  const words = headerWords(cell);
  return RAIN.test(words) && LONG_TOTAL.test(words) && !OTHER.test(words);
}

/** What a header says that a row of its rain is, or null. */
export function rowsToldBy(cell: string): RowsTold {
  if (namesCounter(cell)) return "counter";
  if (namesRunningTotal(cell)) return "running_total";
  if (namesHourlyRain(cell)) return "sum";
  if (WINDOW.test(headerWords(cell))) return "window";
  return OPEN_TOTAL.test(headerWords(cell)) ? "total" : null;
}

/** Hours that a header says its amounts to be totals of, where they are several and less than a day; else null. */
export function windowHoursOf(cell: string): number | null {
  const hours = Number(HOURS.exec(headerWords(cell))?.[1] ?? 0);
  return hours > 1 && hours < 24 ? hours : null;
}

/** Whether a header names an amount of one hour. */
export function namesHourlyRain(cell: string): boolean {
  return /hourly|1 ?h\b|last hour/.test(headerWords(cell));
}

const TENTH_MM =
  /((?<![\d.,])0?[.,]1|1\/10|(tenths?|10ths?)( of)?( a)?)\s*-?(mm|milli)|mm\s*(\/|[x*×]\s*)10\b/;
const HUNDREDTH_IN =
  /(0?[.,]01|1\/100|(hundredths?|100ths?)( of)?( an)?)\s*-?(in|")|\bin(ch(es)?)?\s*(\/|[x*×]\s*)100\b/;

/** The unit of rain that a header tells, or null. A rate is no amount. */
export function rainUnitOf(cell: string): RainUnit | null {
  if (RATE.test(cell)) return null;
  const text = cell.toLowerCase();
  const words = headerWords(cell);
  if (TENTH_MM.test(text)) return "tenth_mm";
  if (HUNDREDTH_IN.test(text)) return "hundredth_in";
  // Steps of 0.2 mm are counts of something, or amounts: nobody can tell.
  if (/\d?[.,]\d+\s*-?(mm|milli|cm|centi|in\b|inch|")/.test(text)) return null;
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
