// The beds of a run, in the order in which they are watered, with what each holds back for those before it.

import { type BedDays, bedDays, wateredGround } from "./bed-days.ts";
import { type Before, dryBefore } from "./before.ts";
import { type Lacks, noLacks, ownBound } from "./bounds.ts";
import type { CropTrait } from "./crop-days.ts";
import { type BedDemand, grownBed } from "./demand.ts";
import type { BedPart, LeftOut } from "./input.ts";
import { isByCalendar, letGoDays } from "./schedule.ts";
import type { Sky } from "./sky.ts";
import { type Came, fullSoil, nothingCame, type Soil } from "./soil-step.ts";
import type { Source } from "./sources.ts";
import type { SeasonDates } from "./spans.ts";
import { newTally, type Tally } from "./tally.ts";

/** How a bed stands back for others in a run that follows a rule of its own. */
export type BedHold = {
  /** What stays in the tanks, for each of its sources, on each day of the run [m3]. */
  readonly kept: readonly Float64Array[];
  /** It gets all that it asks for where so much of it lies above what stays, else nothing [-]; null: it gets what does. */
  above: number | null;
  /** How many times it is still refused when it asks, Infinity: given up; and served whatever is to be kept. */
  refused: number;
  served: number;
};

export type Bed = {
  readonly part: BedPart;
  /** Its ground [m2], and water to give for a depth there [m3/m]. */
  readonly ground: number;
  readonly perDepth: number;
  readonly traits: readonly CropTrait[];
  /** Of the weather that is run. */
  days: BedDays;
  readonly demand: BedDemand | null;
  readonly none: string | null;
  /** What waters it, in order. */
  readonly sources: readonly Source[];
  /** Beds before it that take from the same water, for each of its sources. */
  readonly before: readonly (readonly Bed[])[];
  /** How it stands back for others where a run follows a rule of its own; null: by the season's days. */
  hold: BedHold | null;
  /** Whether it gets a set amount on set days, whatever its soil lacks. */
  readonly byCalendar: boolean;
  /** 1 on each day of the weather that is run on which it is let go; null: never. */
  letGo: Uint8Array | null;
  /** 1 on each day of the run whose rain is waited for, by one's own forecast; null: none is. */
  foretold: Uint8Array | null;
  /** What its last day did [m]. */
  readonly came: Came;
  /** What its ground lacks now [m]; and lacked when its crops last stood in this season; asked for today [m3]. */
  readonly soil: Soil;
  lackBefore: number;
  asked: number;
  /** Bound of its last short watering since it was last refilled, its place in BOUNDS; and the tank that lacked water, or -1. */
  bound: number;
  dryTank: number;
  /** Bound of its last short watering, whatever came after. */
  shortBound: number;
  /** Of today's watering: what each allowance alone would have kept from it, and what each source gave first [m3]. */
  readonly lacks: Lacks;
  readonly servedBy: Float64Array;
  /** What others had drawn from the tank of each source before it; and whether that kept more from it than the tank's size. */
  readonly othersDrew: Float64Array;
  othersFirst: boolean;
  readonly given: Float64Array;
  /** On each day: what the first waterer that could not give all lacked, its place in BOUNDS and one more; 0: nothing. */
  readonly lacked: Uint8Array;
  /** Place of the last waterer that gave anything, and one more; 0: none. And 1 where it got less than it asked for. */
  readonly lastBy: Uint8Array;
  readonly unfilled: Uint8Array;
  readonly evening: Float64Array;
  readonly potential: Tally;
  readonly use: Tally;
  /** What the ground lacked at planting, or when the season began, beyond what the crop before had left short [m3]. */
  readonly owed: Tally;
  readonly rained: Tally;
  /** Of the water given what the ground kept, over the efficiency [m3]; days on which crops stand outside the season. */
  readonly got: Tally;
  readonly outside: Tally;
  readonly due: Tally;
  readonly met: Tally;
  readonly daysShort: Tally;
  /** First short day of each season, the last element for days outside; -1: none [day of the record]. */
  readonly firstShort: Int32Array;
  /** Days on which a later waterer gave what an earlier one could not. */
  readonly daysHelped: Tally;
  /** Unmet water by season, the last for days outside, and within it by bound [m3]. */
  readonly unmet: readonly Float64Array[];
  /** Short days in the same order [day]. */
  readonly shortBy: readonly Float64Array[];
  /** Days of the whole seasons on which each bound was the first to lack. */
  readonly lackedDays: Float64Array;
};

