// Marks for the dip stick from the tuned holding rule: above a month's mark water all, below it only the beds worth most.

import { levelAt, volumeAt } from "../physics/vessel.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import type { NoAdvice } from "../season/advice.ts";
import type { SeasonFailure } from "../season/answer.ts";
import type { Bed } from "../season/beds.ts";
import { type InReach, inReachOf } from "../season/from-today.ts";
import { byWorth, daysAt, type HoldingRule } from "../season/holding.ts";
import { type TriedYear, tunedRule } from "../season/holding-tuned.ts";
import type { SeasonInput, TankPart } from "../season/input.ts";
import { prepareSeason } from "../season/run.ts";
import type { SeasonState } from "../season/state.ts";
import { calendarDate } from "../units/calendar.ts";
import { askedOf } from "./from-today.ts";
import type { Whole } from "./work-out.ts";

/** A month's mark. */
export type StickMark = {
  /** 1 January to 12 December. */
  readonly month: number;
  /** Water in reach in all tanks above which all are watered, and below which none is, to save for later [m3]. */
  readonly volume: number;
  readonly none: number;
  /** Depth at which each tank stands when all are as full as each other [m], by id; null: more than it holds. */
  readonly depths: Readonly<Record<string, number | null>>;
  /** The same of the water below which none is watered; left out where nothing is saved. */
  readonly noneDepths?: Readonly<Record<string, number | null>>;
};

export type Stick = {
  readonly kind: "stick";
  /** Whether the years that it was tuned on are made up. */
  readonly madeUp: boolean;
  /** In the order of the season's months. */
  readonly marks: readonly StickMark[];
  /** Beds that get water below the marks too, and the others, each from the one worth most on. */
  readonly kept: readonly string[];
  readonly held: readonly string[];
  readonly rule: HoldingRule;
  /** What each season of the record would have lost of all worth by it, and by the season's own days [-]. */
  readonly years: readonly TriedYear[];
};

/**
 * The stick's marks, and how they would have done in each past year.
 *
 * @param records all that are known, made-up ones among them
 * @source rule curves with hedging, Shih and ReVelle 1994; Draper and Lund 2004 (from memory); tuned as tunedRule says
 */
export function stickOf(whole: Whole, records: readonly DailyRecord[]): Stick | NoAdvice | SeasonFailure {
  const { plan, record } = askedOf(whole, records);
  if (!plan) return { failed: "There is no season to go on with.", at: null };
  if (!record) return { failed: "The rain record is not here.", at: null };
  return stickFor(plan, record);
}

/** The same of a season's input. */
export function stickFor(input: SeasonInput, record: DailyRecord): Stick | NoAdvice | SeasonFailure {
  const state = prepareSeason(input, record);
  if ("failed" in state) return state;
  const ranked = byWorth(state.beds);
  const least = ranked.at(-1);
  if (!least || ranked.length < 2) return { kind: "one_bed" };
  const tuned = tunedRule(input, record);
  if (!tuned) return { failed: "The record does not hold one whole season.", at: null };
  const most = ranked[0]?.part.worth;
  const kept = ranked.filter((bed) => bed !== least && bed.part.worth === most);
  const ids = (beds: readonly Bed[]) => beds.map(({ part }) => part.id);
  return {
    kind: "stick",
    madeUp: record.madeUp,
    marks: marksOf(state, tuned.rule, ranked.slice(0, -1)),
    kept: ids(kept),
    held: ids(ranked.filter((bed) => !kept.includes(bed))),
    ...tuned,
  };
}

/** A mark for each month of the season, by the days of its middle as far as it is in the season. */
function marksOf(state: SeasonState, rule: HoldingRule, better: readonly Bed[]): readonly StickMark[] {
  const { record, dayInSeason, seasons, tanks } = state;
  const [season] = seasons;
  if (!season) return [];
  const needOf = (beds: readonly Bed[]) =>
    beds.reduce((sum, { demand }) => sum + (demand?.peakDayNeed ?? 0), 0);
  const reach = inReachOf(state);
  const months = new Map<number, number[]>();
  for (let day = season.first; day <= season.last; day++) {
    const { month } = calendarDate(record.firstDay + day);
    const places = months.get(month) ?? [];
    places.push(((dayInSeason[day] as number) - 1) / Math.max(1, season.last - season.first));
    months.set(month, places);
  }
  return [...months].map(([month, places]) => {
    const share = places[Math.floor(places.length / 2)] as number;
    const none = daysAt(rule.saved, share) * needOf(state.beds);
    const volume = none + daysAt(rule.marks, share) * needOf(better);
    const depths = (water: number) => depthsAt(tanks.parts, reach, water);
    return { month, volume, none, depths: depths(volume), ...(none > 0 && { noneDepths: depths(none) }) };
  });
}

/** Where the tanks stand when so much water is in reach, each filled to the same share of what is in reach when full. */
function depthsAt(parts: readonly TankPart[], reach: InReach, volume: number): StickMark["depths"] {
  const share = reach.full > 0 ? volume / reach.full : Infinity;
  return Object.fromEntries(
    reach.tanks.map(({ place, under }) => {
      const { id, vessel } = parts[place] as TankPart;
      const held = under + share * (volumeAt(vessel, vessel.height) - under);
      return [id, share > 1 ? null : levelAt(vessel, held)];
    }),
  );
}
