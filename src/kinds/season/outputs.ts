// From the season's answer to the rows of its own card and, as each room says, of its parts, by quantity id.

import { all, valueOr } from "../../graph/outcomes.ts";
import type { Outcome, Outputs } from "../../graph/types.ts";
import type { Driver } from "../../network/bounds.ts";
import type { BedSeason, SeasonAnswer, SeasonFailure, SeasonTotals } from "../../season/answer.ts";
import type { LeftOut, SeasonInput } from "../../season/input.ts";
import { wholeYears } from "../../season/spans.ts";
import { isoDate } from "../../units/calendar.ts";
import { NO_BED, NO_CROP, NO_YEAR, ONE_YEAR } from "../none-said.ts";
import type { SeasonShare } from "../season-share.ts";
import { driverOf } from "./drivers.ts";
import { SEASON_ROWS } from "./rows.ts";
import { storageOutputs } from "./storage-answers.ts";

/** Why nothing bound: said only of what could be worked out. */
function unbound(answer: SeasonAnswer, beds: number): string {
  if (beds === 0) return NO_BED;
  if (answer.totals.shareMet === null) return NO_CROP;
  return answer.leftOut.length > 0 ? "nothing that could be worked out went short" : "nothing went short";
}

/** Why nothing is said of the driest year, of which it is said only where the record has no year that it has none. */
function noDriest({ driestYear }: SeasonTotals, beds: number): string {
  if (driestYear === null) return NO_YEAR;
  if (beds === 0) return NO_BED;
  return `no crop stands within a whole season that begins in the driest year, ${driestYear}`;
}

/** Of one year nothing is said as of the driest. */
const isOneYear = ({ firstDay, storedTotal }: SeasonAnswer): boolean =>
  wholeYears(firstDay, storedTotal.length).length === 1;

function ofDriest(answer: SeasonAnswer, beds: number): Outputs {
  const { totals } = answer;
  const isOne = isOneYear(answer);
  // Where nothing grows no day can be short, in whatever year.
  const reason = beds > 0 && totals.shareMet === null ? NO_CROP : noDriest(totals, beds);
  const said = (value: number | null): Outcome =>
    isOne ? { none: ONE_YEAR } : valueOr(totals.shareMet === null ? null : value, reason);
  return {
    "season.driest_year_share_met": said(totals.driestYearShareMet),
    "season.driest_year_days_short": said(totals.driestYearDaysShort),
  };
}

/** Which bed goes short first in the driest year, and when. */
function ofShortFirst(answer: SeasonAnswer, beds: number): Outputs {
  const { totals } = answer;
  const { driestYearDaysShort, driestYearShortFirst: first } = totals;
  const reason =
    driestYearDaysShort === null
      ? noDriest(totals, beds)
      : `no bed went short in ${isOneYear(answer) ? "this one" : "the driest"} year`;
  return {
    "season.short_first_bed": valueOr(first?.id ?? null, reason),
    "season.short_first_day": valueOr(first ? isoDate(first.date) : null, reason),
  };
}

/** What drives the pumps of the beds that were short of power, be it for want of daylight; where none was, of all. */
function shortOfPower(plan: SeasonInput, { beds }: SeasonAnswer): Driver {
  const isShort = ({ shortDaysByBound }: BedSeason) =>
    shortDaysByBound.energy > 0 || shortDaysByBound.daylight > 0;
  const short = beds.filter(({ seasons }) => seasons.some(isShort));
  return driverOf(
    plan,
    (short.length > 0 ? short : beds).map(({ id }) => id),
  );
}

/** How many seasons went short, and the one that was worst for the beds. */
function ofWorst({ seasons, seasonsShort, worstSeason, shareMet }: SeasonTotals): Outputs {
  return {
    "season.seasons": { value: seasons },
    "season.seasons_short": valueOr(shareMet === null ? null : seasonsShort, NO_CROP),
    "season.worst_season": valueOr(worstSeason?.year ?? null, NO_CROP),
    "season.worst_season_share_met": valueOr(worstSeason?.shareMet ?? null, NO_CROP),
    "season.worst_season_days_short": valueOr(worstSeason?.daysShort ?? null, NO_CROP),
  };
}

