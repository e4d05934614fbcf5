// What one season run answers: plain data, series as typed arrays, everything by the part's id and in order of ids.

import type { Bound } from "../network/bounds.ts";
import type { LeftOut } from "./input.ts";

/** Why a season could not be run, and the first day at fault [days since 1970-01-01], where a day is. */
export type SeasonFailure = { readonly failed: string; readonly at: number | null };

/** Of the whole. Means are over the record's whole seasons; null where there is nothing to tell. */
export type SeasonTotals = {
  /** Reachable water of all tanks that serve beds, full, over a peak day's draws [s]. */
  readonly daysOfAutonomy: number | null;
  /** What the soil of all beds holds within easy reach, over what they need on a peak day [s]. */
  readonly soilAutonomy: number | null;
  /** Day from which full tanks are used up soonest, were there no more rain [days since 1970-01-01]. */
  readonly worstDate: number | null;
  /** How long they last from that day on [s]. */
  readonly worstDateLasts: number | null;
  /** Of all beds [m3] a season: what they need, what of it they got, and what was poured past their roots. */
  readonly need: number;
  readonly got: number;
  readonly pastRoots: number;
  /** Summed actual over summed potential crop use [-]. */
  readonly shareMet: number | null;
  /** Days a season with any bed short. */
  readonly daysShort: number | null;
  /** Most short days on end, over the record: of beds, or of draws where no bed is in the run. */
  readonly longestShortRun: number;
  /** Lost to the ground [m3] a season. */
  readonly spill: number;
  /** Largest |in - out - change| of the run over all that went through [-]. */
  readonly balanceError: number;
  /** The same for the batteries' energy [-]. */
  readonly energyBalanceError: number;
  /** The bound of the most short days, of all beds together, or of draws where no bed was short; null: no day was. */
  readonly binding: Bound | null;
  /** Short days of the whole seasons by bound, each bed's counted for itself; and of draws. */
  readonly shortDaysByBound: Readonly<Record<Bound, number>>;
  readonly drawsShortByBound: Readonly<Record<Bound, number>>;
  /** Unmet water of the whole seasons by bound, of beds and draws [m3]. */
  readonly unmetByBound: Readonly<Record<Bound, number>>;
  /** Calendar year with the least rain, and what the season that begins in it saw. */
  readonly driestYear: number | null;
  readonly driestYearShareMet: number | null;
  readonly driestYearDaysShort: number | null;
  /** The bed that went short first in that season, the first by priority of equals, and on which day; null: none did. */
  readonly driestYearShortFirst: { readonly id: string; readonly date: number } | null;
  /** One person's watering. */
  readonly hands: HandsAnswer;
  /** The season that was worst for the beds: most short days, of equals the least share met, then the first. */
  readonly worstSeason: WorstSeason | null;
  /** Whole seasons one by one, in order. */
  readonly bySeason: readonly SeasonShort[];
  /** Seasons with a short day; whole seasons and whole calendar years of the record. */
  readonly seasonsShort: number;
  readonly seasons: number;
  readonly years: number;
};

/** The season that begins in a year: summed actual over summed potential crop use [-], and days with any bed short. */
export type SeasonShort = {
  readonly year: number;
  /** Null where no crop stood. */
  readonly shareMet: number | null;
  readonly daysShort: number;
};

export type WorstSeason = SeasonShort & { readonly shareMet: number };

/** What watering asks of one person, means of whole seasons. */
export type HandsAnswer = {
  /** Rounds with cans, and the water in them [m3]. */
  readonly trips: number;
  readonly volume: number;
  /** Moving and setting up, holding hoses, and rounds with cans [s]. */
  readonly time: number;
  /** Walked there and back with cans [m]. */
  readonly distance: number;
  /** Water and cans lifted [kg]. */
  readonly mass: number;
};

export type RoofAnswer = {
  readonly id: string;
  /** Over the whole record [m3]. */
  readonly caught: number;
  /** [m3], mean of the whole calendar years. */
  readonly meanYearly: number | null;
};

export type TankAnswer = {
  readonly id: string;
  /** Roof water and overflow that found no room and went to the ground [m3], mean of whole calendar years. */
  readonly meanYearlySpill: number | null;
  /** The same over the whole record [m3]. */
  readonly spilled: number;
  /** Passed on to the tank it overflows to, over the whole record [m3]. */
  readonly passedOn: number;
  /** Depth above its floor on its lowest evening [m], and that day. */
  readonly lowestLevel: number;
  readonly lowestDate: number;
  /** Reachable water, full [m3]. */
  readonly reachable: number;
  /** Its own reachable water from full over a peak day's draws [s]; null when it serves no bed. */
  readonly daysOfAutonomy: number | null;
  /** Lost to the air and by leaks, over the whole record [m3]. */
  readonly evaporated: number;
  readonly leaked: number;
  /** Water in it each evening [m3]. */
  readonly stored: Float64Array;
};

export type LineAnswer = {
  readonly id: string;
  /** Moved on balance from its start to its end [m3], mean of whole calendar years. */
  readonly movedYearly: number | null;
  /** Over the whole record [m3]. */
  readonly moved: number;
  /** How long after the watering it ran, each day it ran: the usual (median) and the longest [s]; null: never ran. */
  readonly usualRun: number | null;
  readonly longestRun: number | null;
};

export type DrawAnswer = {
  readonly id: string;
  /** [m3], mean of whole seasons. */
  readonly seasonVolume: number;
  /** Given over due in the whole seasons [-]; null when nothing was due. */
  readonly shareMet: number | null;
  /** Days a season on which it got less than was due. */
  readonly daysShort: number;
  /** Given over the whole record [m3], and days of the record on which all that was due was given. */
  readonly given: number;
  readonly daysMet: number;
};

