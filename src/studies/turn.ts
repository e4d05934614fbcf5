// One given that is turned in hand: where it is set, the axis it is turned over, which stands still meanwhile, and the
// values tried along it.

import type { Entry, Worksheet } from "../document/worksheet.ts";
import { numberIn, wordIn } from "../graph/readers.ts";
import type { ChoiceGiven, DateGiven, NumberGiven, QuantityId, Result, Row } from "../graph/types.ts";
import type { Kind, Kinds } from "../kinds/kind.ts";
import { MEASURES, type UnitSystem } from "../units/measures.ts";
import {
  placeOn,
  roundAt,
  roundStep,
  roundValuesOf,
  type Scale,
  scaleBetween,
  scaleOfSizes,
} from "../units/scale.ts";
import { unitFor } from "../units/show.ts";
import { fromSi, toSi } from "../units/unit.ts";
import { scaleOf, scaleRoundIn } from "./scale.ts";
import { dateOf, dateTrials, dayOf, type Target, type Trial, valueTrials, wordTrials } from "./try.ts";

export type TurnedRow = NumberGiven | ChoiceGiven | DateGiven;

/** What is turned over: a span of numbers, a span of days, or words side by side. */
export type Axis =
  | { readonly form: "number"; readonly scale: Scale }
  | { readonly form: "day"; readonly scale: Scale; readonly withYear: boolean }
  | { readonly form: "word"; readonly words: readonly string[] };

export type Turn = {
  readonly id: QuantityId;
  readonly row: TurnedRow;
  readonly target: Target;
  /** What stood there when it was taken; null: the usual. */
  readonly entry: Entry | null;
  /** Null: nothing is known of what it is turned over. */
  readonly axis: Axis | null;
};

type Results = { readonly get: (id: QuantityId) => Result | undefined };

/** A date with its year is turned by so many days to either side. */
const DAYS_AROUND = 60;
const YEAR = ["01-01", "12-31"] as const;

const isTurned = (row: Row | undefined): row is TurnedRow =>
  row?.row === "given" || row?.row === "choice" || row?.row === "date";

/** Where the value that counts is set: what was measured counts before what was given. */
export function targetOf(worksheet: Worksheet, card: string, row: TurnedRow): Target {
  if (row.row === "given" && row.stored === "card") {
    return { card, part: row.name === "price" ? "price" : "life", row: row.name };
  }
  const measured = worksheet.cards.find(({ id }) => id === card)?.measured[row.name];
  return { card, part: measured ? "measured" : "givens", row: row.name };
}

/** What stands at a place that can be set. */
export function entryAtTarget(worksheet: Worksheet, { card, part, row }: Target): Entry | null {
  const of = worksheet.cards.find(({ id }) => id === card);
  if (!of || part === "title") return null;
  if (part === "price" || part === "life") return of[part] ?? null;
  const entries = of[part];
  return Object.hasOwn(entries, row) ? (entries[row] ?? null) : null;
}

/** What is told in minutes and seconds is turned in those of its usual value: an hour has no round tenths. */
function usualUnit({ measure, default: usual }: NumberGiven, units: UnitSystem): string {
  const isTime = MEASURES[measure].form === "duration";
  if (!isTime) return unitFor(measure, units);
  const typed = usual && !("formula" in usual) && !("by" in usual) ? usual[1] : "min";
  return typed === "h" ? "min" : typed;
}

/** The unit in which a number stands there, or is turned. */
export function turnedUnit(row: NumberGiven, entry: Entry | null, worksheet: Worksheet): string {
  const typed = typeof entry?.value === "number" ? entry.unit : "";
  const isHours = typed === "h" && MEASURES[row.measure].form === "duration";
  return isHours ? "min" : typed || usualUnit(row, worksheet.units);
}