/** What beds are put together from. */
export type BedGround = {
  readonly sky: Sky;
  readonly dates: SeasonDates;
  readonly dayInSeason: Int32Array;
  readonly sources: ReadonlyMap<string, Source>;
  /** Tanks whose water reaches a tank through lines, itself first. */
  readonly feeders: readonly (readonly number[])[];
  readonly seasons: number;
  readonly years: number;
  /** What a longer record taught of beds by their id, where these days are only a few. */
  readonly known?: KnownBeds | undefined;
  /** Where the run goes on from days that are over. */
  readonly before?: Before | undefined;
};

export type KnownBeds = ReadonlyMap<string, Pick<Bed, "traits" | "demand" | "none" | "days">>;

/**
 * Beds ready to run, in the order of their priority, then of their ids.
 *
 * @param given sky, sources and the like
 * @param leftOut gets a bed whose waterers are all gone
 * @throws DomainError for a crop or soil outside its relations
 */
export function readyBeds(parts: readonly BedPart[], given: BedGround, leftOut: LeftOut[]): readonly Bed[] {
  const beds: Bed[] = [];
  for (const part of [...parts].sort((a, b) => a.priority - b.priority || (a.id < b.id ? -1 : 1))) {
    const sources = part.wateredBy.flatMap((id) => given.sources.get(id) ?? []);
    if (part.wateredBy.length > 0 && sources.length === 0) {
      leftOut.push({ id: part.id, reason: "nothing that waters it could be worked out" });
      continue;
    }
    const known = given.known?.get(part.id);
    const grown = known
      ? { ...known, days: bedDays(part, given.sky, known.traits, known.days.room) }
      : grownBed(part, given.dates, given.sky);
    beds.push({
      part,
      ground: wateredGround(part),
      perDepth: wateredGround(part) / part.efficiency,
      traits: grown.traits,
      days: grown.days,
      demand: grown.demand,
      none: grown.none,
      sources,
      before: sources.map((source) => earlier(beds, part, source, given.feeders)),
      hold: null,
      byCalendar: isByCalendar(part.rule),
      letGo: letGoUnder(part, given),
      soil: fullSoil(),
      came: nothingCame(),
      lackBefore: 0,
      asked: 0,
      bound: ownBound(sources),
      dryTank: -1,
      shortBound: ownBound(sources),
      lacks: noLacks(),
      servedBy: new Float64Array(sources.length),
      othersDrew: new Float64Array(sources.length),
      othersFirst: false,
      foretold: null,
      ...sums(given),
    });
  }
  return beds;
}

type BedWeather = Pick<BedGround, "sky" | "dayInSeason" | "before">;

const letGoUnder = (part: BedPart, { sky, dayInSeason, before }: BedWeather): Uint8Array | null =>
  letGoDays(part, { ...sky, dayInSeason, ...dryBefore(before, part.id) });

/** Lays other weather of the very same days over beds of which a longer record taught what it can. */
export function layWeather(beds: readonly Bed[], weather: BedWeather): void {
  for (const bed of beds) {
    bed.days = bedDays(bed.part, weather.sky, bed.traits, bed.days.room);
    bed.letGo = letGoUnder(bed.part, weather);
  }
}

function sums({ seasons, years, sky }: BedGround) {
  const tally = () => newTally(seasons, years);
  return {
    given: new Float64Array(sky.eto.length),
    lacked: new Uint8Array(sky.eto.length),
    lastBy: new Uint8Array(sky.eto.length),
    unfilled: new Uint8Array(sky.eto.length),
    evening: new Float64Array(sky.eto.length),
    potential: tally(),
    use: tally(),
    owed: tally(),
    rained: tally(),
    got: tally(),
    outside: tally(),
    due: tally(),
    met: tally(),
    daysShort: tally(),
    firstShort: new Int32Array(seasons + 1).fill(-1),
    daysHelped: tally(),
    lackedDays: noLacks(),
    unmet: Array.from({ length: seasons + 1 }, noLacks),
    shortBy: Array.from({ length: seasons + 1 }, noLacks),
  };
}

/** Beds of a higher place that take from water which this source would take from too. */
function earlier(
  beds: readonly Bed[],
  part: BedPart,
  source: Source,
  feeders: readonly (readonly number[])[],
): readonly Bed[] {
  const water = feeders[source.tank] ?? [];
  return beds.filter((bed) => bed.part.priority < part.priority && takesFrom(bed, water, feeders));
}

/** Whether a bed takes from water in some tanks, straight or through lines. */
export function takesFrom(
  { sources }: Pick<Bed, "sources">,
  water: readonly number[],
  feeders: readonly (readonly number[])[],
): boolean {
  return sources.some(({ tank }) => (feeders[tank] ?? []).some((place) => water.includes(place)));
}
