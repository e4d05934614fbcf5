// Waterings that expected rain makes needless: asked for on dry days, and not with the rain that one's own forecast brings.

import type { DayLine, Refusal } from "./day-lines.ts";
import type { Forecast } from "./forecast.ts";
import type { Plan } from "./week-totals.ts";
import { isLikely } from "./years-ahead.ts";

export type Spared = {
  /** On which day it would be asked for [days since 1970-01-01], and how much [m3]. */
  readonly day: number;
  readonly bed: string;
  readonly asked: number;
  /** The rain that does instead [m], and the day on which it is expected. */
  readonly rain: number;
  readonly rainOn: number;
  /** Day on which the bed asks next; null: none of the plan's. */
  readonly until: number | null;
};

type Day = Pick<DayLine | Refusal, "day" | "bed" | "asked">;

const daysOf = ({ lines, refused }: Plan): readonly Day[] =>
  [...lines, ...refused].sort((a, b) => a.day - b.day);

/** The most rain that is likely from today to a day; null: none is. */
function mostRain(forecast: Forecast, today: number, to: number) {
  let most: { readonly rain: number; readonly rainOn: number } | null = null;
  for (let day = today; day <= to; day++) {
    const rain = isLikely(forecast, day) ? (forecast[day]?.rain ?? 0) : 0;
    if (rain > (most?.rain ?? 0)) most = { rain, rainOn: day };
  }
  return most;
}

/**
 * Of each bed the first watering that the rain spares.
 *
 * @param dry the plan were there no rain
 * @param plan the one with the forecast's
 */
export function sparedOf(dry: Plan, plan: Plan, forecast: Forecast, today: number): readonly Spared[] {
  const asks = daysOf(plan);
  const told = new Set<string>();
  return daysOf(dry).flatMap(({ day, bed, asked }) => {
    const most = mostRain(forecast, today, day);
    const own = asks.filter((one) => one.bed === bed);
    if (!most || told.has(bed) || own.some((one) => one.day === day)) return [];
    told.add(bed);
    return [{ day, bed, asked, ...most, until: own.find((one) => one.day > day)?.day ?? null }];
  });
}
