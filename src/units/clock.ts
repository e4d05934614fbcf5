// A time of day as people write it, "7 pm" or "19:30", and back.

import { DAY, HOUR, MINUTE } from "./constants.ts";

const NO_BREAK = "\u00a0";
const HALF = 12;

/** Tags of places that tell the time in twice twelve hours. */
const TWELVE = /^en-(?:US|CA|AU|NZ|IN|PH|ZA)\b/;

const WRITTEN = /^(\d{1,2})(?:[:.](\d{2}))?\s*(?:([ap])\.?\s?m\.?|(?:o'?clock))?$/i;
const WORDS: Readonly<Record<string, number>> = { noon: HALF, midnight: 0, midday: HALF };

export type Clock = {
  /** After midnight [h], [s]. */
  readonly hours: number;
  readonly seconds: number;
};

function hourOf(hour: number, half: string | undefined): number | null {
  if (half === undefined) return hour;
  if (hour < 1 || hour > HALF) return null;
  return (hour % HALF) + (half.toLowerCase() === "p" ? HALF : 0);
}

/** A time of day; null where the text is none, such as a duration. A bare number up to 24 is an hour. */
export function readClock(text: string): Clock | null {
  const word = WORDS[text.trim().toLowerCase()];
  if (word !== undefined) return { hours: word, seconds: word * HOUR };
  const found = WRITTEN.exec(text.trim().replaceAll(NO_BREAK, " "));
  if (!found) return null;
  const hour = hourOf(Number(found[1]), found[3]);
  const minute = Number(found[2] ?? 0);
  if (hour === null || minute * MINUTE >= HOUR) return null;
  const seconds = hour * HOUR + minute * MINUTE;
  return seconds > DAY ? null : { hours: seconds / HOUR, seconds };
}

/** "7:30 pm" where people say so, else "19:30". @param seconds after midnight [s] */
export function clockText(seconds: number, locale: string): string {
  const minutes = Math.round(seconds / MINUTE);
  const hour = Math.floor((minutes * MINUTE) / HOUR);
  const rest = String(minutes - (hour * HOUR) / MINUTE).padStart(2, "0");
  if (!TWELVE.test(locale)) return `${String(hour).padStart(2, "0")}:${rest}`;
  const half = hour % (2 * HALF) >= HALF ? "pm" : "am";
  return `${hour % HALF || HALF}:${rest}${NO_BREAK}${half}`;
}
