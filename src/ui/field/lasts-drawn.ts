// The runs from today on as they are drawn, whatever kind of answer they are.

import type { Lasts, LineAhead } from "../../scene/lasts-plot.ts";
import type { Ahead, Forecast, FromToday } from "../../telling/from-today.ts";
import { type ToldDays, toldDays } from "../../telling/short-today.ts";

function named(run: Ahead, told: ToldDays["of"], plain: string): LineAhead {
  const { year, shift, short, again, empty, water } = run;
  const by = shift === 0 ? "" : `, ${Math.abs(shift)} days ${shift < 0 ? "earlier" : "later"}`;
  return { name: year === null ? plain : `${year}${by}`, short, again, told: told(run), empty, water };
}

/** What is drawn; null outside the season. */
export function drawnOf(from: FromToday, forecast: Forecast): Lasts | null {
  if (from.kind === "out_of_season") return null;
  const { today, last, now } = from;
  const days = Object.keys(forecast).map((day) => Number(day) - today + 1);
  const { of, middle, bad } = toldDays(from);
  const base = { today, last, now, foreseen: Math.max(0, ...days), middle, bad };
  if (from.kind === "odds") return { ...base, lines: from.ahead.map((one) => named(one, of, "")) };
  const { usual, dry } = from;
  const lines = [
    ...(usual === dry ? [] : [{ ...named(usual, of, ""), name: "usual weather" }]),
    named(dry, of, "no rain"),
  ];
  return { ...base, lines };
}
