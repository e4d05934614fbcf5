// What draws from tanks for no bed: so much every so often, before any bed, all year round.

import { DAY } from "../units/constants.ts";
import { type Lacks, noLacks } from "./bounds.ts";
import type { DrawPart, LeftOut } from "./input.ts";
import { newTally, type Tally } from "./tally.ts";
import type { Tanks } from "./tanks.ts";

export type DueDraw = {
  readonly id: string;
  readonly tank: number;
  readonly volume: number;
  /** Days between two draws; a fraction makes some days draw more often. */
  readonly every: number;
  readonly due: Tally;
  readonly given: Tally;
  readonly daysShort: Tally;
  readonly daysMet: { count: number };
  /** Of today: what each allowance alone would have kept from it [m3]. */
  readonly lacks: Lacks;
};

/**
 * Draws ready to run.
 *
 * @param leftOut gets a draw whose tank is gone
 */
export function readyDraws(
  parts: readonly DrawPart[],
  tanks: Tanks,
  spans: { readonly seasons: number; readonly years: number },
  leftOut: LeftOut[],
): readonly DueDraw[] {
  const tally = () => newTally(spans.seasons, spans.years);
  return parts.flatMap((part) => {
    const tank = tanks.placeOf.get(part.from);
    if (tank === undefined || !(part.every > 0)) {
      const reason =
        tank === undefined ? "the tank it draws from is not there" : "it has no time between draws";
      leftOut.push({ id: part.id, reason });
      return [];
    }
    const every = part.every / DAY;
    return [
      {
        id: part.id,
        tank,
        volume: part.volume,
        every,
        due: tally(),
        given: tally(),
        daysShort: tally(),
        daysMet: { count: 0 },
        lacks: noLacks(),
      },
    ];
  });
}

/**
 * What is due on a day, counted from the record's first day, on which the first is due.
 *
 * @param day of the record [day]
 * @returns volume [m3]
 */
export function dueOn(draw: DueDraw, day: number): number {
  if (draw.every === 1) return draw.volume;
  return draw.volume * (Math.ceil((day + 1) / draw.every) - Math.ceil(day / draw.every));
}
