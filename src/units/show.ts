// A number in SI as a grower reads it: the worksheet's unit or the number's own, by the form of its measure.

import { clockText } from "./clock.ts";
import { DAY, MINUTE } from "./constants.ts";
import { withCurrency } from "./currency.ts";
import { durationText, spanText } from "./duration-text.ts";
import { MEASURES, type Measure, type MeasureName, type UnitSystem } from "./measures.ts";
import { roundedDays, roundedIn, roundedPercent, roundedUsual } from "./rounding.ts";
import { fixedNumber, showNumber, superscript } from "./show-number.ts";
import { signsOf } from "./signs.ts";
import { inUnit } from "./suits.ts";
import { fromSi, type Part, parseUnit, unitParts } from "./unit.ts";

export { showNumber } from "./show-number.ts";

export type ShowOptions = {
  readonly units: UnitSystem;
  readonly locale: string;
  /** The worksheet's currency sign or code. */
  readonly currency: string;
  /** The number's own unit, used where it suits the measure. */
  readonly unit?: string;
  /** Significant figures, where fewer than the measure's are enough, as in a sentence. */
  readonly figures?: number;
  /** As a grower says it, three figures at the most; else as exactly as the measure is held. What was typed is never rounded. */
  readonly rounded?: boolean;
  /** A usual value that nobody typed: where it is rounded, it is no finer than its table had it in another unit. */
  readonly usual?: boolean;
};

export type DisplayParts = { readonly number: string; readonly unit: string };

const CUBIC_MILLIMETRE = 1e-9;
const NO_BREAK = "\u00a0";
/** The unit in which a system of units shows a measure. */
export function unitFor(measure: MeasureName, units: UnitSystem): string {
  return MEASURES[measure][units];
}

function labelOfPart({ unit, power }: Part): string {
  return Math.abs(power) === 1 ? unit.label : `${unit.label}${superscript(Math.abs(power))}`;
}

/** A unit as it stands beside a number: "ft²", "°F", "gal/in"; nothing for the plain unit. */
export function unitLabel(unitText: string): string {
  const parts = unitParts(unitText);
  if ("message" in parts) return unitText;
  const named = parts.filter(({ unit }) => unit.name !== "1");
  const above = named.filter(({ power }) => power > 0).map(labelOfPart);
  const below = named.filter(({ power }) => power < 0).map(labelOfPart);
  if (above.length + below.length === 0) return "";
  return [above.join(NO_BREAK) || "1", ...below].join("/");
}

function moneyText(value: number, figures: number, { locale, currency }: ShowOptions): string {
  const cents = Math.abs(value) < 1000 && Math.abs(value) >= 1 && Number(value.toFixed(2)) % 1 !== 0;
  const number = cents ? fixedNumber(value, 2, locale, 2) : showNumber(value, figures, locale);
  return withCurrency(number, currency, locale);
}

function isMoneyUnit(unitText: string): boolean {
  return unitText === "money" || unitText.startsWith("money/");
}

function plainParts(value: number, unitText: string, figures: number, options: ShowOptions): DisplayParts {
  if (isMoneyUnit(unitText)) {
    const rest = unitLabel(unitText).slice("money".length);
    return { number: moneyText(value, figures, options), unit: rest };
  }
  const spelled = spelledUnit(value, unitText);
  return { number: showNumber(value, figures, options.locale), unit: spelled ?? unitLabel(unitText) };
}

/** "1 day" but "19 days": the units of time that are words. */
function spelledUnit(value: number, unitText: string): string | null {
  if (!/^(day|week|year)$/.test(unitText)) return null;
  return value === 1 ? unitText : `${unitText}s`;
}

/** From so much on, whole minutes are near enough where few figures are asked for [s]. */
const MINUTES_ALONE_FROM = 2 * MINUTE;

/** From so much on, whole minutes are near enough where a number is rounded [s]. */
const MINUTES_ROUNDED_FROM = 5 * MINUTE;

const daysOf = (si: number): number => roundedDays(si / DAY) * DAY;

/** A time in words where its measure is told so; null for any other. */
function timeText(si: number, { form, figures: most }: Measure, options: ShowOptions): string | null {
  const { locale, unit, figures = most, rounded } = options;
  const isRough =
    (figures < most && Math.abs(si) >= MINUTES_ALONE_FROM) ||
    (rounded === true && Math.abs(si) >= MINUTES_ROUNDED_FROM);
  if (form === "duration") return durationText(isRough ? Math.round(si / MINUTE) * MINUTE : si, locale);
  if (form === "clock") return clockText(si, locale);
  const inDays = form === "span" && (unit === undefined || parseUnit(unit)?.text === "day");
  if (!inDays) return null;
  const isLong = rounded === true && Math.abs(si) >= DAY;
  return spanText(isLong ? daysOf(si) : si, figures, locale);
}