/** Sizes that the trade has of a bore; null where it is none, or has any. */
function soldSizes(
  kind: Kind | undefined,
  row: NumberGiven,
): { sizes: readonly number[]; unit: string } | null {
  const offer = row.measure === "bore" ? kind?.offers?.find((one) => one.row === row.name) : undefined;
  const buys = offer?.buys;
  return typeof buys === "object" && "larger" in buys ? { sizes: buys.larger, unit: buys.unit } : null;
}

function dayAxis(row: DateGiven, value: string): Axis | null {
  const withYear = row.form === "day";
  const day = dayOf(value);
  if (withYear && day === null) return null;
  const [first, last] = YEAR.map((end) => dayOf(end) ?? 0);
  const ends = withYear && day !== null ? [day - DAYS_AROUND, day + DAYS_AROUND] : [first, last];
  return { form: "day", scale: scaleBetween(ends[0] ?? 0, ends[1] ?? 0, "", true), withYear };
}

function axisOf(
  kind: Kind | undefined,
  row: TurnedRow,
  unit: string,
  standing: readonly (Result | undefined)[],
): Axis | null {
  if (row.row === "choice") return { form: "word", words: row.options.map(({ word }) => word) };
  if (row.row === "date") return dayAxis(row, wordIn(standing[0]));
  const values = standing.map(numberIn).filter((value) => value !== null);
  if (!row.usual && values.length === 0) return null;
  const scale = scaleOf(row, unit, values);
  const sold = soldSizes(kind, row);
  return { form: "number", scale: sold ? scaleOfSizes(scale, sold.sizes, sold.unit) : scale };
}

/**
 * A given as it is taken in hand; null where there is none that can be turned.
 *
 * @param results of the worksheet, and of what is held to compare with: the axis holds both values
 */
export function turnOf(
  worksheet: Worksheet,
  kinds: Kinds,
  id: QuantityId,
  results: readonly Results[],
): Turn | null {
  const [cardId = "", name = ""] = id.split(".");
  const kind = kinds[worksheet.cards.find((card) => card.id === cardId)?.kind ?? ""];
  const row = kind?.rows.find((candidate) => candidate.name === name);
  if (!isTurned(row)) return null;
  const target = targetOf(worksheet, cardId, row);
  const entry = entryAtTarget(worksheet, target);
  const unit = row.row === "given" ? turnedUnit(row, entry, worksheet) : "";
  const axis = axisOf(
    kind,
    row,
    unit,
    results.map((of) => of.get(id)),
  );
  return { id, row, target, entry, axis };
}

/** The axis in the unit in which the number is shown now, its ends round there. */
export function axisIn(axis: Axis, row: TurnedRow, unit: string): Axis {
  if (axis.form !== "number" || row.row !== "given") return axis;
  const scale = scaleRoundIn(axis.scale, row, unit);
  return scale === axis.scale ? axis : { form: "number", scale };
}

/** The axis as it is, or with more room, where a value that was typed lies off it. */
export function axisHolding(axis: Axis, row: TurnedRow, si: number | string | null): Axis {
  if (axis.form !== "number" || row.row !== "given" || typeof si !== "number") return axis;
  const { low, high, unit } = axis.scale;
  // What is refused needs no room: nothing is worked out from it.
  if (si < (row.min ?? si) || si > (row.max ?? si)) return axis;
  const value = fromSi(si, unit);
  const off = value < low ? low - value : value - high;
  if (off <= Math.abs(high) * 1e-9) return axis;
  const room = scaleOf(
    {
      ...row,
      usual: [
        [low, unit],
        [Math.max(high, value), unit],
      ],
    },
    unit,
    [si],
  );
  const { sizes } = axis.scale;
  return {
    form: "number",
    scale: { ...room, low: Math.min(low, room.low), ...(sizes ? { sizes } : {}) },
  };
}

