// Whether a number in a unit suits what a measure asks for, and the sentence a person reads where it does not.

import { GRAVITY } from "./constants.ts";
import { type Dimension, isPlain, sameDimension } from "./dimension.ts";
import { MEASURES, type Measure, type MeasureName } from "./measures.ts";
import { WATER_COLUMN_DENSITY } from "./table.ts";
import { parseUnit, type Unit } from "./unit.ts";

export type Suited =
  | { readonly ok: true; readonly si: number; readonly note?: string }
  | { readonly ok: false; readonly message: string };

const PRESSURE_OF_A_METRE = WATER_COLUMN_DENSITY * GRAVITY;

const KINDS: readonly (readonly [unit: string, words: string])[] = [
  ["1", "a plain number"],
  ["m", "a length"],
  ["m2", "an area"],
  ["m3", "a volume"],
  ["m3/s", "a flow"],
  ["m/s", "a speed"],
  ["kg", "a weight"],
  ["kg/m3", "a density"],
  ["s", "a time"],
  ["Pa", "a pressure"],
  ["Pa s", "a viscosity"],
  ["N", "a force"],
  ["J", "an energy"],
  ["W", "a power"],
  ["V", "a voltage"],
  ["A", "a current"],
  ["C", "a charge"],
  ["ohm", "a resistance"],
  ["rad", "an angle"],
  ["K", "a temperature"],
  ["delta K", "a temperature difference"],
  ["money", "an amount of money"],
  ["money/m3", "money for a volume"],
];

/** What a dimension is in a grower's words: "a volume". */
export function kindWords(dimension: Dimension): string {
  const found = KINDS.find(([unit]) => sameDimension(parseUnit(unit)?.dimension ?? dimension, dimension));
  return found?.[1] ?? "another kind of quantity";
}

/** Advice for mix-ups that people really make, as "typed kind > asked kind". */
const ADVICE: Readonly<Record<string, string>> = {
  "a charge > an energy": "Amp-hours become energy only with a voltage: write 80 Ah * 12 V, or give Wh.",
  "an energy > a charge": "Divide it by the voltage: write 960 Wh / 12 V, or give Ah.",
  "a power > an energy": "Watts run for a time: write 50 W * 3 h, or give Wh.",
  "an energy > a power": "Give W, or divide by the time: write 150 Wh / 3 h.",
  "a current > a charge": "Amps run for a time: write 4 A * 2 h, or give Ah.",
  "a charge > a current": "Give A, or divide by the time: write 8 Ah / 2 h.",
  "a volume > a flow": "Say in what time: gal/min or L/h.",
  "a flow > a volume": "Say for how long: write 5 gpm * 10 min, or give gal or L.",
  "a length > an area": "Multiply length and width: write 10 ft * 4 ft, or give ft2 or m2.",
  "a length > a volume": "Give gal, L or m3.",
  "a length > a time": "m is metres; write min for minutes.",
  "a length > a speed": "Say in what time: in/h or mm/day.",
  "a time > a length": "min is minutes; write m for metres or in for inches.",
  "a pressure > a length": "Give a length such as ft, in, m or mm.",
  "an angle > a temperature": "Write degF or degC.",
  "a temperature > an angle": "Write deg for degrees of angle.",
  "a charge > a temperature": "C alone is a charge; write degC.",
  "a temperature > a temperature difference":
    "A reading of a thermometer is no difference; write delta degC or delta degF.",
  "a temperature difference > a temperature":
    "A difference is no reading of a thermometer; write degC or degF.",
};

function adviceFor(typed: string, asked: string, unit: Unit, example: string): string {
  if (typed === "a weight" && asked === "a volume" && unit.text === "oz") {
    return "oz is a weight; write fl oz for a volume.";
  }
  return ADVICE[`${typed} > ${asked}`] ?? `Give it in a unit such as ${example}.`;
}

function unsuited(unit: Unit, measure: Measure, asked: Dimension): Suited {
  const typedWords = kindWords(unit.dimension);
  const askedWords = kindWords(asked);
  const what = isPlain(unit.dimension) && unit.text === "1" ? "This" : unit.text;
  const advice = adviceFor(typedWords, askedWords, unit, measure.us === "1" ? "none" : measure.us);
  const tail = measure.us === "1" ? "Give a plain number." : advice;
  return { ok: false, message: `${what} is ${typedWords}, but ${askedWords} is wanted here. ${tail}` };
}

/**
 * A number in a unit, as the coherent SI number that a measure is held in. A pressure given where a head is asked
 * becomes the height of a column of water of 1000 kg/m3 under standard gravity, and the note says so.
 * @param value [unitText]
 * @returns the number [SI unit of the measure], or the sentence why it does not suit
 */
export function siFor(value: number, unitText: string, measureName: MeasureName): Suited {
  const unit = parseUnit(unitText);
  const measure: Measure = MEASURES[measureName];
  const asked = parseUnit(measure.si);
  if (!unit || !asked) return { ok: false, message: `I do not know the unit "${unitText}".` };
  const si = (value + unit.offset) * unit.factor;
  if (sameDimension(unit.dimension, asked.dimension)) return belowZero(si, unit) ?? { ok: true, si };
  const isPressure = sameDimension(unit.dimension, parseUnit("Pa")?.dimension ?? asked.dimension);
  if (measure.pressureAsHead && isPressure) {
    const height = si / PRESSURE_OF_A_METRE;
    if (unit.text.endsWith("H2O")) return { ok: true, si: height };
    return {
      ok: true,
      si: height,
      note: `${unit.text} is a pressure; read as the height of a column of water of ${WATER_COLUMN_DENSITY} kg/m3.`,
    };
  }
  return unsuited(unit, measure, asked.dimension);
}

function belowZero(si: number, unit: Unit): Suited | null {
  return unit.dimension.point && si < 0 ? { ok: false, message: "That is colder than absolute zero." } : null;
}

/** The same number back in a unit that suits the measure, or null where the unit does not suit it. */
export function inUnit(si: number, unitText: string, measureName: MeasureName): number | null {
  const unit = parseUnit(unitText);
  const measure: Measure = MEASURES[measureName];
  const asked = parseUnit(measure.si);
  if (!unit || !asked) return null;
  if (sameDimension(unit.dimension, asked.dimension)) return si / unit.factor - unit.offset;
  const asPressure = measure.pressureAsHead && kindWords(unit.dimension) === "a pressure";
  return asPressure ? (si * PRESSURE_OF_A_METRE) / unit.factor : null;
}
