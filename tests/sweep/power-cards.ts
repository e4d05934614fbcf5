// A random pump with its hose, and whatever it runs on: a battery however charged, a panel alone, the house, nobody knows.

import type { Givens } from "../kinds/made-up-sheets.ts";
import type { Dice } from "./dice.ts";
import { type Drawn, maybe } from "./water-cards.ts";

const SUPPLIES = ["mains", "battery", "charged", "panel", "unknown"] as const;
type Supply = (typeof SUPPLIES)[number];

function battery(d: Dice, id: string, charged: string): Drawn {
  return {
    id,
    kind: "battery",
    givens: {
      chemistry: d.pick(["lifepo4", "agm", "flooded", "ups"]),
      rated_capacity: [d.pick([1, 7, 20, 100]), "Ah"],
      charged,
      ...maybe(d, 0.3, () => ({ health: [d.pick([0, 20, 70, 100]), "%"] })),
      ...maybe(d, 0.3, () => ({ charge_today: [d.pick([0, 40, 100]), "%"] })),
    },
  };
}

function panel(d: Dice, id: string, charges: string | null): Drawn {
  return {
    id,
    kind: "panel",
    givens: {
      rated_power: [d.pick([1, 20, 50, 100, 250]), "W"],
      ...maybe(d, 0.5, () => ({ tilt: [d.whole(0, 90), "deg"], azimuth: [d.whole(0, 359), "deg"] })),
      ...(charges === null
        ? { controller: "none" }
        : { charges, controller: d.pick(["none", "pwm", "mppt"]) }),
    },
  };
}

function source(
  d: Dice,
  key: string,
  supply: Supply,
): { readonly id: string | null; readonly cards: readonly Drawn[] } {
  const [store, sun] = [`battery_${key}`, `panel_${key}`];
  if (supply === "battery")
    return { id: store, cards: [battery(d, store, d.pick(["none", "carried", "swapped", "mains"]))] };
  if (supply === "charged")
    return { id: store, cards: [battery(d, store, "in_place"), panel(d, sun, store)] };
  if (supply === "mains") return { id: store, cards: [battery(d, store, "mains")] };
  if (supply === "panel") return { id: sun, cards: [panel(d, sun, null)] };
  return { id: null, cards: [] };
}

const hose = (d: Dice): Givens => ({
  ...maybe(d, 0.5, () => ({ hose_length: [d.pick([0, 10, 50, 200]), "ft"] })),
  ...maybe(d, 0.3, () => ({ hose_bore: [d.pick([0.375, 0.5, 0.625, 1]), "in"] })),
  ...maybe(d, 0.3, () => ({ outlet_height: [d.between(0, 20), "ft"] })),
  ...maybe(d, 0.3, () => ({ set_up: [d.pick([0, 5, 30]), "min"] })),
});

const bucket = (d: Dice): Givens => ({
  bucket_volume: [5, "gal"],
  bucket_time: [d.pick([20, 60, 600]), "s"],
});

function pumpCard(d: Dice, id: string, poweredBy: string | null): Drawn {
  return {
    id,
    kind: "pump",
    givens: {
      size: d.pick(["gph_500", "gph_800", "gph_1100", "gph_2000"]),
      ...(poweredBy === null ? {} : { powered_by: poweredBy }),
      ...maybe(d, 0.2, () => ({ figures: "tested" })),
    },
  };
}

function wire(d: Dice, id: string, feeds: string): Drawn {
  return {
    id,
    kind: "wire",
    givens: {
      feeds,
      gauge: d.pick(["18 AWG", "14 AWG", "10 AWG"]),
      one_way_length: [d.between(0, 100), "ft"],
    },
  };
}

/** A delivery with all that drives it; by a pump's card and its wire, or by a bucket and a clock alone. */
export function delivery(d: Dice, key: string, tanks: readonly string[]): readonly Drawn[] {
  const { id: supplied, cards } = source(d, key, d.pick(SUPPLIES));
  const from: Givens = d.chance(0.95) ? { from: d.pick(tanks) } : {};
  const [id, pump] = [`hose_${key}`, `pump_${key}`];
  const isPanel = supplied?.startsWith("panel") ?? false;
  if (!isPanel && d.chance(0.5)) {
    const clipped: Givens = supplied === null ? {} : { powered_by: supplied };
    const timed = d.chance(0.9) ? bucket(d) : {};
    return [{ id, kind: "delivery", givens: { ...from, ...clipped, ...timed, ...hose(d) } }, ...cards];
  }
  return [
    { id, kind: "delivery", givens: { ...from, pump, ...hose(d), ...maybe(d, 0.2, () => bucket(d)) } },
    pumpCard(d, pump, supplied),
    ...(d.chance(0.4) ? [wire(d, `wire_${key}`, pump)] : []),
    ...cards,
  ];
}
