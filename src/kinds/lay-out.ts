// A whole place out of a few counts: what somebody says there is, joined up, of usual sizes. Each kind lays out its own cards.

/** What somebody says there is. */
export type Wish = {
  readonly roofs: number;
  readonly tanks: number;
  /** Whether those stand joined at the base, to fill and empty as one. */
  readonly joined: boolean;
  /** Hoses that run downhill by themselves, each to a tank at the beds. */
  readonly hoses: number;
  /** Small tanks at the beds. */
  readonly small: number;
  readonly pumps: number;
  readonly batteries: number;
  readonly panels: number;
  readonly cans: number;
  readonly beds: number;
};

/** What is counted. */
export type Sort = Exclude<keyof Wish, "joined">;

export const FIRST_WISH: Wish = {
  roofs: 1,
  tanks: 1,
  joined: true,
  hoses: 0,
  small: 0,
  pumps: 0,
  batteries: 0,
  panels: 0,
  cans: 0,
  beds: 1,
};

/** So many of a sort; what it cannot do without comes along, and goes with what it cannot do without. */
export function counting(wish: Wish, sort: Sort, count: number): Wish {
  const next = { ...wish, [sort]: Math.max(0, count) };
  if (sort === "hoses" && count > 0)
    return { ...next, tanks: Math.max(1, next.tanks), small: Math.max(next.small, count) };
  if (next.tanks === 0) return { ...next, hoses: 0 };
  return { ...next, hoses: Math.min(next.hoses, next.small) };
}

/** Units in which the usual sizes are written. */
export type LaidUnits = "us" | "metric";

type Value = { readonly value: string | number; readonly unit: string; readonly from?: "default" };

/** A card to be; links name other cards of the same layout by their keys. */
export type LaidPart = {
  readonly key: string;
  readonly title: string;
  readonly givens: Readonly<Record<string, Value>>;
  readonly links: Readonly<Record<string, string | readonly string[]>>;
};

type Laying = { readonly laid?: (wish: Wish, system: LaidUnits) => readonly LaidPart[] };

/** A word that is taken until somebody says. */
export const word = (value: string): Value => ({ value, unit: "", from: "default" });

export const numbered = (title: string, at: number): string => (at === 0 ? title : `${title} ${at + 1}`);

export const times = <T>(count: number, make: (at: number) => T): readonly T[] =>
  Array.from({ length: count }, (_, at) => make(at));

/** How many cards the big tanks come to: those that are joined at the base are one. */
export const bigTanks = ({ tanks, joined }: Wish): number => (joined ? Math.min(1, tanks) : tanks);

/** Key of the big tank that belongs to the one of that number among roofs or small tanks. */
export const bigTank = (wish: Wish, at: number): string => `tank${Math.min(at, bigTanks(wish) - 1)}`;

/** The tanks that beds are watered from, as many as there are beds for. */
function sourcesOf(wish: Wish): readonly string[] {
  const keys =
    wish.small > 0 ? times(wish.small, (at) => `small${at}`) : times(bigTanks(wish), (at) => `tank${at}`);
  return keys.slice(0, Math.max(1, wish.beds));
}

/** The tanks of which each has a pump and hose, or cans. */
export const pumpedFrom = (wish: Wish): readonly string[] => (wish.pumps > 0 ? sourcesOf(wish) : []);
export const carriedFrom = (wish: Wish): readonly string[] => (wish.cans > 0 ? sourcesOf(wish) : []);

/** The cards of a place, in the order in which the water runs. */
export function layOut(
  starts: Readonly<Record<string, Laying>>,
  wish: Wish,
  system: "us" | "imperial" | "metric",
): readonly (LaidPart & { readonly kind: string })[] {
  const units = system === "metric" ? "metric" : "us";
  return Object.entries(starts).flatMap(([kind, { laid }]) =>
    (laid?.(wish, units) ?? []).map((part) => ({ ...part, kind })),
  );
}