function ofSeason(plan: SeasonInput, answer: SeasonAnswer): Outputs {
  const { totals } = answer;
  return {
    "season.need": { value: totals.need },
    "season.got": { value: totals.got },
    "season.past_roots": { value: totals.pastRoots },
    "season.share_met": valueOr(totals.shareMet, NO_CROP),
    "season.days_short": valueOr(totals.daysShort, NO_CROP),
    "season.longest_short_run": { value: totals.longestShortRun },
    ...ofDriest(answer, plan.beds.length),
    ...ofWorst(totals),
    ...ofShortFirst(answer, plan.beds.length),
    "season.spill": { value: totals.spill },
    "season.binding": valueOr(totals.binding, unbound(answer, plan.beds.length)),
    "season.binding_driver": { value: shortOfPower(plan, answer) },
    "season.balance_error": { value: totals.balanceError },
    "season.energy_error": valueOr(
      answer.batteries.length > 0 ? totals.energyBalanceError : null,
      "no battery is in the run",
    ),
    "season.stored_total": { value: answer.storedTotal },
    "season.short_days": { value: answer.shortDay },
    "season.by_season": { value: totals.bySeason },
    "season.record_first_day": { value: answer.firstDay },
    "season.left_out_in_run": { value: answer.leftOut },
    "season.hands_time": { value: totals.hands.time },
    "season.hands_trips": { value: totals.hands.trips },
    "season.hands_weight": { value: totals.hands.mass },
    "season.hands_distance": { value: totals.hands.distance },
  };
}

/** A kind's share in the season, and its rows that the run answers. */
export type Answered = {
  readonly kind: string;
  readonly share: SeasonShare;
  readonly rows: readonly string[];
};

/** The kind of each part's card, by its id. */
export type PartKinds = Readonly<Record<string, string>>;

/** What a kind gives to its own cards: two kinds may take parts of one list, and each would answer for the other's. */
function givenTo(
  { kind, share }: Answered,
  answer: SeasonAnswer,
  plan: SeasonInput,
  kindOf: PartKinds,
): Outputs {
  const all = Object.entries(share.gives?.(answer, plan) ?? {});
  return Object.fromEntries(all.filter(([id]) => (kindOf[id.slice(0, id.indexOf("."))] ?? kind) === kind));
}

/** Parts that were left out say so on their own rows. */
function ofLeftOut(leftOut: readonly LeftOut[], kinds: readonly Answered[], has: Outputs): Outputs {
  const rows: Record<string, Outcome> = {};
  const names = new Set(kinds.flatMap((kind) => kind.rows));
  for (const { id, reason, cause } of leftOut) {
    const failed = `Left out of the season: ${reason.replace(/\.$/, "")}.`;
    const outcome: Outcome = cause === undefined ? { failed } : { failed, cause };
    for (const name of names) if (!has[`${id}.${name}`]) rows[`${id}.${name}`] = outcome;
  }
  return rows;
}

function ofFailure(plan: SeasonInput, kinds: readonly Answered[], { failed }: SeasonFailure): Outputs {
  const own = SEASON_ROWS.filter((row) => row.row === "output" && row.of === "run");
  const ids = own.map(({ name }) => `season.${name}`);
  for (const { share, rows } of kinds) {
    const parts = share.takes ? plan[share.takes.field] : [];
    ids.push(...parts.flatMap(({ id }) => rows.map((name) => `${id}.${name}`)));
  }
  const rows = all(ids, { failed });
  return { ...rows, ...ofLeftOut(plan.leftOut, kinds, rows) };
}

/** Every row that the run answers, for the parts in the plan and those left out of it. */
export function seasonOutputs(
  plan: SeasonInput,
  answer: SeasonAnswer | SeasonFailure,
  kinds: readonly Answered[],
  kindOf: PartKinds,
): Outputs {
  if ("failed" in answer) return ofFailure(plan, kinds, answer);
  const rows = {
    ...ofSeason(plan, answer),
    ...storageOutputs(plan, answer),
    ...Object.assign({}, ...kinds.map((one) => givenTo(one, answer, plan, kindOf))),
  };
  return { ...rows, ...ofLeftOut(answer.leftOut, kinds, rows) };
}
