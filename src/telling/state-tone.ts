// The color of what tells a state, the one table of it: red only where something is short, green where all of it is met.

import { isWholeShare } from "../units/rounding.ts";
import type { Tone } from "./asked.ts";

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
