// Spans of time in two neighbouring units: "7 h 40 min", "3 days 4 h", "19 days".

import { DAY, HOUR, MINUTE } from "./constants.ts";
import { showNumber } from "./show-number.ts";

const NO_BREAK = "\u00a0";
const MINUTES_SHOWN_ALONE_FROM = 10 * MINUTE;
const DAYS_SHOWN_ALONE_FROM = 10 * DAY;

function days(count: number, locale: string): string {
  return `${showNumber(count, 3, locale)}${NO_BREAK}${count === 1 ? "day" : "days"}`;
}

/** A whole number of `small` steps told as so many `large` ones and the rest. */
function pair(steps: number, perLarge: number, large: (count: number) => string, small: string): string {
  const rest = steps % perLarge;
  const head = large((steps - rest) / perLarge);
  return rest === 0 ? head : `${head}${NO_BREAK}${rest}${NO_BREAK}${small}`;
}

function positive(seconds: number, locale: string): string {
  const unit = (word: string) => (count: number) => `${count}${NO_BREAK}${word}`;
  if (seconds < 10) return `${showNumber(seconds, 2, locale)}${NO_BREAK}s`;
  // Each bound is the value that would round up to the next larger unit.
  if (seconds < MINUTE - 0.5) return `${Math.round(seconds)}${NO_BREAK}s`;
  if (seconds < MINUTES_SHOWN_ALONE_FROM - 0.5) return pair(Math.round(seconds), MINUTE, unit("min"), "s");
  const minutes = Math.round(seconds / MINUTE);
  if (minutes * MINUTE < HOUR) return `${minutes}${NO_BREAK}min`;
  if (minutes * MINUTE < DAY) return pair(minutes, HOUR / MINUTE, unit("h"), "min");
  const hours = Math.round(seconds / HOUR);
  if (hours * HOUR < DAYS_SHOWN_ALONE_FROM) {
    return pair(hours, DAY / HOUR, (count) => days(count, locale), "h");
  }
  return days(Math.round(seconds / DAY), locale);
}

/** A duration in the two units that tell it best. @param seconds [s] */
export function durationText(seconds: number, locale: string): string {
  if (seconds === 0) return `0${NO_BREAK}min`;
  return seconds < 0 ? `-${positive(-seconds, locale)}` : positive(seconds, locale);
}

/** A span of days; shorter than a day it is told as a duration. @param seconds [s] */
export function spanText(seconds: number, figures: number, locale: string): string {
  if (seconds === 0) return `0${NO_BREAK}days`;
  if (Math.abs(seconds) < DAY) return durationText(seconds, locale);
  const number = showNumber(seconds / DAY, figures, locale);
  return `${number}${NO_BREAK}${number === "1" ? "day" : "days"}`;
}
