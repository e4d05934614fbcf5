// The runs from today on as they are drawn, whatever kind of answer they are.

import type { Lasts, LineAhead } from "../../scene/lasts-plot.ts";
import type { Ahead, Forecast, FromToday } from "../../telling/from-today.ts";

function named({ year, shift, short, again, empty, water }: Ahead, plain: string): LineAhead {
  const by = shift === 0 ? "" : `, ${Math.abs(shift)} days ${shift < 0 ? "earlier" : "later"}`;
  return { name: year === null ? plain : `${year}${by}`, short, again, empty, water };
}

/** What is drawn; null outside the season. */
export function drawnOf(from: FromToday, forecast: Forecast): Lasts | null {
  if (from.kind === "out_of_season") return null;
  const { today, last, now } = from;
  const days = Object.keys(forecast).map((day) => Number(day) - today + 1);
  const base = { today, last, now, foreseen: Math.max(0, ...days) };
  if (from.kind === "odds") {
    const { ahead, short } = from;
    return { ...base, lines: ahead.map((one) => named(one, "")), bad: short.oneInTen, middle: short.half };
  }
  const { usual, dry } = from;
  const lines = [
    ...(usual === dry ? [] : [{ ...named(usual, ""), name: "usual weather" }]),
    named(dry, "no rain"),
  ];
  return { ...base, lines, bad: dry.short, middle: usual.short };
}
