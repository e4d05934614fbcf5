// Days in words.

import { calendarDate, parseIsoDate, weekday } from "../units/calendar.ts";
import { SHORT_MONTHS, SHORT_WEEKDAYS, WEEKDAYS } from "../units/calendar-names.ts";

/** "Jul 14" where people write it so, else "14 Jul". @param day a day number */
export function dayAndMonth(day: number, locale: string): string {
  const parts = calendarDate(day);
  const month = SHORT_MONTHS[parts.month - 1];
  return locale === "en-US" ? `${month}\u00a0${parts.day}` : `${parts.day}\u00a0${month}`;
}

/** "Tuesday, Jul 14" where people write it so, else "Tuesday, 14 Jul". @param date a day number or `YYYY-MM-DD` */
export function dateWords(date: number | string, locale: string): string {
  const day = typeof date === "number" ? date : parseIsoDate(date);
  if (day === null) return String(date);
  return `${WEEKDAYS[weekday(day) - 1]}, ${dayAndMonth(day, locale)}`;
}

/** "Tue, Jul 14". @param date `YYYY-MM-DD` */
export function shortDateWords(date: string, locale: string): string {
  const day = parseIsoDate(date);
  return day === null ? date : `${SHORT_WEEKDAYS[weekday(day) - 1]}, ${dayAndMonth(day, locale)}`;
}

/** "Tue". @param day a day number */
export const shortWeekday = (day: number): string => SHORT_WEEKDAYS[weekday(day) - 1] ?? "";