/** What one source did in the season that begins in a year, units as in its means. */
export type SourceSeason = {
  readonly year: number;
  readonly volume: number;
  readonly time: number;
  readonly hands: number;
  readonly trips: number;
  readonly energy: number;
};

/** A delivery or a carry, means of whole seasons. */
export type SourceAnswer = {
  readonly id: string;
  /** [m3] */
  readonly seasonVolume: number;
  /** Of a person or pump [s]. */
  readonly seasonTime: number;
  /** Of a person: moving and setting up, holding the hose, rounds with cans [s]. */
  readonly seasonHands: number;
  /** Rounds carried; 0 for a delivery. */
  readonly seasonTrips: number;
  /** [J]; 0 for a carry. */
  readonly seasonEnergy: number;
  /** One by one, in order. */
  readonly seasons: readonly SourceSeason[];
};

export type BatteryAnswer = {
  readonly id: string;
  /** Lowest evening before charging, of what can be used [-]. */
  readonly lowestShare: number;
  /** Days a season on which a watering stopped for want of charge. */
  readonly daysEmpty: number;
  /** A season [J]: what panel or house put in, what pumps took, what was lost in it. */
  readonly seasonEntered: number;
  readonly seasonUsed: number;
  readonly seasonLost: number;
  /** In it (with a second one that is swapped) each evening, and what came, was used and was lost each day [J]. */
  readonly stored: Float64Array;
  readonly entered: Float64Array;
  readonly used: Float64Array;
  readonly lost: Float64Array;
};

/** Likely loss of one crop's harvest to thirst [-]; null where no yield response is published for it. */
export type CropLoss = { readonly crop: string; readonly loss: number | null };

/** A bed in the season that begins in a year. */
export type BedSeason = {
  readonly year: number;
  /** [m3]: as in the bed's means. */
  readonly need: number;
  readonly got: number;
  readonly given: number;
  /** Rain that its roots had room for [m3]. */
  readonly rain: number;
  /** Actual over potential crop use; null where nothing grew [-]. */
  readonly useShare: number | null;
  readonly daysShort: number;
  /** First short day; null: none [days since 1970-01-01]. */
  readonly firstShort: number | null;
  /** Unmet water by bound [m3], short days by bound, and the bound of the most of them. */
  readonly unmetByBound: Readonly<Record<Bound, number>>;
  readonly shortDaysByBound: Readonly<Record<Bound, number>>;
  readonly binding: Bound | null;
  /** By the bed's share of its use in the season: 1 - Ya / Ym = Ky (1 - ETa / ETc), FAO-56 Eq. 90. */
  readonly losses: readonly CropLoss[];
};

export type BedAnswer = {
  readonly id: string;
  /** Why the crop's need is not known, else null: no crop in the season and the like. */
  readonly none: string | null;
  /**
   * [m3] a season: crop use and what the ground lacked at planting, less the rain that the ground kept, over the efficiency;
   * of the water given what the ground kept, over the efficiency; and what was poured beyond it.
   */
  readonly need: number;
  readonly got: number;
  readonly pastRoots: number;
  /** Of the need [m3] a season, at the roots: potential crop use, what the ground lacked at planting, and rain that it kept. */
  readonly potential: number;
  readonly owed: number;
  readonly rained: number;
  /** Days a year on which crops stand outside the season. */
  readonly outsideDays: number;
  /** Actual over potential crop use, whatever the rule. */
  readonly shareMet: number | null;
  /** Of a set amount on set days: given over due; null by any other rule. */
  readonly ruleKept: number | null;
  readonly daysShort: number;
  /** The bound of most of its short days. */
  readonly binding: Bound | null;
  /** Whole seasons one by one, in order; what is above are their means. */
  readonly seasons: readonly BedSeason[];
  /** Given each day [m3]. */
  readonly given: Float64Array;
  /** Days a season on which a later waterer gave what an earlier one could not. */
  readonly daysHelped: number;
  /** Days a season on which its first waterer that could not give all lacked each of BOUNDS. */
  readonly lackedDays: Float64Array;
  /** On each day: what its first waterer that could not give all lacked, its place in BOUNDS and one more; 0: nothing. */
  readonly lacked: Uint8Array;
  /** Place of the last waterer that gave anything, and one more; 0: none. And 1 where it got less than it asked for. */
  readonly lastBy: Uint8Array;
  readonly unfilled: Uint8Array;
  /** Water short in the root zone each evening, depth over the watered ground [m]. */
  readonly depletion: Float64Array;
};

/** Smallest store of all tanks together that never runs out [m3], or why there is none. */
export type NoFailure = { readonly volume: number } | { readonly none: string };

export type SeasonAnswer = {
  /** Day of element 0 of every series [days since 1970-01-01]. */
  readonly firstDay: number;
  readonly totals: SeasonTotals;
  readonly noFailure: NoFailure;
  readonly leftOut: readonly LeftOut[];
  readonly roofs: readonly RoofAnswer[];
  readonly tanks: readonly TankAnswer[];
  readonly lines: readonly LineAnswer[];
  readonly draws: readonly DrawAnswer[];
  readonly deliveries: readonly SourceAnswer[];
  readonly carries: readonly SourceAnswer[];
  readonly batteries: readonly BatteryAnswer[];
  readonly beds: readonly BedAnswer[];
  /** Water in all tanks each evening [m3]. */
  readonly storedTotal: Float64Array;
  /** 1 on a day of the season on which any bed was short. */
  readonly shortDay: Uint8Array;
};
