// A curve through twelve monthly means that keeps each month's mean: straight between the months' middles,
// with middles moved until the means come out.
import { calendarDate, dayNumber } from "../units/calendar.ts";

const ROUNDS = 40;

/** Value by straight lines between the middles of months, at a share of the way through a month. */
function between(middles: readonly number[], month: number, share: number): number {
  const here = middles[month] ?? 0;
  const other = share < 0.5 ? (middles[(month + 11) % 12] ?? 0) : (middles[(month + 1) % 12] ?? 0);
  return here + (other - here) * Math.abs(share - 0.5);
}

/** Middles whose lines have the given means: a month's mean is 3/4 its middle and 1/8 each neighbour's. */
function middlesOf(means: readonly number[]): readonly number[] {
  let middles = means;
  for (let round = 0; round < ROUNDS; round++) {
    const before = middles;
    middles = means.map((mean, month) => {
      const around = (before[(month + 11) % 12] ?? 0) + (before[(month + 1) % 12] ?? 0);
      return (mean - around / 8) / 0.75;
    });
  }
  return middles;
}

/**
 * One value a day from twelve monthly means, each month's mean kept.
 * @param means of the twelve months, any unit
 * @param firstDay day number of the first value
 * @param days how many
 */
export function daysByMonthMeans(means: readonly number[], firstDay: number, days: number): Float64Array {
  const middles = middlesOf(means);
  const values = new Float64Array(days);
  for (let at = 0; at < days; at++) {
    const { year, month, day } = calendarDate(firstDay + at);
    const length = dayNumber(month === 12 ? year + 1 : year, (month % 12) + 1, 1) - dayNumber(year, month, 1);
    values[at] = between(middles, month - 1, (day - 0.5) / length);
  }
  return values;
}
