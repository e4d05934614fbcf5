// A random sky, two or three years long: normals alone, a record of its own with holes and lacking columns, or one lost.

import { recordFromNormals } from "../../src/rainfall/made-up.ts";
import type { DailyRecord } from "../../src/rainfall/record.ts";
import { makeRecord } from "../../src/rainfall/record-key.ts";
import type { Givens } from "../kinds/made-up-sheets.ts";
import type { Dice } from "./dice.ts";

export type Sky = { readonly givens: Givens; readonly records: readonly DailyRecord[] };

const MM = 0.001;
const FREEZING = 273.15;
const RAIN = [70, 55, 60, 50, 55, 50, 35, 35, 50, 70, 80, 80];
const WET_DAYS = [13, 11, 12, 11, 11, 10, 7, 7, 9, 12, 14, 14];
const HIGHS = [6, 8, 11, 15, 19, 23, 26, 26, 22, 16, 10, 7];
const LOWS = [0, 0, 2, 5, 9, 12, 14, 14, 10, 6, 3, 1];

/** How much of that rain falls, by month: a wet place, a dry one, one whose summer has none, a desert. */
const PLACES = [1, 0.4, 0, 2] as const;
const rainThere = (place: number): number[] =>
  RAIN.map((rain, month) => (place === 0 ? (month > 4 && month < 9 ? 0 : rain) : rain * place));

const twoOrThree = (d: Dice): number => d.whole(2, 3);

function normals(d: Dice): Sky {
  return {
    givens: {
      years: [twoOrThree(d), "1"],
      seed: [d.whole(1, 999), "1"],
      normal_rain: [rainThere(d.pick(PLACES)), "mm"],
      ...(d.chance(0.2)
        ? { eto_from: "monthly", monthly_eto: [HIGHS.map((warm) => warm / 5), "mm/day"] }
        : {}),
    },
    records: [],
  };
}

/** Days that the record begins late and ends early, so that it may hold two whole years, one, or none. */
function ownRecord(d: Dice): Sky {
  const whole = recordFromNormals({
    rain: rainThere(d.pick(PLACES)).map((depth) => depth * MM),
    wetDays: WET_DAYS,
    highs: HIGHS.map((warm) => warm + FREEZING),
    lows: LOWS.map((cold) => cold + FREEZING),
    years: twoOrThree(d),
    seed: d.whole(1, 999),
  });
  const first = d.pick([0, 0, 90, 300]);
  const last = whole.rain.length - d.pick([0, 0, 0, 60, 400]);
  const cut = (column: Float64Array | null) => column?.slice(first, last) ?? null;
  const hole = d.chance(0.12) ? d.whole(0, 500) : -1;
  const warm = d.chance(0.8);
  const record = makeRecord({
    title: "A record of its own",
    source: "made for the sweep",
    madeUp: false,
    firstDay: whole.firstDay + first,
    rain: (cut(whole.rain) as Float64Array).map((rain, day) =>
      day >= hole && day < hole + 9 && hole >= 0 ? Number.NaN : rain,
    ),
    highest: warm ? cut(whole.highest) : null,
    lowest: warm ? cut(whole.lowest) : null,
  });
  return { givens: { record: record.key }, records: [record] };
}

/** A worksheet that came without its record, as by a link. */
const lost = (): Sky => ({ givens: { record: "0123456789abcdef0123456789abcdef" }, records: [] });

export function sky(d: Dice): Sky {
  const made = d.chance(0.04) ? lost() : d.chance(0.5) ? ownRecord(d) : normals(d);
  return { ...made, givens: { ...made.givens, rain_scale: [d.pick([1, 1, 0.5, 1.2]), "1"] } };
}
