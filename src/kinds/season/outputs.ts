// From the season's answer to the rows of the cards, by quantity id.

import type { Outcome, Outputs } from "../../graph/types.ts";
import { BOUNDS, type Driver } from "../../network/bounds.ts";
import type {
  BatteryAnswer,
  BedAnswer,
  SeasonAnswer,
  SeasonFailure,
  SeasonTotals,
} from "../../season/answer.ts";
import type { SeasonInput } from "../../season/input.ts";
import { boundName } from "../../telling/words/bounds.ts";
import { isoDate } from "../../units/calendar.ts";
import { bedWater, bedYears } from "../bed/years.ts";
import { driverOf } from "./drivers.ts";
import { STORAGE_ROWS, storageOutputs } from "./storage-answers.ts";

/** Rows that the run answers of batteries and beds. */
const BATTERY_ROWS = ["days_flat", "lowest_charge", "season_charge", "season_use", "season_loss"] as const;
const BED_ROWS = [
  "season_need",
  "potential_use",
  "lacked_at_planting",
  "rain_counted",
  "season_got",
  "season_past_roots",
  "outside_days",
  "rule_kept",
  "share_met",
  "days_short",
  "by_year",
  "likely_loss",
  "goes_short_by",
  "days_helped",
  "lacked_by",
  "day_notes",
] as const;

/** Rows that the run answers on each kind of part. */
const PART_ROWS = {
  tanks: ["mean_yearly_spill", "lowest_level", "stored"],
  draws: ["season_volume", "share_met", "days_short"],
  deliveries: ["season_volume", "season_time"],
  carries: ["season_volume", "season_time", "season_trips"],
  batteries: BATTERY_ROWS,
  beds: BED_ROWS,
} as const;

const SEASON_ROWS = [
  "need",
  "got",
  "past_roots",
  "share_met",
  "days_short",
  "longest_short_run",
  "driest_year_share_met",
  "driest_year_days_short",
  "seasons",
  "seasons_short",
  "worst_season",
  "worst_season_share_met",
  "worst_season_days_short",
  "short_first_bed",
  "short_first_day",
  "spill",
  "binding",
  "binding_driver",
  "balance_error",
  "energy_error",
  "stored_total",
  "short_days",
  "record_first_day",
  "left_out_in_run",
  "hands_time",
  "hands_trips",
  "hands_weight",
  "hands_distance",
  ...STORAGE_ROWS.map(({ name }) => name),
];

/** What each day's watering of a bed gave and lacked, by day of the record. */
export type DayNotes = Pick<BedAnswer, "given" | "lacked" | "lastBy" | "unfilled"> & {
  readonly driver: Driver;
};

const or = (value: number | string | null, reason: string): Outcome =>
  value === null ? { none: reason } : { value };

const NO_YEAR = "the record has no whole calendar year";

/** Why nothing bound: said only of what could be worked out. */
function unbound(answer: SeasonAnswer, beds: number): string {
  if (beds === 0) return "no bed is in the run";
  return answer.leftOut.length > 0 ? "nothing that could be worked out went short" : "nothing went short";
}

/** Why nothing is said of the driest year, of which it is said only where the record has no year that it has none. */
function noDriest({ driestYear }: SeasonTotals, beds: number): string {
  if (driestYear === null) return NO_YEAR;
  if (beds === 0) return "no bed is in the run";
  return `no crop stands within a whole season that begins in the driest year, ${driestYear}`;
}

/** Which bed goes short first in the driest year, and when. */
function ofShortFirst(totals: SeasonTotals, beds: number): Outputs {
  const { driestYearDaysShort, driestYearShortFirst: first } = totals;
  const reason =
    driestYearDaysShort === null ? noDriest(totals, beds) : "no bed went short in the driest year";
  return {
    "season.short_first_bed": or(first?.id ?? null, reason),
    "season.short_first_day": or(first ? isoDate(first.date) : null, reason),
  };
}

/** What drives the pumps of the beds that were short of power. */
function shortOfPower(plan: SeasonInput, { beds }: SeasonAnswer): Driver {
  const short = beds.filter(({ seasons }) => seasons.some((season) => season.shortDaysByBound.energy > 0));
  return driverOf(
    plan,
    short.map(({ id }) => id),
  );
}

/** How many seasons went short, and the one that was worst for the beds. */
function ofWorst({ seasons, seasonsShort, worstSeason, shareMet }: SeasonTotals): Outputs {
  const reason = "no crop stands within the season";
  return {
    "season.seasons": { value: seasons },
    "season.seasons_short": or(shareMet === null ? null : seasonsShort, reason),
    "season.worst_season": or(worstSeason?.year ?? null, reason),
    "season.worst_season_share_met": or(worstSeason?.shareMet ?? null, reason),
    "season.worst_season_days_short": or(worstSeason?.daysShort ?? null, reason),
  };
}

