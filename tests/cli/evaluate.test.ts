import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import type { JsonReport } from "../../src/cli/report.ts";
import { toSi } from "../../src/units/unit.ts";
import { type Ran, run } from "./run.ts";

const root = fileURLToPath(new URL("../..", import.meta.url));
const launch = join(root, "src/cli/launch.mjs");
const demo = join(root, "templates/hillside-totes.json");
const seattle = join(root, "tests/fixtures/seattle-weather.csv");

/** As a person runs it: a process of its own, from the bundle. */
function launched(...words: string[]): Ran {
  return spawnSync(process.execPath, [launch, ...words], { cwd: root, encoding: "utf8" });
}

async function json(...words: string[]): Promise<JsonReport> {
  const ran = await run(...words, "--json");
  expect(ran.stderr).toBe("");
  expect(ran.status).toBe(0);
  return JSON.parse(ran.stdout) as JsonReport;
}

/** What it does with a rain file is told on standard error. */
async function rained(...words: string[]): Promise<JsonReport> {
  const ran = await run(...words, "--json");
  expect(ran.stderr).toContain("Mean yearly rain");
  expect(ran.status).toBe(0);
  return JSON.parse(ran.stdout) as JsonReport;
}

const number = (report: JsonReport, id: string): number => {
  const value = report.quantities[id]?.value;
  if (typeof value !== "number") throw new Error(`${id} is ${JSON.stringify(report.quantities[id])}`);
  return value;
};

describe("the command line", () => {
  test("prints one JSON object with coherent SI values, shown texts, workings and sources", async () => {
    const report = await json(demo);
    const catches = report.quantities["barn_roof.mean_yearly_catch"];
    expect(catches).toMatchObject({ state: "ready", unit: "m3", origin: "computed", problem: "" });
    expect(catches?.shown).toMatch(/^[\d,]+\sgal$/);
    expect(report.quantities["barn_roof.catch_per_depth"]?.how).toContain("×");
    expect(report.quantities["totes.days_of_autonomy"]?.unit).toBe("s");
    expect(report.quantities["site.season_start"]?.value).toBe("05-01");
    expect(report.cautions.length).toBeGreaterThan(0);
  });

  test("ends quietly where nobody reads on", () => {
    const cut = `"$0" "$1" "$2" --json | head -c 10`;
    const ran = spawnSync("sh", ["-c", cut, process.execPath, launch, demo], { cwd: root, encoding: "utf8" });
    expect([ran.stdout.length, ran.stderr, ran.status]).toEqual([10, "", 0]);
  });

  test("a process of its own, from the bundle, says the same to the letter, and ends with the same codes", async () => {
    expect(launched(demo, "--json")).toMatchObject(await run(demo, "--json"));
    for (const [words, code] of [
      [["--frobnicate"], 2],
      [[join(root, "templates/nothing.json")], 1],
    ] as const) {
      expect((await run(...words)).status).toBe(code);
      expect(launched(...words)).toMatchObject(await run(...words));
    }
  });

  test("--set takes numbers with units, choices, links, lists, dates, none, and measured values", async () => {
    const report = await json(
      demo,
      "--set",
      "totes.capacity=500 gal",
      "--set",
      "totes.count=1",
      "--set",
      "barn_roof.material=tile",
      "--set",
      "porch_roof.drains_to=none",
      "--set",
      "long_bed.watered_by=cans,wand",
      "--set",
      "site.season_start=04-15",
      "--set",
      "hose_down.valve_bore=none",
      "--set",
      "wand.flow=6 gpm",
      "--set",
      "site.storage_rule=use_first",
      "--set",
      "tunnel_bed.contents=tomato 05-10 0.5, lettuce 04-20 50%",
    );
    expect(number(report, "totes.capacity")).toBeCloseTo(toSi(500, "gal"), 12);
    expect(report.quantities["barn_roof.material"]?.value).toBe("tile");
    expect(report.quantities["porch_roof.drains_to"]?.state).toBe("none");
    expect(report.quantities["long_bed.watered_by"]?.value).toEqual(["cans", "wand"]);
    expect(report.quantities["site.season_start"]?.value).toBe("04-15");
    expect(report.quantities["hose_down.valve_bore"]?.state).toBe("none");
    expect(report.quantities["wand.flow"]).toMatchObject({ origin: "measured" });
    expect(number(report, "wand.flow")).toBeCloseTo(toSi(6, "gpm"), 12);
  });

  test("--set takes none as a word where it is one of the words", async () => {
    const report = await json(
      join(root, "templates/pump-battery-panel.json"),
      "--set",
      "sun.controller=none",
    );
    expect(report.quantities["sun.controller"]).toMatchObject({ value: "none", state: "ready" });
  });

  test("--rain runs the worksheet on another record", async () => {
    const report = await rained(demo, "--rain", seattle, "--rain-unit", "mm");
    expect(number(report, "weather.days")).toBe(1461);
    expect(number(report, "weather.mean_yearly_rain")).toBeCloseTo(1.1065, 9);
  });

  test.each([
    ["no worksheet", [], 2],
    ["an unknown option", [demo, "--frobnicate"], 2],
    ["an unknown name", [demo, "--set", "totes.colour=blue"], 2],
    ["an unknown card", [demo, "--set", "nobody.capacity=5 gal"], 2],
    ["a wrong dimension", [demo, "--set", "totes.capacity=5 ft"], 2],
    ["a bare number for a volume", [demo, "--set", "totes.capacity=5"], 2],
    ["a decimal comma", [demo, "--set", "totes.capacity=5,5 gal"], 2],
    ["a row that can be neither given nor measured", [demo, "--set", "totes.full_weight=5 lb"], 2],
    ["a rain unit that nothing tells", [demo, "--rain", seattle], 1],
    ["a missing file", [join(root, "templates/nothing.json")], 1],
  ])("%s ends with the reason on standard error and its own code", async (_, words, code) => {
    const ran = await run(...words);
    expect(ran.status).toBe(code);
    expect(ran.stdout).toBe("");
    expect(ran.stderr.trim().length).toBeGreaterThan(10);
  });

  test("a file that is wrong is refused with the line", async () => {
    const file = join(mkdtempSync(join(tmpdir(), "eavesdrip-")), "broken.json");
    writeFileSync(file, '{\n  "version": 1,\n  "title": \n}');
    const ran = await run(file);
    expect(ran.status).toBe(1);
    expect(ran.stderr).toContain("line 4");
  });

  test("--help explains, and a plain run is a readable report", async () => {
    expect((await run("--help")).stdout).toContain("--set NAME=VALUE");
    const report = (await run(demo)).stdout;
    expect(report).toContain("Two totes");
    expect(report).toContain("Full tanks last");
  });
});

