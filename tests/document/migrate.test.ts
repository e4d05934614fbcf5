import { describe, expect, test } from "vitest";
import { readWorksheet } from "../../src/document/check.ts";
import { effective } from "../../src/document/effective.ts";
import { MIGRATIONS, migrate } from "../../src/document/migrate.ts";
import { CURRENT_VERSION } from "../../src/document/worksheet.ts";
import { fixtureText, ROLES } from "./made-up.ts";

const steps = [
  {
    from: 2,
    change: "units are named system",
    apply: ({ units, ...rest }: Record<string, never>) => ({ ...rest, system: units ?? null }),
  },
  { from: 1, change: "a motto was added", apply: (sheet: object) => ({ ...sheet, motto: "drip" }) },
];

test("the steps lead from version 1 to the present one, each once", () => {
  const from = MIGRATIONS.map((step) => step.from).sort((a, b) => a - b);
  expect(from).toEqual(Array.from({ length: CURRENT_VERSION - 1 }, (_, index) => index + 1));
});

test("a version-1 worksheet goes through every step in order and says so", () => {
  const migrated = migrate({ version: 1, units: "us", cards: [] }, steps as never, 3);
  expect(migrated).toEqual({
    ok: true,
    worksheet: { version: 3, cards: [], motto: "drip", system: "us" },
    newer: false,
    notes: [
      "Brought from version 1 to 2: a motto was added",
      "Brought from version 2 to 3: units are named system",
    ],
  });
});

test("a missing step is a reason, not a guess", () => {
  const migrated = migrate({ version: 1, cards: [] }, steps.slice(0, 1) as never, 3);
  expect(migrated).toEqual({
    ok: false,
    problem: { path: "version", message: "There is no way from version 1 to version 2." },
  });
});

test("a worksheet of the present version is left as it is", () => {
  const data = { ...JSON.parse(fixtureText()), version: CURRENT_VERSION };
  expect(migrate(data)).toEqual({ ok: true, worksheet: data, newer: false, notes: [] });
});

