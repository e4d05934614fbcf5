// Reads what a grower types into a field: a number with its unit, in the signs of the worksheet's locale.

import { type Amount, isCleanUnit, ReadProblem, tidied } from "./amount.ts";
import { readClock } from "./clock.ts";
import { isPlain } from "./dimension.ts";
import { type Context, readExpression } from "./expression.ts";
import { MEASURES, type MeasureName } from "./measures.ts";
import { inUnit, siFor } from "./suits.ts";
import { dimensionOf, parseUnit, toSi, type Unit } from "./unit.ts";

export type ReadOptions = {
  readonly measure?: MeasureName;
  /** BCP 47 tag that decides the decimal sign; en-US where it is left out. */
  readonly locale?: string;
  /** The worksheet's currency sign or code; `$` where it is left out. */
  readonly currency?: string;
  /** Used for a bare number; without it a bare number is read only where the measure is plain. */
  readonly defaultUnit?: string;
};

export type Reading =
  | {
      readonly ok: true;
      readonly value: number;
      readonly unit: string;
      readonly si: number;
      readonly note?: string;
    }
  | { readonly ok: false; readonly message: string; readonly start: number; readonly end: number };

type Stored = { readonly value: number; readonly unit: string };

const LONGEST_TEXT = 200;

function refuse(message: string, start: number, end: number): Reading {
  return { ok: false, message, start, end };
}

/** Whether a unit is one of the plain kind that still has a name, such as a percentage. */
function isShareUnit(unit: Unit): boolean {
  return isPlain(unit.dimension) && unit.text !== "1";
}

function bareUnit(amount: Amount, options: ReadOptions): string {
  const { measure, defaultUnit } = options;
  if (defaultUnit !== undefined) return parseUnit(defaultUnit)?.text ?? defaultUnit;
  if (measure === undefined || isPlain(dimensionOf(MEASURES[measure].si))) return "1";
  const example = measure === "money" ? "$" : MEASURES[measure].us;
  throw new ReadProblem(`Add a unit, such as ${example}.`, amount.start, amount.end);
}

/** What is stored: the typed unit, or a usual one where arithmetic left a unit that nobody would write. */
function storedForm(amount: Amount, options: ReadOptions): Stored {
  if (amount.bare) return { value: amount.value, unit: bareUnit(amount, options) };
  const { measure, defaultUnit } = options;
  if (measure === undefined || !amount.composed || isCleanUnit(amount.unit)) {
    return { value: amount.value, unit: amount.unit.text };
  }
  const si = toSi(amount.value, amount.unit.text);
  for (const unit of [defaultUnit, MEASURES[measure].metric]) {
    const suits = unit !== undefined && siFor(amount.value, amount.unit.text, measure).ok;
    const value = suits ? inUnit(si, unit, measure) : null;
    if (value !== null && unit !== undefined) return { value: tidied(value), unit };
  }
  return { value: amount.value, unit: amount.unit.text };
}

function noteOnShare(stored: Stored, bare: boolean, options: ReadOptions, context: Context): void {
  if (options.measure !== "share" || !bare) return;
  if (stored.unit === "%" && stored.value > 0 && stored.value < 1) {
    context.notes.add(`Read as ${stored.value} %, less than one in a hundred.`);
  }
  if (stored.unit === "1" && stored.value > 1) {
    context.notes.add(`Read as ${stored.value} times the whole; write ${stored.value} % if that is meant.`);
  }
}

function noteOnGallons(stored: Stored, options: ReadOptions, context: Context): void {
  const isImperialField = options.defaultUnit?.includes("imp ") ?? false;
  if (isImperialField && /\b(?:gal|gpm|gph|gpd)\b/.test(stored.unit) && !stored.unit.includes("imp ")) {
    context.notes.add("Read as US gallons; write imp gal for imperial ones.");
  }
}

function checked(amount: Amount, stored: Stored, options: ReadOptions, context: Context): Reading {
  const { measure } = options;
  const { start, end } = amount;
  if (!Number.isFinite(stored.value)) return refuse("That number is too large.", start, end);
  if ((measure === "count" || measure === "year") && isShareUnit(amount.unit)) {
    return refuse(`${amount.unit.text} does not fit here. Give a plain number.`, start, end);
  }
  const suited =
    measure === undefined
      ? { ok: true as const, si: toSi(stored.value, stored.unit) }
      : siFor(stored.value, stored.unit, measure);
  if (!suited.ok) return refuse(suited.message, start, end);
  if (!Number.isFinite(suited.si)) return refuse("That number is too large.", start, end);
  noteOnShare(stored, amount.bare, options, context);
  noteOnGallons(stored, options, context);
  if ("note" in suited && suited.note !== undefined) context.notes.add(suited.note);
  const note = [...context.notes].join(" ");
  return { ok: true, ...stored, si: suited.si, ...(note === "" ? {} : { note }) };
}

/** Two sides of a rectangle, the unit after the second alone or after both: "20 x 30 ft". */
const SIDES =
  /^\s*(?<long>[\d.,]+)\s*(?<first>[a-z'"′″]*?)\s*(?:x|×|by)\s*(?<wide>[\d.,]+)\s*(?<unit>[a-z'"′″]+)\s*$/i;

/** The sides that somebody typed for an area, as a product; any other text as it is. */
function withSides(text: string, measure: MeasureName | undefined): string {
  const sides = measure !== undefined && MEASURES[measure].si === "m2" ? SIDES.exec(text)?.groups : undefined;
  if (!sides) return text;
  const { long, first, wide, unit } = sides;
  return `${long} ${first || unit} * ${wide} ${unit}`;
}

/**
 * Reads a quantity as a person types it, with simple arithmetic.
 * @returns the number and unit to store and the number in SI; or a sentence and the place [start, end) that it is about
 */
export function readQuantity(text: string, options: ReadOptions): Reading {
  if (text.trim() === "") return refuse("Type a number.", 0, text.length);
  if (text.length > LONGEST_TEXT) return refuse("This is too long to read.", LONGEST_TEXT, text.length);
  const { locale = "en-US", currency = "$", measure } = options;
  const clock = measure === "clock" ? readClock(text) : null;
  if (clock !== null) return { ok: true, value: clock.hours, unit: "h", si: clock.seconds };
  const { defaultUnit } = options;
  const context: Context = {
    locale,
    currency,
    measure,
    notes: new Set(),
    ...(defaultUnit === undefined ? {} : { bareUnit: defaultUnit }),
  };
  try {
    const amount = readExpression(withSides(text, measure), context);
    return checked(amount, storedForm(amount, options), options, context);
  } catch (problem) {
    if (problem instanceof ReadProblem) return refuse(problem.message, problem.start, problem.end);
    throw problem;
  }
}
