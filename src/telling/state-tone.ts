// The color of what tells a state, the one table of it: red only where something is short, green where all of it is met.

import { isWholeShare } from "../units/rounding.ts";
import type { NumberPiece, Tone } from "./asked.ts";

const SHORT = /_short(_run)?$/;
const MET = /(share_met|reliability_\w+)$/;

/**
 * @param id "card.row", or the row's name
 * @returns null where it tells no state: it has its subject's color
 */
export function stateTone(id: string, value: unknown): Tone | null {
  if (typeof value !== "number") return null;
  if (SHORT.test(id)) return value > 0 ? "trouble" : "growth";
  if (MET.test(id)) return isWholeShare(value) ? "growth" : "trouble";
  return null;
}

/** The color in which a number of a sentence is shown: of its value, whatever the sentence was made for, unless it says its own words. */
export function toneShown({ tone, text, quantity }: NumberPiece, value: unknown): Tone {
  const state = tone === "plain" || text !== undefined ? null : stateTone(quantity, value);
  return state ?? tone;
}
