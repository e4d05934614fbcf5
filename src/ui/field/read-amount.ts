// Reads an amount that is typed to be noted: in whatever unit it is given, never less than nothing.

import { type Reading, type ReadOptions, readQuantity } from "../../units/read.ts";
import { signsOf } from "../../units/signs.ts";

/** What the least is that can be noted: a tank may be dipped dry, of a watering there is some. */
export type Least = "none" | "some";

/** A text with the locale's decimal sign in the place of a lone comma or point: a phone's keys may have only the other. */
function withOwnSign(text: string, locale: string): string | null {
  const found = text.match(/[.,]/g);
  return found?.length === 1 ? text.replace(/[.,]/, signsOf(locale).decimal) : null;
}

const refused = (text: string, message: string): Reading => ({
  ok: false,
  message,
  start: 0,
  end: text.length,
});

/** What a typed text says, or why it cannot be noted. */
export function readAmount(text: string, options: ReadOptions, least: Least): Reading {
  const asTyped = readQuantity(text, options);
  const other = asTyped.ok ? null : withOwnSign(text, options.locale ?? "en-US");
  const again = other === null ? asTyped : readQuantity(other, options);
  const read = again.ok ? again : asTyped;
  if (!read.ok) return read;
  if (read.si < 0) return refused(text, "It is not less than nothing.");
  if (read.si === 0 && least === "some") return refused(text, "Say how much: more than nothing.");
  return read;
}
