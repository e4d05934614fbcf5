// Days in words.

import { calendarDate, parseIsoDate, weekday } from "../units/calendar.ts";
import { SHORT_MONTHS, WEEKDAYS } from "../units/calendar-names.ts";

/** "Tuesday, Jul 14" where people write it so, else "Tuesday, 14 Jul". @param date a day number or `YYYY-MM-DD` */
export function dateWords(date: number | string, locale: string): string {
  const day = typeof date === "number" ? date : parseIsoDate(date);
  if (day === null) return String(date);
  const parts = calendarDate(day);
  const month = SHORT_MONTHS[parts.month - 1];
  const words = locale === "en-US" ? `${month} ${parts.day}` : `${parts.day} ${month}`;
  return `${WEEKDAYS[weekday(day) - 1]}, ${words}`;
}
