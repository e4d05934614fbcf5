// A whole place out of a few counts: what somebody says there is, joined up, of usual sizes. Each kind lays out its own cards.

/** What somebody says there is. */
export type Wish = {
  readonly roofs: number;
  readonly tanks: number;
  /** Whether those stand joined at the base, to fill and empty as one. */
  readonly joined: boolean;
  /** Small tanks at the beds, filled through a float valve from a tank above. */
  readonly small: number;
  readonly openBeds: number;
  readonly tunnels: number;
  readonly wateredBy: "cans" | "pump" | "both";
};

export const FIRST_WISH: Wish = {
  roofs: 1,
  tanks: 1,
  joined: false,
  small: 0,
  openBeds: 1,
  tunnels: 0,
  wateredBy: "cans",
};

/** More than this of one sort is added card by card. */
export const MOST_OF_A_SORT = 6;

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

type Laying = {
  readonly kind: string;
  readonly laid?: (wish: Wish, system: LaidUnits) => readonly LaidPart[];
};

export const word = (value: string): Value => ({ value, unit: "" });

export const numbered = (title: string, at: number): string => (at === 0 ? title : `${title} ${at + 1}`);

export const times = <T>(count: number, make: (at: number) => T): readonly T[] =>
  Array.from({ length: count }, (_, at) => make(at));

/** How many cards the big tanks come to: those that are joined at the base are one. */
export const bigTanks = ({ tanks, joined }: Wish): number => (joined ? Math.min(1, tanks) : tanks);

/** Key of the big tank that belongs to the one of that number among roofs or small tanks. */
export const bigTank = (wish: Wish, at: number): string => `tank${Math.min(at, bigTanks(wish) - 1)}`;

/** The tanks that beds are watered from, as many as there are beds for. */
export function sourcesOf(wish: Wish): readonly string[] {
  const keys =
    wish.small > 0 ? times(wish.small, (at) => `small${at}`) : times(bigTanks(wish), (at) => `tank${at}`);
  return keys.slice(0, wish.openBeds + wish.tunnels);
}

/** The tanks of which each has a pump and hose, or cans. */
export const pumpedFrom = (wish: Wish): readonly string[] =>
  wish.wateredBy === "cans" ? [] : sourcesOf(wish);
export const carriedFrom = (wish: Wish): readonly string[] =>
  wish.wateredBy === "pump" ? [] : sourcesOf(wish);

/** The cards of a place, in the order in which the water runs. */
export function layOut(
  kinds: Readonly<Record<string, Laying>>,
  wish: Wish,
  system: "us" | "imperial" | "metric",
): readonly (LaidPart & { readonly kind: string })[] {
  const units = system === "metric" ? "metric" : "us";
  return Object.values(kinds).flatMap(({ kind, laid }) =>
    (laid?.(wish, units) ?? []).map((part) => ({ ...part, kind })),
  );
}