/** A cubic millimetre is what rounding leaves of a balance over decades; nobody measures it. */
function withoutDust(si: number, measure: Measure): number {
  return measure.si === "m3" && Math.abs(si) < CUBIC_MILLIMETRE ? 0 : si;
}

/** Nearly all is not all: shown with so much, or with a tenth of a percent where that is less. */
const NEARLY_ALL = 99.9;
const PERCENT_DUST = 1e-7;

function showPercent(percent: number, figures: number, { locale, rounded }: ShowOptions): string {
  if (rounded) return showNumber(roundedPercent(percent), 3, locale);
  const text = showNumber(percent, figures, locale);
  const isNearly = percent < 100 - PERCENT_DUST && text === showNumber(100, figures, locale);
  return isNearly ? showNumber(Math.min(percent, NEARLY_ALL), 3, locale) : text;
}

function roundedOf(
  exact: number,
  unit: string,
  measure: Measure,
  { usual }: { readonly usual?: boolean },
): number {
  return usual && measure.form === "plain" ? roundedUsual(exact) : roundedIn(exact, unit, measure);
}

/** A number that nobody typed as it is rounded where it stands [unit]; what is told by the clock or in days is as it is. */
export function roundedShown(si: number, measureName: MeasureName, unit: string, usual: boolean): number {
  const measure: Measure = MEASURES[measureName];
  const exact = fromSi(si, unit);
  if (measure.form === "share") return parseUnit(unit)?.text === "%" ? roundedPercent(exact) : exact;
  const isTime = measure.form === "duration" || measure.form === "clock" || measure.form === "span";
  return isTime ? exact : roundedOf(exact, unit, measure, { usual });
}

/** The number and the unit of a quantity apart, for a screen that sets them apart. */
export function displayParts(given: number, measureName: MeasureName, options: ShowOptions): DisplayParts {
  const measure: Measure = MEASURES[measureName];
  const { unit } = options;
  // A rounded count has one form, in a sentence, too: 105 days are not 110 in the next line.
  const fewer = options.rounded && measure.form === "count" ? undefined : options.figures;
  const figures = Math.min(measure.figures, fewer ?? measure.figures);
  if (!Number.isFinite(given)) return { number: "–", unit: "" };
  const si = withoutDust(given, measure);
  const time = timeText(si, measure, { ...options, figures });
  if (time !== null) return { number: time, unit: "" };
  if (measure.form === "year") return { number: String(Math.round(si)), unit: "" };
  if (measure.form === "share") {
    return { number: showPercent(fromSi(si, "%"), figures, options), unit: "%" };
  }
  const own = unit === undefined ? null : inUnit(si, unit, measureName);
  const shownIn =
    own === null || unit === undefined ? measure[options.units] : (parseUnit(unit)?.text ?? unit);
  const exact = own ?? fromSi(si, shownIn);
  const said = options.rounded ? roundedOf(exact, shownIn, measure, options) : exact;
  return plainParts(said, shownIn, figures, options);
}

/**
 * A quantity as text: "8,253 gal", "7 h 40 min", "19 days", "90 %", "$35".
 * @param si [SI unit of the measure]
 */
export function showQuantity(si: number, measure: MeasureName, options: ShowOptions): string {
  const { number, unit } = displayParts(si, measure, options);
  if (unit === "") return number;
  return unit.startsWith("/") || unit === "°" ? `${number}${unit}` : `${number}${NO_BREAK}${unit}`;
}

/**
 * The text of a stored number for an edit field. Reading it back in the same locale and currency gives the same number.
 * @param value [unit]
 */
export function editText(value: number, unit: string, locale: string, currency = "money"): string {
  const number = String(value + 0).replace(".", signsOf(locale).decimal);
  const text = parseUnit(unit)?.text ?? unit;
  if (text === "1" || text === "") return number;
  if (!isMoneyUnit(text)) return `${number} ${text}`;
  const money = withCurrency(number, currency, locale).replace(NO_BREAK, " ");
  return `${money}${text.slice("money".length)}`;
}
