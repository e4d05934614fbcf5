// A plan of a worksheet laid over it on the command line.
import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { run } from "./run.ts";

const root = fileURLToPath(new URL("../..", import.meta.url));
const FIELD = { value: 9, unit: "ft2" };
const change = (card: string, row: string, entry: unknown) => ({ card, part: "givens", row, entry });

/** The demo with two plans, one of them about a part that is gone. */
function worksheet(): string {
  const sheet = JSON.parse(readFileSync(join(root, "templates/hillside-totes.json"), "utf8"));
  const plans = [
    { name: "Bigger totes", changes: [change("totes", "capacity", { value: 550, unit: "gal" })] },
    {
      name: "Odds",
      changes: [
        change("old_shed", "footprint", FIELD),
        change("totes", "capacity", { value: 1, unit: "m3" }),
      ],
    },
  ];
  const path = join(mkdtempSync(join(tmpdir(), "plan-")), "demo.json");
  writeFileSync(path, JSON.stringify({ ...sheet, plans }));
  return path;
}

const quantities = (stdout: string) => JSON.parse(stdout).quantities;

test("a plan gives what setting its numbers by hand gives, to the bit, and is named", async () => {
  const path = worksheet();
  const planned = await run(path, "--plan", "Bigger totes", "--json");
  const byHand = await run(path, "--set", "totes.capacity=550 gal", "--json");
  expect(planned.status).toBe(0);
  expect(quantities(planned.stdout)).toEqual(quantities(byHand.stdout));
  expect(JSON.parse(planned.stdout).plan).toEqual({ name: "Bigger totes", left_out: [] });
  expect(JSON.parse(byHand.stdout)).not.toHaveProperty("plan");
});

test("what is set comes after the plan", async () => {
  const path = worksheet();
  const both = await run(path, "--plan", "Bigger totes", "--set", "totes.capacity=300 gal", "--json");
  const set = await run(path, "--set", "totes.capacity=300 gal", "--json");
  expect(quantities(both.stdout)).toEqual(quantities(set.stdout));
});

test("the readable report says which plan it is, and what of it is left out", async () => {
  const { stdout, status } = await run(worksheet(), "--plan", "Odds");
  expect(status).toBe(0);
  expect(stdout).toMatch(
    /^The sheet with the plan "Odds"\.\nOld shed: gone from the sheet, its changes left out\n\n/,
  );
});

test("an unknown plan is wrong usage, and the plans there are are named", async () => {
  const { status, stderr, stdout } = await run(worksheet(), "--plan", "bigger");
  expect([status, stdout]).toEqual([2, ""]);
  expect(stderr).toBe('The worksheet has no plan "bigger". Its plans are "Bigger totes", "Odds".\n');
});
