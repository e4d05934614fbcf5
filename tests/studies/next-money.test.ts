// Next money: the best pair is what trying all pairs finds, a pair of which each alone is worth nothing is found, and what
// is said is what evaluating again gives.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { withChanges } from "../../src/document/changes.ts";
import { setGiven, setOffer } from "../../src/document/edits.ts";
import type { Change, Worksheet } from "../../src/document/worksheet.ts";
import { numberIn } from "../../src/graph/readers.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { ask, type Base, baseOf } from "../../src/studies/ask.ts";
import { eachAlone, nextMoney, SHORT_DAYS, type ShortWith } from "../../src/studies/next-money.ts";
import { type Buy, buysOf } from "../../src/studies/offers.ts";
import { workOut } from "../../src/studies/work-out.ts";
import { fewerSaid } from "../../src/telling/next-money.ts";
import { starter } from "../starter.ts";
import { tries } from "../tries.ts";

const template = (name: string): Worksheet => starter(`${name}.json`, 4);

const NAMES = ["hillside-totes", "three-roofs-two-tunnels", "pump-battery-panel", "hens-and-sweet-potatoes"];
const SHEETS = NAMES.map(template);

const shortBy =
  (base: Base): ShortWith =>
  async (runs) =>
    runs.map((changes) => numberIn(ask(base, changes, [SHORT_DAYS])[SHORT_DAYS]));

/** A starter with sizes drawn anew, a roof bare and the tanks open, so that there is something to buy. */
function placeOf(sheet: Worksheet, draws: readonly number[]): Worksheet {
  let [at, place] = [0, sheet];
  const next = () => draws[at++ % draws.length] ?? 0.5;
  const set = (card: string, row: string, value: number | string, unit: string) => {
    place = setGiven(place, card, row, { value, unit });
  };
  const roofs = sheet.cards.filter(({ kind }) => kind === "roof");
  for (const { id } of roofs) set(id, "footprint", Math.round(60 + 500 * next()), "ft2");
  const bare = roofs[Math.floor(next() * roofs.length)];
  if (bare && roofs.length > 1) place = setGiven(place, bare.id, "drains_to", null);
  for (const { id, kind } of sheet.cards) {
    if (kind === "tank") {
      set(id, "capacity", Math.round(40 + 400 * next()), "gal");
      set(id, "cover", next() < 0.6 ? "open" : "covered", "");
    }
    if (kind === "bed") set(id, "length", Math.round(4 + 20 * next()), "ft");
  }
  return place;
}

/** Eight of what can be bought, with prices. */
function priced(place: Worksheet, draws: readonly number[]): readonly Buy[] {
  const { results } = baseOf(place, CARD_KINDS).whole;
  const buys = buysOf(place, CARD_KINDS, results);
  const step = Math.max(1, buys.length / 8);
  const chosen = Array.from({ length: Math.min(8, buys.length) }, (_, at) => buys[Math.floor(at * step)]);
  const prices = chosen.reduce(
    (sheet, buy, at) =>
      buy
        ? setOffer(sheet, buy.card, buy.offer, { value: Math.round(5 + 90 * (draws[at] ?? 0.5)), unit: "$" })
        : sheet,
    place,
  );
  const names = new Set(chosen.map((buy) => buy?.name));
  return buysOf(prices, CARD_KINDS, results).filter(({ name }) => names.has(name));
}

/** Short days a season, worked out from nothing. */
const shortOf = (place: Worksheet, changes: readonly Change[]): number | null =>
  numberIn(workOut(withChanges(place, changes), CARD_KINDS).results.get(SHORT_DAYS));

/** Most that any pair of the eight saves for the amount, by trying all of them in all their ways. */
function bestOfAll(base: Base, now: number, buys: readonly Buy[], amount: number): number {
  let most = 0;
  buys.forEach((one, at) => {
    for (const other of buys.slice(at + 1)) {
      if ((one.cost ?? 0) + (other.cost ?? 0) > amount) continue;
      for (const first of one.ways)
        for (const second of other.ways) {
          const short = numberIn(ask(base, [...first, ...second], [SHORT_DAYS])[SHORT_DAYS]);
          most = Math.max(most, now - (short ?? now));
        }
    }
  });
  return most;
}

const PLACES = tries(10, 1);
const AMOUNT = 100;

