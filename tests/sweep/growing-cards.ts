// Random beds: what grows there, when, by which rule it is watered and by whom.

import crops from "../../shared/crops.json";
import type { Content } from "../../src/document/worksheet.ts";
import type { Givens } from "../kinds/made-up-sheets.ts";
import type { Dice } from "./dice.ts";
import { type Drawn, maybe } from "./water-cards.ts";

const CROPS = Object.keys(crops.crops);
/** Planting days, one of them after most seasons are over. */
const PLANTED = ["03-01", "05-15", "06-20", "08-01", "11-01"];
const SHARES = [[1], [0.5, 0.5], [0.4, 0.3, 0.2], [1, 0.6]] as const;

const contents = (d: Dice): readonly Content[] =>
  d.pick(SHARES).map((share) => ({
    crop: d.pick(CROPS),
    planted: d.pick(PLANTED),
    share,
    ...(d.chance(0.2) ? { until: "10-10" } : {}),
  }));

const RULES: readonly ((d: Dice) => Givens)[] = [
  () => ({}),
  () => ({ rule: "soil", decides_on: "morning" }),
  (d) => ({
    rule: "fixed",
    fixed_volume: [d.pick([2, 20, 60]), "gal"],
    fixed_every: [d.pick([1, 3, 7]), "day"],
  }),
  (d) => ({
    rule: "weekdays",
    weekdays: d.pick(["mon", "tue fri", "mon wed fri sun"]),
    weekday_amount: "lack",
  }),
  (d) => ({ rule: "weekdays", weekday_amount: "fixed", fixed_volume: [d.pick([5, 30]), "gal"] }),
];

const place = (d: Dice): Givens =>
  d.chance(0.15)
    ? { grown_in: "pots", pot_count: [d.whole(1, 60), "1"], pot_volume: [d.pick([0.2, 3, 10]), "gal"] }
    : {
        length: [d.between(4, 30), "ft"],
        width: [d.between(2, 5), "ft"],
        root_depth: [d.pick([4, 8, 12, 30]), "in"],
      };

/** @param waterers deliveries and cans it may be watered by: none, one, or one after the other */
export function bed(d: Dice, id: string, waterers: readonly string[]): Drawn {
  const by = d.shuffled(waterers).slice(0, d.pick([1, 1, 1, 2, 0]));
  return {
    id,
    kind: "bed",
    givens: {
      contents: [contents(d), ""],
      ...place(d),
      ...(by.length > 0 ? { watered_by: by } : {}),
      ...d.pick(RULES)(d),
      priority: [d.whole(1, 3), "1"],
      ...maybe(d, 0.6, () => ({ soil: d.pick(["sand", "sandy_loam", "loam", "clay", "potting_mix"]) })),
      ...maybe(d, 0.4, () => ({ cover: "covered", cover_by: d.pick(["factor", "light"]) })),
      ...maybe(d, 0.3, () => ({ mulch: d.pick(["plastic", "organic", "organic_half"]) })),
      ...maybe(d, 0.3, () => ({ method: d.pick(["can", "soaker", "drip", "sprinkler", "surface"]) })),
      ...maybe(d, 0.15, () => ({ plant_count: [12, "1"], spot_area: [1, "ft2"] })),
      ...maybe(d, 0.15, () => ({ wetted_share: [d.pick([20, 50, 90]), "%"] })),
      ...maybe(d, 0.1, () => ({ let_go_from: "07-15", let_go_dry_days: [d.pick([3, 14]), "1"] })),
      ...maybe(d, 0.2, () => ({ ground_wetting: "given", wetted_every: [d.pick([1, 4]), "day"] })),
    },
  };
}
