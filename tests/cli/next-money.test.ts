// --next-money on the command line: what is told is what setting the same by hand gives.
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { run } from "./run.ts";

const DEMO = fileURLToPath(new URL("../../templates/hillside-totes.json", import.meta.url));

type Told = {
  sets: unknown;
  buy: string[];
  cost: number;
  short_days_saved: number;
  in_all: number;
  said: string;
};

test("the best buys come first, and their days are those that setting the same gives", async () => {
  const { status, stdout } = await run(DEMO, "--next-money", "100", "--offer", "tub.lid=15", "--json");
  expect(status).toBe(0);
  const report = JSON.parse(stdout);
  const told: Told[] = report.next_money;
  expect(told[0]?.buy).toEqual(["totes.one_more", "tub.lid"]);
  expect(told[0]?.cost).toBe(75);
  expect(told[0]?.sets).toEqual([
    { quantity: "totes.count", value: 3, unit: "1" },
    { quantity: "tub.cover", value: "covered", unit: "" },
  ]);
  const saved = told.map(({ short_days_saved }) => short_days_saved);
  expect(saved).toEqual([...saved].sort((a, b) => b - a));
  const now = report.quantities["season.days_short"].value;
  const with_it = await run(DEMO, "--set", "totes.count=3", "--set", "tub.cover=covered", "--json");
  const then = JSON.parse(with_it.stdout).quantities["season.days_short"].value;
  expect(now - then).toBeCloseTo(told[0]?.short_days_saved ?? Number.NaN, 9);
  expect(told[0]?.said).toContain(
    `${Math.round((now - then) * 20)} of ${Math.round(now * 20)} short days fewer`,
  );
  const unpriced = report.next_money_unpriced.map(({ name }: { name: string }) => name);
  expect(unpriced).toContain("hose_down.valve");
  expect(unpriced).not.toContain("tub.lid");
  const said = report.next_money_unpriced.map((one: { said: string }) => one.said);
  // Each larger thing with its size: the next above the sheet's 1/8 in (3.2 mm) and 18 Ah of what the trade has.
  expect(said).toContain("a wider float valve for Hose to the tub, 4.8 mm");
  expect(said).toContain("a bigger battery for Second-hand battery, 20 Ah");
});

test("too little money, nothing to buy by that name, and no amount", async () => {
  expect((await run(DEMO, "--next-money", "5")).stdout).toContain(
    "Everything with a price costs more than that.",
  );
  const unknown = await run(DEMO, "--next-money", "5", "--offer", "tub.yacht=3");
  expect([unknown.status, unknown.stderr]).toEqual([2, expect.stringContaining("tub.lid")]);
  const minus = await run(DEMO, "--next-money", "5", "--offer", "tub.lid=-3");
  expect([minus.status, minus.stderr]).toEqual([
    2,
    expect.stringContaining('is an amount of money, not "-3"'),
  ]);
  expect((await run(DEMO, "--next-money", "plenty")).status).toBe(2);
  expect((await run(DEMO, "--next-money", "$60")).stdout).toMatch(/^Next \$60: one more of Two totes, /);
});
