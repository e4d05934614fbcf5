// A whole random place out of one number: sky, roofs, tanks, lines, pumps, cans, beds, and now and then a wrong or missing number.

import { emptyWorksheet } from "../../src/document/blank.ts";
import type { Worksheet } from "../../src/document/worksheet.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import type { DailyRecord } from "../../src/rainfall/record.ts";
import type { Givens, GivenText } from "../kinds/made-up-sheets.ts";
import { type Dice, dice } from "./dice.ts";
import { bed } from "./growing-cards.ts";
import { delivery } from "./power-cards.ts";
import { sky } from "./sky.ts";
import { asCard, cans, type Drawn, draw, filter, line, maybe, roof, tank, tee } from "./water-cards.ts";

export type Place = {
  readonly seed: number;
  readonly worksheet: Worksheet;
  readonly records: readonly DailyRecord[];
};

/** Ids of a kind; their order says nothing of how the cards stand to each other, as with people's own names. */
function ids(d: Dice, name: string, count: number): readonly string[] {
  return d
    .shuffled(["amber", "blue", "coral", "dun", "ebony", "fawn"].slice(0, count))
    .map((color) => `${color}_${name}`);
}

function lines(d: Dice, tanks: readonly string[]): readonly Drawn[] {
  if (tanks.length < 2) return [];
  const [upper, ...others] = tanks as [string, ...string[]];
  if (others.length > 1 && d.chance(0.25)) {
    const behind = others.slice(0, 2).map((id, place) => line(d, `branch_${place + 1}`, "the_tee", id));
    return [tee(d, "the_tee"), line(d, "trunk", upper, "the_tee"), ...behind];
  }
  const count = d.whole(0, Math.min(3, tanks.length));
  return ids(d, "line", count).map((id, place) => {
    const from = tanks[place] ?? upper;
    return line(d, id, from, d.chance(0.8) ? (tanks[(place + 1) % tanks.length] as string) : d.pick(tanks));
  });
}

const isWatering = ({ kind }: Drawn): boolean => kind === "delivery" || kind === "carry";

function parts(d: Dice): readonly Drawn[] {
  const tanks = ids(d, "tank", d.whole(1, 4));
  const pumps = Array.from({ length: d.pick([0, 1, 1, 2]) }, (_, place) =>
    delivery(d, "ab"[place] as string, tanks),
  ).flat();
  const carries = ids(d, "cans", d.pick([0, 1, 1, 2])).map((id) => cans(d, id, tanks));
  const waterers = [...pumps, ...carries].filter(isWatering).map(({ id }) => id);
  const water: readonly Drawn[] = [
    ...ids(d, "roof", d.whole(1, 3)).map((id) => roof(d, id, tanks)),
    ...tanks.map((id) => tank(d, id, tanks)),
    ...lines(d, tanks),
    ...ids(d, "draw", d.pick([0, 0, 1, 2])).map((id) => draw(d, id, tanks)),
  ];
  const sieved = water.filter(({ kind }) => kind === "roof" || kind === "line").map(({ id }) => id);
  return [
    ...water,
    ...pumps,
    ...carries,
    ...(d.chance(0.2) ? [filter(d, "sieve", sieved)] : []),
    ...ids(d, "bed", d.whole(0, 6)).map((id) => bed(d, id, waterers)),
  ];
}

function site(d: Dice): Givens {
  return {
    ...maybe(d, 0.5, () => ({ latitude: [d.pick([-35, 0, 35, 47, 66]), "deg"] })),
    ...maybe(d, 0.5, () => ({ minutes_per_day: [d.pick([0, 10, 60, 240, 480]), "min"] })),
    ...maybe(d, 0.5, () => ({ water_at: [d.pick([5, 12, 19, 23]), "h"] })),
    ...maybe(d, 0.3, () => ({ storage_rule: "use_first" })),
    ...maybe(d, 0.3, () => {
      const [start, end] = d.pick([
        ["10-15", "04-15"],
        ["06-01", "06-20"],
        ["01-01", "12-31"],
      ] as const);
      return { season_start: start, season_end: end };
    }),
    ...maybe(d, 0.3, () => ({ today: "2002-07-10" })),
  };
}

const ODD: readonly GivenText[] = [
  null,
  [0, "1"],
  [-3, "ft"],
  [1e9, "gal"],
  [1e-9, "ft"],
  [5, "kg"],
  "nonsense",
  "gone",
];

/** One given of one card missing, of a wrong kind, out of all bounds, or leading to a card that is not there. */
function spoiled(d: Dice, cards: readonly Drawn[]): readonly Drawn[] {
  const victim = d.pick(cards);
  const rows = (CARD_KINDS[victim.kind]?.rows ?? []).filter(({ row }) => row === "given" || row === "link");
  const name = d.pick(rows).name;
  const value = d.pick(ODD);
  return cards.map((card) =>
    card === victim ? { ...card, givens: { ...card.givens, [name]: value } } : card,
  );
}

/** The place of that number: the same cards, numbers and weather whenever it is asked for. */
export function placeOf(seed: number): Place {
  const d = dice(seed);
  const { givens, records } = sky(d);
  const own: Readonly<Record<string, Givens>> = {
    site: site(d),
    weather: givens,
    season: maybe(d, 0.4, () => ({ hold_days: [d.pick([0, 2, 30]), "1"] })),
  };
  let drawn = parts(d);
  for (let times = d.pick([0, 0, 0, 1, 2]); times > 0; times--) drawn = spoiled(d, drawn);
  const blank = emptyWorksheet({ units: d.pick(["us", "metric", "imperial"]) });
  const single = blank.cards.map(({ id, kind }) => asCard({ id, kind, givens: own[id] ?? {} }));
  return { seed, records, worksheet: { ...blank, cards: [...single, ...d.shuffled(drawn.map(asCard))] } };
}
