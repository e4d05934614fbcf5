import { readdirSync, readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { readRainCsv } from "../../src/rainfall/import-csv.ts";
import { readOwnGauge } from "../../src/rainfall/own-gauge.ts";
import { seededRandom } from "../../src/rainfall/seeded-random.ts";
import { tries } from "../tries.ts";

const FOLDER = new URL("../fixtures/rain/", import.meta.url);
const SEED = Number(process.env.FUZZ_SEED ?? 20_260_101);
const RUNS = tries(20_000, 2000);
const PIECES = [
  ",",
  ";",
  "\t",
  "\n",
  "\r\n",
  '"',
  "'",
  "#",
  "-",
  ".",
  "/",
  ":",
  " ",
  "T",
  "-9999",
  "1e309",
  "NaN",
  "2020-02-30",
  "9999-12-31",
  "0001-01-01",
  "\u0000",
  "\uFEFF",
  "=1+1",
  "rain",
  "date",
  "mm",
  "0x10",
  "\u2028",
  "31/12/99",
];

it(`${RUNS} mutated records never throw and always end in one of three states (seed ${SEED})`, () => {
  const texts = readdirSync(FOLDER).map((name) => readFileSync(new URL(name, FOLDER), "utf8").slice(0, 3000));
  const chance = seededRandom(SEED);
  const below = (limit: number) => Math.floor(chance() * limit);
  const seen = { ready: 0, ask: 0, refused: 0 };
  let slowest = 0;
  for (let run = 0; run < RUNS; run++) {
    let text = texts[below(texts.length)] ?? "";
    for (let edit = below(6); edit >= 0; edit--) {
      const at = below(text.length + 1);
      const kind = below(4);
      if (kind === 0) text = text.slice(0, at) + PIECES[below(PIECES.length)] + text.slice(at);
      else if (kind === 1) text = text.slice(0, at) + text.slice(at + below(40));
      else if (kind === 2)
        text = text.slice(0, at) + text.slice(below(text.length + 1)).slice(0, 200) + text.slice(at);
      else text = text.slice(0, at) + String.fromCharCode(below(0x250)) + text.slice(at + 1);
    }
    const started = performance.now();
    const result = readRainCsv(
      text,
      chance() < 0.5 ? { unit: "mm", date_order: "dmy", first_day: "2020-01-01", minus_one: "missing" } : {},
    );
    slowest = Math.max(slowest, performance.now() - started);
    seen[result.state]++;
    if (result.state === "ready") {
      const bad = result.record.rain.findIndex((value) => value < 0 || value === Number.POSITIVE_INFINITY);
      if (bad !== -1) expect.unreachable(`day ${bad} of ${JSON.stringify(text)}`);
    }
    if (run % 4 !== 0) continue;
    const gauge = readOwnGauge(text, { unit: "mm", year: 2020, date_order: "dmy", between: "zero" });
    if (!Object.hasOwn(seen, gauge.state)) expect.unreachable(`${gauge.state} of ${JSON.stringify(text)}`);
  }
  expect(seen.ready + seen.ask + seen.refused).toBe(RUNS);
  expect(Math.min(seen.ready, seen.ask, seen.refused)).toBeGreaterThan(RUNS / 40);
  expect(slowest).toBeLessThan(1000);
});
