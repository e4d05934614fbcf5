// What a bed is given at once by its own rule, and how soon again: its cans, its hose and the tank they draw from bear that.

import { DAY } from "../units/constants.ts";
import { wateredGround } from "./bed-days.ts";
import { type BedDemand, grownBed, neverRefused } from "./demand.ts";
import type { BedPart } from "./input.ts";
import { daysApart, mayAsk } from "./schedule.ts";
import type { Sky } from "./sky.ts";
import { dayOfSeason, type SeasonDates } from "./spans.ts";

export type AtOnce = {
  /** By the soil, a good watering; a set amount, as it is set; else the most that the soil lacks on any of its days [m3]. */
  readonly volume: number;
  /** Least time to the next one; null where a peak day needs nothing [s]. */
  readonly interval: number | null;
};

/**
 * What a bed is given at once.
 *
 * @param dates first and last day of the season, `MM-DD`
 * @param sky depths of each day [m]
 * @param demand of the same bed, dates and sky
 * @throws DomainError for a crop or soil outside its relations
 */
export function atOnce(bed: BedPart, dates: SeasonDates, sky: Sky, demand: BedDemand): AtOnce {
  const { rule } = bed;
  if (rule.kind === "soil") return { volume: demand.wateringVolume, interval: demand.wateringInterval };
  return { volume: rule.volume ?? mostLacked(bed, dates, sky), interval: daysApart(rule) * DAY };
}

/** The most that its ground lacks on a day on which it is watered, were it never refused; the day of planting apart [m3]. */
function mostLacked(bed: BedPart, dates: SeasonDates, sky: Sky): number {
  const { days } = grownBed(bed, dates, sky);
  const places = dayOfSeason(dates, sky.firstDay, sky.eto.length);
  const given = neverRefused(bed, days, (day, lack) => {
    const place = places[day] as number;
    if (place === 0) return null;
    return mayAsk(bed.rule, sky.firstDay + day, place) ? lack : 0;
  });
  let most = 0;
  for (let day = 0; day < given.length; day++)
    if (days.planted[day] !== 1) most = Math.max(most, given[day] as number);
  return (most * wateredGround(bed)) / bed.efficiency;
}
