// Next money: of what has a price, which one thing and which two take away most short days for an amount.

import type { Change } from "../document/worksheet.ts";
import type { Buy } from "./offers.ts";

/** What was bought, what it cost, and what it takes away. */
export type Bought = {
  readonly buys: readonly Buy[];
  /** What was changed: of a thing that may be joined to several others, the way that helps most. */
  readonly changes: readonly Change[];
  /** [money] */
  readonly cost: number;
  /** Short days fewer in a season, on the mean of the record's seasons. */
  readonly saved: number;
};

/** The answer that is asked for each list of changes. */
export const SHORT_DAYS = "season.days_short";

/** Short days a season with each list of changes, in their order; null where they cannot be said. */
export type ShortWith = (runs: readonly (readonly Change[])[]) => Promise<readonly (number | null)[]>;

/** Pairs that are tried; of more, those whose parts help most by themselves. */
const MOST_PAIRS = 400;
/** Short days are whole in each season; less than this of a day a season is dust of a mean. */
const DUST = 1e-9;

type Trial = {
  readonly buys: readonly Buy[];
  readonly changes: readonly Change[];
  readonly cost: number;
};

const costOf = (buys: readonly Buy[]): number => buys.reduce((sum, { cost }) => sum + (cost ?? 0), 0);

const singles = (buys: readonly Buy[]): readonly Trial[] =>
  buys.flatMap((buy) => buy.ways.map((changes) => ({ buys: [buy], changes, cost: costOf([buy]) })));

/** Two that are not two ways of one, and that do not change the same row. */
function paired(one: Trial, other: Trial): Trial | null {
  if (one.buys[0] === other.buys[0]) return null;
  const isSame = (a: Change, b: Change) => a.card === b.card && a.part === b.part && a.row === b.row;
  if (one.changes.some((a) => other.changes.some((b) => isSame(a, b) && a.entry !== null))) return null;
  const buys = [...one.buys, ...other.buys];
  return { buys, changes: [...one.changes, ...other.changes], cost: costOf(buys) };
}

type Tried = Trial & { readonly saved: number };

/** Pairs that the amount is enough for. */
function pairsOf(tried: readonly Tried[], amount: number): readonly Trial[] {
  const pairs = tried.flatMap((one, at) =>
    tried.slice(at + 1).flatMap((other) => {
      const pair = paired(one, other);
      return pair && pair.cost <= amount ? [{ pair, promise: one.saved + other.saved }] : [];
    }),
  );
  return [...pairs]
    .sort((a, b) => b.promise - a.promise)
    .slice(0, MOST_PAIRS)
    .map(({ pair }) => pair);
}

/** Most days first; of equal ones the cheaper, then the fewer things. */
const better = (a: Bought, b: Bought): number =>
  Math.abs(a.saved - b.saved) > DUST
    ? b.saved - a.saved
    : a.cost - b.cost || a.buys.length - b.buys.length || (keyOf(a) < keyOf(b) ? -1 : 1);

const keyOf = ({ buys }: Pick<Trial, "buys">): string =>
  buys
    .map(({ name }) => name)
    .sort()
    .join("+");

/** Of ways of buying the same, the one that helps most. */
function bestWays(tried: readonly Tried[]): readonly Tried[] {
  const best = new Map<string, Tried>();
  for (const one of tried) {
    const known = best.get(keyOf(one));
    if (!known || one.saved > known.saved + DUST) best.set(keyOf(one), one);
  }
  return [...best.values()];
}

async function tryAll(
  shortWith: ShortWith,
  base: number,
  trials: readonly Trial[],
): Promise<readonly Tried[]> {
  if (trials.length === 0) return [];
  const short = await shortWith(trials.map(({ changes }) => changes));
  return trials.flatMap((trial, at) => {
    const days = short[at];
    return days == null ? [] : [{ ...trial, saved: base - days }];
  });
}

/**
 * What each thing by itself takes away, priced or not, best first.
 *
 * @param base short days a season as it stands
 */
export async function eachAlone(
  shortWith: ShortWith,
  base: number,
  buys: readonly Buy[],
): Promise<readonly Bought[]> {
  return [...bestWays(await tryAll(shortWith, base, singles(buys)))].sort(better);
}

/**
 * The best buys for an amount: one thing, or two that together take away more than either alone. Only what has a price is
 * bought, and only what takes away a short day is told.
 *
 * @param base short days a season as it stands
 * @param amount [money]
 */
export async function nextMoney(
  shortWith: ShortWith,
  base: number,
  buys: readonly Buy[],
  amount: number,
): Promise<readonly Bought[]> {
  const affordable = buys.filter(({ cost }) => cost !== null && cost <= amount);
  const each = await tryAll(shortWith, base, singles(affordable));
  const pairs = await tryAll(shortWith, base, pairsOf(each, amount));
  const alone = bestWays(each);
  const savedAlone = (buy: Buy): number => alone.find((one) => one.buys[0] === buy)?.saved ?? 0;
  const together = bestWays(pairs).filter(
    ({ buys: both, saved }) => saved > Math.max(0, ...both.map(savedAlone)) + DUST,
  );
  return [...alone, ...together].filter(({ saved }) => saved > DUST).sort(better);
}