describe("--series", () => {
  test("writes every day of every part, and a tank's days close in the file itself to 1e-9", async () => {
    const file = join(mkdtempSync(join(tmpdir(), "days-")), "days.csv");
    const report = await json(demo, "--series", file);
    const [head = "", ...rows] = readFileSync(file, "utf8").trim().split("\n");
    const names = head.split(",");
    expect(names[0]).toBe("date");
    const at = (row: string, name: string): number => {
      const place = names.findIndex((each) => each.startsWith(`${name} [`));
      expect(place, name).toBeGreaterThan(0);
      return Number(row.split(",")[place]);
    };
    expect(rows.length).toBe(number(report, "weather.days"));
    const sum = (row: string, list: string) =>
      list.split(" ").reduce((all, name) => all + at(row, `totes.${name}`), 0);
    for (const [place, row] of rows.entries()) {
      if (place === 0) continue;
      const held = at(rows[place - 1] ?? "", "totes.stored") + sum(row, "from_roofs rain overflow_in lines");
      const goes = sum(row, "overflow_out spilled drawn evaporated leaked");
      expect(Math.abs(held - goes - at(row, "totes.stored"))).toBeLessThan(1e-9);
    }
  });

  test("that cannot be written is an error of the file, and nothing else is printed", async () => {
    const ran = await run(demo, "--series", join(tmpdir(), "no", "such", "folder", "days.csv"));
    expect(ran.status).toBe(1);
    expect(ran.stderr).toContain("could not be written");
    expect(ran.stdout).toBe("");
  });
});
