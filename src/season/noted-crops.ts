// Crops as they were planted and pulled up by the notes: the beds of a season's input follow them from their days on.

import { calendarDate, dayInYear } from "../units/calendar.ts";
import type { CropEvent, CropPart, SeasonInput } from "./input.ts";

export type CropNote = CropEvent & { readonly bed: string };

/**
 * A season's input whose beds grow what was noted; the very same where nothing was.
 *
 * @param notes in order: who notes a planting speaks of the bed's first crop, who pulls up of all that stands
 */
export function withCropNotes(input: SeasonInput, notes: readonly CropNote[]): SeasonInput {
  if (notes.length === 0) return input;
  const cropOf = (crop: CropPart, events: readonly CropEvent[]): CropPart =>
    events.length === 0 ? crop : { ...crop, noted: events };
  const beds = input.beds.map((bed) => {
    const own = notes.filter((note) => note.bed === bed.id).map(({ what, date }) => ({ what, date }));
    const pulled = own.filter(({ what }) => what === "pulled");
    return { ...bed, crops: bed.crops.map((crop, place) => cropOf(crop, place === 0 ? own : pulled)) };
  });
  return { ...input, beds };
}

/** Planting day that the card gives nearest to a date. */
function nearestPlanting(planted: CropPart["planted"], date: number): number | null {
  const { year } = calendarDate(date);
  const days = [year - 1, year, year + 1].flatMap((one) => dayInYear(planted, one) ?? []);
  const sorted = days.sort((a, b) => Math.abs(a - date) - Math.abs(b - date));
  return sorted[0] ?? null;
}

/**
 * Lays what was noted of a crop over its ages.
 *
 * @param ages days since planting on each day of a record, -1 where it does not stand; written to
 * @param firstDay of the record [days since 1970-01-01]
 * @param life days from planting to the end of its last stage
 */
export function layNoted(
  ages: Int32Array,
  { planted, noted }: CropPart,
  firstDay: number,
  life: number,
): void {
  let lastPulled = -Infinity;
  for (const { what, date } of noted ?? []) {
    if (what === "pulled") {
      pullUp(ages, date - firstDay);
      lastPulled = date;
      continue;
    }
    const instead = nearestPlanting(planted, date);
    for (let day = 0; day < ages.length; day++) {
      const on = firstDay + day;
      const isIts = on - (ages[day] as number) === instead && (ages[day] as number) >= 0;
      if (on >= date && on < date + life) ages[day] = on - date;
      // Nothing stood of what the card would have planted, but for what has been pulled up since.
      else if (isIts && on >= lastPulled) ages[day] = -1;
    }
  }
}

/** From a day on nothing is left of what was planted by then. */
function pullUp(ages: Int32Array, on: number): void {
  for (let day = Math.max(0, on); day < ages.length; day++) {
    const age = ages[day] as number;
    if (age >= 0 && day - age <= on) ages[day] = -1;
  }
}
