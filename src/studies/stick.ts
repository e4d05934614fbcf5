// Marks for the dip stick from the tuned holding rule: above a month's mark water all, below it only the beds worth most.

import { levelAt, volumeAt } from "../physics/vessel.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import type { NoAdvice } from "../season/advice.ts";
import type { SeasonFailure } from "../season/answer.ts";
import { type InReach, inReachOf } from "../season/from-today.ts";
import { byWorth } from "../season/holding.ts";
import type { SeasonInput, TankPart } from "../season/input.ts";
import { prepareSeason } from "../season/run.ts";
import type { SeasonState } from "../season/state.ts";
import { type StickRule, type TriedYear, tunedStick } from "../season/stick-rule.ts";
import { NO_WHOLE_SEASON } from "../season/whole-season.ts";
import { plannedOf } from "./season-asked.ts";
import type { Whole } from "./work-out.ts";

/** A month's mark. */
export type StickMark = {
  /** 1 January to 12 December. */
  readonly month: number;
  /** Water in reach in all tanks above which all beds are watered [m3]. */
  readonly volume: number;
  /** Depth at which each tank stands when all are as full as each other [m], by id. */
  readonly depths: Readonly<Record<string, number>>;
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
  /** How many of the record's seasons the marks were tuned on: those that lose most. */
  readonly on: number;
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
  const planned = plannedOf(whole, records);
  return "failed" in planned ? planned : stickFor(planned.plan, planned.record);
}

/** The same of a season's input. */
export function stickFor(input: SeasonInput, record: DailyRecord): Stick | NoAdvice | SeasonFailure {
  const state = prepareSeason(input, record);
  if ("failed" in state) return state;
  if (state.beds.length < 2) return { kind: "one_bed" };
  const tuned = tunedStick(input, record);
  if (!tuned) return { failed: NO_WHOLE_SEASON, at: null };
  const ids = byWorth(state.beds).map(({ part }) => part.id);
  return {
    kind: "stick",
    madeUp: record.madeUp,
    marks: marksOf(state, tuned),
    kept: ids.filter((id) => !tuned.held.includes(id)),
    held: ids.filter((id) => tuned.held.includes(id)),
    on: tuned.on,
    years: tuned.years,
  };
}

function marksOf(state: SeasonState, { marks }: StickRule): readonly StickMark[] {
  const reach = inReachOf(state);
  return [...marks].map(([month, share]) => {
    const volume = share * reach.full;
    return { month, volume, depths: depthsAt(state.tanks.parts, reach, share) };
  });
}

/** Where the tanks stand when so much water is in reach, each filled to the same share of what is in reach when full. */
function depthsAt(parts: readonly TankPart[], reach: InReach, share: number): StickMark["depths"] {
  return Object.fromEntries(
    reach.tanks.map(({ place, under }) => {
      const { id, vessel } = parts[place] as TankPart;
      const held = under + share * (volumeAt(vessel, vessel.height) - under);
      return [id, levelAt(vessel, held)];
    }),
  );
}
