// The hours that a line is told to have run, on days whose second tankful is given before dark: held against a clock that looks at
// the tub every minute.

import { expect, test } from "vitest";
import { levelAt } from "../../src/physics/vessel.ts";
import { untilDark } from "../../src/season/dark.ts";
import { newLog } from "../../src/season/day-log.ts";
import { runGravity, STEPPING } from "../../src/season/gravity.ts";
import type { SeasonInput, TankPart } from "../../src/season/input.ts";
import { prepareSeason, runDays } from "../../src/season/run.ts";
import type { SeasonState } from "../../src/season/state.ts";
import { dayNumber } from "../../src/units/calendar.ts";
import { DAY, HOUR, MINUTE } from "../../src/units/constants.ts";
import { bed, carry, inputOf, LITRE, line, recordOf, tank } from "./made.ts";

const YEAR = dayNumber(2021, 1, 1);
const JULY = dayNumber(2021, 7, 1) - YEAR;
const TUB = 167 * LITRE;

/** Opening through which a tubful comes in so many hours under 2 m of head: V / t / sqrt(2 g h). */
const openingFor = (hours: number) => TUB / (hours * HOUR) / Math.sqrt(2 * 9.80665 * 2);

/** A tub of 167 L under a big tank, and a bed that wants about 290 L a day. */
const plan = (hours: number, valveBand: number): SeasonInput =>
  inputOf({
    start: "05-01",
    end: "08-31",
    tanks: [
      tank(400, { id: "high", floor: 2, startShare: 1 }),
      tank(TUB / (1000 * LITRE), { id: "tub", startShare: 1 }),
    ],
    lines: [
      line({
        from: "high",
        to: "tub",
        startHeight: 2,
        endHeight: 1,
        shutLevel: 1,
        valveBand,
        opening: openingFor(hours),
      }),
    ],
    carries: [carry({ from: "tub" })],
    beds: [bed({ area: 50 })],
  });

function prepared(input: SeasonInput): SeasonState {
  const state = prepareSeason(input, recordOf(new Float64Array(365), YEAR));
  if ("failed" in state) throw new Error(state.failed);
  return state;
}

/** What a tub still has to rise when its float counts as shut: a fiftieth of its rise, inside the float's band. */
const leftOf = (rise: number, band: number) => Math.min(band, 0.02 * Math.max(band, rise));

/** Hours for which a tub fills after a watering, by a look every minute; the tub is left as it is after `time`. */
function filling(state: SeasonState, left: number, time: number): number {
  const { tanks, pipes } = state;
  const { vessel } = tanks.parts[1] as TankPart;
  let ran = 0;
  for (let at = 0; at < time; at += MINUTE) {
    const gap = 1 - levelAt(vessel, tanks.volume[1] as number);
    if (gap > left) ran += MINUTE;
    runGravity(pipes, tanks, Math.min(MINUTE, time - at));
  }
  return ran;
}

test.each([
  [3, 0.01],
  [3, 0.2],
  [6, 0.05],
  [10, 0.2],
  // Not full again before dark: nothing more is drawn, and it goes on filling.
  [13.5, 0.01],
  [16, 0.05],
])(
  "a tubful that takes %s h with a float of %s m: the hours of a split day are those of both fillings, to the minutes",
  (hours, band) => {
    const input = plan(hours, band);
    const told = prepared(input);
    told.log = newLog();
    runDays(told, STEPPING, { first: 0, last: JULY - 1 });
    const full = Float64Array.from(told.tanks.volume);
    runDays(told, STEPPING, { first: JULY, last: JULY });
    const [first, second] = told.log.days.get("bed")?.at(-1)?.from ?? [];
    expect(first?.volume).toBeGreaterThan(TUB / 2);
    expect((second?.volume ?? 0) > TUB / 3).toBe(hours < 13);

    const seen = prepared(input);
    seen.tanks.volume.set(full);
    const { vessel } = seen.tanks.parts[1] as TankPart;
    const draw = (volume: number): number => {
      // Of a tub drawn dry a millilitre more or less is rounding.
      seen.tanks.volume[1] = Math.max(0, (seen.tanks.volume[1] as number) - volume);
      return 1 - levelAt(vessel, seen.tanks.volume[1] as number);
    };
    const dark = untilDark(input, YEAR + JULY);
    const rise = draw(first?.volume ?? 0);
    const before = filling(seen, leftOf(rise, band), dark);
    const after = filling(seen, leftOf(Math.max(rise, second ? draw(second.volume) : 0), band), DAY - dark);
    expect(Math.abs((told.lineRan[0]?.[JULY] ?? 0) - (before + after))).toBeLessThanOrEqual(
      // A look every minute, and 0.5 % of a filling for the steps.
      2 * MINUTE + 0.005 * (before + after),
    );
  },
);