describe("next money", () => {
  test("over eight priced parts of random places the best pair is what trying all pairs finds, and its days are those of evaluating again", async () => {
    const draws = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 24, maxLength: 24 });
    let told = 0;
    await fc.assert(
      fc.asyncProperty(fc.nat(), draws, async (which, random) => {
        const place = placeOf(SHEETS[which % SHEETS.length] as Worksheet, random);
        const buys = priced(place, random);
        const base = baseOf(place, CARD_KINDS);
        const whole = workOut(place, CARD_KINDS);
        const [now, seasons] = [SHORT_DAYS, "season.seasons"].map((id) => numberIn(whole.results.get(id)));
        fc.pre(now != null && now > 0 && seasons != null);
        const found = await nextMoney(shortBy(base), now as number, buys, AMOUNT);
        const pair = found.find(({ buys: both }) => both.length === 2);
        const single = Math.max(
          0,
          ...found.filter(({ buys: both }) => both.length === 1).map((one) => one.saved),
        );
        const all = bestOfAll(base, now as number, buys, AMOUNT);
        // Two of which one adds nothing are no pair: then all that the best pair saves is what one of them saves.
        expect(pair?.saved ?? Math.min(all, single)).toBeCloseTo(all, 9);
        for (const { buys: bought, changes, cost, saved } of found.slice(0, 3)) {
          expect(cost).toBe(bought.reduce((sum, buy) => sum + (buy.cost ?? Number.NaN), 0));
          expect(cost).toBeLessThanOrEqual(AMOUNT);
          const again = shortOf(place, changes);
          expect(saved).toBeCloseTo((now as number) - (again as number), 9);
          const fewer = Math.round(((now as number) - (again as number)) * (seasons as number));
          const said = fewerSaid(saved, now as number, seasons as number);
          expect(
            said.startsWith(`${fewer} of `) || said.startsWith("all ") || said.startsWith("the only"),
          ).toBe(true);
          told += 1;
        }
      }),
      { numRuns: PLACES },
    );
    expect(told).toBeGreaterThan(0);
  }, 1_200_000);

  const buyOf = (name: string, cost: number | null, ways = 1): Buy => ({
    name,
    card: name,
    offer: "one_more",
    title: name,
    cost,
    said: cost !== null,
    ways: Array.from({ length: ways }, (_, way) => [
      { card: name, part: "givens", row: "count", entry: { value: way, unit: "1" } },
    ]),
  });

  test("two of which each alone is worth nothing are found among thirty", async () => {
    const buys = Array.from({ length: 30 }, (_, at) => buyOf(`part${at}`, 10, at === 3 ? 2 : 1));
    const shortWith: ShortWith = async (runs) =>
      runs.map((changes) => {
        const has = (card: string, value: number) =>
          changes.some((change) => change.card === card && change.entry?.value === value);
        return has("part3", 1) && has("part17", 0) ? 2 : 9;
      });
    const found = await nextMoney(shortWith, 9, buys, 20);
    expect(found.map(({ buys: both, saved, cost }) => [both.map(({ name }) => name), saved, cost])).toEqual([
      [["part3", "part17"], 7, 20],
    ]);
    expect((await nextMoney(shortWith, 9, buys, 19)).length).toBe(0);
  });

  test("of a real place: a roof without a gutter over a tank that holds nothing, of which each alone is worth nothing", async () => {
    const sheet = template("one-barrel");
    const bare = [
      ["shed_roof", "drains_to", null],
      ["barrel", "start_share", { value: 0, unit: "%" }],
      ["barrel", "leak", { value: 500, unit: "gal/day" }],
    ] as const;
    const place = bare.reduce((on, [card, row, entry]) => setGiven(on, card, row, entry), sheet);
    const offers = [
      ["shed_roof", "gutter", 40],
      ["barrel", "patch", 10],
      ["barrel", "one_more", 30],
      ["salad_bed", "mulch", 5],
    ] as const;
    const withPrices = offers.reduce(
      (on, [card, offer, value]) => setOffer(on, card, offer, { value, unit: "money" }),
      place,
    );
    const base = baseOf(withPrices, CARD_KINDS);
    const now = shortOf(withPrices, []) as number;
    const buys = buysOf(withPrices, CARD_KINDS, base.whole.results);
    const alone = await eachAlone(shortBy(base), now, buys);
    const savedBy = (name: string) => alone.find(({ buys: [buy] }) => buy?.name === name)?.saved;
    expect(savedBy("shed_roof.gutter")).toBe(0);
    expect(savedBy("barrel.patch")).toBe(0);
    const [best] = await nextMoney(shortBy(base), now, buys, 50);
    expect(best?.buys.map(({ name }) => name)).toEqual(["shed_roof.gutter", "barrel.patch"]);
    expect(best?.saved).toBeGreaterThan(10);
    expect(shortOf(withPrices, best?.changes ?? [])).toBeCloseTo(now - (best?.saved ?? 0), 9);
  });

  test("only what has a price is suggested, and a second thing that adds nothing is not", async () => {
    const buys = [buyOf("a", 30), buyOf("b", 5), buyOf("c", null)];
    const shortWith: ShortWith = async (runs) =>
      runs.map(
        (changes) => 10 - Math.max(0, ...changes.map(({ card }) => ({ a: 4, b: 0, c: 9 })[card] ?? 0)),
      );
    const found = await nextMoney(shortWith, 10, buys, 100);
    expect(found.map(({ buys: both }) => both.map(({ name }) => name))).toEqual([["a"]]);
    const alone = await eachAlone(shortWith, 10, buys);
    expect(alone.map(({ buys: [buy], saved }) => [buy?.name, saved])).toEqual([
      ["c", 9],
      ["a", 4],
      ["b", 0],
    ]);
  });

  test("every offer of every kind names a row of its own", () => {
    for (const { kind, offers, rows } of Object.values(CARD_KINDS)) {
      for (const { row, name, says, buys } of offers ?? []) {
        const on = rows.find((one) => one.name === row);
        expect(on, `${kind}.${name}`).toBeDefined();
        expect(says).toContain("{}");
        if (typeof buys === "object" && "word" in buys && on?.row === "choice")
          expect(on.options.map(({ word }) => word)).toEqual(
            expect.arrayContaining([buys.word, buys.instead_of]),
          );
      }
    }
  });
});
