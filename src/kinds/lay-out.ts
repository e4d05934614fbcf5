// A whole place out of a few counts: roofs, tanks, small tanks below them, beds, and who waters; joined up, usual sizes.

/** What somebody says there is. */
export type Wish = {
  readonly roofs: number;
  readonly tanks: number;
  /** Small tanks at the beds, filled through a float valve from a tank above. */
  readonly small: number;
  readonly openBeds: number;
  readonly tunnels: number;
  readonly wateredBy: "cans" | "pump" | "both";
};

export const FIRST_WISH: Wish = {
  roofs: 1,
  tanks: 1,
  small: 0,
  openBeds: 1,
  tunnels: 0,
  wateredBy: "cans",
};

/** More than this of one sort is added card by card. */
export const MOST_OF_A_SORT = 6;

type Value = { readonly value: string | number; readonly unit: string; readonly from?: "default" };

/** A card to be; links name other cards of the same layout by their keys. */
export type Part = {
  readonly key: string;
  readonly kind: string;
  readonly title: string;
  readonly givens: Readonly<Record<string, Value>>;
  readonly links: Readonly<Record<string, string | readonly string[]>>;
};

/** How much higher than the small tanks the others stand until the user says: chest height, a usual slope. */
const STEP = {
  us: { value: 3, unit: "ft", from: "default" },
  metric: { value: 1, unit: "m", from: "default" },
} as const;

/** The small tanks stand on the ground that all heights are measured from. */
const ZERO = { us: { value: 0, unit: "ft" }, metric: { value: 0, unit: "m" } } as const;

const word = (value: string): Value => ({ value, unit: "" });

const numbered = (title: string, at: number): string => (at === 0 ? title : `${title} ${at + 1}`);

const times = <T>(count: number, make: (at: number) => T): readonly T[] =>
  Array.from({ length: count }, (_, at) => make(at));

function tankParts(wish: Wish, system: keyof typeof STEP): readonly Part[] {
  const height = wish.small > 0 ? { ground_height: STEP[system] } : {};
  const big = times(wish.tanks, (at) => ({
    key: `tank${at}`,
    kind: "tank",
    title: numbered(wish.small > 0 ? "Big tank" : "Tank", at),
    givens: { start_from: word("tote_275"), shape: word("box"), ...height },
    links: {},
  }));
  const small = times(wish.small, (at) => ({
    key: `small${at}`,
    kind: "tank",
    title: numbered("Small tank", at),
    givens: {
      start_from: word("drum_55"),
      ground_height: ZERO[system],
      outlet_height: { value: 0, unit: system === "us" ? "in" : "cm" },
    },
    links: {},
  }));
  return [...big, ...small];
}

function roofParts(wish: Wish): readonly Part[] {
  const target = (at: number) => (wish.tanks > 0 ? `tank${Math.min(at, wish.tanks - 1)}` : "small0");
  return times(wish.roofs, (at) => ({
    key: `roof${at}`,
    kind: "roof",
    title: numbered("Roof", at),
    givens: {},
    links: wish.tanks + wish.small > 0 ? { drains_to: target(at) } : {},
  }));
}

function lineParts(wish: Wish): readonly Part[] {
  if (wish.tanks === 0) return [];
  return times(wish.small, (at) => ({
    key: `line${at}`,
    kind: "line",
    title: numbered("Hose down", at),
    givens: {},
    links: { from: `tank${Math.min(at, wish.tanks - 1)}`, to: `small${at}` },
  }));
}

/** The tanks that beds are watered from, as many as there are beds for. */
function sourcesOf(wish: Wish): readonly string[] {
  const keys =
    wish.small > 0 ? times(wish.small, (at) => `small${at}`) : times(wish.tanks, (at) => `tank${at}`);
  return keys.slice(0, wish.openBeds + wish.tunnels);
}

function takerParts(wish: Wish): readonly Part[] {
  const sources = sourcesOf(wish);
  const pumps = wish.wateredBy === "cans" ? [] : sources;
  const cans = wish.wateredBy === "pump" ? [] : sources;
  // One small pump that is carried about: by its label until a bucket is timed. Its keys must not be a hose's.
  const driven: readonly Part[] =
    pumps.length > 0
      ? [
          { key: "the_pump", kind: "pump", title: "Pump", givens: {}, links: { powered_by: "battery" } },
          { key: "battery", kind: "battery", title: "Battery", givens: {}, links: {} },
        ]
      : [];
  return [
    ...pumps.map((from, at) => ({
      key: `pump${at}`,
      kind: "delivery",
      title: numbered("Pump and hose", at),
      givens: {},
      links: { from, pump: "the_pump" },
    })),
    ...cans.map((from, at) => ({
      key: `cans${at}`,
      kind: "carry",
      title: numbered("Cans", at),
      givens: {},
      links: { from },
    })),
    ...driven,
  ];
}

function bedParts(wish: Wish): readonly Part[] {
  const count = sourcesOf(wish).length;
  const beds = [
    ...times(wish.tunnels, (at) => ({ title: numbered("Tunnel bed", at), cover: "covered" })),
    ...times(wish.openBeds, (at) => ({ title: numbered("Open bed", at), cover: "open" })),
  ];
  const ways = [
    ...(wish.wateredBy === "cans" ? [] : ["pump"]),
    ...(wish.wateredBy === "pump" ? [] : ["cans"]),
  ];
  return beds.map(({ title, cover }, at) => ({
    key: `bed${at}`,
    kind: "bed",
    title,
    givens: {
      cover: word(cover),
      method: word(wish.wateredBy === "cans" ? "can" : "wand"),
      priority: { value: at + 1, unit: "1" },
    },
    links: count > 0 ? { watered_by: ways.map((way) => `${way}${at % count}`) } : {},
  }));
}

/** The cards of a place, in the order in which the water runs. */
export function layOut(wish: Wish, system: "us" | "imperial" | "metric"): readonly Part[] {
  const step = system === "metric" ? "metric" : "us";
  return [
    ...roofParts(wish),
    ...tankParts(wish, step),
    ...lineParts(wish),
    ...takerParts(wish),
    ...bedParts(wish),
  ];
}