function ofSeason(plan: SeasonInput, answer: SeasonAnswer): Outputs {
  const { totals } = answer;
  return {
    "season.need": { value: totals.need },
    "season.got": { value: totals.got },
    "season.past_roots": { value: totals.pastRoots },
    "season.share_met": or(totals.shareMet, "no crop stands within the season"),
    "season.days_short": or(totals.daysShort, "no crop stands within the season"),
    "season.longest_short_run": { value: totals.longestShortRun },
    "season.driest_year_share_met": or(totals.driestYearShareMet, noDriest(totals, plan.beds.length)),
    "season.driest_year_days_short": or(totals.driestYearDaysShort, noDriest(totals, plan.beds.length)),
    ...ofWorst(totals),
    ...ofShortFirst(totals, plan.beds.length),
    "season.spill": { value: totals.spill },
    "season.binding": or(totals.binding, unbound(answer, plan.beds.length)),
    "season.binding_driver": { value: shortOfPower(plan, answer) },
    "season.balance_error": { value: totals.balanceError },
    "season.energy_error": or(
      answer.batteries.length > 0 ? totals.energyBalanceError : null,
      "no battery is in the run",
    ),
    "season.stored_total": { value: answer.storedTotal },
    "season.short_days": { value: answer.shortDay },
    "season.record_first_day": { value: answer.firstDay },
    "season.left_out_in_run": { value: answer.leftOut },
    "season.hands_time": { value: totals.hands.time },
    "season.hands_trips": { value: totals.hands.trips },
    "season.hands_weight": { value: totals.hands.mass },
    "season.hands_distance": { value: totals.hands.distance },
  };
}

function ofBattery(battery: BatteryAnswer): Outputs {
  const { id } = battery;
  return {
    [`${id}.days_flat`]: { value: battery.daysEmpty },
    [`${id}.lowest_charge`]: { value: battery.lowestShare },
    [`${id}.season_charge`]: { value: battery.seasonEntered },
    [`${id}.season_use`]: { value: battery.seasonUsed },
    [`${id}.season_loss`]: { value: battery.seasonLost },
  };
}

const dayWords = (days: number): string => {
  const rounded = days < 1 ? "under 1" : String(Math.round(days));
  return `${rounded} ${rounded === "1" || days < 1 ? "day" : "days"}`;
};

/** "charge in the battery: 12 days": the longest first. */
function lackedWords({ lackedDays }: BedAnswer, driver: Driver): string | null {
  const said = BOUNDS.map((bound, place) => ({ bound, days: lackedDays[place] ?? 0 }))
    .filter(({ days }) => days > 0)
    .sort((a, b) => b.days - a.days)
    .map(({ bound, days }) => `${boundName(bound, driver)}: ${dayWords(days)}`);
  return said.length > 0 ? said.join("; ") : null;
}

function ofWaterings(bed: BedAnswer, driver: Driver): Outputs {
  const notes: DayNotes = {
    given: bed.given,
    lacked: bed.lacked,
    lastBy: bed.lastBy,
    unfilled: bed.unfilled,
    driver,
  };
  return {
    [`${bed.id}.days_helped`]: { value: bed.daysHelped },
    [`${bed.id}.lacked_by`]: or(lackedWords(bed, driver), "no watering lacked anything"),
    [`${bed.id}.day_notes`]: { value: notes },
  };
}

function ofParts(plan: SeasonInput, answer: SeasonAnswer): Outputs {
  const rows: Record<string, Outcome> = {};
  for (const tank of answer.tanks) {
    rows[`${tank.id}.mean_yearly_spill`] = or(tank.meanYearlySpill, NO_YEAR);
    rows[`${tank.id}.lowest_level`] = { value: tank.lowestLevel };
    rows[`${tank.id}.stored`] = { value: tank.stored };
  }
  for (const draw of answer.draws) {
    rows[`${draw.id}.season_volume`] = { value: draw.seasonVolume };
    rows[`${draw.id}.share_met`] = or(draw.shareMet, "nothing was due in the season");
    rows[`${draw.id}.days_short`] = { value: draw.daysShort };
  }
  for (const source of [...answer.deliveries, ...answer.carries]) {
    rows[`${source.id}.season_volume`] = { value: source.seasonVolume };
    rows[`${source.id}.season_time`] = { value: source.seasonTime };
    rows[`${source.id}.season_trips`] = { value: source.seasonTrips };
  }
  for (const battery of answer.batteries) Object.assign(rows, ofBattery(battery));
  for (const bed of answer.beds) {
    Object.assign(rows, bedWater(bed));
    const driver = driverOf(plan, [bed.id]);
    Object.assign(rows, ofWaterings(bed, driver));
    Object.assign(rows, bedYears(bed, driver));
  }
  return rows;
}

/** Parts that were left out say so on their own rows. */
function ofLeftOut(plan: SeasonInput, has: Outputs): Outputs {
  const rows: Record<string, Outcome> = {};
  const names = new Set(Object.values(PART_ROWS).flat());
  for (const { id, reason, cause } of plan.leftOut) {
    const failed = `Left out of the season: ${reason.replace(/\.$/, "")}.`;
    const outcome: Outcome = cause === undefined ? { failed } : { failed, cause };
    for (const name of names) if (!has[`${id}.${name}`]) rows[`${id}.${name}`] = outcome;
  }
  return rows;
}

function ofFailure(plan: SeasonInput, failure: SeasonFailure): Outputs {
  const rows: Record<string, Outcome> = {};
  const failed = { failed: failure.failed };
  for (const name of SEASON_ROWS) rows[`season.${name}`] = failed;
  for (const kind of Object.keys(PART_ROWS) as (keyof typeof PART_ROWS)[]) {
    for (const part of plan[kind]) for (const name of PART_ROWS[kind]) rows[`${part.id}.${name}`] = failed;
  }
  return { ...rows, ...ofLeftOut(plan, rows) };
}

/** Every row that the run answers, for the parts in the plan and those left out of it. */
export function seasonOutputs(plan: SeasonInput, answer: SeasonAnswer | SeasonFailure): Outputs {
  if ("failed" in answer) return ofFailure(plan, answer);
  const rows = {
    ...ofSeason(plan, answer),
    ...storageOutputs(plan, answer),
    ...ofParts(plan, answer),
  };
  return { ...rows, ...ofLeftOut(plan, rows) };
}
