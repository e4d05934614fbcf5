// Runs from a morning under a holding rule, again and again: each is made ready once and wound back for the next.

import type { Bed, BedHold } from "./beds.ts";
import { STEPPING } from "./gravity.ts";
import { countOrders, type HoldingRule, layRule, type Orders, order, standBack } from "./holding.ts";
import type { SeasonInput } from "./input.ts";
import { type GoingOn, goingOn, goingOnAgain, type Moment, type Weather, windBack } from "./moment.ts";
import { knownBeds } from "./moment-today.ts";
import { runDays } from "./run.ts";
import type { SeasonState } from "./state.ts";
import {
  type ByCropStage,
  bookThirst,
  noThirst,
  potentialOver,
  type Stakes,
  sharesLost,
  stakesOf,
} from "./worth.ts";

/** One weather from a morning to the season's end, ready to be run under rules. */
export type Member = {
  readonly state: SeasonState;
  moment: Moment;
  /** The first day that is run, and how many days its season has. */
  first: number;
  readonly days: number;
  readonly stakes: readonly Stakes[];
  /** What the crops could use on the days of the season that are run [m]. */
  readonly potential: ByCropStage;
  /** How each bed stands back, and the rule that is laid over its days; null: none was yet. */
  readonly holds: readonly (BedHold | null)[];
  laid: HoldingRule | null;
};

/** What a run comes to, by bed in the run's order. */
export type Outcome = {
  /** Share of each bed's worth that is lost. */
  readonly lost: Float64Array;
  /** Short days of each bed, and the first of them [day of the run]; -1: none. */
  readonly shortDays: Int32Array;
  readonly from: Int32Array;
};

const BY_THE_RULE: Orders = new Map();

/**
 * A member ready to run.
 *
 * @param season first and last day of the season around the moment [days since 1970-01-01]
 */
export function memberOf(
  input: SeasonInput,
  moment: Moment,
  weather: Weather,
  whole: Pick<SeasonState, "beds">,
  season: { readonly start: number; readonly end: number },
): Member {
  const going = goingOn(input, moment, weather, knownBeds(whole));
  standBack(going.state);
  going.state.quiet = true;
  const holds = going.state.beds.map(({ hold }) => hold);
  return { ...standing(going, moment), days: season.end - season.start + 1, holds, laid: null };
}

/** A member that is done with, for another morning of the same day and other weather; it is no more what it was. */
export function memberAgain(member: Member, moment: Moment, weather: Weather): Member {
  return { ...member, ...standing(goingOnAgain(member, moment, weather), moment) };
}

function standing({ state, first }: GoingOn, moment: Moment) {
  const stakes = stakesOf(state);
  const potential = potentialOver(stakes, { first, last: state.length - 1 });
  return { state, moment, first, stakes, potential };
}

/** Lays a rule over a member's days, unless it is there already. */
export function follow(member: Member, rule: HoldingRule | null): void {
  const { state, holds } = member;
  state.beds.forEach((bed, place) => {
    bed.hold = rule ? (holds[place] ?? null) : null;
  });
  if (rule && member.laid !== rule) layRule(state, rule);
  member.laid = rule ?? member.laid;
}

/**
 * Runs a member from its moment on.
 *
 * @param before what the crops could use earlier in the season, by bed, crop and stage [m]
 * @param rule null: the season's own days, in the order in which beds are watered
 * @param orders for their next waterings; left out: none
 * @validity harvest lost before the moment is no part of the loss
 */
export function runMember(
  member: Member,
  rule: HoldingRule | null,
  before: ByCropStage,
  orders: Orders = BY_THE_RULE,
): Outcome {
  const { state, stakes, potential, first } = member;
  windBack(state, member.moment);
  follow(member, rule);
  order(state.beds, orders);
  const thirst = noThirst(stakes);
  state.watch = (day) => {
    if (state.dayInSeason[day] !== 0) bookThirst(stakes, thirst, day);
    countOrders(state.beds);
  };
  runDays(state, STEPPING, { first, last: state.length - 1 });
  state.watch = null;
  const lost = sharesLost(stakes, thirst, [before, potential]);
  return { lost, shortDays: thirst.days, from: thirst.from };
}

/** Beds that a rule gives nothing on a member's first day. */
export function refusedByRule(member: Member, rule: HoldingRule): ReadonlySet<Bed> {
  const { state, first } = member;
  windBack(state, member.moment);
  follow(member, rule);
  order(state.beds, BY_THE_RULE);
  runDays(state, STEPPING, { first, last: first });
  return new Set(state.beds.filter(({ asked, given }) => asked > 0 && given[first] === 0));
}