describe("version 1 to 2", () => {
  type Loose = Record<string, unknown>;
  const old = (change: (tank: Loose) => void = () => {}) => {
    const data = JSON.parse(fixtureText(1));
    change(data.cards[3]);
    const reading = readWorksheet(data);
    if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
    return reading;
  };
  const tankOf = ({ worksheet }: ReturnType<typeof old>) => worksheet.cards[3];

  test("doubt as a share becomes the two ends, in the entry's own unit", () => {
    expect(old().worksheet.cards[2]?.givens.footprint).toEqual({
      value: 320,
      unit: "ft2",
      low: 304,
      high: 336,
      from: "measured",
    });
    expect(old().notes[0]).toContain("from version 1 to 2");
  });

  test.each<[string, unknown, unknown]>([
    [
      "a tenth of a third",
      { value: 0.3, unit: "m", spread: 0.1 },
      { value: 0.3, unit: "m", low: 0.27, high: 0.33 },
    ],
    ["below nought", { value: -10, unit: "m", spread: 0.5 }, { value: -10, unit: "m", low: -15, high: -5 }],
    ["none", { value: 10, unit: "m", spread: 0 }, { value: 10, unit: "m" }],
    ["of a word", { value: "tin", unit: "", spread: 0.1 }, { value: "tin", unit: "" }],
    ["no number", { value: 10, unit: "m", spread: "much" }, { value: 10, unit: "m" }],
  ])("doubt: %s", (_what, before, after) => {
    const reading = old((tank) =>
      Object.assign(tank, { givens: { a: before }, measured: { b: before }, price: before }),
    );
    expect(tankOf(reading)).toMatchObject({ givens: { a: after }, measured: { b: after }, price: after });
    expect(tankOf(reading)?.givens.a).toEqual(after);
  });

  test("without an option in use the sheet stays, and each option is a plan", () => {
    const { worksheet } = old();
    expect(worksheet.cards[3]).not.toHaveProperty("options");
    expect(worksheet.cards[3]).not.toHaveProperty("active");
    expect(worksheet.cards[3]?.givens.capacity?.value).toBe(275);
    expect(worksheet.plans?.map(({ name }) => name)).toEqual(["Blue tank: second barrel"]);
  });

  test("the option in use is laid over its card; the others and what it covered lead back to what they were", () => {
    const gal = (value: number) => ({ value, unit: "gal" });
    const { worksheet } = old((tank) => {
      tank.givens = { capacity: gal(275), base: { value: 1, unit: "ft" } };
      tank.options = {
        small: { capacity: gal(100) },
        tall: { capacity: gal(330), height: { value: 6, unit: "ft" } },
      };
      tank.active = "tall";
    });
    const givens = (name: string | null) => {
      const plan = worksheet.plans?.find((one) => one.name === name);
      const sheet = plan ? effective(worksheet, plan, ROLES) : worksheet;
      return sheet.cards[3]?.givens;
    };
    const base = { value: 1, unit: "ft" };
    expect(givens(null)).toEqual({ capacity: gal(330), base, height: { value: 6, unit: "ft" } });
    expect(givens("Blue tank: small")).toEqual({ capacity: gal(100), base });
    expect(givens('Blue tank: without "tall"')).toEqual({ capacity: gal(275), base });
  });

  test("an option that changes nothing leaves no plan, and no plan holds a rain record", () => {
    const same = old((tank) => Object.assign(tank, { options: { same: {} } })).worksheet;
    expect("plans" in same).toBe(false);
    const data = JSON.parse(fixtureText(1));
    data.cards[1].options = { other: { record: { value: "else", unit: "" } } };
    const reading = readWorksheet(data);
    expect(reading.ok && JSON.stringify(reading.worksheet)).not.toContain("else");
  });

  test("whatever stands where options should be is no reason to fail", () => {
    for (const options of [5, null, [1], { a: 5 }, { a: { b: null } }])
      expect(old((tank) => Object.assign(tank, { options, active: "a" })).ok).toBe(true);
  });
});

describe("version 3 to 4", () => {
  const old = (currency: string, typed: string | null, formula = "$40 * totes.count", unit = "$") => {
    const entry = (value: string) => ({ value, unit: "" });
    const cards = [
      { id: "cost", kind: "cost", title: "Money", givens: typed === null ? {} : { currency: entry(typed) } },
      { id: "line", kind: "own", title: "Hoses", givens: { formula: entry(formula), unit: entry(unit) } },
    ];
    const reading = readWorksheet({ version: 3, units: "us", currency, cards });
    if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
    const [cost, line] = reading.worksheet.cards;
    const { formula: written, unit: shownIn } = line?.givens ?? {};
    return {
      currency: reading.worksheet.currency,
      left: cost?.givens,
      line: [written?.value, shownIn?.value],
    };
  };

  test("what was typed on the money's card is what money is counted in, and stands on no card any more", () => {
    expect(old("$", "€")).toEqual({ currency: "€", left: {}, line: ["€40 * totes.count", "€"] });
    expect(old("€", "$", "€40", "€")).toEqual({ currency: "$", left: {}, line: ["$40", "$"] });
  });

  test.each([null, "", "  "])("where %o was typed it stays as it was", (typed) => {
    expect(old("€", typed, "€40", "€")).toEqual({ currency: "€", left: {}, line: ["€40", "€"] });
  });

  test("the sky of a made-up place does not say in its name what a record makes untrue; a name of one's own stays", () => {
    for (const [title, wanted] of [
      ["Weather, made up", "The sky"],
      ["Airport gauge", "Airport gauge"],
    ]) {
      const cards = [{ id: "weather", kind: "weather", title, givens: {} }];
      const reading = readWorksheet({ version: 3, cards });
      expect(reading.ok && reading.worksheet.cards[0]?.title).toBe(wanted);
    }
  });
});
