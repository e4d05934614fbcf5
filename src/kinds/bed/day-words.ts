// What a day's watering of a bed lacked, in a sentence.

import { BOUNDS, type Bound } from "../../season/input.ts";
import type { DayNotes } from "../season/outputs.ts";

const WHY: Readonly<Record<Bound, string>> = {
  rain: "too little rain had come",
  storage: "the tank was empty after water spilled earlier",
  transfer: "the small tank was not full again",
  pump_time: "the pump's time ran out",
  energy: "the battery was drawn down, or the sun too weak",
  hands: "your time ran out",
  held_back: "water was held back for beds that come first",
};

export type NotedBed = {
  readonly title: string;
  readonly notes: DayNotes;
  /** Titles of what waters it, in order. */
  readonly ways: readonly string[];
};

/**
 * What a bed's watering lacked on a day.
 *
 * @param bed its title, notes and ways
 * @param day of the record, counted from 0
 * @param volume how a volume is shown [m3]
 * @returns a sentence; null where nothing was lacking
 */
export function dayNote(
  { title, notes, ways }: NotedBed,
  day: number,
  volume: (m3: number) => string,
): string | null {
  const bound = BOUNDS[(notes.lacked[day] ?? 0) - 1];
  if (!bound) return null;
  const why = WHY[bound];
  const last = notes.lastBy[day] ?? 0;
  const helper = last > 1 ? ways[last - 1] : undefined;
  if (notes.unfilled[day] !== 1) return helper ? `${title}: ${why}; ${helper} helped out.` : null;
  if (last === 0) return `${title} got nothing: ${why}.`;
  const by = helper ? `, with ${helper}` : "";
  return `${title} got only ${volume(notes.given[day] ?? 0)}${by}: ${why}.`;
}
