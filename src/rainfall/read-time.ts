// Times of day as records write them: 14:30, 2:30 pm, 1430, 14h, 14.30, 14.

import { MINUTES_A_DAY } from "../units/constants.ts";
/** Stands for text where a time should be that is none. */
export const NO_TIME = -2;
const NONE = -1;

const CLOCK = /^[T ,]*(\d{1,2})\s*[:h.]\s*(\d{2})(?:[:.](\d{2}(?:[.,]\d+)?))?\s*(am|pm|a\.m\.|p\.m\.)?(.*)$/i;
const COMPACT = /^[T ,]*(\d{2})(\d{2})(\d{2})?(.*)$/i;
const HOUR = /^[T ,]*(\d{1,2})\s*(h|hrs?|hours?|am|pm|a\.m\.|p\.m\.)(.*)$/i;
/** What may follow a time: a zone, or the name of a day. */
const AFTER = /^\s*(z|utc|gmt|[a-z]{2,5}|[+-]\d{1,2}:?(\d{2})?)?\s*$/i;
const DAY_NAME = /^[ ,(]*(mon|tue|wed|thu|fri|sat|sun)[a-z]*\.?[ )]*$/i;

function minutesOf(hours: number, minutes: number, seconds: number, half: string, rest: string): number {
  if (!AFTER.test(rest)) return NO_TIME;
  const isHalf = half !== "";
  if (isHalf && (hours < 1 || hours > 12)) return NO_TIME;
  const hour = isHalf ? (hours % 12) + (half.toLowerCase().startsWith("p") ? 12 : 0) : hours;
  const total = hour * 60 + minutes + seconds / 60;
  return minutes < 60 && seconds < 61 && total <= MINUTES_A_DAY ? total : NO_TIME;
}

function minuteIn(text: string): number {
  const clock = CLOCK.exec(text);
  if (clock) {
    const seconds = Number((clock[3] ?? "0").replace(",", "."));
    return minutesOf(Number(clock[1]), Number(clock[2]), seconds, clock[4] ?? "", clock[5] ?? "");
  }
  const compact = COMPACT.exec(text);
  if (compact) {
    const [, hours, minutes, seconds, rest] = compact;
    return minutesOf(Number(hours), Number(minutes), Number(seconds ?? 0), "", rest ?? "");
  }
  const hour = HOUR.exec(text);
  if (!hour) return NO_TIME;
  const half = /^[ap]/i.test(hour[2] ?? "") ? (hour[2] ?? "") : "";
  return minutesOf(Number(hour[1]), 0, 0, half, hour[3] ?? "");
}

function twoDigits(text: string, at: number): number {
  return (text.charCodeAt(at) - 48) * 10 + text.charCodeAt(at + 1) - 48;
}

/** Minutes since midnight in the text that follows a date; -1 where none stands there, NO_TIME where it is none. */
export function minuteAfter(rest: string): number {
  // The common `T14:30` goes the short way: a log has millions of them.
  if (rest.length === 6 && rest.charCodeAt(3) === 58) {
    const minutes = twoDigits(rest, 1) * 60 + twoDigits(rest, 4);
    if (minutes >= 0 && minutes <= MINUTES_A_DAY) return minutes;
  }
  if (rest.trim() === "" || DAY_NAME.test(rest)) return NONE;
  return minuteIn(rest);
}

/**
 * Minutes since midnight in a cell that holds a time alone.
 *
 * @param asClock short numbers are minutes of `hhmm` without its leading noughts, not hours
 */
export function minuteOfClock(cell: string, asClock = false): number {
  const text = cell.trim();
  if (text === "") return NONE;
  if (!/^\d{1,4}(\.0)?$/.test(text)) return minuteIn(text);
  const digits = text.replace(/\.0$/, "");
  const value = Number(digits);
  const isHours = digits.length <= 2 && !asClock;
  const minutes = isHours ? value * 60 : Math.floor(value / 100) * 60 + (value % 100);
  return minutes <= MINUTES_A_DAY && (isHours || value % 100 < 60) ? minutes : NO_TIME;
}
