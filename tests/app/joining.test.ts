import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { addJoined, laidOut, stillToSay } from "../../src/app/joining.ts";
import { emptyWorksheet } from "../../src/document/blank.ts";
import { setGiven } from "../../src/document/edits.ts";
import type { Worksheet } from "../../src/document/worksheet.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { FIRST_WISH, type Wish } from "../../src/kinds/lay-out.ts";
import { workOut } from "../../src/studies/work-out.ts";

const given = (sheet: Worksheet, id: string, name: string) =>
  sheet.cards.find((card) => card.id === id)?.givens[name]?.value;

const grown = (...kinds: readonly string[]): Worksheet =>
  kinds.reduce(
    (sheet, kind) => addJoined(CARD_KINDS, sheet, kind, CARD_KINDS[kind]?.label ?? kind),
    emptyWorksheet(),
  );

describe("a card put on the sheet is joined to what stands before it", () => {
  test("roof to the newest tank, line from the tank before to the newest, pump in the newest, bed by the newest way", () => {
    const sheet = grown("tank", "roof", "tank", "line", "battery", "delivery", "bed");
    expect(given(sheet, "roof", "drains_to")).toBe("tank");
    expect([given(sheet, "gravity_line", "from"), given(sheet, "gravity_line", "to")]).toEqual([
      "tank",
      "tank_2",
    ]);
    expect(given(sheet, "pump_and_hose", "from")).toBe("tank_2");
    expect(given(sheet, "pump_and_hose", "powered_by")).toBe("battery");
    expect(given(sheet, "bed", "watered_by")).toEqual(["pump_and_hose"]);
  });

  test("what waited for such a card is joined to it when it comes", () => {
    const sheet = grown("roof", "bed", "delivery", "tank", "battery");
    expect(given(sheet, "roof", "drains_to")).toBe("tank");
    expect(given(sheet, "bed", "watered_by")).toEqual(["pump_and_hose"]);
    expect(given(sheet, "pump_and_hose", "from")).toBe("tank");
    expect(given(sheet, "pump_and_hose", "powered_by")).toBe("battery");
  });

  test("a link that somebody chose, or took away while there was a choice, stays as it is", () => {
    let sheet = setGiven(grown("tank", "roof"), "roof", "drains_to", null);
    sheet = addJoined(CARD_KINDS, sheet, "tank", "Tank");
    expect(given(sheet, "roof", "drains_to")).toBeUndefined();
    const kept = addJoined(CARD_KINDS, grown("tank", "roof"), "tank", "Tank");
    expect(given(kept, "roof", "drains_to")).toBe("tank");
  });

  test("with one tank only, a line does not lead from it to itself", () => {
    const sheet = grown("tank", "line");
    expect(given(sheet, "gravity_line", "from")).toBe("tank");
    expect(given(sheet, "gravity_line", "to")).toBeUndefined();
  });

  test("a sheet that is full, or already has its single card, is the same sheet", () => {
    const sheet = grown("tank");
    expect(addJoined(CARD_KINDS, sheet, "weather", "The sky")).toBe(sheet);
  });
});

const wishes: fc.Arbitrary<Wish> = fc.record({
  roofs: fc.nat(3),
  tanks: fc.nat(3),
  joined: fc.boolean(),
  small: fc.nat(3),
  openBeds: fc.nat(3),
  tunnels: fc.nat(3),
  wateredBy: fc.constantFrom("cans", "pump", "both"),
});

