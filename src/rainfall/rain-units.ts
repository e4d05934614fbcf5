// Units of rain and warmth as files write them, to SI; and what an amount makes likely where no unit is told.
import { INCH, MILLIMETRE, ZERO_CELSIUS } from "../units/constants.ts";
import type { Question, RainUnit } from "./import-result.ts";
import { yearlyRate } from "./rain-figures.ts";

/** Metres in one of each unit. */
export const METRES_OF: Readonly<Record<RainUnit, number>> = {
  mm: MILLIMETRE,
  in: INCH,
  cm: 10 * MILLIMETRE,
  tenth_mm: MILLIMETRE / 10,
  hundredth_in: INCH / 100,
};

/** One step of the Fahrenheit scale [K] and the scale's zero below its own 0 [degF], exact by definition. */
const FAHRENHEIT_STEP = 5 / 9;
const ZERO_FAHRENHEIT = 459.67;

/** The units in words. */
export const UNIT_NAMES: Readonly<Record<RainUnit, string>> = {
  mm: "millimetres",
  in: "inches",
  cm: "centimetres",
  tenth_mm: "tenths of a millimetre",
  hundredth_in: "hundredths of an inch",
};

/** Kelvin of a temperature in the file's unit. */
export function kelvinOf(value: number, unit: "C" | "F" | "tenth_C"): number {
  if (unit === "F") return (value + ZERO_FAHRENHEIT) * FAHRENHEIT_STEP;
  return (unit === "tenth_C" ? value / 10 : value) + ZERO_CELSIUS;
}

/** The unit that amounts without one make likely: never taken unasked. */
export function likelyUnit(rain: Float64Array, withDecimals: boolean): RainUnit {
  const wet = rain.filter((value) => value > 0).sort();
  const median = wet[Math.floor(wet.length / 2)] ?? 0;
  const most = wet.at(-1) ?? 0;
  if (!withDecimals) return median > 20 ? "tenth_mm" : "mm";
  const hundredths = wet.some((value) => Math.abs(value * 10 - Math.round(value * 10)) > 1e-6);
  return hundredths && most < 20 ? "in" : "mm";
}

/** Asks for the unit, each answer beside the yearly rain that it would mean. */
export function unitQuestion(rain: Float64Array, withDecimals: boolean): Question {
  const rate = yearlyRate(rain);
  const units: RainUnit[] = ["mm", "in", "tenth_mm", "hundredth_in", "cm"];
  return {
    id: "unit",
    text: "In which unit is the rain? Neither the file nor its header tells.",
    options: units.map((unit) => ({
      value: unit,
      label: UNIT_NAMES[unit],
      yearly: rate === null ? null : rate * METRES_OF[unit],
    })),
    likely: likelyUnit(rain, withDecimals),
  };
}
