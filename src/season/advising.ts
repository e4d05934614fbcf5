// What to do with today's water: each choice run through the weathers ahead, and what speaks for it bed by bed.

import type { Bed } from "./beds.ts";
import type { HoldingRule } from "./holding.ts";
import { candidatesOf, nextWaterings, type Tried, tryAll } from "./holding-choices.ts";
import { type Member, memberAgain, memberOf, refusedByRule } from "./holding-runs.ts";
import type { SeasonInput } from "./input.ts";
import { contentKey, keeper } from "./kept.ts";
import { type Moment, type Weather, windBack } from "./moment.ts";
import { dryDay } from "./moment-today.ts";
import { isThirsty } from "./soil-step.ts";
import type { SeasonState } from "./state.ts";
import { type ByCropStage, costADepth, potentialOver, type Stakes, stakesOf, worthOf } from "./worth.ts";

/** How a bed stands this morning, were it to stay dry. */
export type BedStanding = {
  readonly bed: string;
  /** Day on which it asks next, and for how much [days since 1970-01-01], [m3]; null: not before the season's end. */
  readonly asks: { readonly day: number; readonly volume: number } | null;
  /** Days until its crops hold back, were it not watered; null: not before the season's end. */
  readonly spare: number | null;
  /** Worth that is lost for each volume of water that its crops go without on the day on which it asks [1/m3]. */
  readonly pays: number;
};

export type Weighed = {
  /** Beds that ask today. */
  readonly asking: readonly string[];
  /** Beds that ask and are held back already, by a note: no choice is about them. */
  readonly held: readonly string[];
  /** Of those that ask those that the rule leaves dry. */
  readonly byRule: readonly string[];
  readonly tried: readonly Tried[];
  /** In the run's order, as are the runs. */
  readonly worths: readonly number[];
  readonly standing: readonly BedStanding[];
  /** The day of a run that is today. */
  readonly first: number;
};

export type Ahead = {
  readonly moment: Moment;
  /** The morning from which each weather's run starts: it is not known to the hair. */
  readonly starting: (member: number) => Moment;
  /** First and last day of the season around it [days since 1970-01-01]. */
  readonly season: { readonly start: number; readonly end: number };
  readonly weathers: readonly Weather[];
  /** Days without rain, as dry as they usually are. */
  readonly dry: Weather;
  readonly rule: HoldingRule;
  /** Beds that are held back today, by a note. */
  readonly heldBack: readonly string[];
};

/** Members that stand on this morning. */
export type Ready = {
  /** Each is done with before the next is asked for. */
  readonly members: Iterable<Member>;
  /** One of days without rain, as dry as they usually are. */
  readonly dry: Member;
  /** What the crops could use on the season's days before [m]. */
  readonly before: ByCropStage;
  /** Beds that are held back today, by a note; left out: none. */
  readonly heldBack?: readonly string[];
};

/** Each of today's choices in each weather ahead, the rule followed afterwards. */
export function weighed(input: SeasonInput, whole: SeasonState, ahead: Ahead): Weighed {
  const { moment, season, rule } = ahead;
  const member = (weather: Weather, start: Moment) => memberOf(input, start, weather, whole, season);
  const ready = {
    members: oneByOne(ahead, member),
    dry: member(ahead.dry, moment),
    before: potentialBefore(input, whole, moment.date - season.start),
    heldBack: ahead.heldBack,
  };
  return weighedBy(ready, rule);
}

/** The members of the weathers, each made of the one before it. */
function* oneByOne(
  { weathers, starting }: Ahead,
  made: (weather: Weather, start: Moment) => Member,
): Iterable<Member> {
  let last: Member | null = null;
  for (const [at, weather] of weathers.entries()) {
    last = last ? memberAgain(last, starting(at), weather) : made(weather, starting(at));
    yield last;
  }
}

/** The same of members that are ready. */
export function weighedBy({ members, dry, before, heldBack = [] }: Ready, rule: HoldingRule): Weighed {
  const { moment, first, state } = dry;
  windBack(state, moment);
  const next = nextWaterings(dry);
  // Of a bed that nothing waters there is nothing to decide.
  const waterable = state.beds.filter(({ sources }) => sources.length > 0);
  const today = waterable.filter((bed) => next.get(bed)?.day === first);
  const held = today.filter(({ part }) => heldBack.includes(part.id));
  const asking = today.filter((bed) => !held.includes(bed));
  // Of one that is held back today nothing is left to decide.
  const deciding =
    asking.length > 0 ? asking : waterable.filter((bed) => next.has(bed) && !held.includes(bed));
  const candidates = candidatesOf(state.beds, new Set(deciding), new Set(held));
  const standing = dry.stakes.map((stakes, place) => {
    const all = [before[place] as Float64Array, dry.potential[place] as Float64Array];
    const wanted = next.get(stakes.bed);
    return {
      bed: stakes.bed.part.id,
      asks: wanted ? { day: moment.date + wanted.day - first, volume: wanted.volume } : null,
      spare: spareDays(dry, stakes.bed),
      pays: payOf(stakes, wanted?.day ?? first, all),
    };
  });
  const refused = refusedByRule(dry, rule);
  return {
    asking: asking.map(({ part }) => part.id),
    held: held.map(({ part }) => part.id),
    byRule: asking.filter((bed) => refused.has(bed)).map(({ part }) => part.id),
    tried: tryAll(members, candidates, { rule, before }),
    worths: state.beds.map(({ part }) => worthOf(part)),
    standing,
    first,
  };
}

function payOf(stakes: Stakes, day: number, potentials: readonly Float64Array[]): number {
  const { part, perDepth } = stakes.bed;
  return perDepth > 0 ? (worthOf(part) * costADepth(stakes, day, potentials)) / perDepth : 0;
}

function spareDays({ state, first }: Member, { days, soil }: Bed): number | null {
  const dried = { ...soil };
  for (let day = first; day < state.length; day++) {
    const { use } = dryDay(days, day, dried);
    if (isThirsty(days.potential[day] as number, use)) return day - first;
  }
  return null;
}

const STAKES = keeper<{ readonly stakes: readonly Stakes[] }>(4);

/** What crops could use on the season's first days, by bed, crop and stage: the mean of the record's seasons [m]. */
function potentialBefore(input: SeasonInput, whole: SeasonState, days: number): ByCropStage {
  const { stakes } = STAKES(whole.record, contentKey(input), () => ({ stakes: stakesOf(whole) }));
  const each = whole.seasons.map(({ first, last }) =>
    potentialOver(stakes, { first, last: Math.min(last, first + days - 1) }),
  );
  return stakes.map((_, bed) => {
    const sums = new Float64Array((each[0]?.[bed] ?? []).length);
    for (const season of each)
      for (let slot = 0; slot < sums.length; slot++)
        sums[slot] = (sums[slot] as number) + (season[bed]?.[slot] as number) / each.length;
    return sums;
  });
}
