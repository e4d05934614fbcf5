// Reference evapotranspiration of every day of a record, by the chosen method.

import { DomainError } from "../physics/domain-error.ts";
import { hargreaves, penmanMonteith } from "../physics/reference-evapotranspiration.ts";
import { extraterrestrialRadiation } from "../physics/sun.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { calendarDate, dayOfYear, isoDate } from "../units/calendar.ts";
import { DAY } from "../units/constants.ts";
import type { EtoChoice } from "./input.ts";
import { contentKey, keeper, recordMark } from "./kept.ts";
import { monthsOf } from "./spans.ts";

type Answer =
  | {
      readonly eto: Float64Array;
      /** Days whose temperatures were those of the normals. */
      readonly fromNormals: number;
    }
  | { readonly failed: string };

const ANSWERS = keeper<Answer>(4);

/**
 * Reference evapotranspiration of each day, kept with the record.
 *
 * @returns depth of each day [m] and how many were told from the normals' temperatures, or why there is none
 * @validity a day without temperatures takes the highest and lowest of its month's normals, by Eq. 52
 * @source the user's monthly means, or FAO-56 Eq. 6 or Eq. 52
 */
export function dailyEto(record: DailyRecord, choice: EtoChoice): Answer {
  return ANSWERS(record, `${recordMark(record)} ${contentKey(choice)}`, () => etoOf(record, choice));
}

function etoOf(record: DailyRecord, choice: EtoChoice): Answer {
  if (choice.method === "monthly") return byMonth(record, choice);
  if (!(record.highest && record.lowest) && !choice.normals) {
    return {
      failed: "The record has no temperatures, and no monthly figures of evapotranspiration are given.",
    };
  }
  const eto = new Float64Array(record.rain.length);
  let fromNormals = 0;
  for (let day = 0; day < eto.length; day++) {
    const date = record.firstDay + day;
    const own = ownWarmth(record, day);
    const warmth = own ?? normalWarmth(choice, date);
    if (!warmth) return { failed: `The record has no temperatures on ${isoDate(date)}.` };
    const depth = depthOf(record, own ? choice : { ...choice, method: "hargreaves" }, day, warmth);
    if (typeof depth === "string") return { failed: `${isoDate(date)}: ${depth}` };
    eto[day] = depth * choice.factor;
    if (!own) fromNormals++;
  }
  return { eto, fromNormals };
}

/** A day's own temperatures; null where one of them was not measured. */
function ownWarmth(record: DailyRecord, day: number): Warmth | null {
  const [highest, lowest] = [reading(record.highest, day), reading(record.lowest, day)];
  return highest === null || lowest === null ? null : { highest, lowest };
}

/** Highest and lowest temperature of a date's month in the normals [K]; null without both. */
function normalWarmth({ normals }: EtoChoice, date: number): Warmth | null {
  const { month } = calendarDate(date);
  const [highest, lowest] = [normals?.highest[month - 1], normals?.lowest[month - 1]];
  return highest === undefined || lowest === undefined ? null : { highest, lowest };
}

type Warmth = { readonly highest: number; readonly lowest: number };

/** Depth of one day [m], or what is wrong with its readings. */
function depthOf(record: DailyRecord, choice: EtoChoice, day: number, warmth: Warmth): number | string {
  const place = { latitude: choice.latitude, dayOfYear: dayOfYear(record.firstDay + day) };
  try {
    if (choice.method === "hargreaves") {
      const extraterrestrial = extraterrestrialRadiation(place.latitude, place.dayOfYear);
      return hargreaves({ ...warmth, extraterrestrial });
    }
    return penmanMonteith({
      ...warmth,
      ...place,
      elevation: choice.elevation,
      wind: reading(record.wind, day),
      vapour: reading(record.vapour, day),
      sun: reading(record.sun, day),
    });
  } catch (error) {
    if (error instanceof DomainError) return error.message;
    throw error;
  }
}

/** A day's reading, null where it was not measured. */
function reading(series: Float64Array | null, day: number): number | null {
  const value = series?.[day];
  return value === undefined || Number.isNaN(value) ? null : value;
}

function byMonth(record: DailyRecord, choice: EtoChoice): Answer {
  const { months } = choice;
  if (months?.length !== 12 || !months.every((rate) => rate >= 0 && rate < Infinity)) {
    return { failed: "Evapotranspiration needs twelve monthly figures, none below nothing." };
  }
  const eto = new Float64Array(record.rain.length);
  const monthOf = monthsOf(record.firstDay, eto.length);
  const depths = months.map((rate) => rate * DAY * choice.factor);
  for (let day = 0; day < eto.length; day++) eto[day] = depths[monthOf[day] as number] as number;
  return { eto, fromNormals: 0 };
}
