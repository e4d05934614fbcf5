// Today's choices of whom to water, each run through every weather ahead under one holding rule afterwards.

import type { Bed } from "./beds.ts";
import { type InReach, inReachOf } from "./from-today.ts";
import { byWorth, type HoldingRule, type Order, type Orders } from "./holding.ts";
import { type Member, type Outcome, runMember } from "./holding-runs.ts";
import { type Wanted, wantedWaterings } from "./planned-waterings.ts";
import { type ByCropStage, shareOfWorth } from "./worth.ts";

export type ChoiceName = "water_all" | "hold_back" | "give_up";

/** A choice, and the beds that it leaves dry today. */
export type Candidate = {
  readonly choice: ChoiceName;
  readonly beds: readonly string[];
  readonly orders: Orders;
};

/** What a choice comes to in one weather. */
export type Run = Outcome & {
  /** Water in reach of the beds on the season's last evening [m3]. */
  readonly left: number;
};

export type Tried = Candidate & { readonly runs: readonly Run[] };

const REFUSED = { refused: 1 };
const GIVEN_UP = { refused: Infinity };
const SERVED = { served: 1 };

const NONE: ReadonlySet<Bed> = new Set();

/** The first watering of each bed from a morning on, were it never refused; in the run's order, left out where none comes. */
export function nextWaterings({ state, first }: Member): ReadonlyMap<Bed, Wanted> {
  return new Map(
    state.beds.flatMap((bed) => {
      const [next] = wantedWaterings(state, bed, first);
      return next ? [[bed, next] as const] : [];
    }),
  );
}

/** Of so many beds every way to leave some dry is tried; of more only from each rank on. */
const ALL_WAYS = 3;

/**
 * What can be done with the next watering of each bed: water all, leave some dry this once, or give up the one worth least.
 *
 * @param deciding beds that the choice is about: those that ask today, else whichever ask next
 * @param held beds that ask today and are held back already, as their grower noted: every choice leaves them dry
 */
export function candidatesOf(
  beds: readonly Bed[],
  deciding: ReadonlySet<Bed>,
  held: ReadonlySet<Bed> = NONE,
): readonly Candidate[] {
  const ranked = byWorth(beds);
  const about = ranked.filter((bed) => deciding.has(bed));
  const idOf = ({ part }: Bed): string => part.id;
  const orders = (refused: readonly Bed[], how: Order): Orders =>
    new Map<string, Order>([
      ...about.map((bed) => [idOf(bed), SERVED] as const),
      ...[...held].map((bed) => [idOf(bed), REFUSED] as const),
      ...refused.map((bed) => [idOf(bed), how] as const),
    ]);
  // Giving up a bed is for good: it is decided when that bed asks, until when it changes nothing of what is done.
  const least = ranked
    .slice(1)
    .slice(-1)
    .filter((bed) => deciding.has(bed));
  return [
    { choice: "water_all", beds: [], orders: orders([], REFUSED) },
    ...waysToHold(about).map(
      (dry): Candidate => ({ choice: "hold_back", beds: dry.map(idOf), orders: orders(dry, REFUSED) }),
    ),
    ...least.map(
      (bed): Candidate => ({ choice: "give_up", beds: [idOf(bed)], orders: orders([bed], GIVEN_UP) }),
    ),
  ];
}

/** Which of some beds stay dry, at least one of them; those that leave the better ones their water first. */
function waysToHold(about: readonly Bed[]): readonly (readonly Bed[])[] {
  if (about.length > ALL_WAYS) return about.map((_, from) => about.slice(from)).reverse();
  const ways = Array.from({ length: 2 ** about.length - 1 }, (_, way) =>
    about.filter((__, place) => ((way + 1) >> (about.length - 1 - place)) & 1),
  );
  return ways;
}

/** Runs all choices through each member, one after the other. */
export function tryAll(
  members: Iterable<Member>,
  candidates: readonly Candidate[],
  { rule, before }: { readonly rule: HoldingRule; readonly before: ByCropStage },
): readonly Tried[] {
  const tried = candidates.map((candidate) => ({ ...candidate, runs: [] as Run[] }));
  let reach: InReach | null = null;
  for (const member of members) {
    reach ??= inReachOf(member.state);
    for (const { orders, runs } of tried) {
      const outcome = runMember(member, rule, before, orders);
      runs.push({ ...outcome, left: leftIn(member, reach) });
    }
  }
  return tried;
}

function leftIn({ state }: Member, { tanks }: InReach): number {
  return tanks.reduce(
    (sum, { place, under }) => sum + Math.max(0, (state.tanks.volume[place] as number) - under),
    0,
  );
}

/** Share of all worth that a choice loses, on the mean of all weathers [-]. */
export function meanLoss(worths: readonly number[], { runs }: Tried): number {
  return runs.reduce((sum, run) => sum + shareOfWorth(worths, run.lost), 0) / Math.max(1, runs.length);
}
