// Random roofs, tanks, lines and what takes water by hand, in the numbers that people have.

import { type Givens, given } from "../kinds/made-up-sheets.ts";
import type { Dice } from "./dice.ts";

/** A card of a random place. */
export type Drawn = {
  readonly id: string;
  readonly kind: string;
  readonly givens: Givens;
  readonly measured?: Givens;
};

export const asCard = ({ id, kind, givens, measured }: Drawn) => {
  const entries = (rows: Givens) =>
    Object.fromEntries(Object.entries(rows).map(([name, value]) => [name, given(value)]));
  return {
    id,
    kind,
    title: `The ${id.replaceAll("_", " ")}`,
    givens: entries(givens),
    measured: entries(measured ?? {}),
  };
};

/** One given where the dice say so, none where not: the row then has its usual value. */
export const maybe = (d: Dice, share: number, rows: () => Givens): Givens => (d.chance(share) ? rows() : {});

export function roof(d: Dice, id: string, tanks: readonly string[]): Drawn {
  return {
    id,
    kind: "roof",
    givens: {
      footprint: [d.between(40, 3000), "ft2"],
      ...maybe(d, 0.9, () => ({ drains_to: d.pick(tanks) })),
      ...maybe(d, 0.5, () => ({ material: d.pick(["metal", "shingle", "tile", "gravel", "green"]) })),
      ...maybe(d, 0.2, () => ({ losses: "in_coefficient" })),
      ...maybe(d, 0.3, () => ({ catch_from: "04-01", catch_until: "10-31" })),
      ...maybe(d, 0.2, () => ({ first_flush: [d.between(0, 3), "mm"] })),
    },
  };
}

const SHAPES: readonly ((d: Dice) => Givens)[] = [
  () => ({ start_from: "drum_55" }),
  (d) => ({ start_from: d.pick(["tote_264", "tote_275", "tote_330"]), count: [d.whole(1, 4), "1"] }),
  (d) => ({
    shape: "box",
    length: [d.between(2, 8), "ft"],
    width: [d.between(2, 5), "ft"],
    water_height: [d.between(6, 48), "in"],
  }),
  (d) => ({
    shape: "upright_cylinder",
    diameter: [d.between(20, 90), "in"],
    water_height: [d.between(10, 80), "in"],
  }),
  (d) => ({
    shape: "lying_cylinder",
    diameter: [d.between(20, 60), "in"],
    water_height: [d.between(15, 60), "in"],
    length: [d.between(3, 10), "ft"],
  }),
  (d) => ({ shape: "other", capacity: [d.between(20, 6000), "gal"], water_height: [d.between(1, 6), "ft"] }),
];

/** @param spills tanks it may spill into: now and then one that spills back, or itself */
export function tank(d: Dice, id: string, spills: readonly string[]): Drawn {
  return {
    id,
    kind: "tank",
    givens: {
      ...d.pick(SHAPES)(d),
      ground_height: [d.between(0, 12), "ft"],
      ...maybe(d, 0.3, () => ({ stand_height: [d.between(0, 4), "ft"] })),
      ...maybe(d, 0.6, () => ({ outlet_height: [d.pick([0, 1, 2, 4, 30]), "in"] })),
      ...maybe(d, 0.4, () => ({ cover: "open" })),
      ...maybe(d, 0.25, () => ({ overflows_to: d.pick(spills) })),
      ...maybe(d, 0.6, () => ({ start_share: [d.pick([0, 10, 50, 100]), "%"] })),
      ...maybe(d, 0.25, () => ({ leak: [d.pick([0.2, 1, 5, 48]), "gal/day"] })),
      ...maybe(d, 0.2, () => ({ level_today: [d.between(0, 40), "in"] })),
    },
  };
}

const HUMP: Givens = {
  route: [
    [
      [0, 2],
      [20, 14],
      [50, 1],
    ],
    "ft, ft",
  ],
};

/** What a line leads to is drawn without looking at heights: about half of them would have to run uphill. */
export function line(d: Dice, id: string, from: string, to: string): Drawn {
  return {
    id,
    kind: "line",
    givens: {
      from,
      to,
      length: [d.pick([0, 5, 20, 50, 120, 300]), "ft"],
      ...maybe(d, 0.4, () => ({ bore: [d.pick([0.25, 0.5, 0.625, 0.75, 1.5]), "in"] })),
      ...maybe(d, 0.6, () => ({
        valve_bore: d.chance(0.4) ? null : ([d.pick([0.5, 2.4, 3.2, 4.8, 6.4]), "mm"] as const),
      })),
      ...maybe(d, 0.3, () => ({ valve_band: [d.pick([5, 50, 200]), "mm"] })),
      ...maybe(d, 0.4, () => ({ check_valve: "yes" })),
      ...maybe(d, 0.2, () => ({ shut_level: [d.between(4, 40), "in"] })),
      ...maybe(d, 0.15, () => ({ ...HUMP, primed: d.pick(["yes", "no"]) })),
    },
    ...(d.chance(0.1) ? { measured: { refill_time: [d.between(0.5, 40), "h"] as const } } : {}),
  };
}

export const tee = (d: Dice, id: string): Drawn => ({
  id,
  kind: "tee",
  givens: { height: [d.between(0, 6), "ft"] },
});

export function draw(d: Dice, id: string, tanks: readonly string[]): Drawn {
  return {
    id,
    kind: "draw",
    givens: {
      ...maybe(d, 0.9, () => ({ from: d.pick(tanks) })),
      volume: [d.pick([0, 1, 5, 5, 20, 200]), "gal"],
      every: [d.pick([1, 2, 7]), "day"],
    },
  };
}

export function cans(d: Dice, id: string, tanks: readonly string[]): Drawn {
  return {
    id,
    kind: "carry",
    givens: {
      ...maybe(d, 0.95, () => ({ from: d.pick(tanks) })),
      ...maybe(d, 0.5, () => ({
        can_volume: [d.pick([0.5, 2, 3, 5]), "gal"],
        distance: [d.between(0, 300), "ft"],
      })),
    },
  };
}

export function filter(d: Dice, id: string, places: readonly string[]): Drawn {
  return { id, kind: "filter", givens: { on: d.pick(places), clogged_share: [d.pick([0, 30, 95]), "%"] } };
}