/** Where a value stands on the axis, from 0 to 1; null where it is not on it. */
export function placeOnAxis(axis: Axis, si: number | string | null): number | null {
  if (axis.form === "number") {
    return typeof si === "number" ? placeOn(axis.scale, fromSi(si, axis.scale.unit)) : null;
  }
  if (typeof si !== "string") return null;
  if (axis.form === "day") {
    const day = dayOf(si);
    return day === null ? null : placeOn(axis.scale, day);
  }
  const at = axis.words.indexOf(si);
  return at < 0 ? null : at / Math.max(1, axis.words.length - 1);
}

function entryAlong(axis: Axis, value: number): Entry {
  if (axis.form === "number") return { value, unit: axis.scale.unit };
  if (axis.form === "day") return { value: dateOf(value, axis.withYear), unit: "" };
  return { value: axis.words[value] ?? null, unit: "" };
}

/** The ends of a span, or every word: each value as a result has it, and its place. */
export function marksOf(axis: Axis): readonly { readonly place: number; readonly value: number | string }[] {
  if (axis.form === "word") {
    return axis.words.map((value) => ({ place: placeOnAxis(axis, value) ?? 0, value }));
  }
  const { low, high, unit } = axis.scale;
  return [low, high].map((end, place) => ({
    place,
    value: axis.form === "day" ? dateOf(end, axis.withYear) : toSi(end, unit),
  }));
}

/** The round value at a place of the axis, the word or day nearest to it. */
export function entryAtPlace(axis: Axis, place: number): Entry {
  const within = Math.min(1, Math.max(0, place));
  if (axis.form === "word") return entryAlong(axis, Math.round(within * (axis.words.length - 1)));
  if (axis.form === "number") return entryAlong(axis, roundAt(axis.scale, within));
  const { low, high } = axis.scale;
  return entryAlong(axis, Math.round(low + (high - low) * within));
}

const TIMES_COARSE = 10;

/** A step up or down, ten with `coarse`; where nothing stands yet, the low end. Null where there is no further step. */
export function entryStepped(
  axis: Axis,
  si: number | string | null,
  by: 1 | -1,
  coarse: boolean,
): Entry | null {
  const place = placeOnAxis(axis, si);
  if (place === null) return entryAtPlace(axis, 0);
  const next = axis.form === "number" ? numberStepped(axis.scale, si, by, coarse) : null;
  if (axis.form === "number") return next === null ? null : entryAlong(axis, next);
  const most = axis.form === "day" ? axis.scale.high - axis.scale.low : axis.words.length - 1;
  const at = Math.round(place * most);
  const to = Math.min(most, Math.max(0, at + by * (coarse ? TIMES_COARSE : 1)));
  return to === at ? null : entryAlong(axis, axis.form === "day" ? axis.scale.low + to : to);
}

function numberStepped(scale: Scale, si: number | string | null, by: 1 | -1, coarse: boolean): number | null {
  const value = fromSi(Number(si), scale.unit);
  // From beyond an end, nought among it, the first step is that end, and further away there is none.
  if (value < scale.low) return by === 1 ? roundAt(scale, 0) : null;
  if (value > scale.high) return by === -1 ? roundAt(scale, 1) : null;
  const next = roundStep(scale, value, by, coarse);
  // An end that is not round is no step away from itself.
  return Math.abs(next - value) <= Math.abs(value) * 1e-9 ? null : next;
}

/** The values tried along the axis, rising, so many at the most, and where each stands. */
export function trialsAlong(
  { target }: Turn,
  axis: Axis,
  count: number,
): readonly (Trial & { readonly place: number })[] {
  const trials = (): readonly Trial[] => {
    if (axis.form === "word") return wordTrials(target, axis.words);
    if (axis.form === "number") {
      return valueTrials(target, roundValuesOf(axis.scale, count), axis.scale.unit);
    }
    const ends = [axis.scale.low, axis.scale.high].map((day) => dateOf(day, axis.withYear));
    return dateTrials(target, [ends[0] ?? "", ends[1] ?? ""], count) ?? [];
  };
  return trials().map((trial) => ({ ...trial, place: placeOnAxis(axis, trial.value) ?? 0 }));
}
