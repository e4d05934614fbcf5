import { expect, test } from "vitest";
import { MIGRATIONS, migrate } from "../../src/document/migrate.ts";
import { CURRENT_VERSION } from "../../src/document/worksheet.ts";
import { fixtureText } from "./made-up.ts";

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