describe("a place laid out by counting", () => {
  test("whatever is counted, no row fails, no link is dead, and every tank and bed that was counted stands", () => {
    fc.assert(
      fc.property(wishes, fc.constantFrom("us" as const, "metric" as const), (wish, units) => {
        const sheet = laidOut(CARD_KINDS, emptyWorksheet({ units }), wish);
        const of = (kind: string) => sheet.cards.filter((card) => card.kind === kind).length;
        expect([of("roof"), of("tank"), of("bed")]).toEqual([
          wish.roofs,
          (wish.joined ? Math.min(1, wish.tanks) : wish.tanks) + wish.small,
          wish.openBeds + wish.tunnels,
        ]);
        const { results } = workOut(sheet, CARD_KINDS);
        expect(results.problems).toEqual([]);
        for (const card of sheet.cards)
          for (const row of CARD_KINDS[card.kind]?.rows ?? [])
            expect(["ready", "none"]).toContain(results.get(`${card.id}.${row.name}`)?.state);
      }),
      { numRuns: 20 },
    );
  });

  test("three tanks joined at the base are one card of three, filled by every roof; else three cards", () => {
    const wish: Wish = { ...FIRST_WISH, roofs: 2, tanks: 3, openBeds: 2 };
    const tanksOf = (joined: boolean) => {
      const sheet = laidOut(CARD_KINDS, emptyWorksheet(), { ...wish, joined });
      return { sheet, tanks: sheet.cards.filter(({ kind }) => kind === "tank") };
    };
    const one = tanksOf(true);
    expect(one.tanks.map(({ title, givens }) => [title, givens["count"]?.value])).toEqual([["Tanks", 3]]);
    const drains = one.sheet.cards.flatMap(({ givens }) => givens["drains_to"]?.value ?? []);
    expect(drains).toEqual([one.tanks[0]?.id, one.tanks[0]?.id]);
    const { results } = workOut(one.sheet, CARD_KINDS);
    expect(results.get(`${one.tanks[0]?.id}.usable`)).toMatchObject({ state: "ready" });
    expect(tanksOf(false).tanks.map(({ title, givens }) => [title, givens["count"]?.value])).toEqual([
      ["Tank", undefined],
      ["Tank 2", undefined],
      ["Tank 3", undefined],
    ]);
  });

  test("no bucket is made up: what nobody timed is by the pump's label", () => {
    const wish: Wish = {
      roofs: 1,
      tanks: 1,
      joined: false,
      small: 0,
      openBeds: 1,
      tunnels: 0,
      wateredBy: "pump",
    };
    const sheet = laidOut(CARD_KINDS, emptyWorksheet(), wish);
    const given = sheet.cards
      .filter(({ kind }) => kind === "delivery")
      .map(({ givens, measured }) => [...Object.keys(givens), ...Object.keys(measured)]);
    expect(given).toHaveLength(1);
    expect(given.flat().filter((name) => name.startsWith("bucket"))).toEqual([]);
    const { results } = workOut(sheet, CARD_KINDS);
    expect(results.get("pump.believed_by")).toMatchObject({ value: "label" });
    expect(results.get("pump_and_hose.flow")).toMatchObject({ state: "ready" });
  });

  test("the order in which numbers are asked for: that of the page: place, roof, tanks, hose, pump, power, bed; what is said is asked no more", () => {
    const wish: Wish = {
      roofs: 1,
      tanks: 1,
      joined: false,
      small: 1,
      openBeds: 0,
      tunnels: 1,
      wateredBy: "pump",
    };
    const sheet = laidOut(CARD_KINDS, emptyWorksheet(), wish);
    const missing = (worksheet: Worksheet) => {
      const { results } = workOut(worksheet, CARD_KINDS);
      return stillToSay(CARD_KINDS, worksheet.cards, (id) => results.get(id));
    };
    expect(missing(sheet)).toEqual([
      "site.latitude",
      "roof.footprint",
      "big_tank.capacity",
      "big_tank.ground_height",
      "small_tank.capacity",
      "hose_down.length",
      "pump_and_hose.bucket_volume",
      "pump_and_hose.bucket_time",
      "battery.rated_capacity",
      "tunnel_bed.length",
      "tunnel_bed.width",
      "weather.normal_rain",
    ]);
    const said = setGiven(sheet, "roof", "footprint", { value: 20, unit: "m2" });
    expect(missing(said)).not.toContain("roof.footprint");
    expect(missing(emptyWorksheet())).toEqual([]);
  });
});
