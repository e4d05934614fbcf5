// Twelve normals of a record as givens of the weather card.

import type { Entries } from "../document/worksheet.ts";
import { fitNormals } from "../rainfall/fit-normals.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { MILLIMETRE, ZERO_CELSIUS } from "../units/constants.ts";

const rounded = (values: readonly number[], digits: number): number[] =>
  values.map((value) => Number(value.toFixed(digits)));

/** The givens that stand for a record: rain and wet days, and warmth where the record has it. */
export function normalsOf(record: DailyRecord): Entries {
  const { rain, wetDays, highs, lows } = fitNormals(record);
  const celsius = (kelvin: readonly number[]) => ({
    value: rounded(
      kelvin.map((value) => value - ZERO_CELSIUS),
      1,
    ),
    unit: "degC",
  });
  return {
    normal_rain: {
      value: rounded(
        rain.map((depth) => depth / MILLIMETRE),
        1,
      ),
      unit: "mm",
    },
    normal_wet_days: { value: rounded(wetDays, 1), unit: "" },
    ...(highs && lows ? { normal_highs: celsius(highs), normal_lows: celsius(lows) } : {}),
  };
}
