// Twelve normals of a record as givens of the weather card, in the units that the worksheet's reader thinks in.

import type { Entries, Entry } from "../document/worksheet.ts";
import { fitNormals } from "../rainfall/fit-normals.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { MEASURES, type UnitSystem } from "../units/measures.ts";
import { roundedMonthly } from "../units/monthly.ts";
import { fromSi } from "../units/unit.ts";

function inUnit(values: readonly number[], unit: string): Entry {
  return { value: values.map((value) => roundedMonthly(fromSi(value, unit), unit)), unit };
}

/** The givens that stand for a record: rain and wet days, and warmth where the record has it. */
export function normalsOf(record: DailyRecord, units: UnitSystem): Entries {
  const { rain, wetDays, highs, lows } = fitNormals(record);
  const [depth, warmth] = [MEASURES.rain[units], MEASURES.temperature[units]];
  return {
    normal_rain: inUnit(rain, depth),
    normal_wet_days: { value: wetDays.map((days) => roundedMonthly(days, "")), unit: "" },
    ...(highs && lows ? { normal_highs: inUnit(highs, warmth), normal_lows: inUnit(lows, warmth) } : {}),
  };
}
